//! The records of a worksheet: plain values, in figures and in words.

use super::{AltitudeSheet, BatterSaid, OvenSheet, PullPair, RangeSheet};
use crate::baking::estimate::Estimate;
use crate::baking::finding::{Finding, Verdict};
use crate::baking::ingredient::{Allergen, Region};
use crate::baking::pan::{AmountEntry, FieldTrouble, PanEntry, Section};
use crate::baking::quantity::Quantity;
use serde::Serialize;

/// All that is known of a recipe, ready to be shown.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Worksheet {
    /// The recipe's name, if it has one.
    pub title: Option<String>,
    /// Whose cups, spoons and words it was read in.
    pub country: CountrySheet,
    /// What was made of a page's source or linked data that stands in the text's place.
    pub taken_from: Option<String>,
    /// Every line of the text, in order; a line of several ingredients stands here once for each.
    pub lines: Vec<SheetLine>,
    /// Baker's percentages and totals of the batter.
    pub balance: BalanceSheet,
    /// Acid, soda and gas.
    pub leavening: LeaveningSheet,
    /// The recipe's pan and those on the shelf.
    pub pans: PanSheet,
    /// The oven, and what is asked of heat flow.
    pub oven: OvenSheet,
    /// What it needs in the air of a high kitchen; `None` where the height is of no account.
    pub altitude: Option<AltitudeSheet>,
    /// What is to be said of all this, gravest first.
    pub findings: Vec<Finding>,
    /// Allergens in what was read. A help, never a guarantee.
    pub allergens: Vec<AllergenNote>,
    /// "Plant-based by its ingredients", "Not plant-based: ...", or why it cannot be told.
    pub plant_based: String,
    /// The same as an answer; `None` where it cannot be told.
    pub is_plant_based: Option<bool>,
    /// The usual cautions, whole sentences.
    pub cautions: Vec<String>,
    /// Every source that a figure on this sheet was taken from.
    pub sources: Vec<SourceNote>,
    /// One sentence that sums the sheet up, for a screen reader and the top of the page.
    pub summary: String,
}

/// Whose cups, spoons and words a recipe is in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CountrySheet {
    /// The country.
    pub region: Region,
    /// How that is known, in a sentence: "United Kingdom, by its words: ...".
    pub why: String,
    /// True where the baker said it.
    pub chosen: bool,
    /// The lines whose words tell.
    pub lines: Vec<usize>,
}

/// A figure with its range, in the unit that its place names.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Spread {
    /// The mean.
    pub mean: f64,
    /// One case in twenty lies below.
    pub low: f64,
    /// One case in twenty lies above.
    pub high: f64,
}

impl<Q: Quantity> From<Estimate<Q>> for Spread {
    fn from(estimate: Estimate<Q>) -> Self {
        Self {
            mean: estimate.mean.base(),
            low: estimate.low.base(),
            high: estimate.high.base(),
        }
    }
}

/// What became of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Status {
    /// Nothing on it.
    Blank,
    /// The recipe's name.
    Title,
    /// A heading.
    Heading,
    /// An ingredient that was weighed.
    Weighed,
    /// An ingredient without a weight; `doubts` says why.
    NotWeighed,
    /// A step of the method.
    Method,
    /// Kept as a note.
    Note,
    /// Looks like an ingredient and could not be read; `doubts` says why.
    NotRead,
}

/// One line of the text.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SheetLine {
    /// Counted from 1.
    pub line: usize,
    /// Which of the line's ingredients, counted from 0.
    pub part: usize,
    /// The line as it was pasted.
    pub text: String,
    /// What became of it.
    pub status: Status,
    /// True where the reading is unsure or failed.
    pub flagged: bool,
    /// The key of the ingredient in the table.
    pub ingredient: Option<&'static str>,
    /// The ingredient's name.
    pub name: Option<&'static str>,
    /// The words that were read as its name.
    pub words: String,
    /// True where those words mean this ingredient because the baker once said so.
    pub taught: bool,
    /// A word of caution or explanation on the ingredient; empty where there is none.
    pub note: &'static str,
    /// What the recipe's line weighs, in grams.
    pub grams: Option<Spread>,
    /// `grams` in words: "284 g", with the spread in `range_shown`.
    pub grams_shown: Option<String>,
    /// The range in words: "259 to 319 g"; `None` where the weight is exact.
    pub range_shown: Option<String>,
    /// How the line was understood, in one short sentence; empty for lines that are not ingredients.
    pub understood: String,
    /// The spoons that the weight was read from: "1 1/2 teaspoons"; `None` for any other measure.
    pub spoons: Option<String>,
    /// How the weight was got, in one sentence.
    pub how: Option<String>,
    /// Where the weight's figure is from, and how sure it is.
    pub source: Option<String>,
    /// What other sources say of the same measure; empty where none does.
    pub others: String,
    /// What is unsure, as sentences.
    pub doubts: Vec<String>,
    /// Other ingredients that the line may mean.
    pub offers: Vec<Offer>,
    /// Whether it goes into the batter; if not, `beside` says why.
    pub in_batter: bool,
    /// "Not in the batter: frosting", "For the pan"; `None` for batter lines.
    pub beside: Option<String>,
    /// Baker's percentage, e.g. "52 %"; `None` outside the batter or without flour.
    pub percent_shown: Option<String>,
    /// What to weigh of it for what is baked: "426 g"; `None` while nothing but the recipe is asked for.
    pub scaled_shown: Option<String>,
    /// Eggs in the scaled formula: grams and the nearest whole count.
    pub eggs: Option<EggCount>,
    /// True where the baker has corrected this line.
    pub corrected: bool,
}

/// An ingredient that can be chosen by hand.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Offer {
    /// Its key.
    pub key: String,
    /// Its name, with its amount where the line gives it one of its own.
    pub name: String,
    /// Whether the line offers it in the other's place, with an amount of its own: it is a choice then, and no mend.
    pub instead: bool,
}

/// Eggs after scaling.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct EggCount {
    /// The nearest whole count.
    pub whole: u32,
    /// In words: "about 3 large (2.7): beat 3, weigh 136 g".
    pub shown: String,
}

/// A labelled figure in words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FigureShown {
    /// What it is.
    pub label: String,
    /// The figure with its unit and spread.
    pub value: String,
    /// How it was got and from what source.
    pub how: String,
}

/// What the sugars do, as figures; each `None` where it is not known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct SugarFigures {
    /// The core temperature at which the batter sets, C.
    pub sets_at: Option<Spread>,
    /// Sucrose that would taste as sweet, g.
    pub as_sucrose: Option<Spread>,
    /// Molecules of sugar in the batter's water, mol/kg.
    pub in_water: Option<Spread>,
}

/// Baker's percentages and totals of the batter.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BalanceSheet {
    /// Total flour, grams; `None` without flour.
    pub flour: Option<Spread>,
    /// What counts as flour, in words.
    pub flour_basis: String,
    /// Percentages by line, in the recipe's order.
    pub rows: Vec<TableRow>,
    /// Totals: water, fat, sugars, protein, starch, salt, sodium.
    pub totals: Vec<PartTotal>,
    /// Where it sets, how sweet it is, how its sugars hold its water.
    pub figures: Vec<FigureShown>,
    /// The same as figures.
    pub sugar: SugarFigures,
    /// Batter weight, grams.
    pub batter: Option<Spread>,
    /// How many servings the recipe says it makes.
    pub servings: Option<f64>,
    /// What keeps a total from being whole, as sentences ("Line 7 has no weight, so totals leave it out.").
    pub gaps: Vec<String>,
    /// The formula laid against the ranges of its kind.
    pub ranges: RangeSheet,
    /// What pulls the batter: tougheners against tenderisers, driers against moisteners.
    pub pull: Vec<PullPair>,
}

/// A line in the table of percentages.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TableRow {
    /// The line of the text.
    pub line: usize,
    /// The ingredient's name.
    pub name: String,
    /// "250 g".
    pub grams_shown: String,
    /// Baker's percentage, mean.
    pub percent: Option<f64>,
    /// "100 %".
    pub percent_shown: String,
}

/// The total of one constituent.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PartTotal {
    /// "Water", "Fat", "Sugars", "Protein", "Starch", "Sodium".
    pub name: String,
    /// Grams in the batter, of the lines whose share is known.
    pub grams: Spread,
    /// "212 g".
    pub grams_shown: String,
    /// Against flour: "85 %".
    pub percent_shown: String,
    /// Lines whose share of it is not known.
    pub unknown: Vec<usize>,
    /// How it was got, and what is left out.
    pub how: String,
}

/// Acid, soda and gas of the batter.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LeaveningSheet {
    /// The verdict on acid against soda.
    pub verdict: Verdict,
    /// The verdict on gas.
    pub gas_verdict: Verdict,
    /// Who brings acid and who brings base, by line, in milliequivalents to pH 7.
    pub shares: Vec<AcidShare>,
    /// All acid, meq to pH 7.
    pub acid: Option<Spread>,
    /// All free soda, meq: powder's soda less what its own acid answers.
    pub soda: Option<Spread>,
    /// The rule: band and where the crumb is reckoned to fall.
    pub rule: Option<PhRule>,
    /// The gas.
    pub gas: Option<GasSheet>,
    /// Soda that would bring the bowl to pH 7, as figures.
    pub figures: Vec<FigureShown>,
    /// What the baker says of the batter, and what is wrong with it: the wait, then the pH.
    pub said: BatterSaid,
    /// What is wrong with the minutes.
    pub waits_trouble: Option<&'static str>,
    /// What is wrong with the pH.
    pub crumb_ph_trouble: Option<&'static str>,
}

/// What one line brings, in milliequivalents; acid is counted to pH 7.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AcidShare {
    /// The line of the text.
    pub line: usize,
    /// The ingredient's name.
    pub name: String,
    /// Acid less base: positive brings acid, negative brings base.
    pub acid: Spread,
    /// "64 meq acid", "27 meq base".
    pub shown: String,
    /// How it was got and from what source.
    pub how: String,
    /// True where no source gives its acidity; the figure is then a guess of none.
    pub unknown: bool,
}

/// The pH rule as drawn: a scale, a band, the crumb with its spread.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PhRule {
    /// Left end of the scale.
    pub scale_low: f64,
    /// Right end of the scale.
    pub scale_high: f64,
    /// The band of this kind of cake.
    pub band_low: f64,
    /// Its upper end.
    pub band_high: f64,
    /// What the band is for, and its source.
    pub band_for: String,
    /// Where the crumb is reckoned to fall.
    pub crumb: Spread,
    /// The same for the batter as it goes into the oven.
    pub batter: Spread,
    /// All of it in words.
    pub words: String,
}

/// The gas, with the band that a batter of this flour wants.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct GasSheet {
    /// Carbon dioxide made, grams.
    pub grams: Spread,
    /// Against flour, per cent.
    pub percent: Spread,
    /// The band, per cent of flour.
    pub band_low: f64,
    /// Its upper end.
    pub band_high: f64,
    /// Right end of the scale.
    pub scale_high: f64,
    /// Part of the gas that is there before the oven: per cent of all.
    pub early_percent: f64,
    /// All of it in words.
    pub words: String,
    /// From mixing to the hot core, in the order of time.
    pub course: Vec<GasMoment>,
    /// The core temperature at which the crumb sets, C: the batter's own, or a usual one where that is not known.
    pub sets_at: f64,
    /// The hottest that the core gets, C.
    pub hottest: f64,
    /// The course in words.
    pub course_words: String,
}

/// The gas at one moment.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct GasMoment {
    /// In the oven, and not on the bench.
    pub oven: bool,
    /// Minutes since mixing began.
    pub minutes: f64,
    /// Temperature of the core, C.
    pub celsius: f64,
    /// Carbon dioxide that became gas so far, per cent of flour.
    pub made: f64,
    /// What of it is still in the batter, per cent of flour.
    pub held: f64,
}

/// The pans, how much of the recipe goes into them, and how it stands there.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PanSheet {
    /// The recipe's own pan, with the recipe's batter.
    pub own: PanView,
    /// The pans on the shelf, with what is baked.
    pub shelf: Vec<PanView>,
    /// The recipe's own pan with what is baked, where nothing stands on the shelf and another amount is asked for.
    pub own_again: Option<PanView>,
    /// How much is baked, as chosen and typed.
    pub amount: AmountEntry,
    /// What is wrong with that.
    pub amount_trouble: Option<String>,
    /// How much of the recipe that is; `None` where nothing but the recipe is asked for, or it cannot be told.
    pub factor: Option<f64>,
    /// "1.56 times the recipe".
    pub factor_shown: Option<String>,
    /// What the factor means, in words, with other factors beside it.
    pub words: String,
    /// How the batter is shared out and what is left over, as sentences; empty where there is nothing to say.
    pub shared_out: Vec<String>,
    /// Whole numbers of eggs; `None` where the formula asks for a whole number anyway.
    pub eggs: Option<EggSheet>,
    /// What is typed of the batter's weight.
    pub said: BatterSaid,
    /// What is wrong with that.
    pub cup_trouble: Option<String>,
    /// How full pans of this kind usually are and what its batter weighs, each with its source.
    pub usual: String,
}

impl PanSheet {
    /// The pans that are baked in, with what is weighed into each: "two 8 in rounds, 2 in deep, 430 g into each".
    pub fn baked(&self) -> String {
        let pans = match self.shelf.as_slice() {
            [] => vec![self.own_again.as_ref().unwrap_or(&self.own)],
            shelf => shelf.iter().collect(),
        };
        let words = pans.iter().map(|pan| match &pan.grams_shown {
            Some(grams) => format!("{}, {grams} into each", pan.label),
            None => pan.label.clone(),
        });
        words.collect::<Vec<_>>().join("; ")
    }
}

/// A part of an egg, and the whole numbers next to it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct EggSheet {
    /// "The formula asks for 3.66 eggs of 50 g each: beat 4 and weigh 183 g."
    pub words: String,
    /// The whole numbers, the lower one first.
    pub offers: Vec<EggOffer>,
}

/// A whole number of eggs that can be taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct EggOffer {
    /// How many.
    pub count: u32,
    /// "Take 3 eggs".
    pub label: String,
    /// What the formula and its depth come to.
    pub words: String,
}

/// One pan with the batter in it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PanView {
    /// "9 x 13 in rectangle, 2 in deep".
    pub label: String,
    /// The pan as typed fields, to fill the form with.
    pub entry: PanEntry,
    /// Where it is from: "Named at line 14", "Your choice", "Not named: a usual 9 in round is taken".
    pub from: String,
    /// Whether it can be reckoned with at all.
    pub known: bool,
    /// Troubles in what was typed, each at its field.
    pub troubles: Vec<FieldTrouble>,
    /// Brim volume of all of them, "2.09 L".
    pub brim_shown: String,
    /// What to weigh into each, "430 g (405 to 455 g)"; `None` where nothing is to be weighed.
    pub grams_shown: Option<String>,
    /// Batter depth, "3.1 cm (1.2 in)"; `None` where the batter is not known.
    pub depth_shown: Option<String>,
    /// Fill by depth, "62 % of its depth (55 % to 70 %)".
    pub fill_shown: Option<String>,
    /// What charts say of a pan of that size, as sentences; empty where none is known to.
    pub charts: Vec<String>,
    /// The section to draw, millimetres.
    pub section: Option<Section>,
    /// All of it in words.
    pub words: String,
}

/// An allergen and the lines that bring it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AllergenNote {
    /// Which.
    pub allergen: Allergen,
    /// Its name in law's words.
    pub name: String,
    /// The lines that bring it.
    pub lines: Vec<usize>,
}

/// A source on this sheet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SourceNote {
    /// Its key in the table.
    pub key: &'static str,
    /// The reference in full.
    pub citation: &'static str,
}

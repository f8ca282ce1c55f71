//! Everything that is known of one ingredient, as plain records ready to show.
//!
//! Every row says how its figure was got: from what source, and how sure. What no source gives stands as "not known".

use super::{
    Acidity, Composition, Ingredient, Law, Leavening, OrganicAcids, PieceWeight, Region, aliases,
    all,
};
use crate::baking::estimate::Estimate;
use crate::baking::ingredient::FillingWeight;
use crate::baking::quantity::{Mass, Share, show};
use crate::baking::source::Cited;
use std::borrow::Cow;

/// What is said where no source gives a figure.
const NOT_KNOWN: &str = "not known";

/// Words: of this program, or made from figures.
pub type Text = Cow<'static, str>;

/// All that is known of one ingredient.
#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    /// Its name.
    pub name: &'static str,
    /// The family it belongs to.
    pub group: &'static str,
    /// The other names that people write: those of every country first, then those of one.
    pub names: Vec<CardNames>,
    /// Its figures, in groups.
    pub groups: Vec<CardGroup>,
    /// A word of caution or explanation, empty where there is none.
    pub note: &'static str,
}

/// Names that hold in one place.
#[derive(Clone, Debug, PartialEq)]
pub struct CardNames {
    /// The country; `None` where they hold everywhere.
    pub region: Option<Region>,
    /// The names.
    pub names: Vec<&'static str>,
}

/// Rows under one heading.
#[derive(Clone, Debug, PartialEq)]
pub struct CardGroup {
    /// The heading.
    pub heading: Text,
    /// The rows.
    pub rows: Vec<CardRow>,
}

/// One figure.
#[derive(Clone, Debug, PartialEq)]
pub struct CardRow {
    /// What it is.
    pub label: Text,
    /// The figure with its unit, or that it is not known.
    pub value: Text,
    /// How it was got: source and confidence; empty where it is not known.
    pub how: Text,
}

impl CardGroup {
    fn new(heading: impl Into<Text>, rows: Vec<CardRow>) -> Self {
        Self {
            heading: heading.into(),
            rows,
        }
    }

    /// What two rows or more have in common as their way, most rows first, so that a page can say it once.
    pub fn common_how(&self) -> Option<&str> {
        let count = |how: &str| self.rows.iter().filter(|row| row.how == how).count();
        let hows = self.rows.iter().map(|row| row.how.as_ref());
        let most = hows
            .filter(|how| !how.is_empty())
            .max_by_key(|how| count(how))?;
        (count(most) > 1).then_some(most)
    }
}

/// The card of an ingredient. Groups of which nothing is known are left out, but what it holds and its acidity, whose
/// want is worth saying.
pub fn card(ingredient: &Ingredient) -> Card {
    let mut groups = vec![
        CardGroup::new("What 100 g hold", composition(ingredient)),
        CardGroup::new("Sugars by kind, in 100 g", sugars(ingredient)),
        CardGroup::new("Acid and buffer", acidity(ingredient.acidity)),
        CardGroup::new(
            "Leavening, in 100 g",
            ingredient.leavening.map(leavening).unwrap_or_default(),
        ),
    ];
    groups.extend(ingredient.leavening.into_iter().flat_map(leavening_acids));
    groups.extend([
        CardGroup::new(
            "A level US measure weighs",
            ingredient.fillings.iter().map(filling).collect(),
        ),
        CardGroup::new(
            "The same by other sources, not in use",
            ingredient.others.iter().map(filling).collect(),
        ),
        CardGroup::new(
            "One piece weighs",
            ingredient.pieces.iter().map(piece).collect(),
        ),
        CardGroup::new("Allergens and diet", diet(ingredient)),
    ]);
    Card {
        name: ingredient.name,
        group: ingredient.group.words(),
        names: names(ingredient),
        groups: groups
            .into_iter()
            .filter(|group| !group.rows.is_empty())
            .collect(),
        note: ingredient.note,
    }
}

fn row(label: impl Into<Text>, value: impl Into<Text>, how: impl Into<Text>) -> CardRow {
    CardRow {
        label: label.into(),
        value: value.into(),
        how: how.into(),
    }
}

/// A note of the tables and a source, in sentences.
fn how(note: &str, cited: Cited) -> String {
    if note.is_empty() {
        cited.words()
    } else {
        format!("{}. {}", show::sentence(note), cited.words())
    }
}

/// The other names, by country, as the tables have them.
fn names(ingredient: &Ingredient) -> Vec<CardNames> {
    let place = all().binary_search_by(|known| known.key.cmp(ingredient.key));
    let own = crate::baking::text::lower(ingredient.name);
    let regions = std::iter::once(None).chain(Region::ALL.map(Some));
    regions
        .map(|region| CardNames {
            region,
            names: aliases()
                .iter()
                .filter(|alias| {
                    Ok(alias.index) == place && alias.region == region && alias.name != own
                })
                .map(|alias| alias.name)
                .collect(),
        })
        .filter(|names| !names.names.is_empty())
        .collect()
}

fn composition(ingredient: &Ingredient) -> Vec<CardRow> {
    let Composition {
        water,
        protein,
        fat,
        carbohydrate,
        sugars,
        starch,
        fibre,
        alcohol,
        sodium,
        derived,
    } = &ingredient.composition;
    let source = ingredient.cited.words();
    let parts = [
        ("Water", "water", water),
        ("Fat", "fat", fat),
        ("Carbohydrate with fibre", "carbohydrate", carbohydrate),
        ("Sugars", "sugars", sugars),
        ("Starch", "starch", starch),
        ("Fibre", "fibre", fibre),
        ("Protein", "protein", protein),
        ("Alcohol", "alcohol", alcohol),
        ("Sodium", "sodium", sodium),
    ];
    parts
        .into_iter()
        .map(|(label, name, share)| {
            let Some(share) = share else {
                return row(label, NOT_KNOWN, "");
            };
            let value = if name == "sodium" {
                show::milligrams(share.to_percent())
            } else {
                show::of_100_grams(share.to_percent())
            };
            let how = if !derived.contains(&name) {
                source.clone()
            } else if name == "water" {
                "By difference: 100 g less all the rest".to_owned()
            } else if name == "starch" {
                "By difference: carbohydrate less sugars and fibre".to_owned()
            } else {
                "By difference from the others".to_owned()
            };
            row(label, value, how)
        })
        .collect()
}

/// The kinds that a source lists, and what it leaves of the total.
fn sugars(ingredient: &Ingredient) -> Vec<CardRow> {
    let Some(sugars) = &ingredient.sugars else {
        return Vec::new();
    };
    let source = how(sugars.note, sugars.cited);
    let parts = sugars.parts.iter().map(|(kind, share)| {
        let value = show::of_100_grams(share.to_percent());
        row(kind.name(), value, source.clone())
    });
    let mut rows: Vec<CardRow> = parts.collect();
    let rest = ingredient.sugars_of_unknown_kind();
    // The kinds are analysed apart from the total, so less than a twentieth of it is no kind of its own.
    let total = ingredient.composition.sugars.unwrap_or_default();
    if let Some(rest) = rest.filter(|rest| *rest > total * 0.05) {
        rows.push(row(
            "Of unknown kind",
            show::of_100_grams(rest.to_percent()),
            "Total sugars less the kinds that the source lists",
        ));
    }
    rows
}

fn acidity(acidity: Option<&Acidity>) -> Vec<CardRow> {
    let Some(acidity) = acidity else {
        return vec![row(
            "Acidity",
            NOT_KNOWN,
            "No source gives it; a recipe's pH is shown with a wider spread for it",
        )];
    };
    let note = acidity.note;
    let (low, ph, high) = acidity.ph;
    let neutral = acidity.deviation == 0.0 && acidity.buffer.below_6 == 0.0;
    if neutral && acidity.acids == OrganicAcids::default() {
        return vec![row(
            "Acid and buffer",
            "none",
            how(note, acidity.buffer_cited),
        )];
    }
    let (low_shown, high_shown) = (show::ph(low), show::ph(high));
    let range = if low_shown == high_shown {
        String::new()
    } else {
        format!(" ({low_shown} to {high_shown})")
    };
    let mut rows = vec![row(
        "pH",
        format!("{}{range}", show::ph(ph)),
        how(note, acidity.ph_cited),
    )];
    let OrganicAcids {
        citric,
        malic,
        quinic,
        tartaric,
        lactic,
        acetic,
        oxalic,
        succinic,
        gluconic,
        aconitic,
        chlorogenic,
        phosphoric,
    } = acidity.acids;
    let acids = [
        ("Citric acid", citric),
        ("Malic acid", malic),
        ("Quinic acid", quinic),
        ("Tartaric acid", tartaric),
        ("Lactic acid", lactic),
        ("Acetic acid", acetic),
        ("Oxalic acid", oxalic),
        ("Succinic acid", succinic),
        ("Gluconic acid", gluconic),
        ("Aconitic acid", aconitic),
        ("Chlorogenic acid", chlorogenic),
        ("Phosphoric acid", phosphoric),
    ];
    let acids = acids.into_iter().filter(|(_, grams)| *grams > 0.0);
    rows.extend(acids.map(|(name, grams)| {
        let source = acidity.acids_cited.map_or_else(String::new, Cited::words);
        row(
            format!("{name}, in 100 g"),
            format!("{} g", show::plain(grams)),
            source,
        )
    }));
    if let Some(titratable) = acidity.titratable {
        rows.push(row(
            format!("Titratable acidity as {} acid, in 100 g", titratable.acid),
            format!(
                "{} to {} g",
                show::plain(titratable.low),
                show::plain(titratable.high)
            ),
            format!(
                "{}. To compare with, not reckoned with",
                titratable.source.citation
            ),
        ));
    }
    let buffer = acidity.buffer;
    let source = acidity.buffer_cited.words();
    let slopes = [
        (
            "Base taken up besides, for 1 kg and 1 pH, below pH 6",
            buffer.below_6,
        ),
        ("The same from pH 6 to 7.5", buffer.from_6_to_7_5),
        ("The same above pH 7.5", buffer.above_7_5),
    ];
    rows.extend(slopes.map(|(label, slope)| {
        let value = format!("{} meq", show::milliequivalents(slope));
        row(label, value, source.clone())
    }));
    if acidity.bicarbonate > 0.0 {
        rows.push(row(
            "Bicarbonate in it, in 1 kg",
            format!("{} mmol", show::milliequivalents(acidity.bicarbonate)),
            source.clone(),
        ));
    }
    rows.push(row(
        "Differs from lot to lot by about",
        show::percent(Share::fraction(acidity.deviation)),
        "One standard deviation of the base that it takes up",
    ));
    rows
}

fn leavening(leavening: &Leavening) -> Vec<CardRow> {
    use super::Bicarbonate;
    let source = how(leavening.note, leavening.cited);
    let mut rows = Vec::new();
    if let Some((kind, grams)) = leavening.bicarbonate {
        let label = match kind {
            Bicarbonate::Sodium => "Baking soda (sodium bicarbonate)",
            Bicarbonate::Potassium => "Potassium bicarbonate",
            Bicarbonate::Ammonium => "Ammonium bicarbonate",
        };
        rows.push(row(label, show::of_100_grams(grams), source.clone()));
    }
    if !leavening.acids.is_empty() {
        rows.push(row(
            "Acid in it",
            leavening.acids_in_words(),
            source.clone(),
        ));
    }
    let (low, typical, high) = leavening.neutralised;
    if typical > 0.0 {
        let mut value = show::of_100_grams(typical);
        if low < high {
            value = format!(
                "{value} ({} to {} g)",
                show::fixed(low, 1),
                show::fixed(high, 1)
            );
        }
        rows.push(row("Baking soda that its acid uses up", value, source));
    }
    rows
}

/// A group for each leavening acid: how much of it is in the ingredient, and what is known of the acid itself.
fn leavening_acids(leavening: &Leavening) -> impl Iterator<Item = CardGroup> {
    leavening.acids.iter().map(|(acid, share)| {
        // Where the packet decides, a usual one is reckoned with.
        let heading = if leavening.said.is_empty() {
            show::sentence(acid.name)
        } else {
            format!("Reckoned as {}", acid.name)
        };
        let (low, typical, high) = acid.neutralising_value;
        let (from, to) = acid.active;
        let [low, typical, high, from, to] =
            [low, typical, high, from.to_celsius(), to.to_celsius()].map(show::plain);
        let rate = how(acid.note, acid.rate_cited);
        let gas = |label: &'static str, percent| {
            row(label, show::percent(Share::percent(percent)), rate.clone())
        };
        let mut rows = vec![
            row(
                "In 100 g of the ingredient",
                show::of_100_grams(*share),
                leavening.cited.words(),
            ),
            row(
                "Neutralising value: baking soda that 100 g of the acid use up",
                format!("{typical} g ({low} to {high} g)"),
                acid.value_cited.words(),
            ),
            gas("Gas while the batter is mixed", acid.gas.mixing),
            gas("Gas while it stands", acid.gas.bench),
            gas("Gas in the oven", acid.gas.oven),
            row(
                "Sets to work at",
                format!("{from} to {to} °C"),
                rate.clone(),
            ),
        ];
        let metals = [
            ("Sodium in 1 g of the acid", acid.sodium),
            ("Potassium in 1 g of the acid", acid.potassium),
            ("Aluminium in 1 g of the acid", acid.aluminium),
        ];
        rows.extend(metals.map(|(label, milligrams)| {
            let value = show::milligrams(milligrams / 1000.0);
            row(label, value, "Worked out from its formula")
        }));
        let memory = "From memory, no source at hand";
        rows.push(row("Taste that it leaves", acid.taste, memory));
        CardGroup::new(heading, rows)
    })
}

fn filling(filling: &FillingWeight) -> CardRow {
    let words = [
        Some(filling.measure.words()),
        filling.form.map(super::Form::words),
        filling.filling.map(super::Filling::words),
    ];
    weight(words, &filling.weight, how(filling.note, filling.cited))
}

fn piece(piece: &PieceWeight) -> CardRow {
    let words = [
        Some(piece.piece.words()),
        piece.size.map(super::PieceSize::words),
        piece.region.map(Region::words),
    ];
    weight(words, &piece.weight, how(piece.note, piece.cited))
}

fn weight(words: [Option<&str>; 3], weight: &Estimate<Mass>, how: String) -> CardRow {
    let words: Vec<&str> = words.into_iter().flatten().collect();
    let range = show::mass_range(weight).map_or(String::new(), |range| format!(" ({range})"));
    row(
        show::sentence(&words.join(", ")),
        format!("{}{range}", show::mass(weight.mean)),
        how,
    )
}

fn diet(ingredient: &Ingredient) -> Vec<CardRow> {
    let allergens = Law::ALL.map(|law| {
        let named: Vec<&str> = ingredient
            .allergens
            .iter()
            .filter_map(|allergen| allergen.named_by(law))
            .collect();
        let named = if named.is_empty() {
            "none known".to_owned()
        } else {
            named.join(", ")
        };
        let how = format!(
            "A help and never a guarantee: read the packet. {}",
            law.source().map_or("", |source| source.citation)
        );
        row(format!("Allergens that {} names", law.words()), named, how)
    });
    let plant_based = match ingredient.plant_based {
        Some(true) => "yes",
        Some(false) => "no",
        None => "the packet decides",
    };
    let plant_based = row(
        "From plants alone",
        plant_based,
        "As it is usually sold: read the packet",
    );
    allergens.into_iter().chain([plant_based]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::ingredient::by_key;

    #[track_caller]
    fn of(key: &str) -> Card {
        card(by_key(key).unwrap_or_else(|| panic!("no row {key}")))
    }

    /// The value and the way of a row.
    #[track_caller]
    fn found<'a>(card: &'a Card, heading: &str, label: &str) -> (&'a str, &'a str) {
        let rows = card
            .groups
            .iter()
            .filter(|group| group.heading == heading)
            .flat_map(|group| &group.rows);
        let row = rows
            .clone()
            .find(|row| row.label == label)
            .unwrap_or_else(|| panic!("no {label} among {:?}", rows.collect::<Vec<_>>()));
        (&row.value, &row.how)
    }

    /// Its rows in `foods.csv`, `acidity.csv`, `fillings.csv` and `pieces.csv`.
    #[test]
    fn lemon_juice() {
        let card = of("lemon_juice");
        assert_eq!((card.name, card.group), ("lemon juice, fresh", "Juices"));
        let holds = |label| found(&card, "What 100 g hold", label);
        assert_eq!(holds("Water").0, "92.3 g");
        assert_eq!(holds("Starch").0, "0.0 g");
        assert_eq!(holds("Sodium").0, "1 mg");
        assert!(
            holds("Water")
                .1
                .ends_with("release 28, September 2015 (published)")
        );
        let acid = |label| found(&card, "Acid and buffer", label);
        assert_eq!(acid("pH").0, "2.4 (2.0 to 2.6)");
        assert!(acid("pH").1.ends_with("(from memory)"));
        assert_eq!(acid("Citric acid, in 100 g").0, "4.75 g");
        assert!(acid("Citric acid, in 100 g").1.starts_with("Penniston"));
        assert_eq!(
            acid("Titratable acidity as citric acid, in 100 g").0,
            "4.5 to 6 g"
        );
        assert_eq!(
            acid("Base taken up besides, for 1 kg and 1 pH, below pH 6").0,
            "6 meq"
        );
        assert_eq!(acid("Differs from lot to lot by about").0, "12 %");
        let cup = found(&card, "A level US measure weighs", "Cup");
        assert_eq!(cup.0, "244 g (239 to 249 g)");
        assert!(cup.1.starts_with("Spread assumed. US Department"));
        let piece = found(&card, "One piece weighs", "Piece");
        assert_eq!(piece.0, "48 g (25 to 70 g)");
        assert_eq!(
            found(&card, "Allergens and diet", "From plants alone").0,
            "yes"
        );
        assert!(
            !card
                .groups
                .iter()
                .any(|group| group.heading.starts_with("Leavening"))
        );
    }

    #[test]
    fn an_empty_cell_is_not_known() {
        let card = of("agar");
        let starch = found(&card, "What 100 g hold", "Starch");
        assert_eq!(starch, ("not known", ""));
    }

    #[test]
    fn plain_flour() {
        let card = of("plain_flour");
        let holds = |label| found(&card, "What 100 g hold", label);
        assert_eq!(holds("Starch").0, "73.3 g");
        assert!(holds("Starch").1.starts_with("By difference: carbohydrate"));
        assert_eq!(holds("Fibre").0, "2.7 g");
        assert_eq!(holds("Alcohol").0, "0.0 g");
        let cup = |label| found(&card, "A level US measure weighs", label).0;
        assert_eq!(cup("Cup, dipped and levelled"), "142 g (132 to 160 g)");
        assert_eq!(cup("Cup, packed"), "160 g (150 to 175 g)");
        let plain = found(&card, "A level US measure weighs", "Cup");
        assert!(
            plain
                .1
                .contains("the span of published figures is 99 to 160")
        );
        let allergens = found(&card, "Allergens and diet", "Allergens that US law names");
        assert_eq!(allergens.0, "wheat");
        let other = "The same by other sources, not in use";
        let labels = card
            .groups
            .iter()
            .find(|group| group.heading == other)
            .map(|group| {
                group
                    .rows
                    .iter()
                    .any(|row| row.value == "120 g (120 to 124 g)")
            });
        assert_eq!(labels, Some(true));
        let everywhere = &card.names[0];
        assert_eq!(everywhere.region, None);
        assert!(everywhere.names.contains(&"plain flour"));
        let group = &card.groups[0];
        assert!(
            group
                .common_how()
                .is_some_and(|how| how.starts_with("US Department"))
        );
    }

    /// SR28 19296 and 19304.
    #[test]
    fn sugars_by_kind() {
        let heading = "Sugars by kind, in 100 g";
        let honey = of("honey");
        let fructose = found(&honey, heading, "Fructose");
        assert_eq!(fructose.0, "40.9 g");
        assert!(fructose.1.starts_with("US Department of Agriculture"));
        assert_eq!(
            found(&of("molasses"), heading, "Of unknown kind").0,
            "20.6 g"
        );
        let has = |key| of(key).groups.iter().any(|group| group.heading == heading);
        assert!(!has("jam") && !has("salt"));
    }

    #[test]
    fn baking_powder() {
        let card = of("baking_powder");
        let soda = |label| found(&card, "Leavening, in 100 g", label);
        assert_eq!(soda("Baking soda (sodium bicarbonate)").0, "30.0 g");
        assert_eq!(soda("Acid in it").0, "whatever the packet names");
        assert_eq!(
            soda("Baking soda that its acid uses up").0,
            "30.0 g (28.0 to 31.5 g)"
        );
        assert!(soda("Acid in it").1.ends_with("Common practice, no source"));
        assert_eq!(found(&card, "Acid and buffer", "Acid and buffer").0, "none");
        assert_eq!(found(&card, "What 100 g hold", "Sodium").0, "10,600 mg");
        let packet = found(&card, "One piece weighs", "Packet").0;
        assert_eq!(packet, "16 g (15 to 17 g)");
    }

    /// Their rows in `leavening.csv` and `leavening_acids.csv`.
    #[test]
    fn the_acids_of_a_powder() {
        let card = of("baking_powder_aluminium");
        assert_eq!(
            found(&card, "Leavening, in 100 g", "Acid in it").0,
            "sodium aluminium sulphate 22.8 %, monocalcium phosphate 8.9 %"
        );
        let sulphate = |label| found(&card, "Sodium aluminium sulphate", label);
        assert_eq!(sulphate("In 100 g of the ingredient").0, "22.8 g");
        let value = sulphate("Neutralising value: baking soda that 100 g of the acid use up");
        assert_eq!(value.0, "104 g (100 to 104 g)");
        assert!(value.1.starts_with("Trade lists"));
        assert_eq!(sulphate("Gas while the batter is mixed").0, "0 %");
        assert_eq!(sulphate("Gas in the oven").0, "100 %");
        assert!(sulphate("Gas in the oven").1.ends_with("from memory)"));
        assert_eq!(sulphate("Sets to work at").0, "40 to 60 °C");
        assert_eq!(sulphate("Sodium in 1 g of the acid").0, "95 mg");
        assert_eq!(sulphate("Aluminium in 1 g of the acid").0, "111 mg");
        assert_eq!(
            sulphate("Taste that it leaves").0,
            "bitter, astringent at high use"
        );
        let phosphate = |label| found(&card, "Monocalcium phosphate", label).0;
        assert_eq!(phosphate("In 100 g of the ingredient"), "8.9 g");
        assert_eq!(phosphate("Gas while the batter is mixed"), "60 %");
        assert_eq!(phosphate("Sets to work at"), "5 to 30 °C");

        let undecided = of("baking_powder");
        let share = |heading| found(&undecided, heading, "In 100 g of the ingredient").0;
        assert_eq!(share("Reckoned as monocalcium phosphate"), "20.0 g");
        assert_eq!(share("Reckoned as sodium aluminium sulphate"), "13.5 g");

        let tartar = of("cream_of_tartar");
        assert_eq!(
            found(&tartar, "Leavening, in 100 g", "Acid in it").0,
            "cream of tartar"
        );
        assert_eq!(
            found(&tartar, "Cream of tartar", "Potassium in 1 g of the acid").0,
            "208 mg"
        );
    }

    #[test]
    fn every_card_has_a_way_for_every_figure() {
        for ingredient in all() {
            for group in card(ingredient).groups {
                for row in group.rows {
                    assert!(!row.value.is_empty(), "{} {row:?}", ingredient.key);
                    assert!(
                        row.value == NOT_KNOWN || !row.how.is_empty(),
                        "{} {row:?}",
                        ingredient.key
                    );
                }
            }
        }
    }
}

//! A baker's own ingredients: what was typed from a packet or read off a scale, and the ingredient that it makes.
//!
//! Goes in: text fields, kept as typed. Comes out: what is wrong with them, each at its field, and an [`Ingredient`]
//! like those of the tables. A field that cannot be read counts as unknown. Where the entry names an ingredient that
//! it is like, that one's figures stand in for what the entry does not give, and every such figure says so.
//! Which line of a recipe means an own ingredient is left to the reading.

mod both;
mod figure;
mod kept;
mod label;
mod record;
mod weighing;

pub use label::{Label, LabelStyle, SALT_IN_SODIUM};
pub use record::{Meaning, Merged, OwnRecord, OwnWord, is_own_key};
pub use weighing::Weighing;

use super::{Acidity, Allergen, FlourBasis, Group, Ingredient, Piece, PieceWeight, by_key};
use crate::baking::estimate::Estimate;
use crate::baking::quantity::{Mass, show};
use crate::baking::source::{self, Cited, Confidence, Source};
use figure::figure;
use label::Shares;
use serde::Serialize;
use std::sync::{Mutex, PoisonError};

/// A pH that a baker measures with strips or a small meter is good to this much either side (common practice, no
/// source).
const PH_SPREAD: f64 = 0.2;

/// How far one weighing alone is trusted, either side: the next cup or piece differs by about that (common practice,
/// no source; the tables' own "spread assumed").
const ONE_WEIGHING: f64 = 0.08;

/// More grams than any single piece or measure of a home bake.
const HEAVIEST: f64 = 5000.0;

/// An ingredient of the baker's own, as typed. Nothing typed is dropped: a field that cannot be read keeps its text.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OwnEntry {
    /// Its key, such as `own/1`: given when it is made, and never to another.
    pub key: String,
    /// Its name.
    pub name: String,
    /// Other names, apart by commas.
    pub also_called: String,
    /// The key of an ingredient of the tables whose figures stand in for those that are not given.
    pub like: Option<String>,
    /// The figures of the packet.
    pub label: Label,
    /// Level measures that were weighed.
    pub weighings: Vec<Weighing>,
    /// Grams of one piece.
    pub piece: String,
    /// Its pH as measured.
    pub ph: String,
    /// The allergens that the packet names.
    pub allergens: Vec<Allergen>,
    /// Whether it comes from plants alone; `None` where the packet decides.
    pub plant_based: Option<bool>,
    /// Whether it counts as flour.
    pub flour: bool,
    /// A word of the baker's own.
    pub note: String,
}

/// A field of the form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnField {
    /// The name.
    Name,
    /// The grams that the packet's figures are for.
    Per,
    /// Fat.
    Fat,
    /// Carbohydrate, with or without the fibre.
    Carbohydrate,
    /// Sugars.
    Sugars,
    /// Fibre.
    Fibre,
    /// Protein.
    Protein,
    /// Salt.
    Salt,
    /// Sodium.
    Sodium,
    /// Water.
    Water,
    /// Alcohol.
    Alcohol,
    /// A weighing, and which of its figures, both from 0.
    Weighing(usize, usize),
    /// One piece.
    Piece,
    /// pH.
    Ph,
}

/// A sentence that belongs at one field.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnTrouble {
    /// Where.
    pub field: OwnField,
    /// What was found, what was expected.
    pub sentence: String,
}

impl OwnEntry {
    /// What is wrong with the fields, in their order; nothing of that is used.
    pub fn troubles(&self) -> Vec<OwnTrouble> {
        let mut troubles = Vec::new();
        if self.name.trim().is_empty() {
            troubles.push(OwnTrouble {
                field: OwnField::Name,
                sentence: "It has no name yet: write what you call it in a recipe.".into(),
            });
        }
        self.label.read(&mut troubles);
        for (place, weighing) in self.weighings.iter().enumerate() {
            weighing.grams(place, &mut troubles);
        }
        let single = [
            (OwnField::Piece, self.piece_grams().err()),
            (OwnField::Ph, self.measured_ph().err()),
        ];
        troubles.extend(single.into_iter().filter_map(|(field, sentence)| {
            let sentence = sentence?;
            Some(OwnTrouble { field, sentence })
        }));
        troubles
    }

    /// What the packet's figures come to, in sentences.
    pub fn packet_sentences(&self) -> Vec<String> {
        let shares = self.label.read(&mut Vec::new());
        let mut said = shares.sentences();
        // Where what it is like fills the gaps, the water may be known after all.
        if let Some(like) = self.like()
            && let Some(last) = said.last_mut()
            && shares.composition().water.is_none()
            && let Some(water) = shares.composition_like(&like.composition).0.water
        {
            *last = format!(
                "Water: {} in 100 g, with the help of {}.",
                show::of_100_grams(water.to_percent()),
                like.name
            );
        }
        said
    }

    /// The text of a field; `None` for a weighing that is not there.
    pub fn field(&mut self, field: OwnField) -> Option<&mut String> {
        Some(match field {
            OwnField::Name => &mut self.name,
            OwnField::Per => &mut self.label.per,
            OwnField::Fat => &mut self.label.fat,
            OwnField::Carbohydrate => &mut self.label.carbohydrate,
            OwnField::Sugars => &mut self.label.sugars,
            OwnField::Fibre => &mut self.label.fibre,
            OwnField::Protein => &mut self.label.protein,
            OwnField::Salt => &mut self.label.salt,
            OwnField::Sodium => &mut self.label.sodium,
            OwnField::Water => &mut self.label.water,
            OwnField::Alcohol => &mut self.label.alcohol,
            OwnField::Weighing(place, at) => self.weighings.get_mut(place)?.figures.get_mut(at)?,
            OwnField::Piece => &mut self.piece,
            OwnField::Ph => &mut self.ph,
        })
    }

    /// Its names: its own first, then the others, none of them empty.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        std::iter::once(self.name.as_str())
            .chain(self.also_called.split(','))
            .map(str::trim)
            .filter(|name| !name.is_empty())
    }

    /// The name shown: its own, or until it has one, that it is the baker's.
    pub fn shown_name(&self) -> String {
        match self.names().next() {
            Some(name) => name.to_owned(),
            None => format!("ingredient of your own, {}", self.key),
        }
    }

    /// The ingredient that it is like, if it names one that the tables hold.
    pub fn like(&self) -> Option<&'static Ingredient> {
        by_key(self.like.as_deref()?)
    }

    /// The ingredient that it makes. Equal entries give the same one.
    ///
    /// Ingredients are `&'static` all through the flow, so what an entry makes is kept for good. That is bounded by the
    /// baker's own edits while the page is open: about two kilobytes for each state of an entry that is asked for.
    pub fn ingredient(&self) -> &'static Ingredient {
        static MADE: Mutex<Vec<(OwnEntry, &'static Ingredient)>> = Mutex::new(Vec::new());
        // A panic elsewhere leaves the list whole: it only grows, by finished pairs.
        let mut made = MADE.lock().unwrap_or_else(PoisonError::into_inner);
        // The last state of an entry is the one asked for most.
        if let Some((_, ingredient)) = made.iter().rev().find(|(entry, _)| entry == self) {
            return ingredient;
        }
        let ingredient: &'static Ingredient = Box::leak(Box::new(self.make()));
        made.push((self.clone(), ingredient));
        ingredient
    }

    fn make(&self) -> Ingredient {
        let like = self.like();
        let (composition, cited) = self.composition();
        let mut fillings = self.fillings();
        let mut pieces = self.pieces();
        if let Some(like) = like {
            if fillings.is_empty() {
                fillings.clone_from(&like.fillings);
                for row in &mut fillings {
                    row.cited = stands_in(row.cited, like);
                }
            }
            if pieces.is_empty() {
                pieces.clone_from(&like.pieces);
                for row in &mut pieces {
                    row.cited = stands_in(row.cited, like);
                }
            }
        }
        Ingredient {
            key: kept(self.key.clone()),
            name: kept(self.shown_name()),
            group: match like {
                Some(like) => like.group,
                None if self.flour => Group::Flour,
                None => Group::Own,
            },
            flour_basis: if self.flour {
                FlourBasis::Always
            } else {
                FlourBasis::Never
            },
            sugars: like.and_then(|like| sugars_as_of(&composition, like)),
            composition,
            cited,
            acidity: self.acidity(),
            leavening: like.and_then(|like| like.leavening),
            fillings,
            pieces,
            others: Vec::new(),
            allergens: self.allergens.clone(),
            plant_based: self.plant_based,
            note: kept(self.note.trim().to_owned()),
        }
    }

    /// What 100 g of it hold: by the packet, then by what it is like, water last and by difference.
    pub fn composition(&self) -> (super::Composition, Cited) {
        let shares = self.label.read(&mut Vec::new());
        let Some(like) = self.like() else {
            return (shares.composition(), own(String::new()));
        };
        if shares == Shares::default() {
            return (like.composition.clone(), stands_in(like.cited, like));
        }
        let (composition, filled) = shares.composition_like(&like.composition);
        if filled.is_empty() {
            return (composition, own(String::new()));
        }
        let said = format!(
            "; {} as for {}: {}, {}",
            filled.join(", "),
            like.name,
            like.cited.source.citation,
            like.cited.confidence.words()
        );
        (composition, own(said))
    }

    /// The acid side of what it is like, at its own pH where that was measured. A pH alone does not tell how much base
    /// something takes up, so without anything that it is like the acidity stays unknown.
    fn acidity(&self) -> Option<&'static Acidity> {
        let like = self.like()?;
        let theirs = like.acidity?;
        let mut acidity = Acidity {
            key: kept(self.key.clone()),
            ph_cited: stands_in(theirs.ph_cited, like),
            acids_cited: theirs.acids_cited.map(|cited| stands_in(cited, like)),
            buffer_cited: stands_in(theirs.buffer_cited, like),
            ..*theirs
        };
        if let Ok(Some(ph)) = self.measured_ph() {
            acidity.ph = ((ph - PH_SPREAD).max(0.0), ph, (ph + PH_SPREAD).min(14.0));
            acidity.ph_cited = own(String::new());
        }
        Some(Box::leak(Box::new(acidity)))
    }

    fn fillings(&self) -> Vec<super::FillingWeight> {
        self.weighings
            .iter()
            .filter_map(Weighing::filling)
            .collect()
    }

    fn pieces(&self) -> Vec<PieceWeight> {
        let Ok(Some(grams)) = self.piece_grams() else {
            return Vec::new();
        };
        vec![PieceWeight {
            piece: Piece::Each,
            size: None,
            region: None,
            weight: Estimate::apart(Mass::grams(grams), &[(ONE_WEIGHING, ONE_WEIGHING)]),
            cited: own(String::new()),
            note: "weighed once, so 8 % either side is assumed",
        }]
    }

    fn piece_grams(&self) -> Result<Option<f64>, String> {
        match figure(&self.piece)? {
            Some(grams) if grams == 0.0 || grams > HEAVIEST => Err(format!(
                "\"{}\" is not what one piece weighs: write its grams, such as 55.",
                self.piece.trim()
            )),
            grams => Ok(grams),
        }
    }

    fn measured_ph(&self) -> Result<Option<f64>, String> {
        match figure(&self.ph)? {
            Some(ph) if ph > 14.0 => Err(format!(
                "\"{}\" is beyond the scale: a pH lies from 0 to 14.",
                self.ph.trim()
            )),
            ph => Ok(ph),
        }
    }
}

/// The baker as a source, with what else there is to say.
fn own(said: String) -> Cited {
    let known = source::by_key("own").unwrap_or(&source::all()[0]);
    let source = if said.is_empty() {
        known
    } else {
        Box::leak(Box::new(Source {
            key: known.key,
            citation: kept(format!("{}{said}", known.citation)),
        }))
    };
    Cited {
        source,
        confidence: Confidence::Own,
    }
}

/// The kinds of sugar of what it is like, where it holds as much of them.
fn sugars_as_of(composition: &super::Composition, like: &Ingredient) -> Option<super::Sugars> {
    let sugars = like.sugars.as_ref()?;
    (composition.sugars == like.composition.sugars).then(|| super::Sugars {
        cited: stands_in(sugars.cited, like),
        ..sugars.clone()
    })
}

/// A source of the tables, for a figure that stands in from an ingredient that another is like.
fn stands_in(cited: Cited, like: &Ingredient) -> Cited {
    Cited {
        source: Box::leak(Box::new(Source {
            key: cited.source.key,
            citation: kept(format!("As for {}: {}", like.name, cited.source.citation)),
        })),
        ..cited
    }
}

/// Text that is kept for good, as [`OwnEntry::ingredient`] says.
fn kept(text: String) -> &'static str {
    if text.is_empty() {
        ""
    } else {
        Box::leak(text.into_boxed_str())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::ingredient::{Region, SpoonOrCup};
    use crate::baking::quantity::Share;

    /// A packet as read by a list of fields.
    fn entry(fields: &[(OwnField, &str)]) -> OwnEntry {
        let mut entry = OwnEntry {
            key: "own/1".into(),
            name: "hazel block".into(),
            ..OwnEntry::default()
        };
        for (field, text) in fields {
            (*text).clone_into(entry.field(*field).expect("a field that is there"));
        }
        entry
    }

    fn weighed(region: Region, figures: &[&str]) -> Weighing {
        Weighing {
            region,
            figures: figures.iter().map(|&text| text.into()).collect(),
            ..Weighing::default()
        }
    }

    #[track_caller]
    fn assert_percent(share: Option<Share>, wanted: f64) {
        let share = share.map_or(f64::NAN, Share::to_percent);
        assert!((share - wanted).abs() < 0.001, "{share} for {wanted}");
    }

    #[track_caller]
    fn assert_range(estimate: &Estimate<Mass>, wanted: [f64; 3]) {
        let found = [estimate.low, estimate.mean, estimate.high].map(Mass::to_grams);
        for (found, wanted) in found.iter().zip(wanted) {
            assert!((found - wanted).abs() < 0.01, "{found} for {wanted}");
        }
    }

    #[track_caller]
    fn assert_trouble(entry: &OwnEntry, field: OwnField, words: &str) {
        let troubles = entry.troubles();
        assert!(
            troubles
                .iter()
                .any(|trouble| trouble.field == field && trouble.sentence.contains(words)),
            "{troubles:?}"
        );
    }

    /// 12 + (60 + 5) + 8 + 1 g leave 14 g of water; 1 g of salt is 400 mg of sodium.
    #[test]
    fn a_label_with_fibre_beside_the_carbohydrate() {
        let entry = entry(&[
            (OwnField::Fat, "12"),
            (OwnField::Carbohydrate, "60"),
            (OwnField::Sugars, "30"),
            (OwnField::Fibre, "5"),
            (OwnField::Protein, "8"),
            (OwnField::Salt, "1"),
        ]);
        assert_eq!(entry.troubles(), []);
        assert_eq!(
            entry.packet_sentences(),
            [
                "Carbohydrate with its fibre: 65.0 g in 100 g.",
                "Sodium: 400 mg in 100 g.",
                "Water by difference: 14.0 g in 100 g."
            ]
        );
        let held = &entry.ingredient().composition;
        assert_percent(held.carbohydrate, 65.0);
        assert_percent(held.sodium, 0.4);
        assert_percent(held.water, 14.0);
        assert_eq!(held.derived, ["water"]);
        assert_eq!((held.starch, held.alcohol), (None, None));
    }

    /// A serving of 30 g: a figure of it times 100/30. 10 + 66.667 + 10 + 0.5 x 2.5 leave 12.083 g.
    #[test]
    fn a_label_with_fibre_within_the_carbohydrate() {
        let mut entry = entry(&[
            (OwnField::Per, "30 g"),
            (OwnField::Fat, "3"),
            (OwnField::Carbohydrate, "20"),
            (OwnField::Sugars, "6"),
            (OwnField::Fibre, "2"),
            (OwnField::Protein, "3"),
            (OwnField::Sodium, "150"),
        ]);
        entry.label.style = LabelStyle::FibreWithin;
        assert_eq!(entry.troubles(), []);
        let held = &entry.ingredient().composition;
        assert_percent(held.carbohydrate, 66.6667);
        assert_percent(held.fibre, 6.6667);
        assert_percent(held.sodium, 0.5);
        assert_percent(held.water, 12.0833);
    }

    #[test]
    fn what_a_label_cannot_mean_is_said_at_its_field_and_counts_as_unknown() {
        let bad = entry(&[
            (OwnField::Fat, "-3"),
            (OwnField::Carbohydrate, "20"),
            (OwnField::Sugars, "21"),
            (OwnField::Protein, "trace"),
            (OwnField::Water, "102"),
            (OwnField::Sodium, "42000"),
            (OwnField::Ph, "14.1"),
            (OwnField::Piece, "0"),
        ]);
        assert_trouble(&bad, OwnField::Fat, "less than nothing");
        assert_trouble(&bad, OwnField::Sugars, "More sugars than carbohydrate");
        assert_trouble(&bad, OwnField::Protein, "not a number");
        assert_trouble(&bad, OwnField::Water, "more than 100 g can hold");
        assert_trouble(&bad, OwnField::Sodium, "more than 100 g can hold");
        assert_trouble(&bad, OwnField::Ph, "from 0 to 14");
        assert_trouble(&bad, OwnField::Piece, "write its grams");
        let held = &bad.ingredient().composition;
        let known = [held.fat, held.sugars, held.protein, held.water, held.sodium];
        assert_eq!(known, [None; 5]);
        assert!(bad.ingredient().pieces.is_empty());

        let full = entry(&[(OwnField::Fat, "60"), (OwnField::Carbohydrate, "42")]);
        assert_trouble(&full, OwnField::Per, "make 102 g in 100 g");
        assert_eq!(full.ingredient().composition.fat, None);
        // Rounding may carry a sum a little over.
        let rounded = entry(&[(OwnField::Fat, "60"), (OwnField::Carbohydrate, "41")]);
        assert_eq!(rounded.troubles(), []);
        let blank = entry(&[(OwnField::Per, ""), (OwnField::Fat, "60")]);
        assert_trouble(&blank, OwnField::Per, "how many grams");
        let both = entry(&[(OwnField::Salt, "1"), (OwnField::Sodium, "900")]);
        assert_trouble(&both, OwnField::Salt, "400 mg of sodium in 100 g, not 900");
    }

    /// Plain flour holds 2.7 g of fibre and 11.92 g of water by USDA SR28, its row in `foods.csv`.
    #[test]
    fn what_it_is_like_stands_in_and_is_named() {
        let mut flour = entry(&[
            (OwnField::Carbohydrate, "70"),
            (OwnField::Sugars, "1"),
            (OwnField::Protein, "12"),
        ]);
        flour.like = Some("plain_flour".into());
        let made = flour.ingredient();
        let held = &made.composition;
        assert_percent(held.fibre, 2.7);
        assert_percent(held.carbohydrate, 72.7);
        assert_percent(held.starch, 69.0);
        // 100 - 0.98 - 72.7 - 12 - 0.002 x 2.5
        assert_percent(held.water, 14.315);
        assert!(made.cited.source.citation.contains("fibre"));
        assert!(
            made.cited
                .source
                .citation
                .contains("all-purpose (plain) flour")
        );
        assert_eq!(made.cited.source.key, "own");
        assert_eq!(made.cited.confidence, Confidence::Own);
        assert_eq!(
            flour.packet_sentences(),
            ["Water: 14.3 g in 100 g, with the help of all-purpose (plain) flour."]
        );
        assert_eq!(made.fillings.len(), 5);
        assert!(
            made.fillings[0]
                .cited
                .source
                .citation
                .starts_with("As for all-purpose (plain) flour: US Department")
        );
        assert_eq!(made.group, Group::Flour);
    }

    #[test]
    fn a_measured_ph_is_used_with_what_it_is_like_and_alone_tells_too_little() {
        let mut juice = entry(&[(OwnField::Ph, "2,6")]);
        assert_eq!(juice.ingredient().acidity, None);
        juice.like = Some("lemon_juice".into());
        let acidity = juice.ingredient().acidity.expect("that of lemon juice");
        assert_eq!(acidity.acids.citric, 4.75);
        let (low, ph, high) = acidity.ph;
        assert!((low - 2.4).abs() < 1e-9 && ph == 2.6 && (high - 2.8).abs() < 1e-9);
        assert_eq!(acidity.ph_cited.confidence, Confidence::Own);
    }

    /// By hand, with t of 2.920 for two degrees of freedom: 120, 126 and 123 g have a mean of 123 and a deviation of 3,
    /// so the half is 2.920 x 3 x root of 4/3 = 10.12. Of 118 and 122: 6.314 x 2.8284 x root of 3/2 = 21.87.
    #[test]
    fn weighings_give_a_mean_and_the_range_of_one_more() {
        let three = weighed(Region::Us, &["120", "126 g", "123"]);
        assert_eq!(
            three.sentence(),
            "Mean 123 g, range 113 to 133 g: weighed 3 times; nine in ten more would fall into the range."
        );
        let (range, how) = three.result().expect("three figures");
        assert_range(&range, [112.88, 123.0, 133.12]);
        assert!(how.contains("3 times"), "{how}");
        let two = weighed(Region::Us, &["118", "", "122"]);
        assert_range(&two.result().expect("two").0, [98.13, 120.0, 141.87]);
        // Never closer than the scale can tell.
        let same = weighed(Region::Us, &["120", "120", "120"]);
        assert_range(&same.result().expect("three").0, [119.5, 120.0, 120.5]);
        let one = weighed(Region::Us, &["120", "much"]);
        let (range, how) = one.result().expect("one");
        assert_range(&range, [110.4, 120.0, 129.6]);
        assert!(how.contains("8 %"), "{how}");
        assert_eq!(weighed(Region::Us, &["", "0", "9999"]).result(), None);
    }

    /// A metric cup of 250 mL holds 250/236.588 of a US cup: 130 g make 123.03 g.
    #[test]
    fn weighings_are_kept_for_the_us_measure() {
        let mut flour = entry(&[]);
        flour.weighings = vec![weighed(Region::Au, &["130"; 3])];
        let row = flour.ingredient().fillings[0];
        assert_eq!(row.measure, SpoonOrCup::Cup);
        assert_range(&row.weight, [122.553, 123.026, 123.499]);
        assert!(
            row.note.contains("130 g of a cup of 250 mL"),
            "{}",
            row.note
        );
        let mut bad = entry(&[]);
        bad.weighings = vec![weighed(Region::Us, &["120", "1200", "x"])];
        assert_trouble(&bad, OwnField::Weighing(0, 1), "237 mL of a food weigh");
        assert_trouble(&bad, OwnField::Weighing(0, 2), "not a number");
    }

    #[test]
    fn equal_entries_make_the_same_ingredient() {
        let one = entry(&[(OwnField::Fat, "1")]);
        assert!(std::ptr::eq(one.ingredient(), one.clone().ingredient()));
        let other = entry(&[(OwnField::Fat, "2")]);
        assert!(!std::ptr::eq(one.ingredient(), other.ingredient()));
    }

    #[test]
    fn names_are_apart_by_commas() {
        let mut entry = entry(&[]);
        entry.also_called = " nut block,, block ".into();
        let names: Vec<_> = entry.names().collect();
        assert_eq!(names, ["hazel block", "nut block", "block"]);
        assert_trouble(&OwnEntry::default(), OwnField::Name, "no name yet");
    }
}

//! What the baker does with pans and with how much is baked.

use super::Bench;
use crate::baking::pan::{AmountEntry, HowMuch, PanEntry};
use crate::baking::quantity::show;
use leptos::prelude::*;

/// Which pan is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PanPlace {
    /// The recipe's own.
    Own,
    /// One on the shelf, from 0.
    Shelf(usize),
}

impl PanPlace {
    /// What it is called; a lone one on the shelf has no number.
    pub fn words(self) -> String {
        match self {
            Self::Own => "The recipe's pan".to_owned(),
            Self::Shelf(0) => "The pan on the shelf".to_owned(),
            Self::Shelf(place) => format!("Pan {} on the shelf", place + 1),
        }
    }
}

impl Bench {
    /// Changes a pan, starting from the fields as they are shown.
    pub fn change_pan(self, place: PanPlace, change: impl FnOnce(&mut PanEntry)) {
        let shown = self.sheet(|sheet| sheet.pans.own.entry.clone());
        self.change(show::amid(&place.words()), true, |inputs| {
            let choices = &mut inputs.choices;
            let entry = match place {
                PanPlace::Own => Some(choices.own_pan.get_or_insert(shown)),
                PanPlace::Shelf(place) => choices.shelf.get_mut(place),
            };
            if let Some(entry) = entry {
                change(entry);
            }
        });
    }

    /// Puts another pan on the shelf: the recipe's own, to be changed from there, in this baker's unit.
    pub fn add_pan(self) {
        let unit = self.settings_now().lengths;
        let entry = self.sheet(|sheet| sheet.pans.own.entry.in_unit(unit));
        self.change("another pan on the shelf".into(), false, |inputs| {
            inputs.choices.shelf.push(entry);
        });
        // Its own button takes it back.
        self.done.set(None);
    }

    /// Takes a pan off the shelf.
    pub fn remove_pan(self, place: usize) {
        self.change("a pan off the shelf".into(), false, |inputs| {
            let shelf = &mut inputs.choices.shelf;
            if place < shelf.len() {
                shelf.remove(place);
            }
        });
    }

    /// Tells how much is baked in another way. A figure that the new way wants starts from what is baked now.
    pub fn choose_amount(self, how: HowMuch) {
        let (factor, eggs) = self.sheet(|sheet| {
            let offers = sheet.pans.eggs.iter().flat_map(|eggs| &eggs.offers);
            (sheet.pans.factor, offers.map(|offer| offer.count).max())
        });
        self.change("how much is baked".into(), false, |inputs| {
            let text = match how {
                HowMuch::Times => factor.map_or("1".to_owned(), show::plain),
                HowMuch::Eggs => eggs.map_or_else(String::new, |count| count.to_string()),
                _ => inputs.choices.amount.text.clone(),
            };
            inputs.choices.amount = AmountEntry { how, text };
        });
        self.done.set(None);
    }
}

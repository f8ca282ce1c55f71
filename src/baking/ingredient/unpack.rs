//! The packed tables to ingredients, once, the first time that one is asked for.
//!
//! Cells are read in the order in which `build.rs` writes them.

use super::*;
use crate::baking::estimate::Estimate;
use crate::baking::packed::{self, Cells};
use crate::baking::quantity::{Mass, Share, Temperature};
use crate::baking::source::{self, Confidence};
use crate::baking::text::decimal;
use std::sync::OnceLock;

include!(concat!(env!("OUT_DIR"), "/lists.rs"));

/// All ingredients and their names.
pub struct Tables {
    /// In the order of their keys.
    pub ingredients: Vec<Ingredient>,
    /// In the order of their ingredients.
    pub aliases: Vec<Alias>,
}

/// The tables.
pub fn tables() -> &'static Tables {
    static TABLES: OnceLock<Tables> = OnceLock::new();
    TABLES.get_or_init(|| {
        let mut aliases = Vec::new();
        let ingredients = packed::rows(4)
            .enumerate()
            .map(|(index, mut cells)| ingredient(index, &mut cells, &mut aliases))
            .collect();
        Tables {
            ingredients,
            aliases,
        }
    })
}

fn acidities() -> &'static [Acidity] {
    static ACIDITIES: OnceLock<Vec<Acidity>> = OnceLock::new();
    ACIDITIES.get_or_init(|| packed::rows(1).map(acidity).collect())
}

/// The leavening acids, in the order of their keys.
pub fn leavening_acids() -> &'static [LeaveningAcid] {
    static ACIDS: OnceLock<Vec<LeaveningAcid>> = OnceLock::new();
    ACIDS.get_or_init(|| packed::rows(2).map(leavening_acid).collect())
}

fn leavenings() -> &'static [Leavening] {
    static LEAVENINGS: OnceLock<Vec<Leavening>> = OnceLock::new();
    LEAVENINGS.get_or_init(|| packed::rows(3).map(leavening).collect())
}

fn ingredient(index: usize, cells: &mut Cells, aliases: &mut Vec<Alias>) -> Ingredient {
    let ingredient = Ingredient {
        key: cells.text(),
        name: cells.text(),
        group: cells.choice(GROUPS).unwrap_or(GROUPS[0]),
        flour_basis: cells.choice(FLOUR_BASES).unwrap_or(FlourBasis::Never),
        composition: composition(cells),
        cited: cited(cells.text()),
        acidity: cells.place().and_then(|place| acidities().get(place)),
        leavening: cells.place().and_then(|place| leavenings().get(place)),
        allergens: cells.choices(ALLERGENS),
        plant_based: cells.place().map(|yes| yes == 1),
        note: cells.text(),
        fillings: Vec::new(),
        pieces: Vec::new(),
        others: Vec::new(),
        sugars: None,
    };
    aliases.extend(
        cells
            .text()
            .split('|')
            .filter(|name| !name.is_empty())
            .map(|name| {
                let is_second = name.ends_with('@');
                let (name, region) = name.split_once('@').unwrap_or((name, ""));
                let region = region
                    .parse()
                    .ok()
                    .and_then(|place: usize| REGIONS.get(place).copied());
                Alias {
                    name,
                    index,
                    region,
                    is_second,
                }
            }),
    );
    Ingredient {
        fillings: cells.list().map(filling).collect(),
        pieces: cells.list().map(piece).collect(),
        others: cells.list().map(filling).collect(),
        sugars: cells.list().next().map(sugars),
        ..ingredient
    }
}

/// Shares stand in per cent, sodium in milligrams for 100 g.
fn composition(cells: &mut Cells) -> Composition {
    let [
        water,
        protein,
        fat,
        carbohydrate,
        sugars,
        starch,
        fibre,
        alcohol,
    ] = std::array::from_fn(|_| cells.number().map(Share::percent));
    Composition {
        water,
        protein,
        fat,
        carbohydrate,
        sugars,
        starch,
        fibre,
        alcohol,
        sodium: cells
            .number()
            .map(|milligrams| Share::percent(milligrams / 1000.0)),
        derived: cells.choices(PARTS),
    }
}

fn acidity(mut cells: Cells) -> Acidity {
    let key = cells.text();
    let [low, ph, high] = cells.figures();
    let mut grams = cells
        .text()
        .split(';')
        .map(|cell| decimal(cell).unwrap_or(0.0));
    let mut next = || grams.next().unwrap_or(0.0);
    let acids = OrganicAcids {
        citric: next(),
        malic: next(),
        quinic: next(),
        tartaric: next(),
        lactic: next(),
        acetic: next(),
        oxalic: next(),
        succinic: next(),
        gluconic: next(),
        aconitic: next(),
        chlorogenic: next(),
        phosphoric: next(),
    };
    let [below_6, from_6_to_7_5, above_7_5] = cells.figures();
    let bicarbonate = cells.figure();
    let deviation = cells.figure() / 100.0;
    let titratable = cells.text().split_once(' ').map(|(acid, rest)| {
        let [low, high, place] = packed::figures(rest);
        Titratable {
            acid,
            low,
            high,
            source: source_at(place as usize),
        }
    });
    Acidity {
        key,
        ph: (low, ph, high),
        acids,
        buffer: Buffer {
            below_6,
            from_6_to_7_5,
            above_7_5,
        },
        bicarbonate,
        deviation,
        titratable,
        ph_cited: cited(cells.text()),
        acids_cited: Some(cells.text())
            .filter(|cell| !cell.is_empty())
            .map(cited),
        buffer_cited: cited(cells.text()),
        note: cells.text(),
    }
}

fn leavening_acid(mut cells: Cells) -> LeaveningAcid {
    let (key, name, molar_mass) = (cells.text(), cells.text(), cells.figure());
    let uptake = cells.choice(UPTAKES).unwrap_or(Uptake::Value);
    let [low, typical, high] = cells.figures();
    let [mixing, bench, oven] = cells.figures();
    let [from, to] = cells.figures().map(Temperature::celsius);
    let [sodium, potassium, aluminium] = cells.figures();
    LeaveningAcid {
        key,
        name,
        molar_mass,
        uptake,
        neutralising_value: (low, typical, high),
        gas: GasTiming {
            mixing,
            bench,
            oven,
        },
        active: (from, to),
        sodium,
        potassium,
        aluminium,
        taste: cells.text(),
        value_cited: cited(cells.text()),
        rate_cited: cited(cells.text()),
        note: cells.text(),
    }
}

fn leavening(mut cells: Cells) -> Leavening {
    let kind = cells.choice(BICARBONATES);
    let grams = cells.figure();
    let [low, typical, high] = cells.figures();
    Leavening {
        bicarbonate: kind.map(|kind| (kind, grams)),
        neutralised: (low, typical, high),
        acids: cells
            .list()
            .filter_map(|mut cells| {
                let acid = leavening_acids().get(cells.place()?)?;
                Some((acid, cells.figure()))
            })
            .collect(),
        said: cells.text(),
        cited: cited(cells.text()),
        note: cells.text(),
    }
}

fn filling(mut cells: Cells) -> FillingWeight {
    FillingWeight {
        measure: cells.choice(MEASURES).unwrap_or(SpoonOrCup::Cup),
        form: cells.choice(FORMS),
        filling: cells.choice(WAYS_OF_FILLING),
        weight: weight(&mut cells),
        cited: cited(cells.text()),
        note: cells.note(),
    }
}

fn piece(mut cells: Cells) -> PieceWeight {
    PieceWeight {
        piece: cells.choice(PIECE_KINDS).unwrap_or(Piece::Each),
        size: cells.choice(SIZES),
        region: cells.choice(REGIONS),
        weight: weight(&mut cells),
        cited: cited(cells.text()),
        note: cells.note(),
    }
}

/// Kinds and grams in turn.
fn sugars(mut cells: Cells) -> Sugars {
    let mut words = cells.text().split(' ');
    let mut parts = Vec::new();
    while let (Some(place), Some(grams)) = (words.next(), words.next().and_then(decimal)) {
        let kind = place.parse().ok();
        let kind = kind.and_then(|place: usize| SUGAR_KINDS.get(place).copied());
        parts.extend(kind.map(|kind| (kind, Share::percent(grams))));
    }
    Sugars {
        parts,
        cited: cited(cells.text()),
        note: cells.note(),
    }
}

/// One figure and no range is packed as one figure.
fn weight(cells: &mut Cells) -> Estimate<Mass> {
    let figures = cells.text();
    match decimal(figures) {
        Some(grams) => Estimate::exact(Mass::grams(grams)),
        None => {
            let [low, mean, high] = packed::figures(figures).map(Mass::grams);
            Estimate::between(low, mean, high)
        }
    }
}

/// A source's place and a confidence's, apart by a blank.
pub fn cited(cell: &str) -> Cited {
    let [place, confidence] = packed::figures(cell);
    let confidence = CONFIDENCES.get(confidence as usize).copied();
    Cited {
        source: source_at(place as usize),
        confidence: confidence.unwrap_or(Confidence::Memory),
    }
}

fn source_at(place: usize) -> &'static Source {
    let all = source::all();
    &all[place.min(all.len() - 1)]
}

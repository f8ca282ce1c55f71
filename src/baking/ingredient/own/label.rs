//! The figures of a packet: shares of 100 g, and what is wrong with them.

use super::figure::figure;
use super::{OwnField, OwnTrouble};
use crate::baking::ingredient::Composition;
use crate::baking::quantity::{Share, show};
use serde::{Deserialize, Serialize};

/// Grams of salt that a packet counts for one gram of sodium: Regulation (EU) 1169/2011, annex I.
pub const SALT_IN_SODIUM: f64 = 2.5;

/// The part of pure salt that is sodium, by molar masses 22.990 and 58.443, and a rounding.
const MOST_SODIUM: f64 = 0.4;

/// By so much rounded figures may sum to more than the whole; `build.rs` allows the tables as much.
const ROUNDING: f64 = 0.015;

/// How packets of a country count carbohydrate.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LabelStyle {
    /// Fibre stands beside the carbohydrate: Regulation (EU) 1169/2011, kept in the UK; the Food Standards Code of
    /// Australia and New Zealand.
    #[default]
    FibreBeside,
    /// Fibre is counted in the carbohydrate: 21 CFR 101.9 in the US; the Food and Drug Regulations of Canada.
    FibreWithin,
}

/// Figures as printed on a packet, as typed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Label {
    /// How it counts carbohydrate.
    pub style: LabelStyle,
    /// The grams that the figures are for.
    pub per: String,
    /// Fat, g.
    pub fat: String,
    /// Carbohydrate, g.
    pub carbohydrate: String,
    /// Sugars, g.
    pub sugars: String,
    /// Fibre, g.
    pub fibre: String,
    /// Protein, g.
    pub protein: String,
    /// Salt, g.
    pub salt: String,
    /// Sodium, mg.
    pub sodium: String,
    /// Water, g.
    pub water: String,
    /// Alcohol, g.
    pub alcohol: String,
}

impl Default for Label {
    fn default() -> Self {
        let [fat, carbohydrate, sugars, fibre, protein] = Default::default();
        let [salt, sodium, water, alcohol] = Default::default();
        Self {
            style: LabelStyle::default(),
            per: "100".into(),
            fat,
            carbohydrate,
            sugars,
            fibre,
            protein,
            salt,
            sodium,
            water,
            alcohol,
        }
    }
}

/// What a packet tells of 100 g, in grams; the carbohydrate as printed.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Shares {
    fibre_within: bool,
    fat: Option<f64>,
    carbohydrate: Option<f64>,
    sugars: Option<f64>,
    fibre: Option<f64>,
    protein: Option<f64>,
    sodium: Option<f64>,
    water: Option<f64>,
    alcohol: Option<f64>,
}

impl Label {
    /// The shares that the fields give; what is wrong with them is added to the troubles and counts as unknown.
    pub fn read(&self, troubles: &mut Vec<OwnTrouble>) -> Shares {
        let mut said = |field, sentence| troubles.push(OwnTrouble { field, sentence });
        let per = match figure(&self.per) {
            Ok(Some(per)) if per > 0.0 => Some(per),
            Ok(_) => {
                let sentence = "Write how many grams the figures are for; 100 on most packets.";
                said(OwnField::Per, sentence.into());
                None
            }
            Err(sentence) => {
                said(OwnField::Per, sentence);
                None
            }
        };
        // Each share of 100 g, with what it is in the unit of its field.
        let mut share = |field, typed: &str, in_grams: f64, most: f64| match figure(typed) {
            Ok(value) => {
                let value = value?;
                let per = per?;
                let share = value * in_grams / per;
                if share > most + ROUNDING {
                    said(
                        field,
                        format!(
                            "\"{}\" is more than {} g can hold: check it against the packet.",
                            typed.trim(),
                            show::plain(per)
                        ),
                    );
                    return None;
                }
                Some(share * 100.0)
            }
            Err(sentence) => {
                said(field, sentence);
                None
            }
        };
        let fat = share(OwnField::Fat, &self.fat, 1.0, 1.0);
        let carbohydrate = share(OwnField::Carbohydrate, &self.carbohydrate, 1.0, 1.0);
        let sugars = share(OwnField::Sugars, &self.sugars, 1.0, 1.0);
        let fibre = share(OwnField::Fibre, &self.fibre, 1.0, 1.0);
        let protein = share(OwnField::Protein, &self.protein, 1.0, 1.0);
        let salt = share(OwnField::Salt, &self.salt, 1.0, 1.0).map(|salt| salt / SALT_IN_SODIUM);
        let sodium = share(OwnField::Sodium, &self.sodium, 0.001, MOST_SODIUM);
        let water = share(OwnField::Water, &self.water, 1.0, 1.0);
        let alcohol = share(OwnField::Alcohol, &self.alcohol, 1.0, 1.0);
        let mut shares = Shares {
            fibre_within: self.style == LabelStyle::FibreWithin,
            fat,
            carbohydrate,
            sugars,
            fibre,
            protein,
            sodium: sodium.or(salt),
            water,
            alcohol,
        };
        if let (Some(from_salt), Some(sodium)) = (salt, sodium)
            // Both are rounded on the packet.
            && (from_salt - sodium).abs() > 0.1 * sodium + 0.04
        {
            said(
                OwnField::Salt,
                format!(
                    "So much salt is {} mg of sodium in 100 g, not {}. The sodium is used; leave one of the two empty.",
                    show::milliequivalents(from_salt * 1000.0),
                    show::milliequivalents(sodium * 1000.0),
                ),
            );
        }
        shares.hold_parts_within_carbohydrate(&mut said);
        let sum = shares.sum();
        if sum > 100.0 * (1.0 + ROUNDING) {
            said(
                OwnField::Per,
                format!(
                    "The figures make {} g in 100 g. None of them is used until they fit: check them, and the grams they \
                     are for.",
                    show::milliequivalents(sum)
                ),
            );
            return Shares::default();
        }
        if shares
            == (Shares {
                fibre_within: shares.fibre_within,
                ..Shares::default()
            })
        {
            return Shares::default();
        }
        shares
    }
}

impl Shares {
    /// Sugars and fibre that the carbohydrate cannot hold count as unknown.
    fn hold_parts_within_carbohydrate(&mut self, said: &mut impl FnMut(OwnField, String)) {
        let Some(whole) = self.carbohydrate else {
            return;
        };
        if self.sugars.is_some_and(|sugars| sugars > whole) {
            said(
                OwnField::Sugars,
                "More sugars than carbohydrate, of which they are a part: check both.".into(),
            );
            self.sugars = None;
        }
        let parts = self.fibre.unwrap_or(0.0) + self.sugars.unwrap_or(0.0);
        if self.fibre_within && self.fibre.is_some() && parts > whole * (1.0 + ROUNDING) {
            said(
                OwnField::Fibre,
                "More fibre than the carbohydrate leaves room for. If this packet counts fibre beside it, choose that \
                 above."
                    .into(),
            );
            self.fibre = None;
        }
    }

    /// All that counts towards the whole.
    fn sum(&self) -> f64 {
        let fibre = self.fibre.filter(|_| !self.fibre_within);
        let parts = [
            self.fat,
            self.carbohydrate,
            fibre,
            self.protein,
            self.sodium.map(|sodium| sodium * SALT_IN_SODIUM),
            self.water,
            self.alcohol,
        ];
        parts.into_iter().flatten().sum()
    }

    /// Carbohydrate with its fibre, as the tables count it; unknown where the fibre beside it is.
    fn whole_carbohydrate(&self) -> Option<f64> {
        let carbohydrate = self.carbohydrate?;
        if self.fibre_within {
            Some(carbohydrate)
        } else {
            Some(carbohydrate + self.fibre?)
        }
    }

    /// Water is what is left of 100 g when everything else is known. Alcohol that a packet does not name is none:
    /// the law has it named above 1.2 % (Regulation (EU) 1169/2011, annex X). Minerals besides salt count as water.
    fn water_by_difference(&self) -> Option<f64> {
        let rest = self.fat?
            + self.whole_carbohydrate()?
            + self.protein?
            + self.sodium? * SALT_IN_SODIUM
            + self.alcohol.unwrap_or(0.0);
        Some((100.0 - rest).max(0.0))
    }

    /// What the figures come to, in sentences; nothing where no figure is given.
    pub fn sentences(&self) -> Vec<String> {
        if *self == Self::default() {
            return Vec::new();
        }
        let mut said = Vec::new();
        if !self.fibre_within
            && let Some(whole) = self.whole_carbohydrate()
        {
            said.push(format!(
                "Carbohydrate with its fibre: {} in 100 g.",
                show::of_100_grams(whole)
            ));
        }
        if let Some(sodium) = self.sodium {
            said.push(format!("Sodium: {} in 100 g.", show::milligrams(sodium)));
        }
        let wanting = [
            ("fat", self.fat),
            ("carbohydrate", self.carbohydrate),
            (
                "fibre",
                if self.fibre_within {
                    Some(0.0)
                } else {
                    self.fibre
                },
            ),
            ("protein", self.protein),
            ("salt or sodium", self.sodium),
        ];
        let wanting: Vec<&str> = wanting
            .into_iter()
            .filter(|(_, share)| share.is_none())
            .map(|(name, _)| name)
            .collect();
        said.push(match (self.water, self.water_by_difference()) {
            (Some(water), _) => format!("Water: {} in 100 g.", show::of_100_grams(water)),
            (None, Some(water)) => format!(
                "Water by difference: {} in 100 g.",
                show::of_100_grams(water)
            ),
            (None, None) => format!(
                "Water is not known by difference without: {}.",
                wanting.join(", ")
            ),
        });
        said
    }

    /// By the packet alone.
    pub fn composition(&self) -> Composition {
        let mut derived = Vec::new();
        let water = self.water.or_else(|| {
            let water = self.water_by_difference();
            derived.extend(water.map(|_| "water"));
            water
        });
        Composition {
            water: water.map(Share::percent),
            protein: self.protein.map(Share::percent),
            fat: self.fat.map(Share::percent),
            carbohydrate: self.whole_carbohydrate().map(Share::percent),
            sugars: self.sugars.map(Share::percent),
            starch: None,
            fibre: self.fibre.map(Share::percent),
            alcohol: self.alcohol.map(Share::percent),
            sodium: self.sodium.map(Share::percent),
            derived,
        }
    }

    /// By the packet, then by what it is like; also the names of what stands in. What cannot fit into 100 g beside the
    /// packet's figures does not stand in.
    pub fn composition_like(&self, like: &Composition) -> (Composition, Vec<&'static str>) {
        let theirs = |share: Option<Share>| share.map(Share::to_percent);
        let mut full = *self;
        let mut filled = Vec::new();
        let mut fill = |mine: &mut Option<f64>, name, stand_in: Option<f64>| {
            if mine.is_none() && stand_in.is_some() {
                *mine = stand_in;
                filled.push(name);
            }
        };
        fill(&mut full.fat, "fat", theirs(like.fat));
        fill(&mut full.fibre, "fibre", theirs(like.fibre));
        let printed = match (theirs(like.carbohydrate), theirs(like.fibre)) {
            (Some(whole), _) if self.fibre_within => Some(whole),
            (Some(whole), Some(fibre)) => Some(whole - fibre),
            _ => None,
        };
        fill(&mut full.carbohydrate, "carbohydrate", printed);
        fill(&mut full.sugars, "sugars", theirs(like.sugars));
        fill(&mut full.protein, "protein", theirs(like.protein));
        fill(&mut full.sodium, "sodium", theirs(like.sodium));
        fill(&mut full.alcohol, "alcohol", theirs(like.alcohol));
        let mut unsaid = |_: OwnField, _: String| {};
        let (sugars, fibre) = (full.sugars, full.fibre);
        full.hold_parts_within_carbohydrate(&mut unsaid);
        if full.sum() > 100.0 * (1.0 + ROUNDING) {
            return (self.composition(), Vec::new());
        }
        if sugars != full.sugars {
            filled.retain(|name| *name != "sugars");
        }
        if fibre != full.fibre {
            filled.retain(|name| *name != "fibre");
        }
        let mut composition = full.composition();
        if composition.water.is_none() && full.sum() + theirs(like.water).unwrap_or(0.0) <= 100.0 {
            composition.water = like.water;
            filled.extend(like.water.map(|_| "water"));
        }
        // Where the other's carbohydrate is starch besides sugars and fibre, so is this one's.
        if like.starch.is_some_and(|starch| starch.to_percent() > 0.0)
            && let (Some(whole), Some(sugars), Some(fibre)) =
                (full.whole_carbohydrate(), full.sugars, full.fibre)
        {
            composition.starch = Some(Share::percent((whole - sugars - fibre).max(0.0)));
            composition.derived.push("starch");
        } else if like.starch == Some(Share::percent(0.0)) {
            composition.starch = like.starch;
            filled.push("starch");
        }
        (composition, filled)
    }
}

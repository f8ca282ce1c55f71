//! Where a batter sets: its starch swells into a gel and its egg coagulates, both the later the more sugar is in the
//! water.
//!
//! **Starch.** Each starch has its onset, peak and end of gelatinisation in plain water. Sugar raises all three in
//! proportion to sugar against water, by 23.2 C for a gram of sucrose to a gram of water with wheat starch: fitted to
//! figures from Spies and Hoseney 1982, Slade and Levine, Bean and Yamazaki 1978, all from memory, good to 4 C up to
//! 1.5 g/g. Other sugars raise less, fructose least (Bean, Yamazaki and Donelson 1978; Shelke, Faubion and Hoseney
//! 1990; Allan, Chamberlain and Mauer 2020). Shortening and emulsifier do not move the onset (Shelke and others 1990).
//!
//! **Egg.** From the first aggregation at 61 C to ovalbumin, whose own temperature rises with pH (80 C at pH 7.5); sugar
//! raises it by 0.18 C for each per cent of sugar in sugar and water (the rise published, Ma and others 1986; its size
//! from memory).
//!
//! **Both.** The batter is said to set where half of what can firm it is firm, a gram of heat-setting egg protein
//! counted as [`EGG_STRENGTH`] grams of starch (no source: a hot egg gel is several times as firm as a hot starch paste of
//! its strength; set so that egg sets a fudgy brownie and both a pound cake, as the trade knows them). More sugar never lowers that temperature and more water never raises it.
//!
//! Not counted: water that cocoa and fibre bind, sugar that does not dissolve, gluten.

use super::sugars::{SugarsByKind, free_water, sugars_by_kind, weighed_by};
use super::{Constituent, total};
use crate::baking::estimate::{Estimate, NORMAL_95};
use crate::baking::formula::Formula;
use crate::baking::ingredient::{Composition, Group, Ingredient, SugarKind};
use crate::baking::quantity::{Mass, Ph, Share, Temperature};
use crate::baking::text::holds;

/// What a gram of sucrose in a gram of water adds to the gelatinisation of wheat starch, C.
const RISE: f64 = 23.2;

/// The same for starches other than wheat and corn, as a part: those two rise most (Allan and others 2020); by how much
/// is from memory.
const OTHER_STARCH: f64 = 0.9;

/// What a gram of salt in a gram of water adds, C (that it rises is published, its size from memory).
const SALT_RISE: f64 = 60.0;

/// Salt that holds a gram of sodium, g: by their molar masses.
const SALT_FOR_SODIUM: f64 = 58.44 / 22.99;

/// What a per cent of sugar in sugar and water adds to the coagulation of egg, C.
const EGG_RISE: f64 = 0.18;

/// Where egg begins to coagulate in water, C: the first aggregation of albumen, 61 to 62 (published).
const EGG_STARTS: f64 = 61.0;

/// Grams of starch that a gram of heat-setting protein stands for: low, typical, high.
const EGG_STRENGTH: [f64; 3] = [2.5, 5.0, 10.0];

/// Half the 5 to 95 % range of the method, C: that of its fit.
const METHOD: f64 = 4.0;

/// Sucrose to water, g/g, up to which starch was measured: a syrup of 60 %.
const MEASURED_TO: f64 = 1.5;

/// A degree beyond that widens the range by so much of itself.
const BEYOND: f64 = 0.3;

/// Which starch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Starch {
    /// Wheat, spelt and their kin.
    Wheat,
    /// Maize, not waxy.
    Corn,
    /// Potato.
    Potato,
    /// Cassava.
    Tapioca,
    /// Rice.
    Rice,
    /// Oats.
    Oat,
    /// Sorghum.
    Sorghum,
    /// Rye.
    Rye,
    /// Barley.
    Barley,
    /// Others: pulses, buckwheat, millet, quinoa.
    Other,
}

impl Starch {
    /// Onset, peak and end of gelatinisation in plenty of water, C: handbooks of starch, from memory; the last row is a
    /// middle of what is not listed.
    pub fn gelatinises(self) -> [f64; 3] {
        match self {
            Self::Wheat => [58.0, 64.0, 70.0],
            Self::Corn => [63.0, 69.0, 74.0],
            Self::Potato => [58.0, 63.0, 68.0],
            Self::Tapioca => [62.0, 68.0, 74.0],
            Self::Rice => [62.0, 70.0, 78.0],
            Self::Oat => [53.0, 58.0, 64.0],
            Self::Sorghum => [68.0, 72.0, 78.0],
            Self::Rye => [51.0, 56.0, 61.0],
            Self::Barley => [52.0, 58.0, 63.0],
            Self::Other => [62.0, 68.0, 75.0],
        }
    }

    /// The same where sugar and salt would raise wheat starch by so many degrees.
    fn raised(self, by: f64) -> [f64; 3] {
        let by = match self {
            Self::Wheat | Self::Corn => by,
            _ => OTHER_STARCH * by,
        };
        self.gelatinises().map(|celsius| celsius + by)
    }
}

/// What firms a batter in the oven.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SetBy {
    /// Starch, by three quarters or more.
    Starch,
    /// Egg and its like, by three quarters or more.
    Egg,
    /// Both.
    Both,
}

impl SetBy {
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Starch => "starch",
            Self::Egg => "egg",
            Self::Both => "starch and egg together",
        }
    }
}

/// Where a batter sets.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// The temperature of the core at which half of what can firm it is firm.
    pub at: Estimate<Temperature>,
    /// What is firm by then.
    pub by: SetBy,
    /// Sugar against water, as sucrose: g/g.
    pub syrup: f64,
    /// Whether there is more sugar in the water than starch was measured with.
    pub is_beyond: bool,
    /// The lines whose sugars are of unknown kind.
    pub unknown_kind: Vec<usize>,
    /// The lines whose sugars, starch or protein are not known: left out, not zero.
    pub unknown: Vec<usize>,
}

/// The keys of the sources behind it.
pub const SETTING_SOURCES: [&str; 7] = [
    "allan_2020",
    "bean_1978",
    "heating_ovalbumin_2002",
    "ma_1986",
    "shelke_1990",
    "spies_hoseney_1982",
    "starch_handbooks",
];

/// How far a kind raises gelatinisation against as much sucrose: low, typical, high. Glucose and fructose: 75 and 71 C
/// against 82 at one to one (Bean, Yamazaki and Donelson 1978). The others from memory, by size (Spies and Hoseney 1982)
/// and with fructose the least of all sugars (Allan and others 2020).
fn against_sucrose(kind: SugarKind) -> [f64; 3] {
    match kind {
        SugarKind::Sucrose => [1.0, 1.0, 1.0],
        SugarKind::Glucose | SugarKind::Galactose => [0.6, 0.71, 0.8],
        SugarKind::Fructose => [0.45, 0.54, 0.65],
        SugarKind::Allulose => [0.4, 0.55, 0.7],
        SugarKind::Lactose => [0.8, 0.95, 1.1],
        SugarKind::Maltose => [0.9, 1.0, 1.15],
        SugarKind::Erythritol => [0.3, 0.55, 0.8],
        SugarKind::Xylitol => [0.5, 0.62, 0.75],
        SugarKind::Sorbitol => [0.6, 0.72, 0.85],
        SugarKind::Maltitol => [0.85, 1.0, 1.15],
    }
}

/// The same for sugars of unknown kind.
const UNKNOWN_KIND: [f64; 3] = [0.55, 0.8, 1.05];

/// The starch of a flour, starch or grain, and how much of it there is; `None` for what brings no raw starch, and the
/// share `None` where no source gives it.
pub fn starch(ingredient: &Ingredient) -> Option<(Starch, Option<Share>)> {
    /// Nuts and coconut have next to none; what was baked or puffed has none that is raw.
    const NONE_RAW: &[&str] = &[
        "almond",
        "hazelnut",
        "ground_",
        "coconut",
        "peanut",
        "lupin",
        "soya",
        "crumb",
        "cookie",
        "biscuit",
        "wafer",
        "shortbread",
        "ladyfinger",
        "pretzel",
        "puffed",
        "crisped",
        "flakes",
        "cereal",
        "granola",
        "popcorn",
        "pudding",
        "cooked",
    ];
    const KINDS: &[(&str, Starch)] = &[
        ("corn", Starch::Corn),
        ("custard_powder", Starch::Corn),
        ("masa", Starch::Corn),
        ("polenta", Starch::Corn),
        ("potato", Starch::Potato),
        ("tapioca", Starch::Tapioca),
        ("cassava", Starch::Tapioca),
        ("arrowroot", Starch::Tapioca),
        ("rice", Starch::Rice),
        // Rice flour is most of a usual blend.
        ("gluten_free", Starch::Rice),
        ("oat", Starch::Oat),
        ("sorghum", Starch::Sorghum),
        ("rye", Starch::Rye),
        ("barley", Starch::Barley),
        ("buckwheat", Starch::Other),
        ("millet", Starch::Other),
        ("teff", Starch::Other),
        ("quinoa", Starch::Other),
        ("amaranth", Starch::Other),
        ("chickpea", Starch::Other),
        ("chestnut", Starch::Other),
        ("tigernut", Starch::Other),
        ("banana", Starch::Other),
    ];
    let is_starchy = matches!(
        ingredient.group,
        Group::Flour | Group::Starch | Group::Grain
    );
    let holds_any = |word: &&str| holds(ingredient.key, word);
    if !is_starchy || NONE_RAW.iter().any(|word| holds_any(&word)) {
        return None;
    }
    let kind = KINDS.iter().find(|(word, _)| holds_any(word));
    let kind = kind.map_or(Starch::Wheat, |(_, kind)| *kind);
    Some((kind, starch_share(&ingredient.composition)))
}

/// The starch as the table has it, or the carbohydrate less what is known of sugars and fibre.
fn starch_share(composition: &Composition) -> Option<Share> {
    let zero = Share::default();
    composition.starch.or_else(|| {
        let sugars = composition.sugars.unwrap_or(zero);
        let fibre = composition.fibre.unwrap_or(zero);
        let rest = composition.carbohydrate? - sugars - fibre;
        Some(if rest < zero { zero } else { rest })
    })
}

/// Protein that sets in the oven's heat, grams for a gram of an ingredient; `None` where its protein is not known.
///
/// Egg counts in full, white and yolk. Of soya and pulses a third counts, since they set later and softer (common
/// practice, no source). Milk's casein and gluten do not count: they do not coagulate at a crumb's temperatures.
pub fn setting_protein_per_gram(ingredient: &Ingredient) -> Option<f64> {
    const PART: f64 = 0.3;
    const PULSES: &[&str] = &[
        "soy",
        "tofu",
        "chickpea",
        "lupin",
        "pea_protein",
        "vegan_liquid_egg",
    ];
    let part = if ingredient.group == Group::Egg && ingredient.plant_based == Some(false) {
        1.0
    } else if matches!(
        ingredient.group,
        Group::PlantDairy | Group::Flour | Group::Egg
    ) && PULSES.iter().any(|word| holds(ingredient.key, word))
    {
        PART
    } else {
        return Some(0.0);
    };
    Some(part * ingredient.composition.protein?.to_fraction())
}

/// Where ovalbumin coagulates in water, C: 76 at pH 5, 80 at 7.5 (published), 84 at 9 and above (from memory).
fn ovalbumin(ph: f64) -> f64 {
    if ph < 7.5 {
        80.0 - (7.5 - ph.max(5.0)) * 1.5
    } else {
        80.0 + (ph.min(9.0) - 7.5) * 8.0 / 3.0
    }
}

/// Where the batter sets, at its pH before the oven, taken as 7.5 where that is not known. `None` without water, or
/// where it has neither starch nor egg.
pub fn setting(formula: &Formula, ph: Option<Ph>) -> Option<Setting> {
    let water = free_water(formula);
    if water.mean <= Mass::ZERO {
        return None;
    }
    let sugars = sugars_by_kind(formula, |line| !line.in_pieces);
    let mut unknown = sugars.unknown.clone();
    let structure = Structure::of(formula, ph, &mut unknown)?;
    let sodium = total(formula, Constituent::Sodium).grams.mean;
    let as_sucrose = as_sucrose(&sugars);
    let syrup = as_sucrose.mean / water.mean;
    let dissolved = sugars.all();
    let bath = |syrup: f64| Bath {
        rise: RISE * syrup + SALT_RISE * SALT_FOR_SODIUM * (sodium / water.mean),
        egg_rise: EGG_RISE * 100.0 * (dissolved / (dissolved + water.mean)),
    };
    let sets = |syrup: f64, strength: f64| structure.sets(bath(syrup), strength);
    let [weak, typical, strong] = EGG_STRENGTH;
    let at = sets(syrup, typical);
    // What else it could be, each by itself: less or more sugar against water, or egg that is softer or firmer.
    let water_off = NORMAL_95 * water.relative_deviation() * syrup;
    let moved = [
        sets(as_sucrose.low / water.mean, typical),
        sets(as_sucrose.high / water.mean, typical),
        sets((syrup - water_off).max(0.0), typical),
        sets(syrup + water_off, typical),
        sets(syrup, weak),
        sets(syrup, strong),
    ]
    .map(|other| other - at);
    let beyond = BEYOND * RISE * (syrup - MEASURED_TO).max(0.0);
    let half = METHOD.hypot(beyond);
    let below = moved.iter().fold(half, |sum, by| sum.hypot(by.min(0.0)));
    let above = moved.iter().fold(half, |sum, by| sum.hypot(by.max(0.0)));
    unknown.sort_unstable();
    unknown.dedup();
    Some(Setting {
        at: Estimate::between(
            Temperature::celsius(at - below),
            Temperature::celsius(at),
            Temperature::celsius(at + above),
        ),
        by: structure.by(bath(syrup), typical, at),
        syrup,
        is_beyond: syrup > MEASURED_TO,
        unknown_kind: sugars.unknown_kind_lines,
        unknown,
    })
}

/// The sugars as the sucrose that would raise gelatinisation as far.
fn as_sucrose(sugars: &SugarsByKind) -> Estimate<Mass> {
    let kinds = sugars
        .kinds
        .iter()
        .map(|(kind, grams)| weighed_by(grams, against_sucrose(*kind)));
    let parts: Vec<_> = kinds
        .chain([weighed_by(&sugars.unknown_kind, UNKNOWN_KIND)])
        .collect();
    Estimate::sum(&parts)
}

/// What sugar and salt in the water do to both.
#[derive(Clone, Copy)]
struct Bath {
    /// What they add to the gelatinisation of wheat starch, C.
    rise: f64,
    /// What they add to the coagulation of egg, C.
    egg_rise: f64,
}

/// What can firm a batter.
struct Structure {
    /// Each starch with its grams.
    starches: Vec<(Starch, f64)>,
    /// Heat-setting protein, g.
    protein: f64,
    /// Where ovalbumin coagulates in water of this pH, C.
    ovalbumin: f64,
}

impl Structure {
    /// What a formula has of it, and in `unknown` the lines of which that is not known; `None` where it has neither.
    fn of(formula: &Formula, ph: Option<Ph>, unknown: &mut Vec<usize>) -> Option<Self> {
        let (mut starches, mut protein) = (Vec::new(), 0.0);
        for line in formula.batter() {
            let grams = line.grams.mean.to_grams();
            match starch(line.ingredient) {
                Some((kind, Some(share))) => starches.push((kind, grams * share.to_fraction())),
                Some((_, None)) => unknown.push(line.line),
                None => {}
            }
            match setting_protein_per_gram(line.ingredient) {
                Some(share) => protein += grams * share,
                None => unknown.push(line.line),
            }
        }
        let all: f64 = starches.iter().map(|part| part.1).sum::<f64>() + protein;
        (all > 0.0).then(|| Self {
            starches,
            protein,
            ovalbumin: ovalbumin(ph.map_or(7.5, Ph::value)),
        })
    }

    /// Starch and protein that are firm at a temperature, as grams of starch.
    fn firm(&self, bath: Bath, strength: f64, celsius: f64) -> [f64; 2] {
        let starch = self
            .starches
            .iter()
            .map(|(kind, grams)| grams * ramp(kind.raised(bath.rise), celsius))
            .sum();
        let (first, last) = (EGG_STARTS + bath.egg_rise, self.ovalbumin + bath.egg_rise);
        let egg = ramp([first, (first + last) / 2.0, last], celsius);
        [starch, self.protein * strength * egg]
    }

    /// Where half of it is firm, C. Firmness rises with temperature, so halving an interval cannot fail.
    fn sets(&self, bath: Bath, strength: f64) -> f64 {
        let hottest = 100.0 + bath.rise.max(bath.egg_rise);
        let firm = |celsius| self.firm(bath, strength, celsius).iter().sum::<f64>();
        let half = firm(hottest) / 2.0;
        let (mut low, mut high) = (EGG_STARTS - 20.0, hottest);
        for _ in 0..40 {
            let middle = (low + high) / 2.0;
            if firm(middle) < half {
                low = middle
            } else {
                high = middle
            }
        }
        (low + high) / 2.0
    }

    /// What is firm there.
    fn by(&self, bath: Bath, strength: f64, celsius: f64) -> SetBy {
        let [starch, egg] = self.firm(bath, strength, celsius);
        match starch / (starch + egg).max(1e-12) {
            part if part >= 0.75 => SetBy::Starch,
            part if part <= 0.25 => SetBy::Egg,
            _ => SetBy::Both,
        }
    }
}

/// How much of something is done at a temperature: none at its onset, half at its peak, all at its end.
fn ramp([onset, peak, end]: [f64; 3], celsius: f64) -> f64 {
    let part = if celsius < peak {
        0.5 * (celsius - onset) / (peak - onset)
    } else {
        0.5 + 0.5 * (celsius - peak) / (end - peak)
    };
    part.clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::balance::testing::formula;

    fn of(text: &str) -> Setting {
        setting(&formula(text), None).expect("starch or egg, and water")
    }

    fn celsius(text: &str) -> f64 {
        of(text).at.mean.to_celsius()
    }

    /// Peaks of wheat starch by the share of sucrose in sucrose and water: 64, 66, 69, 74, 80, 88, 97 C at 0 to 60 %
    /// (literature on calorimetry, from memory). The line through them is within 1.4 C of each; 99.8 g of 100 g of table
    /// sugar are sucrose.
    #[test]
    fn wheat_starch_in_syrups() {
        for (sugar, water, peak) in [
            (0.0, 100.0, 64.0),
            (10.0, 90.0, 66.0),
            (20.0, 80.0, 69.0),
            (30.0, 70.0, 74.0),
            (40.0, 60.0, 80.0),
            (50.0, 50.0, 88.0),
            (60.0, 40.0, 97.0),
        ] {
            let text = format!("1 g wheat starch\n{sugar} g sugar\n{water} g water");
            let text = text.replace("\n0 g sugar", "");
            let found = celsius(&text);
            assert!((found - peak).abs() < 2.0, "{sugar} %: {found}");
        }
    }

    /// At one to one, glucose 75, fructose 71, sucrose 82 C at onset, so 81, 77 and 88 at the peak (Bean, Yamazaki and
    /// Donelson 1978, from memory). Fructose raises least of all (Allan and others 2020).
    #[test]
    fn kinds_of_sugar_keep_their_order() {
        let with = |what: &str| celsius(&format!("1 g wheat starch\n100 g {what}\n100 g water"));
        let sucrose = with("sugar");
        let glucose = against_sucrose(SugarKind::Glucose)[1];
        let fructose = against_sucrose(SugarKind::Fructose)[1];
        assert!((64.0 + RISE * glucose - 81.0).abs() < 1.0);
        assert!((64.0 + RISE * fructose - 77.0).abs() < 1.0);
        assert!(with("honey") < sucrose - 5.0, "honey {}", with("honey"));
        for polyol in ["xylitol", "erythritol"] {
            assert!(with(polyol) < sucrose && with(polyol) > with("water"));
        }
        assert!((with("maltitol") - sucrose).abs() < 1.0);
    }

    /// Peaks in plain water: wheat 64, corn 69, potato 63, rice 70, oat 58 C (handbooks, from memory).
    #[test]
    fn starches_in_plain_water() {
        for (name, peak) in [
            ("wheat starch", 64.0),
            ("cornstarch", 69.0),
            ("potato starch", 63.0),
            ("tapioca starch", 68.0),
            ("rice flour", 70.0),
        ] {
            let found = celsius(&format!("10 g {name}\n1000 g water"));
            assert!((found - peak).abs() < 0.3, "{name} {found}");
        }
    }

    /// Whole egg sets from 68 to 73 C and white from 61 C; ovalbumin goes at 80 at pH 7.5 and some 4 C lower at pH 5
    /// (heating of ovalbumin 2002); half of its weight in sugar raises it by 9 C (from memory).
    #[test]
    fn egg_by_sugar_and_acid() {
        let egg = of("1000 g eggs");
        assert_eq!(egg.by, SetBy::Egg);
        assert!((68.0..=73.0).contains(&egg.at.mean.to_celsius()));
        let sweet = celsius("1000 g egg whites\n876 g sugar");
        let plain = celsius("1000 g egg whites");
        assert!((sweet - plain - 9.0).abs() < 0.3, "{plain} {sweet}");
        let sour = setting(&formula("1000 g egg whites"), Some(Ph::of(5.0)));
        let sour = sour.map(|found| found.at.mean.to_celsius());
        assert!(sour.is_some_and(|found| found < plain - 1.0 && found > plain - 6.0));
    }

    /// Pound cake, 100 of each: sugar to water 0.96, starch from 80 to 92 C; an angel cake sets by its white; a fudgy
    /// brownie's starch begins above 100 C, so egg sets it, and without egg it stays soft (worked out by hand).
    #[test]
    fn cakes() {
        let pound = of("400 g cake flour\n400 g sugar\n400 g butter\n400 g eggs");
        assert!((79.0..=90.0).contains(&pound.at.mean.to_celsius()));
        assert_eq!(pound.by, SetBy::Both);
        let angel = of("100 g cake flour\n267 g sugar\n267 g egg whites");
        assert_ne!(angel.by, SetBy::Starch);
        assert!((80.0..=92.0).contains(&angel.at.mean.to_celsius()));
        let brownie = "100 g plain flour\n270 g sugar\n160 g butter\n35 g cocoa";
        let fudgy = of(&format!("{brownie}\n140 g eggs"));
        assert_eq!(fudgy.by, SetBy::Egg);
        assert!((85.0..=97.0).contains(&fudgy.at.mean.to_celsius()));
        let without = of(&format!("{brownie}\n105 g water"));
        assert!(without.at.mean.to_celsius() > 100.0 && without.is_beyond);
        // 0.77 and 0.73 g/g put the peak of their starch at 82 and 81 C; white of egg is firm a little sooner.
        let layer = of("100 g flour\n50 g butter\n125 g sugar\n67 g egg whites\n100 g milk");
        assert!((77.0..=83.0).contains(&layer.at.mean.to_celsius()));
        let plain = of("100 g flour\n107 g sugar\n39 g oil\n126 g water\n8 g vinegar");
        assert_eq!(plain.by, SetBy::Starch);
        assert!((79.0..=83.0).contains(&plain.at.mean.to_celsius()));
    }

    /// More sugar never sets a batter sooner, more water never later; twice of all is the same.
    #[test]
    fn laws() {
        let cake = |sugar: u32, water: u32, eggs: u32| {
            celsius(&format!(
                "100 g flour\n20 g cornstarch\n{sugar} g sugar\n{water} g water\n{eggs} g eggs\n1 g salt"
            ))
        };
        for eggs in [10, 60, 150] {
            let mut last = 0.0;
            for sugar in [10, 40, 80, 120, 200, 300, 600] {
                let found = cake(sugar, 100, eggs);
                assert!(found >= last, "{sugar} g: {found} after {last}");
                assert!(cake(sugar, 140, eggs) <= found);
                last = found;
            }
        }
        let doubled =
            "200 g flour\n40 g cornstarch\n200 g sugar\n200 g water\n120 g eggs\n2 g salt";
        assert!((celsius(doubled) - cake(100, 100, 60)).abs() < 1e-9);
    }

    #[test]
    fn what_cannot_set_and_what_is_not_known() {
        assert_eq!(setting(&formula("100 g sugar\n100 g water"), None), None);
        assert_eq!(
            setting(&formula("100 g flour\n100 g oil"), None).map(|_| ()),
            Some(())
        );
        assert_eq!(setting(&formula(""), None), None);
        let jam = of("100 g flour\n100 g water\n100 g jam");
        assert_eq!(jam.unknown_kind, [3]);
        let sugar = of("100 g flour\n100 g water\n48 g sugar");
        let width = |of: &Setting| of.at.high.to_celsius() - of.at.low.to_celsius();
        assert!(width(&jam) > width(&sugar));
    }

    /// SR28: whole egg 12.56 %, white 10.9 % protein; common practice for the rest.
    #[test]
    fn protein_that_sets() {
        let share = |key| crate::baking::ingredient::by_key(key).and_then(setting_protein_per_gram);
        assert!((share("egg").unwrap_or_default() - 0.1256).abs() < 1e-9);
        assert!((share("egg_white").unwrap_or_default() - 0.109).abs() < 1e-9);
        assert_eq!(share("bread_flour"), Some(0.0));
        assert_eq!(share("milk"), Some(0.0));
        assert!(share("tofu_silken").is_some_and(|part| part > 0.0 && part < 0.03));
    }
}

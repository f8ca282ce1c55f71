//! The temperature of a batter from those of its ingredients, and that of the liquid for a batter that is wanted.
//!
//! Each ingredient brings its weight times its heat capacity times its temperature; the paddle adds a few degrees. Heat
//! capacity follows from composition, J/(kg K): 4180 for water, 1550 protein, 1420 carbohydrate, 1680 fat, 840 ash (Choi and
//! Okos; Heldman and Singh, from memory); a batter's own comes out up to a fifth below one that was measured (Sweat 1973).
//! Left out: fat that melts or sets on the way, which takes up to 30 J for a gram of butter, and what the bowl takes.

use crate::baking::formula::Weighed;
use crate::baking::ingredient::{Composition, Group};
use crate::baking::quantity::{Mass, Share, Temperature, TemperatureChange};

/// Heat capacities, J/(g K). Alcohol's own from handbooks, from memory.
const WATER: f64 = 4.18;
const PROTEIN: f64 = 1.55;
const CARBOHYDRATE: f64 = 1.42;
const FAT: f64 = 1.68;
const ASH: f64 = 0.84;
const ALCOHOL: f64 = 2.44;
/// What melting ice takes, J/g.
const MELTING: f64 = 334.0;
/// Egg that meets something hotter than this sets in flakes (albumen's first aggregation, 61 to 62 °C).
pub const SCRAMBLES: Temperature = Temperature::celsius(60.0);

/// Heat capacity of an ingredient, J/(g K); `None` where its composition is not known.
pub fn heat_capacity(composition: &Composition) -> Option<f64> {
    let of = |share: Option<Share>| share.map(Share::to_fraction);
    let parts = [
        (of(composition.water)?, WATER),
        (of(composition.protein)?, PROTEIN),
        (of(composition.carbohydrate)?, CARBOHYDRATE),
        (of(composition.fat)?, FAT),
        (of(composition.alcohol).unwrap_or(0.0), ALCOHOL),
    ];
    let known: f64 = parts.iter().map(|part| part.0).sum();
    let heat: f64 = parts.iter().map(|(part, capacity)| part * capacity).sum();
    Some(heat + (1.0 - known).max(0.0) * ASH)
}

/// An ingredient as it goes into the bowl.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// What it weighs.
    pub grams: Mass,
    /// Its heat capacity, J/(g K).
    pub capacity: f64,
    /// Its temperature.
    pub at: Temperature,
}

impl Part {
    /// An ingredient at a temperature; `None` where nothing tells its heat capacity.
    pub fn of(line: &Weighed, at: Temperature) -> Option<Self> {
        Some(Self {
            grams: line.grams.mean,
            capacity: heat_capacity(&line.ingredient.composition)?,
            at,
        })
    }

    /// Heat for a degree, J/K.
    fn heat(&self) -> f64 {
        self.grams.to_grams() * self.capacity
    }
}

/// The temperature of the batter, warmed by so much in mixing. `None` where there is nothing in it.
pub fn batter_temperature(parts: &[Part], rise: TemperatureChange) -> Option<Temperature> {
    let all: f64 = parts.iter().map(Part::heat).sum();
    let heat: f64 = parts
        .iter()
        .map(|part| part.heat() * part.at.to_celsius())
        .sum();
    (all > 0.0).then(|| Temperature::celsius(heat / all) + rise)
}

/// What a liquid has to be for a batter that is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Liquid {
    /// At this temperature, from freezing to boiling.
    At(Temperature),
    /// Colder than it can be: so much of it as ice, the rest at its own temperature. Only water is asked for so.
    Ice(Mass),
    /// Colder than all of it as ice.
    TooCold,
    /// Hotter than it boils.
    TooHot,
}

/// What the liquid among the parts, counted from 0, has to be; `None` where it is not there.
pub fn liquid_for(
    parts: &[Part],
    liquid: usize,
    wanted: Temperature,
    rise: TemperatureChange,
    boils: Temperature,
) -> Option<Liquid> {
    let own = parts.get(liquid).filter(|own| own.heat() > 0.0)?;
    let aim = (wanted - rise).to_celsius();
    let others: f64 = parts
        .iter()
        .enumerate()
        .filter(|(at, _)| *at != liquid)
        .map(|(_, part)| part.heat() * (part.at.to_celsius() - aim))
        .sum();
    let needed = aim - others / own.heat();
    if needed > boils.to_celsius() {
        return Some(Liquid::TooHot);
    }
    if needed >= 0.0 {
        return Some(Liquid::At(Temperature::celsius(needed)));
    }
    // Ice takes the heat that is too much: it melts, and its water warms to the batter in the place of the liquid's.
    let warm = own.capacity * (own.at.to_celsius() - aim);
    let too_much = others + own.grams.to_grams() * warm;
    let ice = too_much / (MELTING + WATER * aim + warm);
    Some(if ice > 0.0 && ice <= own.grams.to_grams() {
        Liquid::Ice(Mass::grams(ice))
    } else {
        Liquid::TooCold
    })
}

/// The place among batter lines of the liquid that is warmed or cooled: water, or the most of what pours.
pub fn liquid_of(lines: &[&Weighed]) -> Option<usize> {
    let grams = |at: &usize| lines[*at].grams.mean.to_grams();
    let pours = |line: &Weighed| {
        let water = line.ingredient.composition.water.map(Share::to_fraction);
        let group = line.ingredient.group;
        matches!(
            group,
            Group::Drink | Group::Dairy | Group::PlantDairy | Group::Juice | Group::Flavour
        ) && water.is_some_and(|water| water >= 0.8)
    };
    let most = |is_one: &dyn Fn(&Weighed) -> bool| {
        (0..lines.len())
            .filter(|at| is_one(lines[*at]))
            .max_by(|one, other| grams(one).total_cmp(&grams(other)))
    };
    most(&|line| line.ingredient.key == "water").or_else(|| most(&pours))
}

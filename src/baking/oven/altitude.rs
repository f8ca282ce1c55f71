//! A recipe moved from the air of one height to that of another: what of its sugar, liquid and leavening has to change so
//! that it sets and rises as it did.
//!
//! **Sugar and liquid.** Where water boils cooler, so does the crumb stay ([`syrup_boiling_point`] at the activity of water
//! in a crumb), and the batter would set that much closer to the end of the bake. It is to set as many degrees cooler as
//! its syrup boils, so the sugar in its water is thinned until [`setting`] says so: three parts of the change by more liquid,
//! one by less sugar, as the middle of the extension table for 1,524 m shares it. Both change by powers of one number, so
//! that there and back is where it began.
//!
//! **Leavening.** All of it changes by one factor, until gas, beaten air and steam take up the same room where the batter
//! sets as they did in the air that the recipe is for. That is the course of the batter itself, not a rule.
//!
//! What is not reckoned: drier flour, faster drying, what less soda does to the crumb's colour.
//!
//! [`syrup_boiling_point`]: super::air::syrup_boiling_point

use super::air::syrup_boiling_point;
use crate::baking::balance::{Class, setting};
use crate::baking::chemistry::bowl;
use crate::baking::chemistry::course::{self, Handling, SETS_AT, WATER_ACTIVITY};
use crate::baking::estimate::Estimate;
use crate::baking::formula::{Formula, Weighed};
use crate::baking::ingredient::Group;
use crate::baking::quantity::{Mass, Ph, Pressure};

/// Parts of the change that more liquid takes for one that less sugar takes: the middle of the table of the University of
/// Wyoming Extension for 5,000 ft, 3 tbsp in a cup against 1.
const LIQUID_PARTS: f64 = 3.0;

/// How far a move may change a recipe: each as the logarithm of its factor, to either side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// On leavening.
    pub leavening: f64,
    /// On sugar.
    pub sugar: f64,
    /// On liquid.
    pub liquid: f64,
}

impl Limits {
    /// As far as anybody could call it the same cake: sugar to 60 %, liquid to twice, leavening to an eighth (our own).
    pub const FAR: Self = Self {
        leavening: 2.08,
        sugar: 0.51,
        liquid: 0.69,
    };
}

/// How near setting temperature, C, and room, as a part of it, are met.
const SETTING_MET: f64 = 0.01;
const ROOM_MET: f64 = 2e-3;

/// A line: its number, and which of its ingredients, from 0.
pub type LinePart = (usize, usize);

/// A factor on lines, and what each weighs then.
#[derive(Clone, Debug, PartialEq)]
pub struct Factor {
    /// The factor.
    pub factor: f64,
    /// Each line's new weight.
    pub lines: Vec<(LinePart, Mass)>,
}

/// A recipe in another air.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// Where the syrup of a crumb boils there less where it boiled, C.
    pub plateau: f64,
    /// Where the batter set, C; `None` where nothing tells.
    pub set_at: Option<f64>,
    /// Where it sets once sugar and liquid have changed.
    pub sets_at: Option<f64>,
    /// Whether its setting could be moved as far as the plateau.
    pub sets_as_before: bool,
    /// The factor on its sugars; `None` where it has none or nothing has to change by them.
    pub sugar: Option<Factor>,
    /// The factor on its liquids.
    pub liquid: Option<Factor>,
    /// The factor on its leavening.
    pub leavening: Option<Factor>,
    /// Whether some of its leavening is in the flour, where it cannot be cut.
    pub is_in_flour: bool,
}

/// A formula on its way from one air to another.
pub struct Move<'a> {
    formula: &'a Formula,
    /// The batter's pH before the oven.
    ph: Option<Ph>,
    handling: &'a Handling,
    to: Pressure,
    lines: Lines,
    /// Where the syrup of a crumb boils there less where it boiled, C.
    plateau: f64,
    set_at: Option<f64>,
    /// The room that gas and steam took up where the batter set, L; `None` without gas.
    wanted: Option<f64>,
}

impl<'a> Move<'a> {
    /// Takes up what holds before it moves. `None` where an air is none of this world.
    pub fn of(
        formula: &'a Formula,
        ph: Option<Ph>,
        handling: &'a Handling,
        from: Pressure,
        to: Pressure,
    ) -> Option<Self> {
        let boils = |air: Pressure| Some(syrup_boiling_point(air, WATER_ACTIVITY)?.to_celsius());
        let mut moving = Self {
            formula,
            ph,
            handling,
            to,
            lines: Lines::of(formula),
            plateau: boils(to)? - boils(from)?,
            set_at: None,
            wanted: None,
        };
        moving.set_at = moving.sets(formula);
        moving.wanted = moving.room(formula, from, moving.set_at.unwrap_or(SETS_AT));
        Some(moving)
    }

    /// What has to change, within limits.
    pub fn within(&self, limits: &Limits) -> Moved {
        let (formula, lines) = (self.formula, &self.lines);
        let change = self
            .set_at
            .map_or(0.0, |before| self.thinned(before, limits));
        let thinned = self.thinned_by(change);
        let sets_at = self.sets(&thinned);
        let off = |before: f64, now: f64| (now - before - self.plateau).abs();
        let leavening = self
            .wanted
            .filter(|_| has_gas(formula, &lines.leavening))
            .and_then(|wanted| {
                let now = sets_at.unwrap_or(SETS_AT + self.plateau);
                meets(wanted, limits.leavening, &|factor| {
                    self.room(&scaled(&thinned, &lines.leavening, factor), self.to, now)
                })
            });
        let factor = |lines: &[LinePart], factor: Option<f64>| {
            let factor = factor.filter(|_| !lines.is_empty())?;
            Some(Factor {
                factor,
                lines: weights(formula, lines, factor),
            })
        };
        let (sugar, liquid) = factors(change);
        Moved {
            plateau: self.plateau,
            set_at: self.set_at,
            sets_at,
            sets_as_before: self
                .set_at
                .zip(sets_at)
                .is_some_and(|(before, now)| off(before, now) < 10.0 * SETTING_MET),
            sugar: factor(&lines.sugar, self.set_at.map(|_| sugar)),
            liquid: factor(&lines.liquid, self.set_at.map(|_| liquid)),
            leavening: factor(&lines.leavening, leavening),
            is_in_flour: formula.batter().any(is_raising_flour),
        }
    }

    /// By what the same gas takes up more room there with nothing changed; `None` without gas.
    pub fn more_room(&self) -> Option<f64> {
        let here = self.room(self.formula, self.to, self.set_at.unwrap_or(SETS_AT))?;
        Some(here / self.wanted?)
    }

    /// Where a batter sets, C.
    fn sets(&self, formula: &Formula) -> Option<f64> {
        Some(setting(formula, self.ph)?.at.mean.to_celsius())
    }

    /// The room that gas, beaten air and steam take up at a temperature under an air, L.
    fn room(&self, formula: &Formula, air: Pressure, celsius: f64) -> Option<f64> {
        let handling = Handling {
            air: air.to_atmospheres(),
            ..*self.handling
        };
        let course = bowl(formula, &handling)?.course;
        let litres = course::at(&course, celsius)?.litres;
        (litres > 0.0).then_some(litres)
    }

    /// The formula with its sugar thinned by so much of a change.
    fn thinned_by(&self, change: f64) -> Formula {
        let (sugar, liquid) = factors(change);
        let changed = scaled(self.formula, &self.lines.sugar, sugar);
        scaled(&changed, &self.lines.liquid, liquid)
    }

    /// How far sugar is thinned with water until it sets as much cooler as its syrup boils, or as far as that may go. More
    /// water and less sugar never raise it, so halving cannot fail.
    fn thinned(&self, before: f64, limits: &Limits) -> f64 {
        let over = |change: f64| {
            let now = self.sets(&self.thinned_by(change));
            now.unwrap_or(before) - before - self.plateau
        };
        if self.plateau.abs() < SETTING_MET {
            return 0.0;
        }
        let most = self.lines.most(limits);
        let (mut low, mut high) = (-most, most);
        for _ in 0..20 {
            let middle = (low + high) / 2.0;
            if over(middle) > 0.0 {
                low = middle
            } else {
                high = middle
            }
        }
        (low + high) / 2.0
    }
}

/// The factors on sugar and liquid at so much of a change.
fn factors(change: f64) -> (f64, f64) {
    ((-change).exp(), (LIQUID_PARTS * change).exp())
}

/// Whether any of these lines brings gas.
fn has_gas(formula: &Formula, lines: &[LinePart]) -> bool {
    formula
        .batter()
        .filter(|line| lines.contains(&(line.line, line.part)))
        .any(|line| {
            line.ingredient
                .leavening
                .is_some_and(|it| it.bicarbonate.is_some())
        })
}

/// Whether a line is flour that brings its own powder.
fn is_raising_flour(line: &Weighed) -> bool {
    line.ingredient.group != Group::Leavener && line.ingredient.leavening.is_some()
}

/// The lines that change.
struct Lines {
    sugar: Vec<LinePart>,
    liquid: Vec<LinePart>,
    leavening: Vec<LinePart>,
}

impl Lines {
    fn of(formula: &Formula) -> Self {
        let all = |is_one: fn(&Weighed) -> bool| {
            let lines = formula.batter().filter(|line| is_one(line));
            lines.map(|line| (line.line, line.part)).collect()
        };
        Self {
            sugar: all(|line| matches!(line.ingredient.group, Group::Sugar | Group::Syrup)),
            // Vinegar and flavours pour too, and change more than the water.
            liquid: all(|line| {
                let group = line.ingredient.group;
                matches!(
                    group,
                    Group::Dairy | Group::PlantDairy | Group::Juice | Group::Drink
                ) && !line.ingredient.key.ends_with("milk_powder")
                    && Class::Liquid.share(line.ingredient) == Some(1.0)
            }),
            // Yeast makes gas as long as it is left to.
            leavening: all(|line| {
                line.ingredient.group == Group::Leavener && !line.ingredient.key.ends_with("yeast")
            }),
        }
    }

    /// The furthest that the change may go.
    fn most(&self, limits: &Limits) -> f64 {
        let (sugar, liquid) = (limits.sugar, limits.liquid / LIQUID_PARTS);
        match (self.sugar.is_empty(), self.liquid.is_empty()) {
            (true, true) => 0.0,
            (false, true) => sugar,
            (true, false) => liquid,
            (false, false) => sugar.min(liquid),
        }
    }
}

/// The factor at which a room that grows with it meets another, or the end of what it may be.
fn meets(wanted: f64, most: f64, room: &dyn Fn(f64) -> Option<f64>) -> Option<f64> {
    let over = |factor: f64| Some(room(factor)? / wanted - 1.0);
    let ends = [(-most).exp(), most.exp()];
    let mut tried = (1.0, over(1.0)?);
    if tried.1.abs() < ROOM_MET {
        return Some(1.0);
    }
    let end = ends[usize::from(tried.1 < 0.0)];
    let beyond = (end, over(end)?);
    if beyond.1.signum() == tried.1.signum() {
        return Some(end);
    }
    let (mut low, mut high) = if tried.1 < 0.0 {
        (tried, beyond)
    } else {
        (beyond, tried)
    };
    // The line through both ends is nearly the course; the end that stays counts for half, so that it moves as well.
    for _ in 0..20 {
        let next = low.0 - low.1 * (high.0 - low.0) / (high.1 - low.1);
        tried = (next, over(next)?);
        if tried.1.abs() < ROOM_MET {
            break;
        }
        if tried.1 < 0.0 {
            low = tried;
            high.1 /= 2.0;
        } else {
            high = tried;
            low.1 /= 2.0;
        }
    }
    Some(tried.0)
}

impl Moved {
    /// Whether it stays within limits by itself.
    pub fn is_within(&self, limits: &Limits) -> bool {
        let near = |of: &Option<Factor>, most: f64| {
            of.as_ref().is_none_or(|it| it.factor.ln().abs() <= most)
        };
        near(&self.leavening, limits.leavening)
            && near(&self.sugar, limits.sugar)
            && near(&self.liquid, limits.liquid)
    }
}

/// A formula with weights of its own on some of its lines.
pub fn with_weights(formula: &Formula, weights: &[(LinePart, Mass)]) -> Formula {
    let mut changed = formula.clone();
    for line in &mut changed.lines {
        let own = weights
            .iter()
            .find(|(place, _)| *place == (line.line, line.part));
        if let Some((_, grams)) = own {
            line.grams = Estimate::exact(*grams);
        }
    }
    changed
}

/// A formula with a factor on some of its lines.
fn scaled(formula: &Formula, lines: &[LinePart], factor: f64) -> Formula {
    let mut changed = formula.clone();
    for line in &mut changed.lines {
        if lines.contains(&(line.line, line.part)) {
            line.grams = line.grams.map(|grams| grams * factor);
        }
    }
    changed
}

/// What lines weigh with a factor on them.
fn weights(formula: &Formula, lines: &[LinePart], factor: f64) -> Vec<(LinePart, Mass)> {
    formula
        .batter()
        .map(|line| ((line.line, line.part), line.grams.mean * factor))
        .filter(|(place, _)| lines.contains(place))
        .collect()
}

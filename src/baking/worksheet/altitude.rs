//! What a recipe needs in the baker's air: in figures and words, beside what extension tables tell, and as weights.

use super::{Choices, Inputs, LinePart, Settings};
use crate::baking::balance::Kind;
use crate::baking::chemistry::bowl;
use crate::baking::chemistry::course::{Handling, WATER_ACTIVITY};
use crate::baking::finding::{Edit, Facts, Remedy};
use crate::baking::oven::air::{boiling_point, caution, pressure, syrup_boiling_point};
use crate::baking::oven::altitude::{Factor, Limits, Move, Moved, with_weights};
use crate::baking::oven::altitude_table::{Change, Told, limits, told};
use crate::baking::quantity::{
    Height, Mass, Pressure, Share, Temperature, TemperatureChange, show,
};
use serde::Serialize;

/// From here on a kitchen's height is told of, m: water boils a degree cooler (our own limit).
const COUNTS: f64 = 300.0;

/// A recipe in the baker's air.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct AltitudeSheet {
    /// The height of the kitchen, as typed.
    pub typed: String,
    /// What is wrong with the height that the recipe is made for.
    pub made_for_trouble: Option<&'static str>,
    /// The air and where things boil in it.
    pub air: String,
    /// What follows, in sentences.
    pub words: Vec<String>,
    /// What changes, beside the tables.
    pub rows: Vec<AltitudeRow>,
    /// The weights for this height; `None` where nothing changes.
    pub remedy: Option<Remedy>,
}

/// One thing that changes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AltitudeRow {
    /// What it is: "Leavening".
    pub label: &'static str,
    /// What the batter asks for: "13 % less"; empty where nothing is reckoned.
    pub reckoned: String,
    /// What the tables tell, each with where it is from.
    pub tables: Vec<String>,
    /// Where ours stands to them: "within the tables"; empty where one side is not there.
    pub stands: String,
    /// What the weights are reckoned with: "25 % less"; empty where nothing changes.
    pub taken: String,
    /// What all tables together tell of the oven, °F hotter; `None` in every other row.
    pub hotter: Option<[f64; 2]>,
}

/// What the row on the oven is called.
const OVEN: &str = "Oven";

impl AltitudeRow {
    /// The same with what heat flow says of the oven: by so much hotter, K, the batter sets as soon as it did.
    pub fn with_oven(&self, hotter: Option<f64>) -> Self {
        let mut row = self.clone();
        if let (OVEN, Some(hotter)) = (row.label, hotter) {
            let change = TemperatureChange::celsius(hotter);
            row.reckoned = if hotter.abs() < 1.0 {
                "no change".to_owned()
            } else {
                format!(
                    "{} °F ({} °C) {}, for the middle to set as soon as it did",
                    show::fixed(change.to_fahrenheit().abs(), 0),
                    show::fixed(hotter.abs(), 0),
                    if hotter > 0.0 { "hotter" } else { "cooler" },
                )
            };
            let ours = change.to_fahrenheit();
            let by = |by: f64| format!("by {} °F", show::fixed(by.max(1.0), 0));
            row.stands = match row.hotter {
                Some([low, _]) if ours < low - 0.5 => {
                    format!("below the tables {}", by(low - ours))
                }
                Some([_, high]) if ours > high + 0.5 => {
                    format!("above the tables {}", by(ours - high))
                }
                Some(_) => "within the tables".to_owned(),
                None => String::new(),
            };
        }
        row
    }
}

impl Inputs {
    /// The recipe with the weights for a height, which it is made for from then on.
    pub fn made_for(&self, sheet: &AltitudeSheet) -> Self {
        let Some(remedy) = &sheet.remedy else {
            return self.clone();
        };
        let mut inputs = self.with_remedy(remedy);
        inputs.choices.made_for.clone_from(&sheet.typed);
        inputs
    }
}

/// The sheet; `None` where neither the kitchen nor the recipe's own lies high, or nothing is in the batter.
pub fn altitude_sheet(
    facts: &Facts,
    choices: &Choices,
    settings: &Settings,
) -> Option<AltitudeSheet> {
    facts.formula.batter().next()?;
    let here = settings.height().ok()?.unwrap_or(Height::SEA);
    let made_for = super::kitchen::read_height(&choices.made_for);
    let from = made_for.ok().flatten().unwrap_or(Height::SEA);
    if here.to_metres().max(from.to_metres()) < COUNTS {
        return None;
    }
    let (air_here, air_from) = (pressure(here).ok()?, pressure(from).ok()?);
    let sheet = AltitudeSheet {
        typed: settings.height.clone(),
        made_for_trouble: made_for.err(),
        air: air(here, air_here),
        ..AltitudeSheet::default()
    };
    Some(match why_not(facts, here, from) {
        Some(why) => AltitudeSheet {
            words: vec![why],
            ..sheet
        },
        None => Reckoned::of(facts, (from, air_from), (here, air_here))
            .map_or(sheet.clone(), |it| it.sheet(sheet, facts)),
    })
}

/// The height, its air, and where things boil there.
fn air(height: Height, air: Pressure) -> String {
    let boils = |found: Option<Temperature>| {
        found.map_or_else(String::new, |it| show::fixed(it.to_celsius(), 1))
    };
    format!(
        "{}: the air has {} of the pressure at the sea, water boils at {} °C and the syrup in a crumb at {} °C (102.0 °C at the sea).",
        show::height(height),
        show::percent(Share::fraction(air.to_atmospheres())),
        boils(boiling_point(air)),
        boils(syrup_boiling_point(air, WATER_ACTIVITY)),
    )
}

/// Why nothing is reckoned, or has to be.
fn why_not(facts: &Facts, here: Height, from: Height) -> Option<String> {
    if let Some(said) = caution(here).or(caution(from)) {
        return Some(said.to_owned());
    }
    if here == from {
        return Some("This recipe is made for your height: nothing has to change.".into());
    }
    if matches!(facts.kind, Kind::Cookie | Kind::Pancake) {
        return Some(format!(
            "Nothing is reckoned for {}: the tables and the reckoning are for cakes.",
            facts.kind.words()
        ));
    }
    let missed = facts.formula.holes().map(|line| line.line);
    let mut missed: Vec<usize> = missed.chain(facts.unread.iter().copied()).collect();
    missed.sort_unstable();
    (!missed.is_empty()).then(|| {
        format!(
            "Give {} a weight first: what it needs at your height hangs on all of them.",
            show::lines(&missed)
        )
    })
}

/// Both reckonings.
struct Reckoned<'a> {
    from: Height,
    here: Height,
    facts: &'a Facts<'a>,
    /// By what the same gas takes up more room.
    room: Option<f64>,
    /// What the batter asks for.
    whole: Moved,
    /// The same as far as the tables go.
    taken: Moved,
}

impl<'a> Reckoned<'a> {
    fn of(
        facts: &'a Facts<'a>,
        (from, air_from): (Height, Pressure),
        (here, air_here): (Height, Pressure),
    ) -> Option<Self> {
        let handling = Handling {
            air: air_from.to_atmospheres(),
            ..facts.handling
        };
        let ph = bowl(facts.formula, &handling).map(|bowl| bowl.batter_ph.mean);
        let moving = Move::of(facts.formula, ph, &handling, air_from, air_here)?;
        let whole = moving.within(&Limits::FAR);
        let near = limits(from, here);
        Some(Self {
            from,
            here,
            facts,
            room: moving.more_room(),
            taken: if whole.is_within(&near) {
                whole.clone()
            } else {
                moving.within(&near)
            },
            whole,
        })
    }

    fn sheet(&self, sheet: AltitudeSheet, facts: &Facts) -> AltitudeSheet {
        let mut rows = vec![
            self.row("Leavening", Change::Leavening, |moved| &moved.leavening),
            self.row("Sugar", Change::Sugar, |moved| &moved.sugar),
            self.row("Liquid", Change::Liquid, |moved| &moved.liquid),
        ];
        rows.retain(|row| !row.reckoned.is_empty() || !row.tables.is_empty());
        rows.push(self.oven());
        AltitudeSheet {
            words: self.words(facts),
            remedy: self.remedy(),
            rows,
            ..sheet
        }
    }

    /// What the tables tell: of a recipe for the sea alone.
    fn told(&self, change: Change) -> Vec<Told> {
        if self.from == Height::SEA && self.here > self.from {
            told(change, self.here)
        } else {
            Vec::new()
        }
    }

    fn row(
        &self,
        label: &'static str,
        change: Change,
        of: fn(&Moved) -> &Option<Factor>,
    ) -> AltitudeRow {
        let told = self.told(change);
        let factor = |moved: &Moved| of(moved).as_ref().map(|it| it.factor);
        let words = |moved: &Moved| factor(moved).map(changed).unwrap_or_default();
        let way = if change == Change::Liquid {
            "more"
        } else {
            "less"
        };
        let sign = if change == Change::Liquid { 1.0 } else { -1.0 };
        let ours = factor(&self.whole).map(|factor| sign * (factor - 1.0));
        AltitudeRow {
            label,
            reckoned: words(&self.whole),
            stands: ours.map_or_else(String::new, |ours| stands(ours, &told)),
            tables: told
                .iter()
                .map(|told| {
                    let percent = |part: f64| show::plain((part * 1000.0).round() / 10.0);
                    from_table(told, &percent, &format!("% {way}"))
                })
                .collect(),
            taken: words(&self.taken),
            hotter: None,
        }
    }

    /// What the tables tell of the oven; ours comes from heat flow, after the worksheet.
    fn oven(&self) -> AltitudeRow {
        let degrees = |value: f64| show::fixed(value, 0);
        let told = self.told(Change::Oven);
        AltitudeRow {
            label: OVEN,
            reckoned: String::new(),
            tables: told
                .iter()
                .map(|told| from_table(told, &degrees, "°F hotter"))
                .collect(),
            stands: String::new(),
            taken: String::new(),
            hotter: (!told.is_empty()).then(|| together(&told)),
        }
    }

    fn words(&self, facts: &Facts) -> Vec<String> {
        let (whole, taken) = (&self.whole, &self.taken);
        let celsius = |value: f64| show::fixed(value, 1);
        let mut words = Vec::new();
        if let Some(room) = self.room {
            words.push(format!(
                "Nothing changed, its gas and steam take up {} where it sets: a batter that is stretched too far falls.",
                more_room(room)
            ));
        }
        if let (Some(before), Some(after)) = (whole.set_at, whole.sets_at) {
            let way = if whole.plateau < 0.0 {
                "cooler"
            } else {
                "hotter"
            };
            let reached = if whole.sets_as_before {
                String::new()
            } else {
                format!(" Sugar and liquid alone get it to {} °C.", celsius(after))
            };
            words.push(format!(
                "Its syrup boils {} °C {way} here. To set as far below that as it did, it has to set at {} °C instead of {} °C.{reached}",
                celsius(whole.plateau.abs()),
                celsius(before + whole.plateau),
                celsius(before),
            ));
        }
        if !is_same(whole, taken) {
            words.push(format!(
                "The weights go only as far as the tables do{}.",
                match taken.sets_at {
                    Some(at) => format!("; it then sets at {} °C", celsius(at)),
                    None => String::new(),
                }
            ));
        }
        match (&whole.sugar, &whole.liquid) {
            (None, None) => words.push("It has neither sugar nor a liquid of its own that could change: where it sets stays.".into()),
            (Some(_), None) => words.push("It has no liquid of its own, so sugar changes alone.".into()),
            (None, Some(_)) => words.push("It has no sugar of its own, so liquid changes alone.".into()),
            _ => {}
        }
        if whole.is_in_flour {
            words.push("Its flour brings powder of its own, which cannot be cut: take plain flour for part of it.".into());
        }
        words.extend(self.crumb());
        if facts.kind.is_foam() {
            words.push("Beat the egg to soft peaks only, so that its bubbles have room to grow (extension leaflets, from memory).".into());
        }
        if facts.kind == Kind::Yeast {
            words.push("Yeast makes gas as long as it is left to: let the dough rise to the same height, in less time (common practice, no source).".into());
        }
        if self.here > self.from {
            words.push("Dry mountain air dries flour: add liquid by feel. Change one thing at a time and bake a test.".into());
        }
        words
    }

    /// The crumb's pH before and after, where the leavening changes.
    fn crumb(&self) -> Option<String> {
        let before = self.facts.bowl?;
        let formula = with_weights(self.facts.formula, &self.weights());
        let after = before.tried(&formula)?;
        let [before, after] = [before, &after].map(|bowl| show::ph(bowl.ph.mean.value()));
        (before != after)
            .then(|| format!("With these weights the crumb's pH goes from {before} to {after}."))
    }

    /// The weights, as a scale shows them.
    fn weights(&self) -> Vec<(LinePart, Mass)> {
        let taken = &self.taken;
        [&taken.leavening, &taken.sugar, &taken.liquid]
            .into_iter()
            .flatten()
            .filter(|it| (it.factor - 1.0).abs() > SAME)
            .flat_map(|it| {
                it.lines
                    .iter()
                    .map(|(place, mass)| (*place, rounded(*mass)))
            })
            .collect()
    }

    fn remedy(&self) -> Option<Remedy> {
        let weights = self.weights();
        let words: Vec<String> = weights
            .iter()
            .filter_map(|((line, part), mass)| {
                let mut lines = self.facts.formula.batter();
                let weighed = lines.find(|it| (it.line, it.part) == (*line, *part))?;
                Some(format!(
                    "{} {} instead of {}",
                    show::mass(*mass),
                    weighed.ingredient.name,
                    show::mass(weighed.grams.mean)
                ))
            })
            .collect();
        (!weights.is_empty()).then(|| Remedy {
            label: "Take these weights".into(),
            sentence: format!("{}.", show::sentence(&show::listed(&words))),
            edits: weights
                .iter()
                .map(|((line, part), mass)| Edit::Weigh {
                    line: *line,
                    part: *part,
                    grams: mass.to_grams(),
                })
                .collect(),
        })
    }
}

/// A factor this near to 1 changes nothing that a scale shows.
const SAME: f64 = 0.002;

/// Whether two reckonings come to the same.
fn is_same(one: &Moved, other: &Moved) -> bool {
    let factors = |moved: &Moved| {
        [&moved.leavening, &moved.sugar, &moved.liquid]
            .map(|it| it.as_ref().map_or(1.0, |it| it.factor))
    };
    let (one, other) = (factors(one), factors(other));
    one.iter()
        .zip(other)
        .all(|(one, other)| (one - other).abs() < SAME)
}

/// Whole grams from 20 g on, tenths below.
fn rounded(mass: Mass) -> Mass {
    let step = if mass.to_grams() >= 20.0 { 1.0 } else { 10.0 };
    Mass::grams((mass.to_grams() * step).round() / step)
}

/// A factor in words.
fn changed(factor: f64) -> String {
    let by = show::percent(Share::fraction((factor - 1.0).abs()));
    match factor {
        factor if (factor - 1.0).abs() <= SAME => "no change".into(),
        factor if factor < 1.0 => format!("{by} less"),
        _ => format!("{by} more"),
    }
}

fn more_room(room: f64) -> String {
    let by = show::percent(Share::fraction((room - 1.0).abs()));
    format!("{by} {} room", if room < 1.0 { "less" } else { "more" })
}

/// What a table tells, with where it is from.
fn from_table(told: &Told, figure: &dyn Fn(f64) -> String, unit: &str) -> String {
    let (low, high) = (figure(told.low), figure(told.high));
    let range = match low == high {
        true if told.high == 0.0 => "no change".to_owned(),
        true => format!("{low} {unit}"),
        false => format!("{low} to {high} {unit}"),
    };
    format!("{range}: {}", told.name())
}

/// The least and the most of all tables.
fn together(told: &[Told]) -> [f64; 2] {
    [
        told.iter().map(|it| it.low).fold(f64::INFINITY, f64::min),
        told.iter().map(|it| it.high).fold(0.0, f64::max),
    ]
}

/// Where a figure stands to all tables together.
fn stands(ours: f64, told: &[Told]) -> String {
    if told.is_empty() {
        return String::new();
    }
    let [low, high] = together(told);
    let points = |by: f64| match (by * 100.0).round() {
        by if by <= 1.0 => "a point".to_owned(),
        by => format!("{} points", show::fixed(by, 0)),
    };
    if ours < low - 0.005 {
        format!("below the tables by {}", points(low - ours))
    } else if ours > high + 0.005 {
        format!("above the tables by {}", points(ours - high))
    } else {
        "within the tables".to_owned()
    }
}

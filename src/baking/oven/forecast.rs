//! How long a batter bakes in each of several pans and ovens, how sure that is, and what it is like while it bakes.
//!
//! What is known of a bake already anchors the rest: heat is given to the model, evenly, until the known bake takes the
//! time that it took, and what cannot be met so is carried on as a factor. Each thing that is not known well is then
//! changed by itself, in the known bake and in the asked one alike; what that does to the ratio of the two is the spread.

use super::heat::bake::{Bake, Fineness, Load, Moment, Oven};
use super::slices::pause;
use crate::baking::estimate::NORMAL_95;
use serde::{Deserialize, Serialize};

/// A batter in a pan in an oven.
#[derive(Clone, Debug, PartialEq)]
pub struct Setup {
    /// The batter in its pan.
    pub load: Load,
    /// The oven.
    pub oven: Oven,
    /// Core temperatures at which it may be, is usually, and has to be done, C.
    pub core: [f64; 3],
}

/// A bake whose time is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// What was baked.
    pub setup: Setup,
    /// The shortest and the longest time that it takes, minutes.
    pub minutes: [f64; 2],
    /// Whether it was baked in the oven that is asked about.
    pub same_oven: bool,
}

/// What is asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// Bakes that are known, all of one recipe.
    pub known: Vec<Known>,
    /// What is to be baked.
    pub asked: Vec<Setup>,
    /// One batter in one pan in the air that the recipe is made for, and in the baker's.
    pub airs: Option<[Setup; 2]>,
}

/// What is answered.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// For each that was asked, in its order; `None` for what is not done in hours.
    pub bakes: Vec<Option<Forecast>>,
    /// By how much hotter the oven has to be in the baker's air for the batter to set as soon as in the other, K.
    pub hotter: Option<f64>,
}

/// One bake forecast.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Forecast {
    /// Minutes until it is done: one bake in twenty is done before the first, one in twenty after the last.
    pub minutes: [f64; 3],
    /// Minutes until its core is as warm as usual for its kind.
    pub core: f64,
    /// Minutes until its top has coloured.
    pub coloured: f64,
    /// How much its top has browned once it is done, against the known bake where there is one, else against a top that
    /// has just coloured.
    pub browned: f64,
    /// How much it has lost once it is done, as a part of its first weight.
    pub lost: f64,
    /// How many times the batter's volume it has.
    pub times: f64,
    /// Its course, some forty moments of it, in the minutes of the forecast.
    pub course: Vec<Moment>,
    /// An oven that browns it as the known bake is browned, C, and the minutes there; `None` where it does so as it is, or
    /// nothing is known.
    pub other_oven: Option<OtherOven>,
    /// Relative standard deviations of the time, by what they come from.
    pub doubts: Doubts,
}

/// Another setting of the oven.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct OtherOven {
    /// Its temperature, C.
    pub celsius: f64,
    /// Minutes until the cake is done there, as in [`Forecast::minutes`].
    pub minutes: [f64; 3],
}

/// What a spread comes from, as relative standard deviations of the time.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Doubts {
    /// The known bake's own time.
    pub known: f64,
    /// The oven: what heat it gives, and how true its dial is.
    pub oven: f64,
    /// When it counts as done.
    pub done: f64,
    /// What batter and crumb are to heat, and how high it rises.
    pub stuff: f64,
    /// How far the model was off where it was tried.
    pub model: f64,
}

impl Doubts {
    fn all(&self) -> f64 {
        [self.known, self.oven, self.done, self.stuff, self.model]
            .iter()
            .map(|doubt| doubt * doubt)
            .sum::<f64>()
            .sqrt()
    }
}

/// How browning goes: three times as fast with each 10 K (Zanoni and others 1995 on the crust of bread, from memory: 2 to
/// 4), reckoned from the skin at 100 C.
const BROWNS: [f64; 2] = [3.0, 100.0];
/// The browning, in minutes at 100 C, at which a top counts as coloured. Set so that foam cakes, whose core is warm long
/// before, come to the times of a trade table.
const COLOURED: f64 = 14.0;
/// No bake goes on for longer than this, s.
const LONGEST: f64 = 5.0 * 3600.0;
/// How far the heat that an oven gives may be from ours either way, as a factor.
const HEAT: f64 = 2.5;
/// How near the time of a known bake is met.
const MET: f64 = 0.004;
/// Standard deviation of the heat that one oven of a kind gives against another, relative, and of its dial, K (home
/// ovens; common practice, no source).
const OVENS: [f64; 2] = [0.1, 8.0];
/// By how much what batter is to heat may be off, as one standard deviation: vapour's part in it, the rise.
const STUFF: [f64; 2] = [0.3, 0.22];
/// How far the model was off beyond all that where it was tried, as a relative standard deviation: without a known bake;
/// from a known one to another pan or oven, and on top of that for each unit of the logarithm of their ratio
/// (`tests/heat/bakes.rs` prints what came out; charts themselves disagree by a fifth).
const MODEL: [f64; 3] = [0.17, 0.13, 0.25];
/// A top that browned by more than this against the known bake, or less than one over it, wants another oven.
const UNLIKE: f64 = 1.6;
/// How far from its own setting another is proposed, K cooler and hotter: beyond that other things go wrong first.
const OTHER_SETTING: [f64; 2] = [40.0, 25.0];
/// How many moments of a course are kept.
const KEPT: usize = 40;

/// What is changed for one run.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Change {
    /// Times the heat of the oven.
    heat: f64,
    /// Times what vapour carries.
    vapour: f64,
    /// Times what it gains by rising.
    rise: f64,
    /// The oven's temperature beyond its own, K.
    celsius: f64,
}

impl Change {
    const NONE: Self = Self {
        heat: 1.0,
        vapour: 1.0,
        rise: 1.0,
        celsius: 0.0,
    };
}

/// A run to its end. Minutes.
#[derive(Clone, Debug)]
struct Run {
    /// When the core was at each of its three temperatures.
    core: [f64; 3],
    coloured: f64,
    moments: Vec<Moment>,
    /// Browning so far at each moment.
    browned: Vec<f64>,
}

impl Run {
    fn done(&self) -> f64 {
        self.core[1].max(self.coloured)
    }

    /// How far apart the three temperatures of its core put its end, as one standard deviation.
    fn apart(&self) -> f64 {
        let [early, late] = [self.core[0], self.core[2]].map(|core| core.max(self.coloured));
        (late / early).ln() / (2.0 * NORMAL_95)
    }

    /// A figure at a time, between moments.
    fn at(&self, minutes: f64, of: impl Fn(usize) -> f64) -> f64 {
        let after = self
            .moments
            .iter()
            .position(|moment| moment.seconds >= minutes * 60.0)
            .unwrap_or(self.moments.len() - 1);
        let Some(before) = after.checked_sub(1) else {
            return of(0);
        };
        let [low, high] = [before, after].map(|at| self.moments[at].seconds / 60.0);
        let part = ((minutes - low) / (high - low)).clamp(0.0, 1.0);
        of(before) + part * (of(after) - of(before))
    }
}

/// Bakes a setup with a change; `None` where it is not done in hours.
async fn run(setup: &Setup, change: Change) -> Option<Run> {
    let mut setup = setup.clone();
    setup.oven.celsius += change.celsius;
    for convection in &mut setup.oven.convection {
        *convection *= change.heat;
    }
    setup.oven.radiation *= change.heat;
    setup.load.skin.radiation *= change.heat;
    setup.load.vapour *= change.vapour;
    for point in &mut setup.load.rise {
        point[1] = 1.0 + (point[1] - 1.0) * change.rise;
    }
    let fineness = Fineness::usual(setup.load.vessel.symmetry);
    let mut bake = Bake::new(setup.load, setup.oven, fineness);
    let mut run = Run {
        core: [f64::NAN; 3],
        coloured: f64::NAN,
        moments: vec![bake.now()],
        browned: vec![0.0],
    };
    let mut browned = 0.0;
    while run.core[2].is_nan() || run.coloured.is_nan() {
        let before = bake.now();
        if before.seconds > LONGEST {
            return None;
        }
        let after = bake.step();
        let minutes = (after.seconds - before.seconds) / 60.0;
        let more = BROWNS[0].powf((after.top - BROWNS[1]) / 10.0) * minutes;
        let passed = |from: f64, to: f64, at: f64| {
            (before.seconds / 60.0) + minutes * ((at - from) / (to - from)).clamp(0.0, 1.0)
        };
        for (core, wanted) in run.core.iter_mut().zip(setup.core) {
            if core.is_nan() && after.centre >= wanted {
                *core = passed(before.centre, after.centre, wanted);
            }
        }
        if run.coloured.is_nan() && browned + more >= COLOURED {
            run.coloured = passed(browned, browned + more, COLOURED);
        }
        browned += more;
        run.moments.push(after);
        run.browned.push(browned);
        pause().await;
    }
    Some(run)
}

/// What the known bakes tell of oven and recipe.
#[derive(Clone, Copy, Debug)]
struct Anchor {
    /// Times the heat of the oven.
    heat: f64,
    /// Times the time that is left after that.
    times: f64,
    /// Relative standard deviation of the known time.
    deviation: f64,
    /// How far the heat is known, as a relative standard deviation.
    heat_deviation: f64,
}

/// The heat with which a known bake takes the time that it took.
async fn anchor(known: &Known) -> Option<Anchor> {
    let [low, high] = known.minutes;
    let minutes = (low * high).sqrt();
    let (least, most) = (1.0 / HEAT, HEAT);
    let mut tried: Vec<[f64; 2]> = Vec::new();
    let mut heat: f64 = 1.0;
    for _ in 0..6 {
        let change = Change {
            heat,
            ..Change::NONE
        };
        let off = (run(&known.setup, change).await?.done() / minutes).ln();
        tried.push([heat.ln(), off]);
        if off.abs() < MET {
            break;
        }
        // Twice the heat, some two thirds of the time; from then on by what was seen.
        let slope = match tried[..] {
            [.., [one, off_one], [two, off_two]] if (two - one).abs() > 1e-6 => {
                ((off_two - off_one) / (two - one)).min(-0.15)
            }
            _ => -0.6,
        };
        let next = (heat.ln() - off / slope).exp().clamp(least, most);
        if (next / heat - 1.0).abs() < 1e-6 {
            break;
        }
        heat = next;
    }
    let [heat, off] = tried
        .iter()
        .min_by(|one, other| one[1].abs().total_cmp(&other[1].abs()))?;
    // A cook's "30 to 35 minutes" holds nine bakes in ten; a single figure is meant to five per cent.
    let deviation = ((high / low).ln() / (2.0 * NORMAL_95)).max(0.05 / NORMAL_95);
    let other_oven = if known.same_oven { 0.0 } else { OVENS[0] };
    Some(Anchor {
        heat: heat.exp(),
        times: (-off).exp(),
        deviation,
        heat_deviation: other_oven.hypot(deviation / 0.6),
    })
}

/// Several known bakes as one: each by its certainty.
fn together(anchors: &[Anchor]) -> Option<Anchor> {
    let weight = |anchor: &Anchor| anchor.deviation.hypot(0.6 * anchor.heat_deviation).powi(-2);
    let all: f64 = anchors.iter().map(weight).sum();
    let mean = |of: fn(&Anchor) -> f64| {
        let sum: f64 = anchors
            .iter()
            .map(|anchor| of(anchor).ln() * weight(anchor))
            .sum();
        (sum / all).exp()
    };
    let fewer = |of: fn(&Anchor) -> f64| {
        let sum: f64 = anchors
            .iter()
            .map(|anchor| (of(anchor) * weight(anchor)).powi(2))
            .sum();
        sum.sqrt() / all
    };
    (!anchors.is_empty()).then(|| Anchor {
        heat: mean(|anchor| anchor.heat),
        times: mean(|anchor| anchor.times),
        deviation: fewer(|anchor| anchor.deviation),
        heat_deviation: fewer(|anchor| anchor.heat_deviation),
    })
}

/// Forecasts all that is asked.
pub async fn forecast(ask: Ask) -> Answer {
    // Bakes in the oven that is asked about tell more than any that a recipe tells of.
    let own = ask.known.iter().any(|known| known.same_oven);
    let used: Vec<&Known> = ask
        .known
        .iter()
        .filter(|known| known.same_oven == own)
        .collect();
    let mut anchors = Vec::new();
    for known in &used {
        anchors.extend(anchor(known).await);
    }
    let told = together(&anchors);
    let first = used.first().filter(|_| told.is_some());
    let base = Change {
        heat: told.map_or(1.0, |anchor| anchor.heat),
        ..Change::NONE
    };
    let changes = changes(base, told);
    let mut known = None;
    if let Some(first) = first {
        known = runs(&first.setup, base, &changes).await;
    }
    let mut answers = Vec::new();
    for setup in &ask.asked {
        // What was just baked need not be baked again.
        let like = first
            .filter(|first| first.setup == *setup)
            .and(known.clone());
        let baked = match like {
            Some(baked) => Some(baked),
            None => runs(setup, base, &changes).await,
        };
        let Some(baked) = baked else {
            answers.push(None);
            continue;
        };
        let same = first.is_some_and(|first| first.setup == *setup);
        answers.push(Some(
            told_of(setup, &baked, known.as_ref(), told, base, own, same).await,
        ));
    }
    let hotter = match &ask.airs {
        Some([there, here]) => hotter(there, here, base).await,
        None => None,
    };
    Answer {
        bakes: answers,
        hotter,
    }
}

/// By how much hotter the oven has to be for a batter to set in one air as soon as in the other, K: its core is where it
/// sets after the same time.
async fn hotter(there: &Setup, here: &Setup, base: Change) -> Option<f64> {
    let sets = |setup: &Setup| setup.load.rise.last().map(|last| last[0]);
    let at = |setup: &Setup, celsius: f64| Setup {
        core: [celsius, celsius + 0.1, celsius + 0.2],
        ..setup.clone()
    };
    let wanted = run(&at(there, sets(there)?), base).await?.core[0];
    let here = at(here, sets(there)?.min(here.core[2]));
    let mut hotter = 0.0;
    let mut off = (run(&here, base).await?.core[0] / wanted).ln();
    // A degree more saves about a hundredth of the time; from then on by what was seen.
    let mut slope: f64 = -0.009;
    for _ in 0..3 {
        if off.abs() < MET {
            break;
        }
        let next = (hotter - off / slope).clamp(-60.0, 60.0);
        let change = Change {
            celsius: next,
            ..base
        };
        let after = (run(&here, change).await?.core[0] / wanted).ln();
        slope = ((after - off) / (next - hotter)).clamp(-0.05, -0.002);
        (hotter, off) = (next, after);
    }
    Some(hotter)
}

/// What is changed by itself to see what it does: heat, vapour, rise, each by one standard deviation.
fn changes(base: Change, told: Option<Anchor>) -> [Change; 3] {
    let heat = told.map_or(OVENS[0], |anchor| anchor.heat_deviation);
    [
        Change {
            heat: base.heat * heat.exp(),
            ..base
        },
        Change {
            vapour: 1.0 + STUFF[0],
            ..base
        },
        Change {
            rise: 1.0 + STUFF[1],
            ..base
        },
    ]
}

/// The run itself, and its time with each change as the logarithm of a ratio.
#[derive(Clone, Debug)]
struct Runs {
    run: Run,
    changed: [f64; 3],
}

async fn runs(setup: &Setup, base: Change, changes: &[Change; 3]) -> Option<Runs> {
    let first = run(setup, base).await?;
    let mut changed = [0.0; 3];
    for (ratio, change) in changed.iter_mut().zip(changes) {
        *ratio = (run(setup, *change).await?.done() / first.done()).ln();
    }
    Some(Runs {
        run: first,
        changed,
    })
}

/// The forecast of one setup from its runs.
async fn told_of(
    setup: &Setup,
    baked: &Runs,
    known: Option<&Runs>,
    told: Option<Anchor>,
    base: Change,
    own: bool,
    same: bool,
) -> Forecast {
    let times = told.map_or(1.0, |anchor| anchor.times);
    let done = baked.run.done();
    let off = |which: usize| baked.changed[which] - known.map_or(0.0, |known| known.changed[which]);
    let ratio = known.map(|known| (done / known.run.done()).ln());
    // The dial of an oven that nobody has measured; where it was the oven of the known bake, it was as wrong there.
    let dial = if own {
        0.0
    } else {
        OVENS[1] / (setup.oven.celsius - 85.0).max(20.0)
    };
    // The heat of an oven acts on known and asked bake alike only where it was one oven.
    let heat = if own { off(0) } else { baked.changed[0] };
    let doubts = Doubts {
        known: told.map_or(0.0, |anchor| anchor.deviation),
        oven: heat.hypot(dial),
        done: match known {
            Some(known) => baked.run.apart() - known.run.apart(),
            None => baked.run.apart(),
        },
        stuff: off(1).hypot(off(2)),
        model: match ratio {
            Some(_) if same => 0.0,
            Some(ratio) => MODEL[1].hypot(MODEL[2] * ratio),
            None => MODEL[0],
        },
    };
    let spread = |minutes: f64| {
        let apart = (doubts.all() * NORMAL_95).exp();
        [minutes / apart, minutes, minutes * apart]
    };
    let browned_at = |run: &Run| run.at(run.done(), |at| run.browned[at]);
    let like = known.map_or(COLOURED, |known| browned_at(&known.run));
    let browned = browned_at(&baked.run) / like;
    let mut other_oven = None;
    if known.is_some() && !(1.0 / UNLIKE..=UNLIKE).contains(&browned) {
        other_oven = oven_like(setup, base, like, browned)
            .await
            .map(|(celsius, minutes)| OtherOven {
                celsius,
                minutes: spread(minutes * times),
            });
    }
    Forecast {
        minutes: spread(done * times),
        core: baked.run.core[1] * times,
        coloured: baked.run.coloured * times,
        browned,
        lost: baked.run.at(done, |at| baked.run.moments[at].lost),
        times: baked.run.at(done, |at| baked.run.moments[at].times),
        course: course(&baked.run, done, times),
        other_oven,
        doubts,
    }
}

/// The oven in which a setup browns as much as that by the time that it is done, C, and the minutes there.
async fn oven_like(setup: &Setup, base: Change, like: f64, browned: f64) -> Option<(f64, f64)> {
    let mut celsius = setup.oven.celsius;
    let mut off = browned.ln();
    // Browning grows by some 3 % with each kelvin of the oven; from then on by what was seen.
    let mut slope = 0.03;
    let mut minutes = None;
    for _ in 0..4 {
        let own = setup.oven.celsius;
        let next = (celsius - off / slope).clamp(own - OTHER_SETTING[0], own + OTHER_SETTING[1]);
        if (next - celsius).abs() < 1.0 {
            break;
        }
        let change = Change {
            celsius: next - setup.oven.celsius,
            ..base
        };
        let run = run(setup, change).await?;
        let after = (run.at(run.done(), |at| run.browned[at]) / like).ln();
        slope = ((after - off) / (next - celsius)).clamp(0.005, 0.1);
        (celsius, off) = (next, after);
        minutes = Some(run.done());
    }
    Some((celsius, minutes?))
}

/// Some moments of a run up to a little after its end, in the minutes of the forecast.
fn course(run: &Run, done: f64, times: f64) -> Vec<Moment> {
    (0..=KEPT)
        .map(|part| {
            let minutes = done * 1.1 * part as f64 / KEPT as f64;
            let at = |of: fn(&Moment) -> f64| run.at(minutes, |at| of(&run.moments[at]));
            Moment {
                seconds: minutes * times * 60.0,
                centre: at(|moment| moment.centre),
                edge: at(|moment| moment.edge),
                top: at(|moment| moment.top),
                lost: at(|moment| moment.lost),
                times: at(|moment| moment.times),
            }
        })
        .collect()
}

//! How long a batter bakes in each of several pans and ovens, how sure that is, and what it is like while it bakes.
//!
//! What is known of a bake already anchors the rest: heat is given to the model, evenly, until the known bake takes the
//! time that it took, and what cannot be met so is carried on as a factor. Each thing that is not known well is then
//! changed by itself, in the known bake and in the asked one alike; what that does to the ratio of the two is the spread.

mod anchor;
mod run;
mod setting;

use crate::baking::estimate::NORMAL_95;
use crate::baking::oven::heat::bake::{Load, Moment, Oven};
use anchor::{Anchor, anchor, together};
use run::{COLOURED, Change, Run, run};
use setting::{hotter, oven_like};

/// What heat flow goes by.
pub const HEAT_SOURCES: [&str; 6] = [
    "choi_okos_1986",
    "de_vries_1989",
    "layer_chart",
    "oswin_1946",
    "rkc_1998",
    "zanoni_1995",
];

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
#[derive(Clone, Debug, PartialEq)]
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
    /// Its course, some forty moments of it, in the minutes of the forecast.
    pub course: Vec<Moment>,
    /// An oven that browns it as the known bake is browned, C, and the minutes there; `None` where it does so as it is, or
    /// nothing is known.
    pub other_oven: Option<OtherOven>,
    /// Relative standard deviations of the time, by what they come from.
    pub doubts: Doubts,
}

/// Another setting of the oven.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OtherOven {
    /// Its temperature, C.
    pub celsius: f64,
    /// Minutes until the cake is done there, as in [`Forecast::minutes`].
    pub minutes: [f64; 3],
}

/// What a spread comes from, as relative standard deviations of the time.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
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
/// How many moments of a course are kept.
const KEPT: usize = 40;

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
    let basis = Basis {
        told,
        base,
        known: known.as_ref(),
        own,
    };
    let mut bakes = Vec::new();
    for setup in &ask.asked {
        // What was just baked need not be baked again.
        let same = first.is_some_and(|first| first.setup == *setup);
        let baked = match basis.known.filter(|_| same) {
            Some(known) => Some(known.clone()),
            None => runs(setup, base, &changes).await,
        };
        bakes.push(match baked {
            Some(baked) => Some(basis.forecast(setup, &baked, same).await),
            None => None,
        });
    }
    let hotter = match &ask.airs {
        Some([there, here]) => hotter(there, here, base).await,
        None => None,
    };
    Answer { bakes, hotter }
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

/// What a forecast goes by.
struct Basis<'a> {
    /// What the known bakes come to.
    told: Option<Anchor>,
    /// What every run has changed.
    base: Change,
    /// The runs of the known bake.
    known: Option<&'a Runs>,
    /// Whether that was baked in the oven that is asked about.
    own: bool,
}

impl Basis<'_> {
    /// The forecast of one setup from its runs; `same` where it is the known bake itself.
    async fn forecast(&self, setup: &Setup, baked: &Runs, same: bool) -> Forecast {
        let times = self.told.map_or(1.0, |anchor| anchor.times);
        let (run, done) = (&baked.run, baked.run.done());
        let doubts = self.doubts(setup, baked, same);
        let spread = |minutes: f64| {
            let apart = (doubts.all() * NORMAL_95).exp();
            [minutes / apart, minutes, minutes * apart]
        };
        let browned_at = |run: &Run| run.at(run.done(), |at| run.browned[at]);
        let like = self.known.map_or(COLOURED, |known| browned_at(&known.run));
        let browned = browned_at(run) / like;
        let mut other_oven = None;
        if self.known.is_some() && !(1.0 / UNLIKE..=UNLIKE).contains(&browned) {
            let other = oven_like(setup, self.base, like, browned).await;
            other_oven = other.map(|(celsius, minutes)| OtherOven {
                celsius,
                minutes: spread(minutes * times),
            });
        }
        Forecast {
            minutes: spread(done * times),
            core: run.core[1] * times,
            coloured: run.coloured * times,
            browned,
            lost: run.at(done, |at| run.moments[at].lost),
            course: course(run, done, times),
            other_oven,
            doubts,
        }
    }

    /// What its spread comes from.
    fn doubts(&self, setup: &Setup, baked: &Runs, same: bool) -> Doubts {
        let off = |which: usize| {
            baked.changed[which] - self.known.map_or(0.0, |known| known.changed[which])
        };
        // The dial of an oven that nobody has measured; where it was the oven of the known bake, it was as wrong there.
        let dial = match self.own {
            true => 0.0,
            false => OVENS[1] / (setup.oven.celsius - 85.0).max(20.0),
        };
        // The heat of an oven acts on known and asked bake alike only where it was one oven.
        let heat = if self.own { off(0) } else { baked.changed[0] };
        let ratio = |known: &Runs| (baked.run.done() / known.run.done()).ln();
        Doubts {
            known: self.told.map_or(0.0, |anchor| anchor.deviation),
            oven: heat.hypot(dial),
            done: baked.run.apart() - self.known.map_or(0.0, |known| known.run.apart()),
            stuff: off(1).hypot(off(2)),
            model: match self.known {
                Some(_) if same => 0.0,
                Some(known) => MODEL[1].hypot(MODEL[2] * ratio(known)),
                None => MODEL[0],
            },
        }
    }
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

//! One bake of a setup, with something changed, to its end.

use super::Setup;
use crate::baking::estimate::NORMAL_95;
use crate::baking::oven::heat::bake::{Bake, Fineness, Moment};
use crate::baking::oven::slices::pause;

/// How browning goes: three times as fast with each 10 K (Zanoni and others 1995 on the crust of bread, from memory: 2 to
/// 4), reckoned from the skin at 100 C.
const BROWNS: [f64; 2] = [3.0, 100.0];
/// The browning, in minutes at 100 C, at which a top counts as coloured. Set so that foam cakes, whose core is warm long
/// before, come to the times of a trade table.
pub(super) const COLOURED: f64 = 14.0;
/// No bake goes on for longer than this, s.
const LONGEST: f64 = 5.0 * 3600.0;

/// What is changed for one run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Change {
    /// Times the heat of the oven.
    pub heat: f64,
    /// Times what vapour carries.
    pub vapour: f64,
    /// Times what it gains by rising.
    pub rise: f64,
    /// The oven's temperature beyond its own, K.
    pub celsius: f64,
}

impl Change {
    pub const NONE: Self = Self {
        heat: 1.0,
        vapour: 1.0,
        rise: 1.0,
        celsius: 0.0,
    };
}

/// A run to its end. Minutes.
#[derive(Clone, Debug)]
pub(super) struct Run {
    /// When the core was at each of its three temperatures.
    pub core: [f64; 3],
    /// When its top had coloured.
    pub coloured: f64,
    /// The bake, moment after moment.
    pub moments: Vec<Moment>,
    /// Browning so far at each moment.
    pub browned: Vec<f64>,
}

impl Run {
    /// When it is done: warm enough, and coloured.
    pub fn done(&self) -> f64 {
        self.core[1].max(self.coloured)
    }

    /// How far apart the three temperatures of its core put its end, as one standard deviation.
    pub fn apart(&self) -> f64 {
        let [early, late] = [self.core[0], self.core[2]].map(|core| core.max(self.coloured));
        (late / early).ln() / (2.0 * NORMAL_95)
    }

    /// A figure at a time, between moments.
    pub fn at(&self, minutes: f64, of: impl Fn(usize) -> f64) -> f64 {
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
pub(super) async fn run(setup: &Setup, change: Change) -> Option<Run> {
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

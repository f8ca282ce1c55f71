//! What a measured bake teaches: a crumb's pH moves the buffers of its recipe, a time of baking anchors the heat. Each is taken
//! by the baker, and can be taken back.

use super::record::rounded;
use super::{Measured, OutcomeField, Trial};
use crate::baking::ingredient::Own;
use crate::baking::quantity::{Temperature, show};
use crate::baking::worksheet::{CrumbTold, Inputs, Settings, TimedBake, Worksheet, crumb_beyond};

/// Something that a bake teaches.
#[derive(Clone, Debug, PartialEq)]
pub struct Lesson {
    /// What it is about: "The pH of the crumb".
    pub title: &'static str,
    /// What it would change, in a sentence or two; or why it cannot.
    pub words: String,
    /// What it is; `None` where it cannot be used.
    pub taught: Option<Taught>,
    /// Whether the recipe goes by it already.
    pub is_taken: bool,
}

/// What is taught.
#[derive(Clone, Debug, PartialEq)]
pub enum Taught {
    /// What the crumb tells of the buffers.
    Crumb(CrumbTold),
    /// How long it took.
    Bake(Box<TimedBake>),
}

/// A core so much below the usual one is not done, K.
const UNDONE: f64 = 4.0;

/// What a bake teaches; `id` is the name of its record, `now` the recipe as it stands, `sheet` the worksheet of the bake.
pub fn lessons(
    id: &str,
    trial: &Trial,
    found: &Measured,
    now: &Inputs,
    sheet: &Worksheet,
    (settings, own): (&Settings, &Own),
) -> Vec<Lesson> {
    let mut lessons = Vec::new();
    if let Some(ph) = found.crumb_ph {
        lessons.push(crumb(id, trial, ph.value(), now, (settings, own)));
    }
    if let Some(minutes) = found.minutes {
        let wanted = sheet.oven.rows.first().map(|row| row.core);
        lessons.push(bake(id, trial, minutes, (found.core, wanted), now));
    }
    lessons
}

fn crumb(
    id: &str,
    trial: &Trial,
    ph: f64,
    now: &Inputs,
    (settings, own): (&Settings, &Own),
) -> Lesson {
    let told = crumb_beyond(&trial.as_baked(), settings, own, ph).map(|beyond| CrumbTold {
        trial: id.to_owned(),
        ph,
        beyond: rounded(beyond),
    });
    let known = now.choices.crumbs.iter().find(|it| it.trial == id);
    Lesson {
        title: "The pH of the crumb",
        words: match &told {
            None => {
                "Without acid, soda and water in the recipe there is nothing that a pH could move."
                    .to_owned()
            }
            Some(told) => format!(
                "{} The recipe and the versions made from it are reckoned by that from then on, and are surer.",
                told.words()
            ),
        },
        // One that was taken from another reading is none of this.
        is_taken: known.is_some_and(|known| known.ph == ph),
        taught: told.map(Taught::Crumb),
    }
}

fn bake(
    id: &str,
    trial: &Trial,
    minutes: f64,
    (core, wanted): (Option<Temperature>, Option<Temperature>),
    now: &Inputs,
) -> Lesson {
    let is_undone = is_undone(core, wanted);
    let timed = TimedBake {
        pan: trial.as_baked().choices.shelf.into_iter().next(),
        setting: trial.typed(OutcomeField::Oven).trim().to_owned(),
        minutes: trial.typed(OutcomeField::Minutes).trim().to_owned(),
        trial: id.to_owned(),
    };
    let known = now.choices.oven.bakes.iter().find(|it| it.trial == id);
    Lesson {
        title: "The time in the oven",
        words: if is_undone {
            "Its core was not done when it came out, so its time tells nothing of a cake that is."
                .to_owned()
        } else {
            format!(
                "{} minutes in your own oven take the place of the recipe's time: every other pan and oven is reckoned from them.",
                show::plain(minutes)
            )
        },
        is_taken: known.is_some_and(|known| *known == timed),
        taught: (!is_undone).then(|| Taught::Bake(Box::new(timed))),
    }
}

/// Whether its core was not done when it came out; a core that was not taken is believed to have been.
pub(super) fn is_undone(core: Option<Temperature>, wanted: Option<Temperature>) -> bool {
    core.zip(wanted)
        .is_some_and(|(core, wanted)| core.to_celsius() < wanted.to_celsius() - UNDONE)
}

impl Inputs {
    /// Goes by what a bake teaches, in the place of what the same bake taught before.
    pub fn learn(&mut self, taught: &Taught) {
        self.unlearn(taught);
        match taught {
            Taught::Crumb(told) => self.choices.crumbs.push(told.clone()),
            Taught::Bake(timed) => self.choices.oven.bakes.push(TimedBake::clone(timed)),
        }
    }

    /// Takes that back.
    pub fn unlearn(&mut self, taught: &Taught) {
        match taught {
            Taught::Crumb(told) => self.choices.crumbs.retain(|it| it.trial != told.trial),
            Taught::Bake(timed) => self.choices.oven.bakes.retain(|it| it.trial != timed.trial),
        }
    }
}

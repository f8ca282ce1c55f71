//! What of a bake goes into its diagnosis.

use super::{Measured, Trial};
use crate::baking::diagnosis::{self, Seen};

impl Trial {
    /// What was seen and measured. What the oven was set to is no measurement of its heat, and stands in the recipe as baked.
    pub fn evidence(&self, found: &Measured) -> Seen {
        Seen {
            signs: self.seen.clone(),
            measured: diagnosis::Measured {
                crumb_ph: found.crumb_ph,
                core: found.core,
                oven: found.oven_read,
                bake_minutes: found.minutes,
                waited_minutes: found.waited,
                mass_in: found.mass_in,
                mass_out: found.mass_out,
                height_centre: found.centre,
                height_edge: found.edge,
            },
        }
    }
}

//! Bakes held against one another: what they say, the next one worth doing, and what its proposals come to.

#[path = "comparison/answers.rs"]
mod answers;
#[path = "comparison/proposals.rs"]
mod proposals;
#[path = "comparison/simulated.rs"]
mod simulated;

use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::quantity::LengthUnit;
use batterwright::baking::trial::Trial;
use batterwright::baking::worksheet::{Inputs, Settings, WeighIn};

fn settings() -> Settings {
    Settings {
        region: Region::Uk,
        lengths: LengthUnit::Centimetres,
        ..Settings::default()
    }
}

/// A bake of an invented cake.
fn bake(sugar: f64, soda: f64) -> Trial {
    let text = format!(
        "Quay loaf\n\n200 g plain flour\n{sugar} g caster sugar\n{soda} g baking soda\n180 g buttermilk\n60 g sunflower oil\n\nStir it all. Bake in a 20 cm round tin at 180 C for 35 minutes."
    );
    let own = Larder::of(Region::Uk).own;
    Trial::of(
        &Inputs::of_text(&text),
        &settings(),
        own,
        &WeighIn::default(),
        1000,
    )
}

//! How long five hundred bakes take to be compared, in milliseconds: one line of JSON. Called by the bench.

use batterwright::baking::comparison::{
    Factor, Outcome, Question, answer, beside, factor_choices, next_bake,
};
use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::statistics::best::Wish;
use batterwright::baking::trial::{OutcomeField, Trial};
use batterwright::baking::worksheet::{Inputs, Settings, WeighIn};
use std::time::Instant;

const TEXT: &str = "Lighthouse slab\n\n250 g plain flour\n160 g brown sugar\n5 g baking soda\n180 g buttermilk\n70 g sunflower oil\n\nStir it all together in a bowl.\nBake in a 20 cm square tin at 180 C for 35 minutes.";
const BAKES: usize = 500;
const TIMES: u32 = 20;

fn main() {
    let settings = Settings::default();
    let trials: Vec<Trial> = (0..BAKES).map(|at| bake(at, &settings)).collect();
    let trials: Vec<&Trial> = trials.iter().collect();
    let mut factors = factor_choices(&trials, &settings).into_iter();
    let sugar = factors.next().expect("the sugar differs").factor;
    let ask = |factor: &Factor| {
        let wish = Some(Wish::Largest);
        answer(&trials, factor, Outcome::Centre, wish, &settings)
    };
    let observations = ask(&sugar).observations();
    let question = Question {
        factor: sugar.words(),
        unit: " g",
        now: 160.0,
        low: 96.0,
        high: 224.0,
        step: 1.0,
        predicted: None,
        wish: Wish::Largest,
        usual: Outcome::Centre.usual(&settings),
    };
    println!(
        "{{\"choices\": {:.2}, \"beside\": {:.2}, \"answer\": {:.2}, \"oven\": {:.2}, \"next\": {:.2}}}",
        time(|| factor_choices(&trials, &settings).len()),
        time(|| beside(&trials, &[BAKES - 2, BAKES - 1], &settings).len()),
        time(|| ask(&sugar).says.len()),
        time(|| ask(&Factor::Oven).says.len()),
        time(|| next_bake(&question, &observations).says.len()),
    );
}

fn time(what: impl Fn() -> usize) -> f64 {
    let start = Instant::now();
    for _ in 0..TIMES {
        std::hint::black_box(what());
    }
    start.elapsed().as_secs_f64() * 1000.0 / f64::from(TIMES)
}

/// An invented bake: its sugar and its height differ from the others'.
fn bake(at: usize, settings: &Settings) -> Trial {
    let own = Larder::of(Region::Us).own;
    let inputs = Inputs::of_text(TEXT);
    let mut trial = Trial::of(&inputs, settings, own, &WeighIn::default(), at as u64);
    let sugar = 120.0 + (at * 37 % 90) as f64;
    trial.weights[1].grams = Some(sugar);
    let height = 6.0 - ((sugar - 165.0) / 30.0_f64).powi(2) + (at * 7919 % 100) as f64 / 300.0;
    trial.say(OutcomeField::HeightCentre, format!("{height:.2} cm"));
    trial.say(OutcomeField::HeightEdge, "4.1 cm".to_owned());
    trial.say(OutcomeField::Minutes, (30 + at % 9).to_string());
    trial
}

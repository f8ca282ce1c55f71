//! Bakes that were printed, beside ours: the times of charts, manuals and studies.
//!
//! Pan, batter, oven and minutes are theirs. What they don't say is ours: composition by the kind of cake (textbook
//! formulas, from memory), bright pans, a batter of 22 C, one oven of each kind. Skewer, spring and colour end most of
//! them. Those marked as tuned on set the convection of still air and of a bakery's fan, the dip of a full deck, and
//! when a top counts as coloured; the rest was in view when how well vapour
//! travels was weighed, between charts and loaves: expect less of fresh ones. The width of the range was set so that nine in ten
//! fall within it.

use super::kitchen::{batter, core, load};
use batterwright::baking::oven::forecast::{Ask, Forecast, Known, Setup, forecast};
use batterwright::baking::oven::heat::mesh::{Symmetry, Vessel};
use batterwright::baking::oven::kitchen::oven;
use batterwright::baking::oven::scale::OvenKind;
use batterwright::baking::oven::slices::Slices;
use batterwright::baking::pan::Finish;
use batterwright::baking::quantity::{Pressure, Temperature};
use std::collections::BTreeMap;
use std::f64::consts::PI;

struct Bake {
    source: &'static str,
    words: String,
    setup: Setup,
    minutes: [f64; 2],
    tuned: bool,
}

fn bakes() -> Vec<Bake> {
    include_str!("bakes.tsv")
        .lines()
        .skip(1)
        .map(bake)
        .collect()
}

fn bake(line: &'static str) -> Bake {
    let cells: Vec<&str> = line.split('\t').collect();
    let figure = |cell: &str| cell.parse::<f64>().expect("a figure");
    let batter = batter(cells[1]);
    let (amount, unit) = cells[5].split_once(' ').expect("an amount");
    let millilitres = match unit {
        "ml" => figure(amount),
        _ => figure(amount) / (batter.density / 1000.0),
    };
    let cubic = millilitres * 1e-6;
    let deep = cells[4].parse().unwrap_or(38.1) / 1000.0;
    let sides = || {
        let (length, width) = cells[3].split_once('x').expect("two sides");
        (figure(length) / 1000.0, figure(width) / 1000.0)
    };
    let (vessel, depth) = match cells[2] {
        "round" => {
            let half = figure(cells[3]) / 2000.0;
            (
                Vessel::straight(Symmetry::Axis, half, deep),
                cubic / (PI * half * half),
            )
        }
        // A round of the same area.
        "square" => {
            let side = figure(cells[3]) / 1000.0;
            let vessel = Vessel::straight(Symmetry::Axis, side / PI.sqrt(), deep);
            (vessel, cubic / (side * side))
        }
        "oblong" => {
            let (length, width) = sides();
            let vessel = Vessel::straight(Symmetry::Slab, width / 2.0, deep);
            (vessel, cubic / (length * width))
        }
        // Walls that close by 9.5 mm on each side; the ends of the loaf count as in a product of slabs.
        "loaf" => {
            let (length, width) = sides();
            let half = 0.5 / (length.powi(-2) + width.powi(-2)).sqrt();
            let base = half * (width - 0.019) / width;
            let vessel = Vessel {
                symmetry: Symmetry::Slab,
                levels: vec![[0.0, 0.0, base], [deep, 0.0, half]],
                brim: deep,
            };
            (vessel, cubic / ((length - 0.012) * (width - 0.012)))
        }
        // 2 in at the base, 2.75 at the brim, 1.5 deep.
        _ => {
            let [base, brim] = [0.0254, 0.0349];
            let vessel = Vessel {
                symmetry: Symmetry::Axis,
                levels: vec![[0.0, 0.0, base], [deep, 0.0, brim]],
                brim: deep,
            };
            let held = |depth: f64| {
                let top = base + (brim - base) * depth / deep;
                PI / 3.0 * depth * (base * base + base * top + top * top)
            };
            let depth = (1..1000)
                .map(|tenth| f64::from(tenth) * 1e-4)
                .find(|depth| held(*depth) >= cubic);
            (vessel, depth.expect("a cup that holds it"))
        }
    };
    let kind = match cells[9] {
        "deck" => OvenKind::Deck,
        "brisk" => OvenKind::Brisk,
        _ => OvenKind::Still,
    };
    Bake {
        source: cells[0],
        words: format!(
            "{} {} {} {}, {} C",
            cells[1], cells[2], cells[3], cells[5], cells[6]
        ),
        setup: Setup {
            load: load(batter, cells[1], vessel, depth, Finish::Bright),
            oven: oven(
                kind,
                Temperature::celsius(figure(cells[6])),
                Pressure::ATMOSPHERE,
            ),
            core: core(cells[1]),
        },
        minutes: [figure(cells[7]), figure(cells[8])],
        tuned: cells[10] == "tuned on",
    }
}

fn told(known: Vec<Known>, asked: Vec<Setup>) -> Vec<Option<Forecast>> {
    Slices::of(forecast(Ask {
        known,
        asked,
        airs: None,
    }))
    .at_once()
    .bakes
}

fn mean_and_deviation(logs: &[f64]) -> (f64, f64) {
    let mean = logs.iter().sum::<f64>() / logs.len() as f64;
    let square = logs.iter().map(|log| (log - mean).powi(2)).sum::<f64>() / logs.len() as f64;
    (mean, square.sqrt())
}

/// Without any known bake. Of those that it was not tuned on, half are within 15 %.
#[test]
fn bakes_that_were_printed() {
    let mut by: BTreeMap<(bool, &str), Vec<f64>> = BTreeMap::new();
    let (mut within, mut covered, mut all) = (0, 0, 0);
    for bake in bakes() {
        let found = told(Vec::new(), vec![bake.setup.clone()])
            .remove(0)
            .expect("a bake that ends");
        let [low, high] = bake.minutes;
        let middle = (low + high) / 2.0;
        let [early, minutes, late] = found.minutes;
        println!(
            "{:38} {:44} printed {low:2} to {high:2} min, ours {minutes:4.1} ({early:4.1} to {late:4.1}), {:+3.0} %, core {:.0}, coloured {:.0}, lost {:.1} %{}",
            bake.source,
            bake.words,
            (minutes / middle - 1.0) * 100.0,
            found.core,
            found.coloured,
            found.lost * 100.0,
            if bake.tuned { ", tuned on" } else { "" },
        );
        by.entry((bake.tuned, bake.source))
            .or_default()
            .push((minutes / middle).ln());
        if !bake.tuned {
            all += 1;
            within += usize::from((minutes / middle - 1.0).abs() <= 0.15);
            covered += usize::from(early <= high && late >= low);
        }
    }
    for ((tuned, source), logs) in &by {
        let (mean, deviation) = mean_and_deviation(logs);
        println!(
            "{source:38} {:2} bakes: ours {:.2} times theirs, apart by {:.0} %{}",
            logs.len(),
            mean.exp(),
            deviation * 100.0,
            if *tuned { ", tuned on" } else { "" }
        );
    }
    println!("not tuned on: {within} of {all} within 15 %, {covered} within our spread");
    assert!(within * 2 >= all && covered * 10 >= all * 9);
}

/// From one pan of a chart to all others of it: what a baker asks who knows one bake.
#[test]
fn from_a_known_bake_to_the_others_of_its_chart() {
    let bakes = bakes();
    let (mut within, mut covered, mut all) = (0, 0, 0);
    let mut logs = Vec::new();
    for (source, from) in [
        ("layer chart", 2),
        ("layer chart", 8),
        ("layer chart, older printing", 1),
        ("Gisslen scaling table, from memory", 1),
        ("domestic gas-range manual", 0),
    ] {
        let chart: Vec<&Bake> = bakes.iter().filter(|bake| bake.source == source).collect();
        let known = Known {
            setup: chart[from].setup.clone(),
            minutes: chart[from].minutes,
            same_oven: true,
        };
        for bake in chart
            .iter()
            .filter(|bake| bake.setup.core == chart[from].setup.core)
        {
            let found = told(vec![known.clone()], vec![bake.setup.clone()])
                .remove(0)
                .expect("a bake that ends");
            let [low, high] = bake.minutes;
            let middle = (low + high) / 2.0;
            let [early, minutes, late] = found.minutes;
            println!(
                "from {:36} to {:36} printed {low:2} to {high:2} min, ours {minutes:4.1} ({early:4.1} to {late:4.1}), {:+3.0} %",
                chart[from].words,
                bake.words,
                (minutes / middle - 1.0) * 100.0
            );
            if !std::ptr::eq(*bake, chart[from]) {
                all += 1;
                logs.push((minutes / middle).ln());
                within += usize::from((minutes / middle - 1.0).abs() <= 0.15);
                covered += usize::from(early <= high && late >= low);
            } else {
                assert!((minutes / (low * high).sqrt() - 1.0).abs() < 1e-9);
            }
        }
    }
    let (mean, deviation) = mean_and_deviation(&logs);
    println!(
        "{within} of {all} within 15 %, {covered} within our spread; ours {:.2} times theirs, apart by {:.0} %",
        mean.exp(),
        deviation * 100.0
    );
    assert!(within * 10 >= all * 7 && covered * 10 >= all * 9);
}

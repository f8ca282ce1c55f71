//! Recipes moved to a height: five cakes beside the tables of extensions, and laws.

use batterwright::baking::chemistry::bowl;
use batterwright::baking::chemistry::course::Handling;
use batterwright::baking::formula::{Formula, Habits, weigh};
use batterwright::baking::ingredient::{Larder, PieceSize, Region};
use batterwright::baking::oven::air::pressure;
use batterwright::baking::oven::altitude::{Factor, Limits, Move, Moved, with_weights};
use batterwright::baking::oven::altitude_table::{Change, limits, told};
use batterwright::baking::quantity::{Height, Mass, Ph, Pressure};
use batterwright::baking::recipe::read;
use batterwright::baking::worksheet::{AltitudeSheet, Inputs, Settings, worksheet};

/// Textbook formulas of the trade, in grams.
const CAKES: [(&str, &str); 5] = [
    (
        "yellow layer",
        "200 g cake flour\n200 g sugar\n100 g butter\n110 g egg\n130 g milk\n9 g baking powder\n3 g salt",
    ),
    (
        "high-ratio white",
        "200 g cake flour\n250 g sugar\n100 g shortening\n134 g egg white\n200 g skimmed milk\n12.5 g baking powder\n4 g salt",
    ),
    (
        "devil's food",
        "200 g cake flour\n266 g sugar\n34 g cocoa powder\n116 g shortening\n134 g egg\n234 g buttermilk\n6 g baking soda\n4 g salt",
    ),
    (
        "plant-based oil cake",
        "200 g plain flour\n210 g sugar\n78 g sunflower oil\n252 g water\n16 g vinegar\n5 g baking soda\n3 g salt",
    ),
    (
        "muffins",
        "200 g plain flour\n100 g sugar\n80 g butter\n60 g egg\n140 g milk\n12 g baking powder\n2 g salt",
    ),
];

fn formula(lines: &str) -> Formula {
    let text = format!("Cake\nIngredients\n{lines}");
    let recipe = read(&text, Larder::of(Region::Us), &[]);
    let habits = Habits {
        region: Region::Us,
        filling: None,
        eggs: PieceSize::Large,
    };
    let formula = weigh(&recipe, &habits);
    assert!(formula.unweighed.is_empty(), "{lines}");
    formula
}

fn air(metres: f64) -> Pressure {
    pressure(Height::metres(metres)).expect("dry land")
}

fn ph(formula: &Formula) -> Option<Ph> {
    bowl(formula, &Handling::default()).map(|bowl| bowl.batter_ph.mean)
}

fn at(formula: &Formula, from: f64, to: f64, limits: &Limits) -> Moved {
    by_ph(formula, ph(formula), (from, to), limits)
}

fn by_ph(formula: &Formula, ph: Option<Ph>, way: (f64, f64), limits: &Limits) -> Moved {
    on_its_way(formula, ph, way, &mut |it| it.within(limits))
}

fn on_its_way<R>(
    formula: &Formula,
    ph: Option<Ph>,
    (from, to): (f64, f64),
    then: &mut dyn FnMut(&Move) -> R,
) -> R {
    let handling = Handling {
        air: air(from).to_atmospheres(),
        ..Handling::default()
    };
    let moving = Move::of(formula, ph, &handling, air(from), air(to));
    then(&moving.expect("airs of this world"))
}

/// The weights of all that changes.
fn weights(moved: &Moved) -> Vec<((usize, usize), Mass)> {
    [&moved.leavening, &moved.sugar, &moved.liquid]
        .into_iter()
        .flatten()
        .flat_map(|factor| factor.lines.clone())
        .collect()
}

fn factor(of: &Option<Factor>) -> f64 {
    of.as_ref().map_or(1.0, |it| it.factor)
}

/// Where the tables stand, the high end of them all, by hand from `altitude.csv`: leavening and sugar as parts taken off,
/// liquid as a part added.
const TABLES: [(f64, [[f64; 2]; 3]); 4] = [
    (914.0, [[0.125, 0.25], [0.0, 0.0625], [0.0625, 0.125]]),
    (1524.0, [[0.125, 0.25], [0.0, 0.125], [0.125, 0.25]]),
    (2134.0, [[0.25, 0.5], [0.0625, 0.1875], [0.1875, 0.25]]),
    (3048.0, [[0.25, 0.5], [0.125, 0.1875], [0.1875, 0.25]]),
];

/// Five cakes at the tables' heights, printed beside them. Leavening that keeps the room, with the setting moved as far as
/// the plateau, is to lie within the tables or a tenth beside them for cakes on powder up to 2,134 m. What lies elsewhere
/// is known and told: liquid two or three times what the tables add, sugar a twentieth or so more than they take; and of
/// soda that finds no acid much has to go before any gas does.
#[test]
fn five_cakes_beside_the_tables() {
    let on_powder = ["yellow layer", "high-ratio white", "muffins"];
    let mut counts = [[0_u8; 3]; 3];
    for (name, lines) in CAKES {
        let formula = formula(lines);
        println!("{name}");
        for (metres, tables) in TABLES {
            let found = at(&formula, 0.0, metres, &Limits::FAR);
            let ours = [
                1.0 - factor(&found.leavening),
                1.0 - factor(&found.sugar),
                factor(&found.liquid) - 1.0,
            ];
            println!(
                "  {metres} m: syrup boils {:.2} C cooler, sets at {:.1} C, to set at {:.1} C, room x {:.3}",
                -found.plateau,
                found.set_at.expect("a setting"),
                found.sets_at.expect("a setting"),
                on_its_way(&formula, ph(&formula), (0.0, metres), &mut |it| it
                    .more_room())
                .expect("gas"),
            );
            for (at, [low, high]) in tables.into_iter().enumerate() {
                let what = ["leavening less", "sugar less", "liquid more"][at];
                println!("    {what} {:.3}, tables {low} to {high}", ours[at]);
                let side =
                    usize::from(ours[at] >= low - 0.005) + usize::from(ours[at] > high + 0.005);
                counts[at][side] += 1;
            }
            let [low, high] = tables[0];
            if on_powder.contains(&name) && metres < 3000.0 {
                assert!(
                    ours[0] > low - 0.1 && ours[0] < high + 0.1,
                    "{name} at {metres} m: {}",
                    ours[0]
                );
            }
        }
    }
    println!("below, within and above the tables: leavening, sugar, liquid {counts:?}");
}

/// The tables at their own heights, half-way between two, below the lowest and above the highest: by hand.
#[test]
fn the_tables_are_drawn_straight_between_their_rows() {
    let of = |change, metres: f64, key: &str| {
        told(change, Height::metres(metres))
            .into_iter()
            .find(|it| it.cited.source.key == key)
            .map(|it| (it.low, it.high))
    };
    let wyoming = "wyoming_extension";
    assert_eq!(of(Change::Leavening, 914.0, wyoming), Some((0.125, 0.125)));
    assert_eq!(
        of(Change::Leavening, 1219.0, wyoming),
        Some((0.125, 0.1875))
    );
    assert_eq!(of(Change::Sugar, 1524.0, wyoming), Some((0.0, 0.125)));
    assert_eq!(of(Change::Liquid, 1829.0, wyoming), Some((0.15625, 0.25)));
    assert_eq!(of(Change::Oven, 2134.0, wyoming), Some((15.0, 25.0)));
    assert_eq!(of(Change::Liquid, 913.0, wyoming), Some((0.0, 0.0)));
    assert_eq!(of(Change::Liquid, 2135.0, wyoming), None);
    assert_eq!(of(Change::Oven, 1524.0, "us_home_economics"), None);
    assert_eq!(
        of(Change::Leavening, 3400.0, "colorado_extension"),
        Some((0.25, 0.5))
    );
    let far = limits(Height::SEA, Height::metres(1524.0));
    assert!((far.liquid - 1.25_f64.ln()).abs() < 1e-9, "{far:?}");
    assert!((far.sugar + 0.875_f64.ln()).abs() < 1e-9, "{far:?}");
    assert!((far.leavening + 0.75_f64.ln()).abs() < 1e-9, "{far:?}");
    // Half of the way to the lowest row, half of what it asks for.
    let half = limits(Height::SEA, Height::metres(457.0));
    assert!((half.liquid - 1.0625_f64.ln()).abs() < 1e-9, "{half:?}");
}

#[test]
fn at_the_sea_nothing_changes() {
    for (name, lines) in CAKES {
        let formula = formula(lines);
        for metres in [0.0, 1600.0] {
            let found = at(&formula, metres, metres, &Limits::FAR);
            assert_eq!(found.plateau, 0.0, "{name}");
            for of in [&found.leavening, &found.sugar, &found.liquid] {
                assert_eq!(factor(of), 1.0, "{name} at {metres} m");
            }
        }
    }
}

/// The higher, the less leavening and sugar, and the more liquid; with the tables' limits and without.
#[test]
fn higher_never_wants_more_leavening() {
    for (name, lines) in CAKES {
        let formula = formula(lines);
        for near in [false, true] {
            let mut before = [1.0; 3];
            for metres in (1..=7).map(|step| 500.0 * f64::from(step)) {
                let limits = if near {
                    limits(Height::SEA, Height::metres(metres))
                } else {
                    Limits::FAR
                };
                let found = at(&formula, 0.0, metres, &limits);
                let now = [
                    factor(&found.leavening),
                    factor(&found.sugar),
                    1.0 / factor(&found.liquid),
                ];
                for (now, before) in now.iter().zip(before) {
                    assert!(
                        *now <= before + 2e-3,
                        "{name} at {metres} m: {now} after {before}"
                    );
                }
                before = now;
            }
        }
    }
}

/// Up to 1,600 m and down again, every weight is what it was. Soda that finds no acid is met less closely: the course
/// meets its pressures to 0.3 %, and in those two cakes the soda changes five times as much as the gas.
#[test]
fn there_and_back_is_where_it_began() {
    for (name, lines) in CAKES {
        let there = formula(lines);
        let ph = ph(&there);
        let up = by_ph(&there, ph, (0.0, 1600.0), &Limits::FAR);
        if !up.sets_as_before {
            continue;
        }
        let here = with_weights(&there, &weights(&up));
        let down = by_ph(&here, ph, (1600.0, 0.0), &Limits::FAR);
        let back = with_weights(&here, &weights(&down));
        for (before, after) in there.batter().zip(back.batter()) {
            let ratio = after.grams.mean / before.grams.mean;
            let met = match before.ingredient.key {
                "baking_soda" => 0.04,
                _ => 0.01,
            };
            assert!(
                (ratio - 1.0).abs() < met,
                "{name}, line {}: {ratio}",
                before.line
            );
        }
    }
}

/// What has nothing to change says so by having no factor: a sponge on beaten egg has no leavening and no liquid.
#[test]
fn what_is_not_there_has_no_factor() {
    let sponge = formula("200 g egg\n120 g sugar\n120 g plain flour");
    let found = at(&sponge, 0.0, 1524.0, &Limits::FAR);
    assert!(found.leavening.is_none() && found.liquid.is_none());
    assert!(factor(&found.sugar) < 1.0);
    let raised = formula("200 g self-raising flour\n200 g sugar\n200 g butter\n200 g egg");
    let found = at(&raised, 0.0, 1524.0, &Limits::FAR);
    assert!(found.leavening.is_none() && found.is_in_flour);
}

const LAYER: &str = "Layer cake\nIngredients\n200 g cake flour\n200 g sugar\n100 g butter\n110 g egg\n130 g milk\n9 g baking powder\n3 g salt";

fn sheet(inputs: &Inputs, height: &str) -> Option<AltitudeSheet> {
    let settings = Settings {
        height: height.into(),
        ..Settings::default()
    };
    worksheet(inputs, &settings).altitude
}

#[test]
fn a_low_kitchen_has_no_sheet() {
    let inputs = Inputs::of_text(LAYER);
    for height in ["", "0", "299 m", "-300 m", "high", "1600"] {
        assert_eq!(sheet(&inputs, height), None, "{height}");
    }
    assert_eq!(sheet(&Inputs::of_text(""), "1600 m"), None);
}

/// One touch takes the weights; the recipe is made for the height from then on and asks for nothing more there. By hand
/// from the tables at 1,524 m: not more than 25 % off the powder (6.75 g), 25 % more milk (162.5 g), 12.5 % off the sugar.
#[test]
fn the_weights_are_taken_once() {
    let inputs = Inputs::of_text(LAYER);
    let found = sheet(&inputs, "5000 ft").expect("a sheet");
    assert!(
        found.air.contains("1,524 m") && found.air.contains("94.9 °C"),
        "{}",
        found.air
    );
    let labels: Vec<&str> = found.rows.iter().map(|row| row.label).collect();
    assert_eq!(labels, ["Leavening", "Sugar", "Liquid", "Oven"]);
    let powder = &found.rows[0];
    assert_eq!(powder.stands, "within the tables");
    assert!(
        powder.tables[1].starts_with("12.5 to 25 % less: University of Wyoming"),
        "{:?}",
        powder.tables
    );
    assert!(
        found.rows[3].tables[0].starts_with("15 to 25 °F hotter"),
        "{:?}",
        found.rows[3].tables
    );
    let taken = inputs.made_for(&found);
    let after = worksheet(
        &taken,
        &Settings {
            height: "5000 ft".into(),
            ..Settings::default()
        },
    );
    let grams = |number: usize| {
        after.lines[number - 1]
            .grams
            .map_or(0.0, |grams| grams.mean)
    };
    assert!(grams(8) >= 6.7 && grams(8) < 9.0, "{}", grams(8));
    assert!(grams(7) > 130.0 && grams(7) <= 163.0, "{}", grams(7));
    assert!(grams(4) >= 175.0 && grams(4) < 200.0, "{}", grams(4));
    assert_eq!(grams(5), 100.0);
    let again = after.altitude.expect("a sheet");
    assert!(
        again.remedy.is_none() && again.words[0].contains("made for your height"),
        "{again:?}"
    );
    // Back at the sea it is a recipe for a high kitchen, and says what it wants there.
    let low = sheet(&taken, "").expect("a sheet");
    let back = worksheet(&taken.made_for(&low), &Settings::default());
    assert!(low.rows.iter().all(|row| row.tables.is_empty()), "{low:?}");
    for (line, sea) in [(4, 200.0), (7, 130.0), (8, 9.0)] {
        let grams = back.lines[line - 1].grams.map_or(0.0, |grams| grams.mean);
        assert!((grams / sea - 1.0).abs() < 0.03, "line {line}: {grams}");
    }
    assert_eq!(back.altitude, None);
}

#[test]
fn what_cannot_be_reckoned_gets_a_sentence() {
    let said = |text: &str, height: &str| {
        let found = sheet(&Inputs::of_text(text), height).expect("a sheet");
        assert!(found.remedy.is_none() && found.rows.is_empty(), "{found:?}");
        found.words.join(" ")
    };
    assert!(said(LAYER, "4000 m").contains("3,500 m"));
    let hole = format!("{LAYER}\n3 blobs curd");
    let found = sheet(&Inputs::of_text(hole.as_str()), "1600 m").expect("a sheet");
    assert!(found.words[0].contains("line 10"), "{found:?}");
    assert!(
        said(
            "Pancakes\nIngredients\n200 g flour\n300 g milk\n100 g egg\n8 g baking powder",
            "1600 m"
        )
        .contains("pancakes")
    );
    let mut wrong = Inputs::of_text(LAYER);
    wrong.choices.made_for = "up high".into();
    let found = sheet(&wrong, "1600 m").expect("a sheet");
    assert!(found.made_for_trouble.is_some() && found.remedy.is_some());
}

//! From a line's amounts to grams: a stated weight beats a cup, and a cup beats a count of pieces.

use super::{Formula, Habits, How, Place, Unweighed, Weighed};
use crate::baking::estimate::Estimate;
use crate::baking::ingredient::{
    FillingWeight, Form, Group, Ingredient, Piece, PieceSize, PieceWeight, SpoonOrCup,
};
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::{
    Amount, Aside, Level, Reading, Recipe, Role, Section, Unit, VolumeUnit,
};

/// The part of a cook's error that all scoops of one line share; the rest averages out.
/// Set from the trials quoted in `measuring_methods`: one person repeats within 3 %, people differ by 20 %.
const SHARED_ERROR: f64 = 0.7;

/// The spread of a pinch or a dash about its spoon size: half to twice (common practice, no source).
const PINCH_SPREAD: f64 = 0.35;

/// A form that no table row names is measured as the nearest row, with this much more spread.
const OTHER_FORM_SPREAD: f64 = 0.08;

/// How far a stated weight may lie outside the table's range for a cup before it is pointed out.
const DISAGREEMENT: f64 = 0.15;

/// Weighs every ingredient line of a recipe.
pub fn weigh(recipe: &Recipe, habits: &Habits) -> Formula {
    let mut formula = Formula::default();
    for line in &recipe.lines {
        let Role::Ingredient(reading) = &line.role else {
            continue;
        };
        match weigh_line(reading, habits) {
            Ok(found) => formula.lines.push(Weighed {
                line: line.number,
                ingredient: found.ingredient,
                grams: found.grams,
                how: found.how,
                place: place(reading),
                in_pieces: in_pieces(found.ingredient, reading.form),
                doubts: found.doubts,
            }),
            Err(NoWeight { why, missed }) => formula.unweighed.push(Unweighed {
                line: line.number,
                ingredient: reading.ingredient.taken(),
                place: place(reading),
                why,
                missed,
            }),
        }
    }
    formula
}

/// Where a line goes.
fn place(reading: &Reading) -> Place {
    match (reading.aside, reading.section) {
        (Some(Aside::ForThePan), _) => Place::ForThePan,
        (Some(Aside::ToServe), _) => Place::ToServe,
        (Some(Aside::Optional), _) => Place::Optional,
        (None, Section::Beside) => Place::Beside,
        (None, _) => Place::Batter,
    }
}

/// Whether it stays in pieces in the batter: fruit that is not mashed, puréed, grated or crushed, and is not
/// smooth by nature or by custom.
fn in_pieces(ingredient: &Ingredient, form: Option<Form>) -> bool {
    const SMOOTH: &[&str] = &[
        "banana",
        "puree",
        "sauce",
        "zest",
        "crushed",
        "butter",
        "paste",
        "avocado",
        "passion_fruit",
        "curd",
    ];
    let broken = matches!(
        form,
        Some(Form::Mashed | Form::Pureed | Form::Grated | Form::Crushed | Form::Ground)
    );
    matches!(ingredient.group, Group::Fruit | Group::DriedFruit)
        && !broken
        && !SMOOTH.iter().any(|word| ingredient.key.contains(word))
}

/// A weight as it was found.
struct Found {
    ingredient: &'static Ingredient,
    grams: Estimate<Mass>,
    how: How,
    doubts: Vec<String>,
}

/// Why there is no weight.
struct NoWeight {
    why: String,
    missed: bool,
}

fn weigh_line(reading: &Reading, habits: &Habits) -> Result<Found, NoWeight> {
    let Some(ingredient) = reading.ingredient.taken() else {
        return Err(NoWeight {
            why: format!(
                "No ingredient in the tables is called \"{}\". Choose one, or say that it is not an ingredient.",
                reading.name
            ),
            missed: reading.aside.is_none(),
        });
    };
    if let Some(grams) = reading.own_weight {
        return Ok(stated(
            ingredient,
            Estimate::exact(grams),
            "You gave this weight.",
        ));
    }
    let stated_weight = reading.amounts.iter().find_map(|amount| match amount.unit {
        Unit::Mass(each) => Some(counted(amount, |count| each * count)),
        _ => None,
    });
    let by_volume = reading.amounts.iter().find_map(|amount| match amount.unit {
        Unit::Volume(unit) => Some(volume(ingredient, reading, amount, unit, habits)),
        _ => None,
    });
    if let Some(grams) = stated_weight {
        let mut found = stated(
            ingredient,
            grams,
            "The recipe states this weight; it is taken before any cup.",
        );
        if let Some(Ok(cup)) = by_volume
            && (grams.mean < cup.grams.low * (1.0 - DISAGREEMENT)
                || grams.mean > cup.grams.high * (1.0 + DISAGREEMENT))
        {
            found.doubts.push(format!(
                "The two amounts disagree: the measure would be {} by the table. The stated {} is taken.",
                show::mass_range(&cup.grams).unwrap_or_else(|| show::mass(cup.grams.mean)),
                show::mass(grams.mean),
            ));
        }
        return Ok(found);
    }
    if let Some(Ok(found)) = by_volume {
        return Ok(found);
    }
    let by_piece = reading.amounts.iter().find_map(|amount| match amount.unit {
        Unit::Piece(kind) => Some(piece(ingredient, reading, amount, kind, habits)),
        _ => None,
    });
    match (by_piece, by_volume) {
        (Some(Ok(found)), _) => Ok(found),
        (_, Some(Err(no_weight))) | (Some(Err(no_weight)), _) => Err(no_weight),
        (None, _)
            if reading
                .amounts
                .iter()
                .any(|amount| amount.unit == Unit::ToTaste) =>
        {
            Err(NoWeight {
                why: "To taste: there is no amount to weigh.".into(),
                missed: false,
            })
        }
        (None, _) if reading.aside.is_some() => Err(NoWeight {
            why: "No amount, and none is needed: it stays out of the batter.".into(),
            missed: false,
        }),
        (None, _) => Err(NoWeight {
            why: "No amount stands in this line. Write one, such as \"2 cups\" or \"250 g\"."
                .into(),
            missed: reading.aside.is_none() && bears_weight(ingredient),
        }),
    }
}

/// A pinch of spice without an amount leaves no hole; flour without one does.
fn bears_weight(ingredient: &Ingredient) -> bool {
    !matches!(ingredient.group, Group::Spice | Group::Flavour)
}

fn stated(ingredient: &'static Ingredient, grams: Estimate<Mass>, sentence: &str) -> Found {
    Found {
        ingredient,
        grams,
        how: How {
            sentence: sentence.into(),
            cited: None,
        },
        doubts: Vec::new(),
    }
}

/// A range of counts as an estimate: its middle, and its ends as the spread.
fn counted(amount: &Amount, each: impl Fn(f64) -> Mass) -> Estimate<Mass> {
    Estimate::between(
        each(amount.low),
        each((amount.low + amount.high) / 2.0),
        each(amount.high),
    )
}

/// The weight of a volume: the best row of the table for this form, filling and measure.
fn volume(
    ingredient: &'static Ingredient,
    reading: &Reading,
    amount: &Amount,
    unit: VolumeUnit,
    habits: &Habits,
) -> Result<Found, NoWeight> {
    let Some((row, form_fits)) = best_row(ingredient, reading, unit, habits) else {
        return Err(NoWeight {
            why: format!(
                "No source tells what a measure of {} weighs. Weigh it once and write the grams.",
                ingredient.name
            ),
            missed: reading.aside.is_none(),
        });
    };
    let measure = row.measure.volume();
    let middle = (amount.low + amount.high) / 2.0;
    // Several scoops average out the part of the error that differs from scoop to scoop.
    let scoops = middle.round().max(1.0);
    let calm = f64::sqrt(SHARED_ERROR + (1.0 - SHARED_ERROR) / scoops);
    let size = unit.volume(habits.region);
    let each = |weight: Mass| size * (weight / measure);
    let mean = each(row.weight.mean) * middle;
    let mut errors = vec![(
        calm * (1.0 - row.weight.low / row.weight.mean),
        calm * (row.weight.high / row.weight.mean - 1.0),
    )];
    if amount.high > amount.low && middle > 0.0 {
        errors.push((1.0 - amount.low / middle, amount.high / middle - 1.0));
    }
    if !form_fits {
        errors.push((OTHER_FORM_SPREAD, OTHER_FORM_SPREAD));
    }
    if matches!(
        unit,
        VolumeUnit::Pinch | VolumeUnit::Dash | VolumeUnit::Drop
    ) {
        errors.push((PINCH_SPREAD, PINCH_SPREAD));
    }
    let (fullness, below, above) = fullness(reading.level, unit);
    errors.push((below, above));
    let mean = mean * fullness;
    let grams = spread(mean, &errors);
    let filling = row
        .filling
        .map_or(String::new(), |filling| format!(", {}", filling.words()));
    let form = row
        .form
        .map_or(String::new(), |form| format!(", {}", form.words()));
    let fullness = if fullness == 1.0 {
        String::new()
    } else {
        format!(
            ", and the measure counted {} times as full",
            show::factor(fullness)
        )
    };
    Ok(Found {
        ingredient,
        grams,
        how: How {
            sentence: format!(
                "A level US {} of {}{form}{filling} weighs {}{}; {} mL were asked for{fullness}.{}",
                row.measure.words(),
                ingredient.name,
                show::mass(row.weight.mean),
                show::mass_range(&row.weight).map_or(String::new(), |range| format!(" ({range})")),
                show::milliequivalents((size * middle).to_millilitres()),
                note(row.note),
            ),
            cited: Some(row.cited),
        },
        doubts: Vec::new(),
    })
}

/// What the table's row adds, as a sentence of its own.
fn note(words: &str) -> String {
    if words.is_empty() {
        String::new()
    } else {
        format!(" {}.", show::sentence(words))
    }
}

/// A mean with independent relative errors, each given as (below, above).
fn spread(mean: Mass, errors: &[(f64, f64)]) -> Estimate<Mass> {
    let root = |pick: fn(&(f64, f64)) -> f64| {
        errors
            .iter()
            .map(|error| pick(error).powi(2))
            .sum::<f64>()
            .sqrt()
    };
    let (below, above) = (root(|error| error.0), root(|error| error.1));
    Estimate::between(mean * (1.0 - below).max(0.0), mean, mean * (1.0 + above))
}

/// How full a measure is against level, and the spread of that: common practice, no source.
fn fullness(level: Level, unit: VolumeUnit) -> (f64, f64, f64) {
    let cup = matches!(unit, VolumeUnit::Cup | VolumeUnit::Pint | VolumeUnit::Quart);
    match level {
        Level::Level => (1.0, 0.0, 0.0),
        Level::Scant => (0.92, 0.07, 0.03),
        Level::Generous => (1.10, 0.05, 0.05),
        Level::Rounded if cup => (1.12, 0.06, 0.06),
        Level::Rounded => (1.5, 0.2, 0.2),
        Level::Heaped if cup => (1.25, 0.05, 0.05),
        Level::Heaped => (2.0, 0.15, 0.25),
    }
}

/// The table row that fits best, and whether its form is the one asked for.
fn best_row(
    ingredient: &'static Ingredient,
    reading: &Reading,
    unit: VolumeUnit,
    habits: &Habits,
) -> Option<(&'static FillingWeight, bool)> {
    let rows = &ingredient.fillings;
    let wanted = reading.form;
    let has_form = wanted.is_none() || rows.iter().any(|row| row.form == wanted);
    let form: Option<Form> = if has_form { wanted } else { None };
    let fits = rows.iter().filter(|row| row.form == form);
    // Without a row for the plain thing, any form will do, with more spread.
    let mut fits: Vec<&FillingWeight> = fits.collect();
    let form_fits = has_form && !fits.is_empty();
    if fits.is_empty() {
        fits = rows.iter().collect();
    }
    let filling = reading.filling.or(habits.filling);
    let spoon = matches!(
        unit,
        VolumeUnit::Tablespoon
            | VolumeUnit::Dessertspoon
            | VolumeUnit::Teaspoon
            | VolumeUnit::Pinch
            | VolumeUnit::Dash
            | VolumeUnit::Drop
    );
    fits.into_iter()
        .max_by_key(|row| {
            let filling_rank = match (row.filling, filling) {
                (have, want) if have == want => 2,
                (None, _) => 1,
                _ => 0,
            };
            (
                filling_rank,
                u8::from((row.measure != SpoonOrCup::Cup) == spoon),
            )
        })
        .map(|row| (row, form_fits))
}

/// The weight of so many pieces.
fn piece(
    ingredient: &'static Ingredient,
    reading: &Reading,
    amount: &Amount,
    kind: Piece,
    habits: &Habits,
) -> Result<Found, NoWeight> {
    let is_egg = ingredient.group == Group::Egg;
    let size = reading.size.or_else(|| is_egg.then_some(habits.eggs));
    let row = ingredient
        .pieces
        .iter()
        .filter(|row| row.piece == kind)
        .filter(|row| row.region.is_none_or(|region| region == habits.region))
        .max_by_key(|row: &&PieceWeight| {
            let size_rank = match (row.size, size) {
                (have, want) if have == want => 3,
                (Some(PieceSize::Medium), None) => 2,
                (None, _) => 1,
                _ => 0,
            };
            (size_rank, row.region.is_some())
        });
    let Some(row) = row else {
        return Err(NoWeight {
            why: format!(
                "No source tells what one {} of {} weighs. Weigh it and write the grams.",
                kind.words(),
                ingredient.name
            ),
            missed: reading.aside.is_none(),
        });
    };
    let middle = (amount.low + amount.high) / 2.0;
    // Pieces differ from one another more than from dozen to dozen; half of the error is shared.
    let calm = f64::sqrt(0.5 + 0.5 / middle.max(1.0));
    let mut errors = vec![(
        calm * (1.0 - row.weight.low / row.weight.mean),
        calm * (row.weight.high / row.weight.mean - 1.0),
    )];
    if amount.high > amount.low && middle > 0.0 {
        errors.push((1.0 - amount.low / middle, amount.high / middle - 1.0));
    }
    let class = row
        .size
        .map_or(String::new(), |size| format!("{} ", size.words()));
    Ok(Found {
        ingredient,
        grams: spread(row.weight.mean * middle, &errors),
        how: How {
            sentence: format!(
                "One {class}{} of {} weighs {}{} ready for the bowl.{}",
                kind.words(),
                ingredient.name,
                show::mass(row.weight.mean),
                show::mass_range(&row.weight).map_or(String::new(), |range| format!(" ({range})")),
                note(row.note),
            ),
            cited: Some(row.cited),
        },
        doubts: Vec::new(),
    })
}

//! The weight of a volume: which row of the table, how full the measure, how many scoops.

use super::{Found, How, NoWeight, note};
use crate::baking::estimate::Estimate;
use crate::baking::formula::Habits;
use crate::baking::ingredient::{FillingWeight, Form, Ingredient, SpoonOrCup};
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::{Amount, Level, Reading, VolumeUnit};

/// The part of a cook's error that all scoops of one line share; the rest averages out.
/// Set from the trials quoted in `measuring_methods`: one person repeats within 3 %, people differ by 20 %.
const SHARED_ERROR: f64 = 0.7;

/// The spread of a pinch or a dash about its spoon size: half to twice (common practice, no source).
const PINCH_SPREAD: f64 = 0.35;

/// The spread of a measure that nobody defined, about what it is taken as: old books' teacups range from 5 to 8 fluid
/// ounces, and a splash more than that (common practice, no source).
const LOOSE_SPREAD: f64 = 0.35;

/// A form that no table row names is measured as the nearest row, with this much more spread.
const OTHER_FORM_SPREAD: f64 = 0.08;

/// The weight of a volume: the best row of the table for this form, filling and measure.
pub(super) fn weight(
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
    if reading.is_loose {
        errors.push((LOOSE_SPREAD, LOOSE_SPREAD));
    }
    let (fullness, below, above) = fullness(reading.level, unit);
    errors.push((below, above));
    let mean = mean * fullness;
    let grams = Estimate::apart(mean, &errors);
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
            others: others(ingredient, row),
        },
        doubts: Vec::new(),
    })
}

/// What other sources say of the same measure in the same state: "Other sources, by the cup: 120 g (labels), 130 g (...)".
fn others(ingredient: &Ingredient, row: &FillingWeight) -> String {
    let said: Vec<String> = ingredient
        .others
        .iter()
        .filter(|other| other.measure == row.measure && other.form == row.form)
        .map(|other| {
            let filling = other
                .filling
                .map_or(String::new(), |filling| format!("{}, ", filling.words()));
            format!(
                "{} ({filling}{})",
                show::mass(other.weight.mean),
                other.cited.source.citation
            )
        })
        .collect();
    if said.is_empty() {
        return String::new();
    }
    format!(
        "Not in use, for a {}: {}.",
        row.measure.words(),
        said.join("; ")
    )
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
    let measure = match unit {
        VolumeUnit::Tablespoon => SpoonOrCup::Tablespoon,
        VolumeUnit::Dessertspoon
        | VolumeUnit::Teaspoon
        | VolumeUnit::Pinch
        | VolumeUnit::Dash
        | VolumeUnit::Drop => SpoonOrCup::Teaspoon,
        _ => SpoonOrCup::Cup,
    };
    let is_spoon = |measure| measure != SpoonOrCup::Cup;
    fits.into_iter()
        .max_by_key(|row| {
            let filling_rank = match (row.filling, filling) {
                (have, want) if have == want => 2,
                (None, _) => 1,
                _ => 0,
            };
            (
                filling_rank,
                u8::from(is_spoon(row.measure) == is_spoon(measure)),
                u8::from(row.measure == measure),
            )
        })
        .map(|row| (row, form_fits))
}

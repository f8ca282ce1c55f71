//! From a line's amounts to grams: a stated weight beats a cup, and a cup beats a count of pieces.

mod piece;
mod volume;

use super::{Formula, Habits, How, Place, Unweighed, Weighed};
use crate::baking::estimate::Estimate;
use crate::baking::ingredient::{Form, Group, Ingredient};
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::{Amount, Aside, Reading, Recipe, Role, Section, Unit};

/// How far a stated weight may lie outside the table's range for a cup before it is pointed out.
const DISAGREEMENT: f64 = 0.15;

/// Weighs every ingredient line of a recipe.
pub fn weigh(recipe: &Recipe, habits: &Habits) -> Formula {
    let mut formula = Formula::default();
    for line in &recipe.lines {
        let Role::Ingredient(reading) = &line.role else {
            continue;
        };
        for (part, reading) in reading.all().enumerate() {
            match weigh_line(reading, habits) {
                Ok(found) => formula.lines.push(Weighed {
                    line: line.number,
                    part,
                    ingredient: found.ingredient,
                    grams: found.grams,
                    how: found.how,
                    place: place(reading),
                    in_pieces: in_pieces(found.ingredient, reading.form),
                    doubts: found.doubts,
                }),
                Err(NoWeight { why, missed }) => formula.unweighed.push(Unweighed {
                    line: line.number,
                    part,
                    ingredient: reading.ingredient.taken(),
                    place: place(reading),
                    why,
                    missed,
                }),
            }
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
        Unit::Volume(unit) => Some(volume::weight(ingredient, reading, amount, unit, habits)),
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
        Unit::Piece(kind) => Some(piece::weight(ingredient, reading, amount, kind, habits)),
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
            others: String::new(),
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

/// What the table's row adds, as a sentence of its own.
fn note(words: &str) -> String {
    if words.is_empty() {
        String::new()
    } else {
        format!(" {}.", show::sentence(words))
    }
}

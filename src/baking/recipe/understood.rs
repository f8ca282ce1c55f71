//! One short sentence that says how an ingredient line was understood.

use super::{Amount, Aside, Level, Reading, Unit, VolumeUnit};
use crate::baking::ingredient::{Filling, Form, Piece, PieceSize};
use crate::baking::quantity::{Mass, show};

/// The sentence: "1 1/2 cups of all-purpose (plain) flour, packed; also 180 g".
pub fn understood(reading: &Reading) -> String {
    let name = reading
        .ingredient
        .taken()
        .map_or(reading.name.as_str(), |ingredient| ingredient.name);
    let mut text = match reading.amounts.first() {
        None => format!("{name}, no amount"),
        Some(amount) => match (amount.unit, reading.size) {
            (Unit::ToTaste, _) => format!("{name}, to taste"),
            (Unit::Piece(Piece::Each), Some(size)) => {
                format!("{name}: {}, {}", count(amount), size_word(size))
            }
            (Unit::Piece(Piece::Each), None) => format!("{name}: {}", count(amount)),
            _ => match (level_word(reading.level), written(amount)) {
                ("", measure) => format!("{measure} of {name}"),
                (level, measure) => {
                    let figures = count(amount);
                    let unit = measure.strip_prefix(&figures).unwrap_or(&measure);
                    format!("{figures} {level}{unit} of {name}")
                }
            },
        },
    };
    let said = [
        reading.form.map(form_word),
        reading.filling.map(|filling| match filling {
            Filling::Dipped => "dipped",
            Filling::Spooned => "spooned",
            Filling::Sifted => "sifted first",
        }),
        reading.aside.map(|aside| match aside {
            Aside::Optional => "optional",
            Aside::ToServe => "to serve",
            Aside::ForThePan => "for the pan",
        }),
    ];
    for word in said.into_iter().flatten() {
        text.push_str(", ");
        text.push_str(word);
    }
    for amount in reading.amounts.iter().skip(1) {
        text.push_str("; also ");
        text.push_str(&written(amount));
    }
    if let Some(weight) = reading.own_weight {
        text.push_str(&format!("; you say {} g", figure(weight.to_grams())));
    }
    text
}

/// An amount with its unit.
pub fn written(amount: &Amount) -> String {
    let plural = if amount.high > 1.0 { "s" } else { "" };
    let count = count(amount);
    match amount.unit {
        Unit::Mass(mass) if mass == Mass::OUNCE => format!("{count} oz"),
        Unit::Mass(mass) if mass == Mass::POUND => format!("{count} lb"),
        Unit::Mass(mass) if mass == Mass::GRAM => format!("{count} g"),
        Unit::Mass(mass) if mass == Mass::grams(1000.0) => format!("{count} kg"),
        Unit::Mass(mass) => format!("{} g", figure(amount.high * mass.to_grams())),
        Unit::Volume(unit) => {
            let word = match unit {
                VolumeUnit::Cup => "cup",
                VolumeUnit::Tablespoon => "tablespoon",
                VolumeUnit::Dessertspoon => "dessertspoon",
                VolumeUnit::Teaspoon => "teaspoon",
                VolumeUnit::FluidOunce => "fluid ounce",
                VolumeUnit::Gill => "gill",
                VolumeUnit::Pint => "pint",
                VolumeUnit::Quart => "quart",
                VolumeUnit::Gallon => "gallon",
                VolumeUnit::Millilitre => return format!("{count} mL"),
                VolumeUnit::Centilitre => return format!("{count} cL"),
                VolumeUnit::Decilitre => return format!("{count} dL"),
                VolumeUnit::Litre => return format!("{count} L"),
                VolumeUnit::Pinch => {
                    return format!("{count} pinch{}", if amount.high > 1.0 { "es" } else { "" });
                }
                VolumeUnit::Dash => {
                    return format!("{count} dash{}", if amount.high > 1.0 { "es" } else { "" });
                }
                VolumeUnit::Drop => "drop",
            };
            format!("{count} {word}{plural}")
        }
        Unit::Piece(piece) => {
            let word = match piece {
                Piece::Each => "piece",
                Piece::Stick => "stick",
                Piece::Slice => "slice",
                Piece::Stalk => "stalk",
                Piece::Square => "square",
                Piece::Bar => "bar",
                Piece::Packet => "packet",
                Piece::Can => "can",
                Piece::Block => "block",
                Piece::Pot => "pot",
                Piece::Knob => "knob",
                Piece::Pinch => {
                    return format!("{count} pinch{}", if amount.high > 1.0 { "es" } else { "" });
                }
                Piece::Dash => {
                    return format!("{count} dash{}", if amount.high > 1.0 { "es" } else { "" });
                }
                Piece::Drop => "drop",
                Piece::Handful => "handful",
                Piece::Inch => {
                    return format!("{count} inch{}", if amount.high > 1.0 { "es" } else { "" });
                }
                Piece::Pod => "pod",
                Piece::Sprig => "sprig",
            };
            format!("{count} {word}{plural}")
        }
        Unit::ToTaste => "to taste".to_owned(),
    }
}

/// The count or range of an amount.
fn count(amount: &Amount) -> String {
    if amount.low == amount.high {
        figure(amount.low)
    } else {
        format!("{} to {}", figure(amount.low), figure(amount.high))
    }
}

/// A count as a cook writes it: kitchen fractions where it is one, else a decimal.
pub fn figure(value: f64) -> String {
    let whole = value.floor();
    let rest = value - whole;
    if rest < 1e-9 {
        return show::fixed(whole, 0);
    }
    for under in [2.0, 3.0, 4.0, 8.0, 16.0] {
        let over: f64 = rest * under;
        if (over - over.round()).abs() < 1e-6 && over.round() > 0.0 && over.round() < under {
            let (over, under) = (show::fixed(over, 0), show::fixed(under, 0));
            let whole = show::fixed(whole, 0);
            return if whole == "0" {
                format!("{over}/{under}")
            } else {
                format!("{whole} {over}/{under}")
            };
        }
    }
    show::trimmed(value, 3)
}

fn level_word(level: Level) -> &'static str {
    match level {
        Level::Level => "",
        Level::Scant => "scant",
        Level::Generous => "generous",
        Level::Rounded => "rounded",
        Level::Heaped => "heaped",
    }
}

fn size_word(size: PieceSize) -> &'static str {
    match size {
        PieceSize::Small => "small",
        PieceSize::Medium => "medium",
        PieceSize::Large => "large",
        PieceSize::ExtraLarge => "extra-large",
        PieceSize::Jumbo => "jumbo",
    }
}

fn form_word(form: Form) -> &'static str {
    match form {
        Form::Melted => "melted",
        Form::Packed => "packed",
        Form::Loose => "loosely filled",
        Form::Chopped => "chopped",
        Form::Sliced => "sliced",
        Form::Cubed => "in cubes",
        Form::Slivered => "slivered",
        Form::Whole => "whole",
        Form::Halved => "halved",
        Form::Mashed => "mashed",
        Form::Pureed => "puréed",
        Form::Grated => "grated",
        Form::Ground => "ground",
        Form::Whipped => "whipped",
        Form::Crushed => "crushed",
        Form::Chips => "in chips",
    }
}

#[cfg(test)]
mod tests {
    use super::figure;

    #[test]
    fn counts_are_kitchen_fractions() {
        assert_eq!(figure(1.5), "1 1/2");
        assert_eq!(figure(2.0 / 3.0), "2/3");
        assert_eq!(figure(3.0), "3");
        assert_eq!(figure(0.35), "0.35");
        assert_eq!(figure(1.125), "1 1/8");
    }
}

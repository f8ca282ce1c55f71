//! What the sugars do, as it is shown: where the batter sets, how sweet it is, how they hold its water.

use super::{FigureShown, Spread, SugarFigures};
use crate::baking::balance::{SetBy, Setting, Sweetness, WaterBinding, sweetness, water_binding};
use crate::baking::estimate::Estimate;
use crate::baking::finding::{Facts, setting_in_words};
use crate::baking::quantity::{Mass, Quantity, show};

/// The figures that are known, in words and as figures.
pub fn sugar_sheet(facts: &Facts) -> (Vec<FigureShown>, SugarFigures) {
    let sweet = Some(sweetness(facts.formula)).filter(|it| it.as_sucrose.mean > Mass::ZERO);
    let water = water_binding(facts.formula).filter(|it| it.solutes.mean.base() > 0.0);
    let figures = SugarFigures {
        sets_at: facts.setting.map(|setting| Spread::from(setting.at)),
        as_sucrose: sweet.as_ref().map(|sweet| Spread::from(sweet.as_sucrose)),
        in_water: water.as_ref().map(|water| Spread::from(water.solutes)),
    };
    let shown = [
        facts.setting.map(sets_at),
        sweet.as_ref().map(sweet_in_words),
        water.as_ref().map(water_in_words),
    ];
    (shown.into_iter().flatten().collect(), figures)
}

fn sets_at(setting: &Setting) -> FigureShown {
    let mut how = format!(
        "Where half of its starch and egg is firm. There are {} g of sugar, as sucrose, to a gram of water: a gram raises the peak of wheat starch by 23.2 °C, and half sugar in the water raises egg by 9 °C. {}. Starch from 0 to 60 % sucrose is within 2 °C of that line (calorimetry, figures from memory: Spies and Hoseney 1982, Bean and others 1978); glucose counts as 0.71 and fructose as 0.54 of sucrose (the same), other kinds from memory; that a gram of egg protein does as much as 5 of starch is our own figure.",
        show::fixed(setting.syrup, 2),
        match setting.by {
            SetBy::Starch => "Starch holds the crumb there",
            SetBy::Egg => "Egg holds the crumb there",
            SetBy::Both => "Starch and egg hold the crumb there together",
        }
    );
    if setting.is_beyond {
        how.push_str(
            " That is more sugar than starch was measured with, so the figure is a guess.",
        );
    }
    how.push_str(&unsure(&setting.unknown_kind, &setting.unknown));
    FigureShown {
        label: "Sets at".into(),
        value: setting_in_words(setting),
        how,
    }
}

fn sweet_in_words(found: &Sweetness) -> FigureShown {
    let shown = show::mass(found.as_sucrose.mean);
    FigureShown {
        label: "As sweet as sugar".into(),
        value: match show::mass_range(&found.as_sucrose) {
            Some(range) => format!("{shown} ({range})"),
            None => shown,
        },
        how: format!(
            "Sucrose that would taste as sweet: each sugar's weight times its sweetness in a solution of about one in ten, sucrose being 1, glucose 0.7, fructose 1.3, lactose 0.25, maltose 0.45, xylitol 1, erythritol 0.65 (textbooks and trade handbooks, from memory).{}",
            unsure(&found.unknown_kind, &found.unknown)
        ),
    }
}

fn water_in_words(found: &WaterBinding) -> FigureShown {
    FigureShown {
        label: "Sugar in the batter's water".into(),
        value: format!(
            "{} mol/kg, water activity {}",
            show::fixed(found.solutes.mean.to_moles_per_kilogram(), 1),
            spread(&found.activity, 2)
        ),
        how: format!(
            "Molecules of sugar to a kilogram of water: small sugars hold more of it, gram for gram. The activity is of the batter, by Norrish 1966 for each kind, Ross 1975 for all together, and salt (constants from memory); a crumb has lost steam and lies lower. A rough guide, and none to how long a cake keeps.{}",
            unsure(&found.unknown_kind, &found.unknown)
        ),
    }
}

fn spread<Q: Quantity>(estimate: &Estimate<Q>, decimals: u32) -> String {
    let of = |quantity: Q| show::fixed(quantity.base(), decimals);
    format!(
        "{} ({} to {})",
        of(estimate.mean),
        of(estimate.low),
        of(estimate.high)
    )
}

/// What widens a figure and what it leaves out, in sentences.
fn unsure(unknown_kind: &[usize], unknown: &[usize]) -> String {
    let mut words = String::new();
    if !unknown_kind.is_empty() {
        words.push_str(&format!(
            " No source gives the kinds of sugar of {}: the range is wider for it.",
            show::lines(unknown_kind)
        ));
    }
    if !unknown.is_empty() {
        words.push_str(&format!(
            " Not known for {}: left out, not zero.",
            show::lines(unknown)
        ));
    }
    words
}

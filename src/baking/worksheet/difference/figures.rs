//! Figures before and after, and whether their change is larger than their spread.

use crate::baking::balance::{Class, Constituent};
use crate::baking::ingredient::own::SALT_IN_SODIUM;
use crate::baking::quantity::{Mass, Share, show};
use crate::baking::worksheet::{SheetLine, Spread, Status, SugarFigures, Worksheet};
use serde::Serialize;

/// A figure before and after.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FigureChange {
    /// What it is.
    pub label: &'static str,
    /// Before.
    pub before: FigureSide,
    /// After.
    pub after: FigureSide,
    /// Whether and which way it changes.
    pub call: Call,
    /// "+12 g", "−0.4"; empty where there is no figure on one side or no change that is shown.
    pub change_shown: String,
    /// How it is got.
    pub how: &'static str,
}

impl FigureChange {
    /// Whether it, or what is said of it, is not the same in both.
    pub fn differs(&self) -> bool {
        self.call != Call::Same || self.before.beside != self.after.beside
    }

    /// The change in words: "+12 g", "+12 g: too close to call".
    pub fn words(&self) -> String {
        match (self.call, self.change_shown.as_str()) {
            (Call::Same, _) => "the same".into(),
            (Call::More | Call::Less, "") => "hardly anything".into(),
            (Call::More | Call::Less, change) => change.into(),
            (Call::TooClose, "") => "too close to call".into(),
            (Call::TooClose, change) => format!("{change}: too close to call"),
            (Call::CannotTell, _) => "cannot be told".into(),
        }
    }
}

/// One side of a figure.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FigureSide {
    /// The figure in the unit of its row; `None` where there is none.
    pub figure: Option<Spread>,
    /// In words with its unit; "not reckoned" where there is none.
    pub shown: String,
    /// The range in words; `None` where it is exact.
    pub range_shown: Option<String>,
    /// What is said of it: band and verdict, what is left out. Empty where nothing is.
    pub beside: String,
}

/// Whether and which way a figure changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Call {
    /// It is the same, as far as it is shown.
    Same,
    /// It is more, by more than the spread.
    More,
    /// It is less, by more than the spread.
    Less,
    /// The change is no larger than the spread.
    TooClose,
    /// One side has no figure, or the two leave different things out.
    CannotTell,
}

/// What a figure is on one worksheet.
#[derive(Default)]
struct Found {
    figure: Option<Spread>,
    /// What is said of it.
    beside: String,
    /// What it leaves out.
    left_out: Vec<String>,
}

/// A row of the table of figures.
struct Figure {
    label: &'static str,
    how: &'static str,
    /// The figure in words, in the unit that `of` gives.
    show: fn(f64) -> String,
    of: fn(&Worksheet) -> Found,
}

const SUM: &str = "The sum of each line's weight times its share in the food table.";

const OF_FLOUR: &str = "As the trade counts it, against the flour; the part on balance says from which lines, and what formulas of its kind have.";

/// Every figure, in the order shown. A row more is all that another one takes.
const FIGURES: &[Figure] = &[
    Figure {
        label: "Batter",
        how: "The sum of the weights of the lines that go into it.",
        show: grams,
        of: |sheet| Found {
            figure: sheet.balance.batter,
            left_out: holes(sheet),
            ..Found::default()
        },
    },
    Figure {
        label: "Water",
        how: SUM,
        show: grams,
        of: |sheet| total(sheet, Constituent::Water, 1.0),
    },
    Figure {
        label: "Fat",
        how: SUM,
        show: grams,
        of: |sheet| total(sheet, Constituent::Fat, 1.0),
    },
    Figure {
        label: "Sugars",
        how: SUM,
        show: grams,
        of: |sheet| total(sheet, Constituent::Sugars, 1.0),
    },
    Figure {
        label: "Protein",
        how: SUM,
        show: grams,
        of: |sheet| total(sheet, Constituent::Protein, 1.0),
    },
    Figure {
        label: "Starch",
        how: SUM,
        show: grams,
        of: |sheet| total(sheet, Constituent::Starch, 1.0),
    },
    Figure {
        label: "Salt, as labels count it",
        how: "The sodium times 2.5, by Regulation (EU) 1169/2011, annex I; soda and powder count too.",
        show: grams,
        of: |sheet| total(sheet, Constituent::Sodium, SALT_IN_SODIUM),
    },
    Figure {
        label: "Sodium",
        how: SUM,
        show: show::milligrams,
        of: |sheet| total(sheet, Constituent::Sodium, 1.0),
    },
    Figure {
        label: "Crumb pH",
        how: "Where all charges in the water of the crumb balance; known to 0.4 at best.",
        show: show::ph,
        of: crumb,
    },
    Figure {
        label: "Gas on flour",
        how: "Carbon dioxide that becomes gas up to the hot core, against the flour.",
        show: percent,
        of: gas,
    },
    Figure {
        label: "Sets at",
        how: "The core temperature where half of its starch and egg is firm.",
        show: |celsius| format!("{} °C", show::fixed(celsius, 0)),
        of: |sheet| sugar(sheet, |figures| figures.sets_at),
    },
    Figure {
        label: "As sweet as sugar",
        how: "Sucrose that would taste as sweet.",
        show: grams,
        of: |sheet| sugar(sheet, |figures| figures.as_sucrose),
    },
    Figure {
        label: "Sugar in the batter's water",
        how: "Molecules of sugar to a kilogram of water: the more, the more of it they hold.",
        show: |molal| format!("{} mol/kg", show::fixed(molal, 1)),
        of: |sheet| sugar(sheet, |figures| figures.in_water),
    },
    Figure {
        label: "Sugar on flour",
        how: OF_FLOUR,
        show: percent,
        of: |sheet| class(sheet, Class::Sugar),
    },
    Figure {
        label: "Fat on flour",
        how: OF_FLOUR,
        show: percent,
        of: |sheet| class(sheet, Class::Fat),
    },
    Figure {
        label: "Egg on flour",
        how: OF_FLOUR,
        show: percent,
        of: |sheet| class(sheet, Class::Egg),
    },
    Figure {
        label: "Liquid on flour",
        how: OF_FLOUR,
        show: percent,
        of: |sheet| class(sheet, Class::Liquid),
    },
    Figure {
        label: "All water on flour",
        how: OF_FLOUR,
        show: percent,
        of: |sheet| class(sheet, Class::Water),
    },
];

fn grams(grams: f64) -> String {
    show::mass(Mass::grams(grams))
}

fn percent(percent: f64) -> String {
    show::percent(Share::percent(percent))
}

fn sugar(sheet: &Worksheet, of: fn(&SugarFigures) -> Option<Spread>) -> Found {
    Found {
        figure: of(&sheet.balance.sugar),
        left_out: holes(sheet),
        ..Found::default()
    }
}

/// A class of the formula against its flour. One that no line brings has no row of its own, and is none.
fn class(sheet: &Worksheet, class: Class) -> Found {
    let rows = &sheet.balance.ranges.rows;
    let row = rows.iter().find(|row| row.name == class.name());
    let none = Spread {
        mean: 0.0,
        low: 0.0,
        high: 0.0,
    };
    Found {
        figure: (sheet.balance.flour).map(|_| row.map_or(none, |row| row.percent)),
        left_out: holes(sheet),
        ..Found::default()
    }
}

fn total(sheet: &Worksheet, constituent: Constituent, factor: f64) -> Found {
    let Some(total) = sheet
        .balance
        .totals
        .iter()
        .find(|total| total.name == constituent.name())
    else {
        return Found::default();
    };
    let unknown = |line: &&SheetLine| {
        line.status == Status::Weighed && line.in_batter && total.unknown.contains(&line.line)
    };
    let mut left_out = holes(sheet);
    left_out.extend(sheet.lines.iter().filter(unknown).map(|line| {
        let name = line.name.unwrap_or(&line.words);
        format!("{} {name}", line.grams_shown.as_deref().unwrap_or(""))
    }));
    let Spread { mean, low, high } = total.grams;
    Found {
        figure: Some(Spread {
            mean: mean * factor,
            low: low * factor,
            high: high * factor,
        }),
        beside: match left_out.as_slice() {
            [] => String::new(),
            left_out => format!("without {}", left_out.join(", ")),
        },
        left_out,
    }
}

fn crumb(sheet: &Worksheet) -> Found {
    let verdict = &sheet.leavening.verdict.title;
    let beside = match &sheet.leavening.rule {
        Some(rule) => format!(
            "band {} to {}. {verdict}",
            show::ph(rule.band_low),
            show::ph(rule.band_high)
        ),
        None => verdict.clone(),
    };
    Found {
        figure: sheet.leavening.rule.as_ref().map(|rule| rule.crumb),
        beside,
        left_out: holes(sheet),
    }
}

fn gas(sheet: &Worksheet) -> Found {
    let verdict = &sheet.leavening.gas_verdict.title;
    let beside = match &sheet.leavening.gas {
        Some(gas) => format!(
            "band {} to {} %. {verdict}",
            show::plain(gas.band_low),
            show::plain(gas.band_high)
        ),
        None => verdict.clone(),
    };
    Found {
        figure: sheet.leavening.gas.as_ref().map(|gas| gas.percent),
        beside,
        left_out: holes(sheet),
    }
}

/// The batter's lines whose weight is missed.
fn holes(sheet: &Worksheet) -> Vec<String> {
    let is_hole = |line: &&SheetLine| match line.status {
        Status::NotWeighed => line.flagged && line.in_batter,
        Status::NotRead => true,
        _ => false,
    };
    let lines = sheet.lines.iter().filter(is_hole);
    lines.map(|line| line.text.trim().to_owned()).collect()
}

/// Every figure before and after.
pub(super) fn changes(before: &Worksheet, after: &Worksheet) -> Vec<FigureChange> {
    FIGURES
        .iter()
        .map(|row| change(row, (row.of)(before), (row.of)(after)))
        .collect()
}

fn change(row: &Figure, before: Found, after: Found) -> FigureChange {
    let call = call(row, &before, &after);
    let change_shown = match (before.figure, after.figure) {
        (Some(before), Some(after)) if matches!(call, Call::More | Call::Less | Call::TooClose) => {
            signed(after.mean - before.mean, row.show)
        }
        _ => String::new(),
    };
    FigureChange {
        label: row.label,
        before: side(row, before),
        after: side(row, after),
        call,
        change_shown,
        how: row.how,
    }
}

fn side(row: &Figure, found: Found) -> FigureSide {
    let range = |figure: Spread| {
        let (low, high) = ((row.show)(figure.low), (row.show)(figure.high));
        (low != high).then(|| format!("{low} to {high}"))
    };
    FigureSide {
        shown: found
            .figure
            .map_or_else(|| "not reckoned".into(), |figure| (row.show)(figure.mean)),
        range_shown: found.figure.and_then(range),
        figure: found.figure,
        beside: found.beside,
    }
}

/// The change of the means against the halves of both ranges that face one another, taken as independent: each recipe
/// is measured and baked anew. Where a line is the same in both the truth is surer than that, never less sure.
fn call(row: &Figure, before: &Found, after: &Found) -> Call {
    let (Some(old), Some(new)) = (before.figure, after.figure) else {
        return match (before.figure, after.figure) {
            (None, None) => Call::Same,
            _ => Call::CannotTell,
        };
    };
    if sorted(&before.left_out) != sorted(&after.left_out) {
        return Call::CannotTell;
    }
    if (row.show)(old.mean) == (row.show)(new.mean) {
        return Call::Same;
    }
    let rises = new.mean > old.mean;
    let (lower, upper) = if rises { (old, new) } else { (new, old) };
    let spread = (lower.high - lower.mean).hypot(upper.mean - upper.low);
    match (upper.mean - lower.mean > spread, rises) {
        (false, _) => Call::TooClose,
        (true, true) => Call::More,
        (true, false) => Call::Less,
    }
}

fn sorted(words: &[String]) -> Vec<&str> {
    let mut words: Vec<&str> = words.iter().map(String::as_str).collect();
    words.sort_unstable();
    words
}

/// A change with its sign; empty where it is none that is shown.
pub(super) fn signed(change: f64, show: impl Fn(f64) -> String) -> String {
    match show(change.abs()) {
        shown if !shown.contains(|it| ('1'..='9').contains(&it)) => String::new(),
        shown if change > 0.0 => format!("+{shown}"),
        shown => format!("\u{2212}{shown}"),
    }
}

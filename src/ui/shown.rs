//! The worksheet that is shown, and how often each part of it has changed.
//!
//! A part of the page follows the count of its part of the worksheet, so that a letter that changes
//! one line leaves everything else on the page alone.

use crate::baking::worksheet::{SheetLine, Status, Worksheet};

/// Parts of a worksheet that are followed by themselves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The recipe's name.
    Title,
    /// Whose cups, spoons and words.
    Country,
    /// Which lines there are and what became of them.
    Rows,
    /// The words of lines that are not ingredients.
    Words,
    /// Acid, soda and gas.
    Leavening,
    /// Percentages and totals.
    Balance,
    /// The two pans.
    Pans,
    /// The oven.
    Oven,
    /// What a high kitchen asks for.
    Altitude,
    /// The findings.
    Findings,
    /// Allergens and cautions.
    Allergens,
    /// The sources.
    Sources,
    /// The summary.
    Summary,
}

impl Part {
    /// Every part, in the order of its variants.
    pub const ALL: [Self; 13] = [
        Self::Title,
        Self::Country,
        Self::Rows,
        Self::Words,
        Self::Leavening,
        Self::Balance,
        Self::Pans,
        Self::Oven,
        Self::Altitude,
        Self::Findings,
        Self::Allergens,
        Self::Sources,
        Self::Summary,
    ];

    /// Whether it is the same in two worksheets.
    fn same(self, one: &Worksheet, other: &Worksheet) -> bool {
        let lines = |same: fn(&SheetLine, &SheetLine) -> bool| {
            one.lines.len() == other.lines.len()
                && one
                    .lines
                    .iter()
                    .zip(&other.lines)
                    .all(|(one, other)| same(one, other))
        };
        match self {
            Self::Title => one.title == other.title,
            Self::Country => one.country == other.country,
            Self::Rows => {
                lines(|one, other| one.status == other.status && one.flagged == other.flagged)
            }
            Self::Words => lines(|one, other| {
                let weighed = matches!(
                    one.status,
                    Status::Weighed | Status::NotWeighed | Status::NotRead
                );
                one.status == other.status
                    && one.corrected == other.corrected
                    && (weighed || one.text == other.text)
            }),
            Self::Leavening => one.leavening == other.leavening,
            Self::Balance => one.balance == other.balance,
            Self::Pans => one.pans == other.pans,
            Self::Oven => one.oven == other.oven,
            Self::Altitude => one.altitude == other.altitude,
            Self::Findings => one.findings == other.findings,
            Self::Allergens => {
                one.allergens == other.allergens
                    && one.plant_based == other.plant_based
                    && one.cautions == other.cautions
            }
            Self::Sources => one.sources == other.sources,
            Self::Summary => one.summary == other.summary,
        }
    }
}

/// A worksheet, with a count for each part and each line that moves on when that has changed.
pub struct Shown {
    /// The worksheet.
    pub sheet: Worksheet,
    parts: [u32; Part::ALL.len()],
    lines: Vec<u32>,
}

impl Shown {
    /// The worksheet after another one, or the first.
    pub fn after(before: Option<&Self>, sheet: Worksheet) -> Self {
        let Some(before) = before else {
            let lines = vec![0; sheet.lines.len()];
            return Self {
                sheet,
                parts: [0; Part::ALL.len()],
                lines,
            };
        };
        let parts =
            Part::ALL.map(|part| before.part(part) + u32::from(!part.same(&before.sheet, &sheet)));
        let lines = sheet.lines.iter().enumerate().map(|(index, line)| {
            match before.sheet.lines.get(index) {
                Some(old) => before.lines[index] + u32::from(old != line),
                None => 0,
            }
        });
        let lines = lines.collect();
        Self {
            sheet,
            parts,
            lines,
        }
    }

    /// How often a part has changed.
    pub fn part(&self, part: Part) -> u32 {
        self.parts[part as usize]
    }

    /// How often a row of the worksheet's lines has changed; 0 for one that is not there.
    pub fn row(&self, row: usize) -> u32 {
        self.lines.get(row).copied().unwrap_or(0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::worksheet::{Inputs, Settings, worksheet};

    fn sheet(text: &str) -> Worksheet {
        worksheet(&Inputs::of_text(text), &Settings::default())
    }

    #[test]
    fn a_count_moves_on_only_for_what_changed() {
        let before = Shown::after(None, sheet("Cake\n\n100 g flour\n50 g sugar"));
        let after = Shown::after(Some(&before), sheet("Cake\n\n100 g flour\n60 g sugar"));
        assert_eq!((after.part(Part::Title), after.row(2)), (0, 0));
        assert_eq!((after.part(Part::Balance), after.row(3)), (1, 1));
        assert_eq!(after.row(99), 0);
    }
}

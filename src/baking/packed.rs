//! Reading the tables as `build.rs` packed them.
//!
//! The text was checked when the program was built, so reading it cannot go wrong; a cell that were wrong all the
//! same would read as unknown or as the first of its list, never as a panic.

use super::text::decimal;

/// The packed tables: sources, acidity, leavening acids, leavening, foods; ranges by kind of cake; swaps, what eggs are wanted
/// for, what stands for them; sizes of pans, what batters weigh and how full they stand; what tables tell of altitude; signs of faults, and their causes.
const LARDER: &str = include_str!(concat!(env!("OUT_DIR"), "/larder.txt"));

/// The rows of a table, by its place in the packed text.
pub fn rows(table: usize) -> impl Iterator<Item = Cells> {
    let section = LARDER.split("\n\n").nth(table).unwrap_or("");
    section
        .lines()
        .filter(|line| !line.is_empty())
        .map(|line| Cells::of(line, '\t'))
}

/// The cells of a row, read from the left.
pub struct Cells {
    rest: &'static str,
    between: char,
}

impl Cells {
    fn of(rest: &'static str, between: char) -> Self {
        Self { rest, between }
    }

    /// The next cell as text.
    pub fn text(&mut self) -> &'static str {
        let (cell, rest) = self
            .rest
            .split_once(self.between)
            .unwrap_or((self.rest, ""));
        self.rest = rest;
        cell
    }

    /// All that is left as text: a note, which stands last and may hold what else parts cells.
    pub fn note(self) -> &'static str {
        self.rest
    }

    /// The next cell as a number; `None` where it is empty.
    pub fn number(&mut self) -> Option<f64> {
        decimal(self.text())
    }

    /// The next cell as a number that is always there.
    pub fn figure(&mut self) -> f64 {
        self.number().unwrap_or(0.0)
    }

    /// The next cell as a place in another list; `None` where it is empty.
    pub fn place(&mut self) -> Option<usize> {
        self.text().parse().ok()
    }

    /// The next cell as one of a closed list; `None` where it is empty.
    pub fn choice<T: Copy>(&mut self, list: &[T]) -> Option<T> {
        list.get(self.place()?).copied()
    }

    /// The next cell as numbers apart by blanks, as many as are asked for.
    pub fn figures<const COUNT: usize>(&mut self) -> [f64; COUNT] {
        figures(self.text())
    }

    /// The next cell as places in a closed list, apart by blanks.
    pub fn choices<T: Copy>(&mut self, list: &[T]) -> Vec<T> {
        let places = self.text().split_whitespace();
        places
            .filter_map(|place| list.get(place.parse::<usize>().ok()?).copied())
            .collect()
    }

    /// The next cell as a list of rows of its own.
    pub fn list(&mut self) -> impl Iterator<Item = Cells> + use<> {
        let cell = self.text();
        cell.split('|')
            .filter(|row| !row.is_empty())
            .map(|row| Self::of(row, ';'))
    }
}

/// Numbers apart by blanks; those that are not there are zero.
pub fn figures<const COUNT: usize>(text: &str) -> [f64; COUNT] {
    let mut words = text.split(' ');
    std::array::from_fn(|_| words.next().and_then(decimal).unwrap_or(0.0))
}

//! Checks the tables of figures and turns them into static data.
//!
//! Reads `src/baking/sources.csv` and the tables of `src/baking/ingredient/`; writes
//! `sources.rs` and `ingredients.rs` to `OUT_DIR`, where the modules include them. Every fault is
//! reported as `file:line: reason`, all of them at once, and stops the build, so that a wrong row
//! cannot ship.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::path::Path;

const SOURCES: Layout = Layout {
    file: "src/baking/sources.csv",
    columns: &["key", "citation"],
    key_columns: 1,
};

const FOODS: Layout = Layout {
    file: "src/baking/ingredient/foods.csv",
    columns: &[
        "key",
        "name",
        "group",
        "flour_basis",
        "water_g",
        "protein_g",
        "fat_g",
        "carbohydrate_g",
        "sugars_g",
        "starch_g",
        "fibre_g",
        "alcohol_g",
        "sodium_mg",
        "derived",
        "acidity",
        "allergens",
        "plant_based",
        "source",
        "source_row",
        "confidence",
        "note",
    ],
    key_columns: 1,
};

const NAMES: Layout = Layout {
    file: "src/baking/ingredient/names.csv",
    columns: &["name", "key", "region"],
    key_columns: 3,
};

const ACIDITY: Layout = Layout {
    file: "src/baking/ingredient/acidity.csv",
    columns: &[
        "key",
        "ph_low",
        "ph",
        "ph_high",
        "citric_g",
        "malic_g",
        "quinic_g",
        "tartaric_g",
        "lactic_g",
        "acetic_g",
        "oxalic_g",
        "succinic_g",
        "gluconic_g",
        "aconitic_g",
        "chlorogenic_g",
        "phosphoric_g",
        "buffer_below_6",
        "buffer_6_to_7_5",
        "buffer_above_7_5",
        "bicarbonate_mmol_kg",
        "deviation_pct",
        "titratable_as",
        "titratable_low_g",
        "titratable_high_g",
        "titratable_source",
        "ph_source",
        "ph_confidence",
        "acids_source",
        "acids_confidence",
        "buffer_source",
        "buffer_confidence",
        "note",
    ],
    key_columns: 1,
};

const LEAVENING: Layout = Layout {
    file: "src/baking/ingredient/leavening.csv",
    columns: &[
        "key",
        "bicarbonate",
        "bicarbonate_g",
        "neutralised_low_g",
        "neutralised_g",
        "neutralised_high_g",
        "calcium_phosphate_g",
        "pyrophosphate_g",
        "acids",
        "source",
        "confidence",
        "note",
    ],
    key_columns: 1,
};

const FILLINGS: Layout = Layout {
    file: "src/baking/ingredient/fillings.csv",
    columns: &[
        "key",
        "measure",
        "form",
        "filling",
        "low_g",
        "typical_g",
        "high_g",
        "source",
        "confidence",
        "note",
    ],
    key_columns: 4,
};

const PIECES: Layout = Layout {
    file: "src/baking/ingredient/pieces.csv",
    columns: &[
        "key",
        "piece",
        "size",
        "region",
        "low_g",
        "typical_g",
        "high_g",
        "source",
        "confidence",
        "note",
    ],
    key_columns: 4,
};

/// The acids of `OrganicAcids`, in the order of its fields.
const ACIDS: &[&str] = &[
    "citric",
    "malic",
    "quinic",
    "tartaric",
    "lactic",
    "acetic",
    "oxalic",
    "succinic",
    "gluconic",
    "aconitic",
    "chlorogenic",
    "phosphoric",
];

// The closed lists of the code, word in the table and variant. A variant added there is added here.

const GROUPS: &[(&str, &str)] = &[
    ("flour", "Flour"),
    ("starch", "Starch"),
    ("grain", "Grain"),
    ("sugar", "Sugar"),
    ("syrup", "Syrup"),
    ("fat", "Fat"),
    ("oil", "Oil"),
    ("dairy", "Dairy"),
    ("plant_dairy", "PlantDairy"),
    ("egg", "Egg"),
    ("leavener", "Leavener"),
    ("juice", "Juice"),
    ("acid", "Acid"),
    ("fruit", "Fruit"),
    ("dried_fruit", "DriedFruit"),
    ("vegetable", "Vegetable"),
    ("cocoa", "Cocoa"),
    ("chocolate", "Chocolate"),
    ("nut", "Nut"),
    ("seed", "Seed"),
    ("flavour", "Flavour"),
    ("spice", "Spice"),
    ("thickener", "Thickener"),
    ("jam", "Jam"),
    ("drink", "Drink"),
];

const FLOUR_BASES: &[(&str, &str)] = &[
    ("always", "Always"),
    ("where_no_other", "WhereNoOther"),
    ("never", "Never"),
];

const ALLERGENS: &[(&str, &str)] = &[
    ("wheat", "Wheat"),
    ("gluten", "Gluten"),
    ("milk", "Milk"),
    ("egg", "Egg"),
    ("soya", "Soya"),
    ("tree_nuts", "TreeNuts"),
    ("peanut", "Peanut"),
    ("sesame", "Sesame"),
    ("sulphites", "Sulphites"),
    ("mustard", "Mustard"),
    ("lupin", "Lupin"),
    ("celery", "Celery"),
];

const CONFIDENCES: &[(&str, &str)] = &[
    ("published", "Published"),
    ("derived", "Derived"),
    ("practice", "Practice"),
    ("memory", "Memory"),
];

const BICARBONATES: &[(&str, &str)] = &[
    ("sodium", "Sodium"),
    ("potassium", "Potassium"),
    ("ammonium", "Ammonium"),
];

const MEASURES: &[(&str, &str)] = &[
    ("cup", "Cup"),
    ("tablespoon", "Tablespoon"),
    ("teaspoon", "Teaspoon"),
];

const FORMS: &[(&str, &str)] = &[
    ("melted", "Melted"),
    ("packed", "Packed"),
    ("loose", "Loose"),
    ("chopped", "Chopped"),
    ("sliced", "Sliced"),
    ("cubed", "Cubed"),
    ("slivered", "Slivered"),
    ("whole", "Whole"),
    ("halved", "Halved"),
    ("mashed", "Mashed"),
    ("pureed", "Pureed"),
    ("grated", "Grated"),
    ("ground", "Ground"),
    ("whipped", "Whipped"),
    ("crushed", "Crushed"),
    ("chips", "Chips"),
];

const WAYS_OF_FILLING: &[(&str, &str)] = &[
    ("dipped", "Dipped"),
    ("spooned", "Spooned"),
    ("sifted", "Sifted"),
];

const PIECE_KINDS: &[(&str, &str)] = &[
    ("each", "Each"),
    ("stick", "Stick"),
    ("slice", "Slice"),
    ("stalk", "Stalk"),
    ("square", "Square"),
    ("bar", "Bar"),
    ("packet", "Packet"),
    ("can", "Can"),
    ("block", "Block"),
    ("pot", "Pot"),
    ("knob", "Knob"),
    ("pinch", "Pinch"),
    ("dash", "Dash"),
    ("drop", "Drop"),
    ("handful", "Handful"),
    ("inch", "Inch"),
    ("pod", "Pod"),
    ("sprig", "Sprig"),
];

const SIZES: &[(&str, &str)] = &[
    ("small", "Small"),
    ("medium", "Medium"),
    ("large", "Large"),
    ("extra_large", "ExtraLarge"),
    ("jumbo", "Jumbo"),
];

const REGIONS: &[(&str, &str)] = &[
    ("us", "Us"),
    ("uk", "Uk"),
    ("au", "Au"),
    ("nz", "Nz"),
    ("ca", "Ca"),
];

/// The parts of a composition, which with the ash make up the whole.
const PROXIMATES: &[&str] = &[
    "water_g",
    "protein_g",
    "fat_g",
    "carbohydrate_g",
    "alcohol_g",
];

/// The columns of a composition that may be named as derived.
const DERIVABLE: &[&str] = &[
    "water",
    "protein",
    "fat",
    "carbohydrate",
    "sugars",
    "starch",
    "fibre",
    "alcohol",
    "sodium",
];

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    let faults = Faults::default();
    let [sources, foods, names, acidity, leavening, fillings, pieces] =
        [SOURCES, FOODS, NAMES, ACIDITY, LEAVENING, FILLINGS, PIECES]
            .map(|layout| Table::read(layout, &faults));

    // A table with the wrong header cannot be read on.
    faults.stop_if_any();
    let larder = Larder {
        sources: places(&sources),
        foods: places(&foods),
        acidity: places(&acidity),
        leavening: places(&leavening),
    };
    let sources_code = write_sources(&sources);
    let mut code = String::from(PREAMBLE);
    write_acidity(&mut code, &acidity, &larder);
    write_leavening(&mut code, &leavening, &larder);
    let fillings = rows_by_food(&fillings, &larder, filling_code);
    let pieces = rows_by_food(&pieces, &larder, piece_code);
    write_foods(&mut code, &foods, &larder, &fillings, &pieces);
    write_names(&mut code, &names, &larder);

    faults.stop_if_any();
    let out = std::env::var("OUT_DIR").expect("cargo sets OUT_DIR for every build script");
    let out = Path::new(&out);
    std::fs::write(out.join("sources.rs"), sources_code).expect("OUT_DIR can be written to");
    std::fs::write(out.join("ingredients.rs"), code).expect("OUT_DIR can be written to");
}

// ---- Reading -------------------------------------------------------------------------------

/// What a table looks like: its file, its header, and how many first columns tell its rows apart.
struct Layout {
    file: &'static str,
    columns: &'static [&'static str],
    key_columns: usize,
}

/// Everything found wrong so far, each as `file:line: reason`.
#[derive(Default)]
struct Faults(RefCell<Vec<String>>);

impl Faults {
    fn add(&self, file: &str, line: u64, reason: &str) {
        self.0.borrow_mut().push(format!("{file}:{line}: {reason}"));
    }

    /// Reports what was found and stops the build.
    fn stop_if_any(&self) {
        let mut faults = self.0.borrow_mut();
        // A cell may be read for two checks.
        faults.dedup();
        if faults.is_empty() {
            return;
        }
        for fault in faults.iter() {
            println!("cargo::error={fault}");
        }
        std::process::exit(1);
    }
}

/// A table as read, its header checked, its rows in order and none of them twice.
struct Table<'a> {
    rows: Vec<Row<'a>>,
}

impl<'a> Table<'a> {
    fn read(layout: Layout, faults: &'a Faults) -> Self {
        let Layout {
            file,
            columns,
            key_columns,
        } = layout;
        println!("cargo::rerun-if-changed={file}");
        let mut rows: Vec<Row<'a>> = Vec::new();
        let mut reader = match csv::ReaderBuilder::new().has_headers(false).from_path(file) {
            Ok(reader) => reader,
            Err(error) => {
                faults.add(file, 0, &format!("cannot be opened: {error}"));
                return Self { rows };
            }
        };
        let mut records = reader.records();
        match records.next() {
            Some(Ok(header)) if header.iter().eq(columns.iter().copied()) => {}
            _ => faults.add(file, 1, &format!("the header is not {}", columns.join(","))),
        }
        for record in records {
            match record {
                Ok(record) => {
                    let line = record.position().map_or(0, |position| position.line());
                    let cells: Vec<String> = record.iter().map(str::to_owned).collect();
                    let row = Row {
                        file,
                        line,
                        columns,
                        cells,
                        faults,
                    };
                    if let Some(cell) = row.cells.iter().find(|cell| cell.trim() != *cell) {
                        row.fault(&format!("`{cell}` has blanks around it"));
                    }
                    if let Some(before) = rows.last() {
                        match before.cells[..key_columns].cmp(&row.cells[..key_columns]) {
                            std::cmp::Ordering::Less => {}
                            std::cmp::Ordering::Equal => {
                                row.fault("the row above has the same key")
                            }
                            std::cmp::Ordering::Greater => {
                                row.fault("out of order with the row above")
                            }
                        }
                    }
                    rows.push(row);
                }
                Err(error) => faults.add(file, 0, &error.to_string()),
            }
        }
        Self { rows }
    }
}

/// One row of a table, which knows its place, so that a fault can name it.
struct Row<'a> {
    file: &'static str,
    line: u64,
    columns: &'static [&'static str],
    cells: Vec<String>,
    faults: &'a Faults,
}

impl Row<'_> {
    fn fault(&self, reason: &str) {
        self.faults.add(self.file, self.line, reason);
    }

    /// The text of a column; empty where the cell is.
    fn text(&self, column: &str) -> &str {
        let place = self.columns.iter().position(|name| *name == column);
        &self.cells[place.expect("the code asks only for columns of the layout")]
    }

    /// The text of a column that must not be empty.
    fn needed(&self, column: &str) -> &str {
        let text = self.text(column);
        if text.is_empty() {
            self.fault(&format!("{column} is empty"));
        }
        text
    }

    /// The number of a column, within bounds; `None` where the cell is empty.
    fn number(&self, column: &str, bounds: (f64, f64)) -> Option<f64> {
        let text = self.text(column);
        if text.is_empty() {
            return None;
        }
        match text.parse::<f64>() {
            Ok(number) if number.is_finite() && (bounds.0..=bounds.1).contains(&number) => {
                Some(number)
            }
            Ok(number) => {
                self.fault(&format!(
                    "{column} {number} is not within {} to {}",
                    bounds.0, bounds.1
                ));
                None
            }
            Err(_) => {
                self.fault(&format!("{column} `{text}` is not a number"));
                None
            }
        }
    }

    /// The number of a column that must not be empty.
    fn number_needed(&self, column: &str, bounds: (f64, f64)) -> f64 {
        self.needed(column);
        self.number(column, bounds).unwrap_or(0.0)
    }

    /// Three columns that must be numbers in rising order.
    fn rising(&self, columns: [&str; 3], bounds: (f64, f64)) -> [f64; 3] {
        let [low, typical, high] = columns.map(|column| self.number_needed(column, bounds));
        if low > typical || typical > high {
            self.fault(&format!("{} are not in rising order", columns.join(", ")));
        }
        [low, typical, high]
    }

    /// The variant that a word of a closed list stands for.
    fn variant(&self, column: &str, list: &[(&str, &'static str)]) -> &'static str {
        self.word_variant(column, self.text(column), list)
    }

    /// As [`Row::variant`], written as an `Option`, `None` where the cell is empty.
    fn optional_variant(&self, column: &str, list: &[(&str, &'static str)]) -> String {
        if self.text(column).is_empty() {
            return "None".into();
        }
        format!("Some({})", self.variant(column, list))
    }

    fn word_variant(
        &self,
        column: &str,
        word: &str,
        list: &[(&str, &'static str)],
    ) -> &'static str {
        match list.iter().find(|(name, _)| *name == word) {
            Some((_, variant)) => variant,
            None => {
                let words: Vec<_> = list.iter().map(|(name, _)| *name).collect();
                self.fault(&format!(
                    "{column} `{word}` is none of {}",
                    words.join(", ")
                ));
                list[0].1
            }
        }
    }

    /// The place of the row in another table that a column names.
    fn reference(&self, column: &str, places: &Places) -> usize {
        let key = self.needed(column);
        places.get(key).copied().unwrap_or_else(|| {
            self.fault(&format!("{column} `{key}` is in no table"));
            0
        })
    }

    /// Source and confidence, as the code of a `Cited`.
    fn cited(&self, source: &str, confidence: &str, larder: &Larder) -> String {
        let place = self.reference(source, &larder.sources);
        format!(
            "c({place}, Confidence::{})",
            self.variant(confidence, CONFIDENCES)
        )
    }
}

/// Where each key stands in its table.
type Places = BTreeMap<String, usize>;

/// The keys of the tables that others refer to.
struct Larder {
    sources: Places,
    foods: Places,
    acidity: Places,
    leavening: Places,
}

fn places(table: &Table) -> Places {
    for row in &table.rows {
        let key = row.needed("key");
        if !key
            .chars()
            .all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_')
        {
            row.fault(&format!("key `{key}` is not lower_snake_case"));
        }
    }
    let keys = table.rows.iter().map(|row| row.text("key").to_owned());
    keys.enumerate().map(|(place, key)| (key, place)).collect()
}

// ---- Writing -------------------------------------------------------------------------------

/// Short names for what the rows repeat, so that the generated file stays readable.
const PREAMBLE: &str = "\
use crate::baking::source::Confidence;
const fn c(source: usize, confidence: Confidence) -> Cited {
    Cited { source: &crate::baking::source::SOURCES[source], confidence }
}
const fn s(percent: f64) -> Option<crate::baking::quantity::Share> {
    Some(crate::baking::quantity::Share::percent(percent))
}
const fn e(low: f64, mean: f64, high: f64) -> crate::baking::estimate::Estimate<crate::baking::quantity::Mass> {
    use crate::baking::quantity::Mass;
    crate::baking::estimate::Estimate { mean: Mass::grams(mean), low: Mass::grams(low), high: Mass::grams(high) }
}
";

fn write_sources(table: &Table) -> String {
    let mut code = String::from("pub(super) static SOURCES: &[Source] = &[\n");
    for row in &table.rows {
        let (key, citation) = (row.text("key"), row.needed("citation"));
        line(
            &mut code,
            format_args!("Source {{ key: {key:?}, citation: {citation:?} }},"),
        );
    }
    code + "];\n"
}

fn write_acidity(code: &mut String, table: &Table, larder: &Larder) {
    line(
        code,
        format_args!("static ACIDITY: [Acidity; {}] = [", table.rows.len()),
    );
    for row in &table.rows {
        let [low, ph, high] = row.rising(["ph_low", "ph", "ph_high"], (0.0, 14.0));
        let mut acids = String::new();
        for acid in ACIDS {
            let grams = row
                .number(&format!("{acid}_g"), (0.0, 100.0))
                .unwrap_or(0.0);
            write!(acids, "{acid}: {grams:?}, ").expect("writing to a string cannot fail");
        }
        let [below, middle, above] = ["buffer_below_6", "buffer_6_to_7_5", "buffer_above_7_5"]
            .map(|column| row.number_needed(column, (0.0, 1000.0)));
        let bicarbonate = row
            .number("bicarbonate_mmol_kg", (0.0, 1000.0))
            .unwrap_or(0.0);
        let deviation = row.number_needed("deviation_pct", (0.0, 100.0)) / 100.0;
        line(
            code,
            format_args!(
                "Acidity {{ key: {:?}, ph: ({low:?}, {ph:?}, {high:?}), acids: OrganicAcids {{ {acids}}}, \
                 buffer: Buffer {{ below_6: {below:?}, from_6_to_7_5: {middle:?}, above_7_5: {above:?} }}, \
                 bicarbonate: {bicarbonate:?}, deviation: {deviation:?}, titratable: {}, titratable_source: {:?}, \
                 ph_cited: {}, acids_cited: {}, buffer_cited: {}, note: {:?} }},",
                row.text("key"),
                titratable(row, larder),
                row.text("titratable_source"),
                row.cited("ph_source", "ph_confidence", larder),
                acids_cited(row, larder),
                row.cited("buffer_source", "buffer_confidence", larder),
                row.text("note"),
            ),
        );
    }
    line(code, format_args!("];"));
}

fn acids_cited(row: &Row, larder: &Larder) -> String {
    let listed = ACIDS
        .iter()
        .any(|acid| !row.text(&format!("{acid}_g")).is_empty());
    match (listed, row.text("acids_source").is_empty()) {
        (false, true) => "None".into(),
        (true, true) => {
            row.fault("has acids but no acids_source");
            "None".into()
        }
        (false, false) => {
            row.fault("has an acids_source but no acids");
            "None".into()
        }
        (true, false) => format!(
            "Some({})",
            row.cited("acids_source", "acids_confidence", larder)
        ),
    }
}

fn titratable(row: &Row, larder: &Larder) -> String {
    let acid = row.text("titratable_as");
    if acid.is_empty() {
        return "None".into();
    }
    if !ACIDS.contains(&acid) {
        row.fault(&format!(
            "titratable_as `{acid}` is none of {}",
            ACIDS.join(", ")
        ));
    }
    let [low, high] = ["titratable_low_g", "titratable_high_g"]
        .map(|column| row.number_needed(column, (0.0, 100.0)));
    if low > high {
        row.fault("titratable_low_g is above titratable_high_g");
    }
    row.reference("titratable_source", &larder.sources);
    format!("Some(({acid:?}, {low:?}, {high:?}))")
}

fn write_leavening(code: &mut String, table: &Table, larder: &Larder) {
    line(
        code,
        format_args!("static LEAVENING: [Leavening; {}] = [", table.rows.len()),
    );
    for row in &table.rows {
        row.reference("key", &larder.foods);
        let bicarbonate = match row.text("bicarbonate") {
            "" => "None".into(),
            _ => format!(
                "Some((Bicarbonate::{}, {:?}))",
                row.variant("bicarbonate", BICARBONATES),
                row.number_needed("bicarbonate_g", (0.0, 100.0))
            ),
        };
        let [low, typical, high] = row.rising(
            ["neutralised_low_g", "neutralised_g", "neutralised_high_g"],
            (0.0, 150.0),
        );
        let calcium_phosphate = row.number_needed("calcium_phosphate_g", (0.0, 100.0));
        let pyrophosphate = row.number_needed("pyrophosphate_g", (0.0, 100.0));
        line(
            code,
            format_args!(
                "Leavening {{ bicarbonate: {bicarbonate}, neutralised: ({low:?}, {typical:?}, {high:?}), \
                 calcium_phosphate: {calcium_phosphate:?}, pyrophosphate: {pyrophosphate:?}, \
                 acids: {:?}, cited: {}, note: {:?} }},",
                row.text("acids"),
                row.cited("source", "confidence", larder),
                row.text("note"),
            ),
        );
    }
    line(code, format_args!("];"));
}

/// The code of the rows of each food, in the order of the table.
fn rows_by_food(
    table: &Table,
    larder: &Larder,
    code_of: impl Fn(&Row, &Larder) -> String,
) -> BTreeMap<usize, String> {
    let mut rows: BTreeMap<usize, String> = BTreeMap::new();
    for row in &table.rows {
        let food = row.reference("key", &larder.foods);
        rows.entry(food)
            .or_default()
            .push_str(&code_of(row, larder));
    }
    rows
}

fn filling_code(row: &Row, larder: &Larder) -> String {
    format!(
        "FillingWeight {{ measure: SpoonOrCup::{}, form: {}, filling: {}, {} }}, ",
        row.variant("measure", MEASURES),
        row.optional_variant("form", FORMS).replace('(', "(Form::"),
        row.optional_variant("filling", WAYS_OF_FILLING)
            .replace('(', "(Filling::"),
        weight_code(row, larder),
    )
}

fn piece_code(row: &Row, larder: &Larder) -> String {
    format!(
        "PieceWeight {{ piece: Piece::{}, size: {}, region: {}, {} }}, ",
        row.variant("piece", PIECE_KINDS),
        row.optional_variant("size", SIZES)
            .replace('(', "(PieceSize::"),
        row.optional_variant("region", REGIONS)
            .replace('(', "(Region::"),
        weight_code(row, larder),
    )
}

fn weight_code(row: &Row, larder: &Larder) -> String {
    let [low, typical, high] = row.rising(["low_g", "typical_g", "high_g"], (0.0, 5000.0));
    if typical <= 0.0 {
        row.fault("weighs nothing");
    }
    let cited = row.cited("source", "confidence", larder);
    format!(
        "weight: e({low:?}, {typical:?}, {high:?}), cited: {cited}, note: {:?}",
        row.text("note")
    )
}

fn write_foods(
    code: &mut String,
    table: &Table,
    larder: &Larder,
    fillings: &BTreeMap<usize, String>,
    pieces: &BTreeMap<usize, String>,
) {
    line(code, format_args!("static INGREDIENTS: &[Ingredient] = &["));
    for (place, row) in table.rows.iter().enumerate() {
        let acidity = match row.text("acidity") {
            "" => "None".into(),
            _ => format!(
                "Some(&ACIDITY[{}])",
                row.reference("acidity", &larder.acidity)
            ),
        };
        let leavening = match larder.leavening.get(row.text("key")) {
            Some(place) => format!("Some(&LEAVENING[{place}])"),
            None => "None".into(),
        };
        let allergens: Vec<_> = row
            .text("allergens")
            .split_whitespace()
            .map(|word| {
                format!(
                    "Allergen::{}",
                    row.word_variant("allergens", word, ALLERGENS)
                )
            })
            .collect();
        let plant_based = match row.text("plant_based") {
            "yes" => "Some(true)",
            "no" => "Some(false)",
            "" => "None",
            other => {
                row.fault(&format!("plant_based `{other}` is neither yes nor no"));
                "None"
            }
        };
        line(
            code,
            format_args!(
                "Ingredient {{ key: {:?}, name: {:?}, group: Group::{}, flour_basis: FlourBasis::{}, \
                 composition: {}, cited: {}, acidity: {acidity}, leavening: {leavening}, \
                 fillings: &[{}], pieces: &[{}], allergens: &[{}], plant_based: {plant_based}, note: {:?} }},",
                row.text("key"),
                row.needed("name"),
                row.variant("group", GROUPS),
                row.variant("flour_basis", FLOUR_BASES),
                composition_code(row),
                row.cited("source", "confidence", larder),
                fillings.get(&place).map_or("", String::as_str),
                pieces.get(&place).map_or("", String::as_str),
                allergens.join(", "),
                row.text("note"),
            ),
        );
    }
    line(code, format_args!("];"));
}

fn composition_code(row: &Row) -> String {
    let share = |column: &str| row.number(column, (0.0, 100.0));
    // Half a gram more than the whole is the rounding of five published figures; one more is the
    // acid that some tables count twice, in the carbohydrate by difference.
    let sum: f64 = PROXIMATES.iter().filter_map(|column| share(column)).sum();
    if sum > 101.5 {
        row.fault(&format!(
            "water, protein, fat, carbohydrate and alcohol sum to {sum:.2} g in 100 g"
        ));
    }
    // The parts are analysed apart from the carbohydrate, which is a difference: cashews in SR28
    // are 2.5 g out.
    let parts: f64 = ["sugars_g", "starch_g", "fibre_g"]
        .iter()
        .filter_map(|part| share(part))
        .sum();
    if share("carbohydrate_g").is_some_and(|whole| parts > whole + 3.0) {
        row.fault(&format!(
            "sugars, starch and fibre sum to {parts:.2} g, more than the carbohydrate"
        ));
    }
    let derived: Vec<&str> = row.text("derived").split_whitespace().collect();
    if let Some(word) = derived.iter().find(|word| !DERIVABLE.contains(word)) {
        row.fault(&format!(
            "derived `{word}` is none of {}",
            DERIVABLE.join(", ")
        ));
    }
    let sodium = row
        .number("sodium_mg", (0.0, 100_000.0))
        .map(|milligrams| milligrams / 1000.0);
    let mut code = String::from("Composition { ");
    for name in DERIVABLE {
        let figure = if *name == "sodium" {
            sodium
        } else {
            share(&format!("{name}_g"))
        };
        let figure = figure.map_or("None".into(), |percent| format!("s({percent:?})"));
        write!(code, "{name}: {figure}, ").expect("writing to a string cannot fail");
    }
    write!(code, "derived: &{derived:?} }}").expect("writing to a string cannot fail");
    code
}

fn write_names(code: &mut String, table: &Table, larder: &Larder) {
    line(code, format_args!("static ALIASES: &[Alias] = &["));
    let mut taken: BTreeSet<(&str, &str)> = BTreeSet::new();
    for row in &table.rows {
        let (name, region) = (row.needed("name"), row.text("region"));
        let index = row.reference("key", &larder.foods);
        if name
            .chars()
            .any(|letter| letter.is_uppercase() || letter == '-' || letter == ',')
            || name.contains("  ")
        {
            row.fault(&format!(
                "name `{name}` is not lower case words with one space between them"
            ));
        }
        // An empty region is every region.
        let regions: Vec<&str> = match region {
            "" => REGIONS.iter().map(|(word, _)| *word).collect(),
            one => vec![one],
        };
        for region in regions {
            if !taken.insert((name, region)) {
                row.fault(&format!(
                    "name `{name}` means two things in region {region}"
                ));
            }
        }
        let region = row
            .optional_variant("region", REGIONS)
            .replace('(', "(Region::");
        line(
            code,
            format_args!("Alias {{ name: {name:?}, index: {index}, region: {region} }},"),
        );
    }
    line(code, format_args!("];"));
}

fn line(code: &mut String, text: std::fmt::Arguments) {
    writeln!(code, "{text}").expect("writing to a string cannot fail");
}

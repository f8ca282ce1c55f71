//! Checks the tables of figures and packs them for the program.
//!
//! Reads `src/baking/sources.csv`, the tables of `src/baking/ingredient/`, `src/baking/substitute/` and `src/baking/pan/`,
//! `src/baking/diagnosis/`, `src/baking/balance/ranges.csv` and `src/baking/oven/altitude.csv`; writes `larder.txt`, the rows without what the program doesn't use,
//! and `lists.rs`, `kinds.rs`, `swap_lists.rs`, `batter_lists.rs`, `pan_lists.rs`, `diagnosis_lists.rs` and `confidences.rs`, the closed lists in the order in
//! which the packed rows count them, to `OUT_DIR`. As text the tables add less than half as much to the page as they would as static
//! data. Every fault is reported as `file:line: reason`, all of them at once, and stops the build, so that
//! a wrong row cannot ship.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
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

const LEAVENING_ACIDS: Layout = Layout {
    file: "src/baking/ingredient/leavening_acids.csv",
    columns: &[
        "key",
        "name",
        "molar_mass",
        "uptake",
        "nv_low",
        "nv",
        "nv_high",
        "mixing_pct",
        "bench_pct",
        "oven_pct",
        "active_low_c",
        "active_high_c",
        "sodium_mg_g",
        "potassium_mg_g",
        "aluminium_mg_g",
        "taste",
        "nv_source",
        "nv_confidence",
        "rate_source",
        "rate_confidence",
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
        "acid1",
        "acid1_g",
        "acid2",
        "acid2_g",
        "said",
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

const OTHERS: Layout = Layout {
    file: "src/baking/ingredient/others.csv",
    columns: &[
        "key",
        "measure",
        "form",
        "filling",
        "grams_low",
        "grams",
        "grams_high",
        "source",
        "confidence",
        "note",
    ],
    // Several sources may speak of one measure, and one source of it twice.
    key_columns: 8,
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

const ALTITUDE: Layout = Layout {
    file: "src/baking/oven/altitude.csv",
    columns: &[
        "source",
        "height_m",
        "leavening_less_low",
        "leavening_less_high",
        "sugar_less_low_tbsp",
        "sugar_less_high_tbsp",
        "liquid_more_low_tbsp",
        "liquid_more_high_tbsp",
        "oven_more_low_f",
        "oven_more_high_f",
        "confidence",
        "note",
    ],
    key_columns: 2,
};

const CAUSES: Layout = Layout {
    file: "src/baking/diagnosis/causes.csv",
    columns: &[
        "key", "place", "prior", "figure", "name", "how", "tells", "remedy", "caution",
    ],
    key_columns: 1,
};

const LIKELIHOODS: Layout = Layout {
    file: "src/baking/diagnosis/likelihoods.csv",
    columns: &["sign", "cause", "sources"],
    key_columns: 2,
};

const SIGNS: Layout = Layout {
    file: "src/baking/diagnosis/signs.csv",
    columns: &["key", "group", "words", "also"],
    key_columns: 1,
};

const RANGES: Layout = Layout {
    file: "src/baking/balance/ranges.csv",
    columns: &[
        "kind",
        "class",
        "low",
        "typical",
        "high",
        "source",
        "confidence",
        "note",
    ],
    key_columns: 2,
};

const SWAPS: Layout = Layout {
    file: "src/baking/substitute/swaps.csv",
    columns: &[
        "from",
        "to1",
        "to2",
        "to3",
        "low1",
        "ratio1",
        "high1",
        "low2",
        "ratio2",
        "high2",
        "low3",
        "ratio3",
        "high3",
        "both",
        "usual_pct",
        "most_pct",
        "jobs",
        "kinds",
        "not_kinds",
        "taste",
        "colour",
        "keeping",
        "caution",
        "source",
        "source_place",
        "confidence",
        "note",
    ],
    key_columns: 4,
};

const EGG_WANTED: Layout = Layout {
    file: "src/baking/substitute/egg_wanted.csv",
    columns: &[
        "kind",
        "binding",
        "leavening",
        "emulsifying",
        "moistening",
        "source",
        "confidence",
        "note",
    ],
    key_columns: 1,
};

const EGG_GIVEN: Layout = Layout {
    file: "src/baking/substitute/egg_given.csv",
    columns: &[
        "key",
        "binding",
        "leavening",
        "emulsifying",
        "moistening",
        "result",
        "source",
        "confidence",
    ],
    key_columns: 1,
};

const PAN_SIZES: Layout = Layout {
    file: "src/baking/pan/sizes.csv",
    columns: &[
        "key",
        "shape",
        "made",
        "name",
        "length_mm",
        "width_mm",
        "base_length_mm",
        "base_width_mm",
        "depth_mm",
        "core_mm",
        "core_base_mm",
        "cavities",
        "flutes_pct",
        "brim_cups",
        "batter_cups",
        "textbook_cups",
        "source",
        "confidence",
        "note",
    ],
    key_columns: 1,
};

const BATTERS: Layout = Layout {
    file: "src/baking/pan/batters.csv",
    columns: &[
        "kind",
        "fill_low_pct",
        "fill_high_pct",
        "fill_source",
        "fill_confidence",
        "density_low",
        "density",
        "density_high",
        "density_source",
        "density_confidence",
        "note",
    ],
    key_columns: 1,
};

const SUGARS: Layout = Layout {
    file: "src/baking/ingredient/sugars.csv",
    columns: &[
        "key",
        "sucrose_g",
        "glucose_g",
        "fructose_g",
        "lactose_g",
        "maltose_g",
        "galactose_g",
        "allulose_g",
        "erythritol_g",
        "xylitol_g",
        "sorbitol_g",
        "maltitol_g",
        "source",
        "confidence",
        "note",
    ],
    key_columns: 1,
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
    ("pine_nuts", "PineNuts"),
    ("peanut", "Peanut"),
    ("sesame", "Sesame"),
    ("sulphites", "Sulphites"),
    ("mustard", "Mustard"),
    ("lupin", "Lupin"),
    ("celery", "Celery"),
    ("fish", "Fish"),
    ("crustaceans", "Crustaceans"),
    ("molluscs", "Molluscs"),
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

const UPTAKES: &[(&str, &str)] = &[
    ("value", "Value"),
    ("calcium_phosphate", "CalciumPhosphate"),
    ("pyrophosphate", "Pyrophosphate"),
];

const MEASURES: &[(&str, &str)] = &[
    ("cup", "Cup"),
    ("tablespoon", "Tablespoon"),
    ("teaspoon", "Teaspoon"),
];

/// The kinds of cake that have ranges.
const CLASSES: &[(&str, &str)] = &[
    ("sugar", "Sugar"),
    ("fat", "Fat"),
    ("egg", "Egg"),
    ("liquid", "Liquid"),
    ("water", "Water"),
    ("leavening", "Leavening"),
    ("salt", "Salt"),
    ("cocoa", "Cocoa"),
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

const SUGAR_KINDS: &[(&str, &str)] = &[
    ("sucrose", "Sucrose"),
    ("glucose", "Glucose"),
    ("fructose", "Fructose"),
    ("lactose", "Lactose"),
    ("maltose", "Maltose"),
    ("galactose", "Galactose"),
    ("allulose", "Allulose"),
    ("erythritol", "Erythritol"),
    ("xylitol", "Xylitol"),
    ("sorbitol", "Sorbitol"),
    ("maltitol", "Maltitol"),
];

/// How many of them are part of the total sugars of a food table.
const COUNTED_SUGARS: usize = 6;

const REGIONS: &[(&str, &str)] = &[
    ("us", "Us"),
    ("uk", "Uk"),
    ("au", "Au"),
    ("nz", "Nz"),
    ("ca", "Ca"),
];

const JOBS: &[(&str, &str)] = &[
    ("binds", "Binds"),
    ("leavens", "Leavens"),
    ("emulsifies", "Emulsifies"),
    ("moistens", "Moistens"),
    ("sweetens", "Sweetens"),
    ("shortens", "Shortens"),
    ("flavours", "Flavours"),
    ("sours", "Sours"),
    ("colours", "Colours"),
    ("structure", "Structure"),
];

const KINDS: &[(&str, &str)] = &[
    ("plain", "Plain"),
    ("gluten_free", "GlutenFree"),
    ("high_ratio_white", "HighRatioWhite"),
    ("high_ratio_yellow", "HighRatioYellow"),
    ("plant_oil", "PlantOil"),
    ("quick_bread", "QuickBread"),
    ("angel_food", "AngelFood"),
    ("chiffon", "Chiffon"),
    ("genoise", "Genoise"),
    ("sponge", "Sponge"),
    ("pound", "Pound"),
    ("victoria", "Victoria"),
    ("yellow_layer", "YellowLayer"),
    ("white_layer", "WhiteLayer"),
    ("chocolate", "Chocolate"),
    ("dark_chocolate", "DarkChocolate"),
    ("devils_food", "DevilsFood"),
    ("red_velvet", "RedVelvet"),
    ("buttermilk", "Buttermilk"),
    ("oil", "Oil"),
    ("muffin", "Muffin"),
    ("berry", "Berry"),
    ("banana", "Banana"),
    ("pumpkin", "Pumpkin"),
    ("gingerbread", "Gingerbread"),
    ("citrus", "Citrus"),
    ("biscuit", "Biscuit"),
    ("pancake", "Pancake"),
    ("cookie", "Cookie"),
    ("brownie", "Brownie"),
    ("fruit_cake", "FruitCake"),
    ("light_fruit", "LightFruit"),
    ("yeast", "Yeast"),
];

/// The shapes of pan that have common sizes.
const SHAPES: &[(&str, &str)] = &[
    ("round", "Round"),
    ("square", "Square"),
    ("rectangle", "Rectangle"),
    ("sheet", "Sheet"),
    ("loaf", "Loaf"),
    ("tube", "Tube"),
    ("fluted", "Fluted"),
    ("ring", "Ring"),
    ("cups", "Cups"),
    ("tart", "Tart"),
    ("hemisphere", "Hemisphere"),
    ("hexagon", "Hexagon"),
    ("heart", "Heart"),
    ("oval", "Oval"),
];

const MADE: &[(&str, &str)] = &[
    ("us", "Us"),
    ("uk", "Uk"),
    ("europe", "Europe"),
    ("japan", "Japan"),
    ("anywhere", "Anywhere"),
];

/// Words that stand for several kinds of cake in the tables of swaps.
const KINDS_TOGETHER: &[(&str, &[&str])] = &[
    ("foam", &["angel_food", "chiffon", "genoise", "sponge"]),
    (
        "layer",
        &[
            "victoria",
            "yellow_layer",
            "white_layer",
            "high_ratio_white",
            "high_ratio_yellow",
        ],
    ),
    ("fruit", &["fruit_cake", "light_fruit"]),
];

/// What part of the work a cause of a fault lies in.
const CAUSE_PLACES: &[(&str, &str)] = &[
    ("formula", "Formula"),
    ("pan", "Pan"),
    ("oven", "Oven"),
    ("handling", "Handling"),
];

const SIGN_GROUPS: &[(&str, &str)] = &[
    ("shape", "Shape"),
    ("crumb", "Crumb"),
    ("crust", "Crust"),
    ("taste", "Taste"),
    ("colour", "Colour"),
    ("pan", "Pan"),
];

/// The figures that bear on a cause.
const FIGURES: &[(&str, &str)] = &[
    ("none", "None"),
    ("sugar_above", "Above(Class::Sugar)"),
    ("sugar_below", "Below(Class::Sugar)"),
    ("fat_above", "Above(Class::Fat)"),
    ("fat_below", "Below(Class::Fat)"),
    ("egg_above", "Above(Class::Egg)"),
    ("egg_below", "Below(Class::Egg)"),
    ("liquid_above", "Above(Class::Liquid)"),
    ("liquid_below", "Below(Class::Liquid)"),
    ("salt_above", "Above(Class::Salt)"),
    ("salt_below", "Below(Class::Salt)"),
    ("flour_above", "FlourAbove"),
    ("flour_below", "FlourBelow"),
    ("strong_flour", "StrongFlour"),
    ("gluten", "Gluten"),
    ("air", "Air"),
    ("fruit", "Fruit"),
    ("gas_above", "GasAbove"),
    ("gas_below", "GasBelow"),
    ("stood", "Stood"),
    ("ph_above", "PhAbove"),
    ("ph_below", "PhBelow"),
    ("leavened", "Leavened"),
    ("aluminium", "Aluminium"),
    ("ammonia", "Ammonia"),
    ("seed_colour", "SeedColour"),
    ("berry_colour", "BerryColour"),
    ("fill_above", "FillAbove"),
    ("fill_below", "FillBelow"),
    ("oven_above", "OvenAbove"),
    ("oven_below", "OvenBelow"),
    ("baked_above", "BakedAbove"),
    ("baked_below", "BakedBelow"),
];

/// The parts of a composition, which with the ash make up the whole.
const PROXIMATES: &[&str] = &[
    "water_g",
    "protein_g",
    "fat_g",
    "carbohydrate_g",
    "alcohol_g",
];

/// The parts of a composition, in the order of their cells: those that may be named as derived.
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
    let [
        sources,
        foods,
        names,
        acidity,
        leavening_acids,
        leavening,
        fillings,
        pieces,
        others,
        ranges,
        swaps,
        egg_wanted,
        egg_given,
        sugars,
        pan_sizes,
        batters,
        altitude,
        causes,
        likelihoods,
        signs,
    ] = [
        SOURCES,
        FOODS,
        NAMES,
        ACIDITY,
        LEAVENING_ACIDS,
        LEAVENING,
        FILLINGS,
        PIECES,
        OTHERS,
        RANGES,
        SWAPS,
        EGG_WANTED,
        EGG_GIVEN,
        SUGARS,
        PAN_SIZES,
        BATTERS,
        ALTITUDE,
        CAUSES,
        LIKELIHOODS,
        SIGNS,
    ]
    .map(|layout| Table::read(layout, &faults));

    // A table with the wrong header cannot be read on.
    faults.stop_if_any();
    let larder = Larder {
        sources: places(&sources),
        foods: places(&foods),
        acidity: places(&acidity),
        leavening_acids: places(&leavening_acids),
        leavening: places(&leavening),
    };
    let names = names_by_food(&names, &larder);
    let fillings_in_use = in_use(&fillings);
    let fillings = rows_by_food(&fillings, &larder, filling_cells);
    let pieces = rows_by_food(&pieces, &larder, piece_cells);
    let in_use = &fillings_in_use;
    let others = rows_by_food(&others, &larder, |row, larder| {
        other_cells(row, larder, in_use)
    });
    check_swaps(&swaps);
    check_kinds(&egg_wanted, "says what an egg does in");
    check_kinds(&batters, "weighs the batter of");
    let sugars = rows_by_food(&sugars, &larder, |row, larder| {
        sugar_cells(row, larder, &foods)
    });
    let named = causes_by_sign(&likelihoods, &signs, &causes, &larder);
    let sections: [Vec<Cells>; 14] = [
        sources.rows.iter().map(source_cells).collect(),
        acidity
            .rows
            .iter()
            .map(|row| acidity_cells(row, &larder))
            .collect(),
        leavening_acids
            .rows
            .iter()
            .map(|row| leavening_acid_cells(row, &larder))
            .collect(),
        leavening
            .rows
            .iter()
            .map(|row| leavening_cells(row, &larder))
            .collect(),
        foods
            .rows
            .iter()
            .enumerate()
            .map(|(place, row)| {
                let listed = |rows: &BTreeMap<usize, Vec<String>>| {
                    rows.get(&place)
                        .map(|rows| rows.join("|"))
                        .unwrap_or_default()
                };
                food_cells(
                    row,
                    &larder,
                    [&names, &fillings, &pieces, &others, &sugars].map(listed),
                )
            })
            .collect(),
        ranges
            .rows
            .iter()
            .map(|row| range_cells(row, &larder))
            .collect(),
        swaps
            .rows
            .iter()
            .map(|row| swap_cells(row, &larder))
            .collect(),
        egg_wanted
            .rows
            .iter()
            .map(|row| egg_wanted_cells(row, &larder))
            .collect(),
        egg_given
            .rows
            .iter()
            .map(|row| egg_given_cells(row, &larder))
            .collect(),
        pan_sizes
            .rows
            .iter()
            .map(|row| pan_size_cells(row, &larder))
            .collect(),
        batters
            .rows
            .iter()
            .map(|row| batter_cells(row, &larder))
            .collect(),
        altitude
            .rows
            .iter()
            .map(|row| altitude_cells(row, &larder))
            .collect(),
        signs
            .rows
            .iter()
            .zip(&named)
            .map(|(row, named)| sign_cells(row, named))
            .collect(),
        causes.rows.iter().map(cause_cells).collect(),
    ];
    classes_of_each_kind(&ranges);
    faults.stop_if_any();
    let out = std::env::var("OUT_DIR").expect("cargo sets OUT_DIR for every build script");
    let out = Path::new(&out);
    for (name, text) in [
        ("larder.txt", packed(&sections)),
        ("lists.rs", lists()),
        (
            "kinds.rs",
            list("KINDS", "Kind", KINDS) + &list("CLASSES", "Class", CLASSES),
        ),
        (
            "swap_lists.rs",
            list("JOBS", "Job", JOBS) + &list("KINDS", "Kind", KINDS),
        ),
        ("batter_lists.rs", list("KINDS", "Kind", KINDS)),
        (
            "pan_lists.rs",
            list("SHAPES", "Shape", SHAPES) + &list("MADE", "Made", MADE),
        ),
        (
            "diagnosis_lists.rs",
            list("PLACES", "Place", CAUSE_PLACES)
                + &list("GROUPS", "Group", SIGN_GROUPS)
                + &list("FIGURES", "Figure", FIGURES),
        ),
        (
            "confidences.rs",
            list("CONFIDENCES", "Confidence", CONFIDENCES),
        ),
    ] {
        std::fs::write(out.join(name), text).expect("OUT_DIR can be written to");
    }
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

    /// The place of a word in its closed list; empty where the cell is.
    fn choice(&self, column: &str, list: &List) -> String {
        match self.text(column) {
            "" => String::new(),
            word => self.word_choice(column, word, list),
        }
    }

    /// As [`Row::choice`], for a cell that must not be empty.
    fn choice_needed(&self, column: &str, list: &List) -> String {
        self.needed(column);
        self.choice(column, list)
    }

    fn word_choice(&self, column: &str, word: &str, list: &List) -> String {
        let place = list.iter().position(|(name, _)| *name == word);
        if place.is_none() {
            let words: Vec<_> = list.iter().map(|(name, _)| *name).collect();
            self.fault(&format!(
                "{column} `{word}` is none of {}",
                words.join(", ")
            ));
        }
        place.unwrap_or(0).to_string()
    }

    /// The place of the row in another table that a column names.
    fn reference(&self, column: &str, places: &Places) -> usize {
        let key = self.needed(column);
        places.get(key).copied().unwrap_or_else(|| {
            self.fault(&format!("{column} `{key}` is in no table"));
            0
        })
    }

    /// Source and confidence: the place of the one, a blank, the place of the other.
    fn cited(&self, source: &str, confidence: &str, larder: &Larder) -> String {
        let place = self.reference(source, &larder.sources);
        format!("{place} {}", self.choice_needed(confidence, CONFIDENCES))
    }
}

/// Where each key stands in its table.
type Places = BTreeMap<String, usize>;

/// The keys of the tables that others refer to.
struct Larder {
    sources: Places,
    foods: Places,
    acidity: Places,
    leavening_acids: Places,
    leavening: Places,
}

fn check_key(row: &Row) {
    let key = row.needed("key");
    if !key
        .chars()
        .all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_')
    {
        row.fault(&format!("key `{key}` is not lower_snake_case"));
    }
}

fn places(table: &Table) -> Places {
    table.rows.iter().for_each(check_key);
    let keys = table.rows.iter().map(|row| row.text("key").to_owned());
    keys.enumerate().map(|(place, key)| (key, place)).collect()
}

// ---- Packing -------------------------------------------------------------------------------
//
// A section a table, ended by an empty line; a row a line; cells apart by tabs. Lists within a cell are apart by
// bars, and their cells by semicolons. `src/baking/packed.rs`, `ingredient/unpack.rs`, `pan/sizes.rs`, `pan/batter.rs`, `substitute/unpack.rs` and `diagnosis/table.rs` read it
// cell by cell in the order written here.

/// The cells of a packed row.
type Cells = Vec<String>;

/// A closed list of the code: word in the table, variant.
type List = [(&'static str, &'static str)];

fn packed(sections: &[Vec<Cells>]) -> String {
    let mut text = String::new();
    for rows in sections {
        for row in rows {
            text.push_str(&row.join("\t"));
            text.push('\n');
        }
        text.push('\n');
    }
    text
}

/// The closed lists as Rust, so that the program counts them as the packed rows do.
fn lists() -> String {
    [
        list("GROUPS", "Group", GROUPS),
        list("FLOUR_BASES", "FlourBasis", FLOUR_BASES),
        list("ALLERGENS", "Allergen", ALLERGENS),
        list("BICARBONATES", "Bicarbonate", BICARBONATES),
        list("UPTAKES", "Uptake", UPTAKES),
        list("MEASURES", "SpoonOrCup", MEASURES),
        list("FORMS", "Form", FORMS),
        list("WAYS_OF_FILLING", "Filling", WAYS_OF_FILLING),
        list("PIECE_KINDS", "Piece", PIECE_KINDS),
        list("SIZES", "PieceSize", SIZES),
        list("REGIONS", "Region", REGIONS),
        list("SUGAR_KINDS", "SugarKind", SUGAR_KINDS),
        format!("const PARTS: &[&str] = &{DERIVABLE:?};\n"),
    ]
    .concat()
}

fn list(name: &str, kind: &str, list: &List) -> String {
    let variants: Vec<String> = list
        .iter()
        .map(|(_, variant)| format!("{kind}::{variant}"))
        .collect();
    format!("const {name}: &[{kind}] = &[{}];\n", variants.join(", "))
}

/// A number as short as it can be written and read back alike.
fn figure(number: f64) -> String {
    let text = format!("{number}");
    text.strip_prefix("0.")
        .map(|decimals| format!(".{decimals}"))
        .unwrap_or(text)
}

/// A number that may be unknown; empty where it is.
fn figure_or_unknown(number: Option<f64>) -> String {
    number.map(figure).unwrap_or_default()
}

/// A mean between its ends.
fn range([low, mean, high]: [f64; 3]) -> String {
    format!("{} {} {}", figure(low), figure(mean), figure(high))
}

fn source_cells(row: &Row) -> Cells {
    vec![row.needed("key").into(), row.needed("citation").into()]
}

fn acidity_cells(row: &Row, larder: &Larder) -> Cells {
    let acids: Vec<String> = ACIDS
        .iter()
        .map(|acid| figure_or_unknown(row.number(&format!("{acid}_g"), (0.0, 100.0))))
        .collect();
    let buffer = ["buffer_below_6", "buffer_6_to_7_5", "buffer_above_7_5"]
        .map(|column| figure(row.number_needed(column, (0.0, 1000.0))));
    vec![
        row.text("key").into(),
        range(row.rising(["ph_low", "ph", "ph_high"], (0.0, 14.0))),
        acids.join(";"),
        buffer.join(" "),
        figure_or_unknown(row.number("bicarbonate_mmol_kg", (0.0, 1000.0))),
        figure(row.number_needed("deviation_pct", (0.0, 100.0))),
        titratable(row, larder),
        row.cited("ph_source", "ph_confidence", larder),
        acids_cited(row, larder),
        row.cited("buffer_source", "buffer_confidence", larder),
        row.text("note").into(),
    ]
}

fn acids_cited(row: &Row, larder: &Larder) -> String {
    let listed = ACIDS
        .iter()
        .any(|acid| !row.text(&format!("{acid}_g")).is_empty());
    match (listed, row.text("acids_source").is_empty()) {
        (true, true) => row.fault("has acids but no acids_source"),
        (false, false) => row.fault("has an acids_source but no acids"),
        (false, true) => {}
        (true, false) => return row.cited("acids_source", "acids_confidence", larder),
    }
    String::new()
}

fn titratable(row: &Row, larder: &Larder) -> String {
    let acid = row.text("titratable_as");
    if acid.is_empty() {
        return String::new();
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
    let source = row.reference("titratable_source", &larder.sources);
    format!("{acid} {} {} {source}", figure(low), figure(high))
}

fn leavening_acid_cells(row: &Row, larder: &Larder) -> Cells {
    let gas = ["mixing_pct", "bench_pct", "oven_pct"]
        .map(|column| row.number_needed(column, (0.0, 100.0)));
    let sum: f64 = gas.iter().sum();
    if (sum - 100.0).abs() > 1e-9 {
        row.fault(&format!("mixing, bench and oven sum to {sum} %"));
    }
    let active =
        ["active_low_c", "active_high_c"].map(|column| row.number_needed(column, (0.0, 100.0)));
    if active[0] >= active[1] {
        row.fault("active_low_c is not below active_high_c");
    }
    let metals = ["sodium_mg_g", "potassium_mg_g", "aluminium_mg_g"]
        .map(|column| row.number_needed(column, (0.0, 1000.0)));
    if metals.iter().sum::<f64>() > 1000.0 {
        row.fault("its metals weigh more than the whole");
    }
    let blanks = |figures: &[f64]| {
        figures
            .iter()
            .copied()
            .map(figure)
            .collect::<Vec<_>>()
            .join(" ")
    };
    vec![
        row.text("key").into(),
        row.needed("name").into(),
        figure(row.number_needed("molar_mass", (50.0, 2000.0))),
        row.choice_needed("uptake", UPTAKES),
        range(row.rising(["nv_low", "nv", "nv_high"], (1.0, 200.0))),
        blanks(&gas),
        blanks(&active),
        blanks(&metals),
        row.needed("taste").into(),
        row.cited("nv_source", "nv_confidence", larder),
        row.cited("rate_source", "rate_confidence", larder),
        row.text("note").into(),
    ]
}

fn leavening_cells(row: &Row, larder: &Larder) -> Cells {
    row.reference("key", &larder.foods);
    let bicarbonate = row.choice("bicarbonate", BICARBONATES);
    let grams = if bicarbonate.is_empty() {
        0.0
    } else {
        row.number_needed("bicarbonate_g", (0.0, 100.0))
    };
    let neutralised = row.rising(
        ["neutralised_low_g", "neutralised_g", "neutralised_high_g"],
        (0.0, 150.0),
    );
    let acids: Vec<(usize, f64)> = [("acid1", "acid1_g"), ("acid2", "acid2_g")]
        .into_iter()
        .filter(|(acid, share)| !row.text(acid).is_empty() || !row.text(share).is_empty())
        .map(|(acid, share)| {
            (
                row.reference(acid, &larder.leavening_acids),
                row.number_needed(share, (0.01, 100.0)),
            )
        })
        .collect();
    if acids.is_empty() != (neutralised[1] == 0.0) {
        row.fault("has an acid that takes up no soda, or takes up soda without an acid");
    }
    if acids.is_empty() && !row.text("said").is_empty() {
        row.fault("says something of acids that it has not");
    }
    let sum = grams + acids.iter().map(|(_, share)| share).sum::<f64>();
    if sum > 100.0 {
        row.fault(&format!("bicarbonate and acids sum to {sum} g in 100 g"));
    }
    let acids: Vec<String> = acids
        .iter()
        .map(|(place, share)| format!("{place};{}", figure(*share)))
        .collect();
    let grams = if bicarbonate.is_empty() {
        String::new()
    } else {
        figure(grams)
    };
    vec![
        bicarbonate,
        grams,
        range(neutralised),
        acids.join("|"),
        row.text("said").into(),
        row.cited("source", "confidence", larder),
        row.text("note").into(),
    ]
}

/// The packed rows of each food, in the order of the table.
fn rows_by_food(
    table: &Table,
    larder: &Larder,
    cells: impl Fn(&Row, &Larder) -> Cells,
) -> BTreeMap<usize, Vec<String>> {
    let mut rows: BTreeMap<usize, Vec<String>> = BTreeMap::new();
    for row in &table.rows {
        let food = row.reference("key", &larder.foods);
        let cells = cells(row, larder);
        // The note stands last, so a semicolon in it does no harm; a bar would end the row.
        if cells.iter().any(|cell| cell.contains(['|', '\t'])) {
            row.fault("holds a bar or a tab");
        }
        rows.entry(food).or_default().push(cells.join(";"));
    }
    rows
}

fn filling_cells(row: &Row, larder: &Larder) -> Cells {
    let mut cells = vec![
        row.choice_needed("measure", MEASURES),
        row.choice("form", FORMS),
        row.choice("filling", WAYS_OF_FILLING),
    ];
    cells.extend(weight_cells(row, larder));
    cells
}

/// The source and the grams of each filling row, by what tells the rows apart.
type InUse = BTreeMap<Vec<String>, (String, String)>;

fn in_use(fillings: &Table) -> InUse {
    let rows = fillings.rows.iter();
    rows.map(|row| {
        (
            row.cells[..FILLINGS.key_columns].to_vec(),
            (
                row.text("source").to_owned(),
                row.text("typical_g").to_owned(),
            ),
        )
    })
    .collect()
}

fn other_cells(row: &Row, larder: &Larder, in_use: &InUse) -> Cells {
    let bounds = (0.001, 5000.0);
    let ends = ["grams_low", "grams_high"].map(|column| !row.text(column).is_empty());
    let weight = match ends {
        [true, true] => range(row.rising(["grams_low", "grams", "grams_high"], bounds)),
        [false, false] => figure(row.number_needed("grams", bounds)),
        _ => {
            row.fault("has one end of a range");
            String::new()
        }
    };
    // A row that says again what is in use would show one source as two.
    let again = (row.text("source").to_owned(), row.text("grams").to_owned());
    if in_use.get(&row.cells[..FILLINGS.key_columns]) == Some(&again) {
        row.fault("is the row in use");
    }
    vec![
        row.choice_needed("measure", MEASURES),
        row.choice("form", FORMS),
        row.choice("filling", WAYS_OF_FILLING),
        weight,
        row.cited("source", "confidence", larder),
        row.text("note").into(),
    ]
}

fn piece_cells(row: &Row, larder: &Larder) -> Cells {
    let mut cells = vec![
        row.choice_needed("piece", PIECE_KINDS),
        row.choice("size", SIZES),
        row.choice("region", REGIONS),
    ];
    cells.extend(weight_cells(row, larder));
    cells
}

fn weight_cells(row: &Row, larder: &Larder) -> Cells {
    let weight = row.rising(["low_g", "typical_g", "high_g"], (0.0, 5000.0));
    if weight[1] <= 0.0 {
        row.fault("weighs nothing");
    }
    vec![
        range(weight),
        row.cited("source", "confidence", larder),
        row.text("note").into(),
    ]
}

fn range_cells(row: &Row, larder: &Larder) -> Cells {
    vec![
        row.choice_needed("kind", KINDS),
        row.choice_needed("class", CLASSES),
        range(row.rising(["low", "typical", "high"], (0.0, 400.0))),
        row.cited("source", "confidence", larder),
        row.text("note").into(),
    ]
}

fn altitude_cells(row: &Row, larder: &Larder) -> Cells {
    let ends = |what: [&str; 2], bounds: (f64, f64)| match what.map(|end| row.number(end, bounds)) {
        [Some(low), Some(high)] if low <= high => format!("{} {}", figure(low), figure(high)),
        [None, None] => String::new(),
        _ => {
            row.fault(&format!("{} is not below {}", what[0], what[1]));
            String::new()
        }
    };
    vec![
        figure(row.number_needed("height_m", (0.0, 5000.0))),
        ends(["leavening_less_low", "leavening_less_high"], (0.0, 1.0)),
        ends(["sugar_less_low_tbsp", "sugar_less_high_tbsp"], (0.0, 16.0)),
        ends(
            ["liquid_more_low_tbsp", "liquid_more_high_tbsp"],
            (0.0, 16.0),
        ),
        ends(["oven_more_low_f", "oven_more_high_f"], (0.0, 100.0)),
        row.cited("source", "confidence", larder),
        row.text("note").into(),
    ]
}

/// The kinds that are there, each as its place and its grams, then where they are from.
fn sugar_cells(row: &Row, larder: &Larder, foods: &Table) -> Cells {
    let grams: Vec<f64> = SUGAR_KINDS
        .iter()
        .map(|(kind, _)| {
            let column = format!("{kind}_g");
            row.number(&column, (0.0, 100.0)).unwrap_or(0.0)
        })
        .collect();
    let (counted, all): (f64, f64) = (grams[..COUNTED_SUGARS].iter().sum(), grams.iter().sum());
    if all == 0.0 {
        row.fault("lists no sugar");
    }
    let food = larder.foods.get(row.text("key"));
    let food = food.map(|place| &foods.rows[*place]);
    let of_food = |column: &str| food.and_then(|food| food.number(column, (0.0, 100.0)));
    // The kinds are analysed apart from each other, so their sum is a little off the total.
    if let Some(total) = of_food("sugars_g").filter(|total| counted > total * 1.05) {
        row.fault(&format!(
            "its sugars sum to {counted:.2} g, the food has {total} g"
        ));
    }
    // As far off the carbohydrate, which is a difference, as its other parts may be.
    if let Some(total) = of_food("carbohydrate_g").filter(|total| all > total + 3.0) {
        row.fault(&format!(
            "its sugars and polyols sum to {all:.2} g, the carbohydrate is {total} g"
        ));
    }
    let parts = grams.iter().enumerate().filter(|(_, grams)| **grams > 0.0);
    let parts: Vec<String> = parts
        .map(|(place, grams)| format!("{place} {}", figure(*grams)))
        .collect();
    vec![
        parts.join(" "),
        row.cited("source", "confidence", larder),
        row.text("note").into(),
    ]
}

/// Every kind has a range for each class; only cocoa may be left out.
fn classes_of_each_kind(table: &Table) {
    let kinds: BTreeSet<&str> = table.rows.iter().map(|row| row.text("kind")).collect();
    for kind in kinds {
        let rows = || table.rows.iter().filter(|row| row.text("kind") == kind);
        for (class, _) in CLASSES.iter().filter(|(class, _)| *class != "cocoa") {
            if !rows().any(|row| row.text("class") == *class)
                && let Some(row) = rows().next()
            {
                row.fault(&format!("{kind} has no range of {class}"));
            }
        }
    }
}

fn food_cells(row: &Row, larder: &Larder, lists: [String; 5]) -> Cells {
    let acidity = match row.text("acidity") {
        "" => String::new(),
        _ => row.reference("acidity", &larder.acidity).to_string(),
    };
    let leavening = larder.leavening.get(row.text("key")).map(usize::to_string);
    let allergens: Vec<String> = row
        .text("allergens")
        .split_whitespace()
        .map(|word| row.word_choice("allergens", word, ALLERGENS))
        .collect();
    let plant_based = match row.text("plant_based") {
        "yes" => "1",
        "no" => "0",
        "" => "",
        other => {
            row.fault(&format!("plant_based `{other}` is neither yes nor no"));
            ""
        }
    };
    let mut cells: Cells = vec![
        row.text("key").into(),
        row.needed("name").into(),
        row.choice_needed("group", GROUPS),
        row.choice_needed("flour_basis", FLOUR_BASES),
    ];
    cells.extend(composition_cells(row));
    cells.extend([
        row.cited("source", "confidence", larder),
        acidity,
        leavening.unwrap_or_default(),
        allergens.join(" "),
        plant_based.into(),
        row.text("note").into(),
    ]);
    cells.extend(lists);
    cells
}

/// Shares in per cent in the order of [`DERIVABLE`], then the places in it of those derived.
fn composition_cells(row: &Row) -> Cells {
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
    let derived: Vec<String> = row
        .text("derived")
        .split_whitespace()
        .filter_map(|word| {
            let place = DERIVABLE.iter().position(|name| *name == word);
            if place.is_none() {
                row.fault(&format!(
                    "derived `{word}` is none of {}",
                    DERIVABLE.join(", ")
                ));
            }
            place.map(|place| place.to_string())
        })
        .collect();
    let mut cells: Cells = DERIVABLE
        .iter()
        .map(|name| match *name {
            "sodium" => {
                let milligrams = row.number("sodium_mg", (0.0, 100_000.0));
                // In milligrams, as published: a thousandth of a per cent.
                figure_or_unknown(milligrams)
            }
            name => figure_or_unknown(share(&format!("{name}_g"))),
        })
        .collect();
    cells.push(derived.join(" "));
    cells
}

/// What stands in the place of a region where a name has another meaning that is to be offered.
const SECOND_MEANING: &str = "also";

/// The names of each food, a regional one with its region's place after an at sign.
fn names_by_food(table: &Table, larder: &Larder) -> BTreeMap<usize, Vec<String>> {
    let mut names: BTreeMap<usize, Vec<String>> = BTreeMap::new();
    let mut taken: BTreeSet<(&str, &str)> = BTreeSet::new();
    for row in &table.rows {
        let (name, region) = (row.needed("name"), row.text("region"));
        let food = row.reference("key", &larder.foods);
        if name
            .chars()
            .any(|letter| letter.is_uppercase() || "-,|@".contains(letter))
            || name.contains("  ")
        {
            row.fault(&format!(
                "name `{name}` is not lower case words with one space between them"
            ));
        }
        // A second meaning is offered everywhere beside the first, and is marked by an at sign alone.
        if region == SECOND_MEANING {
            names.entry(food).or_default().push(format!("{name}@"));
            continue;
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
        let place = row.choice("region", REGIONS);
        let packed = if place.is_empty() {
            name.to_owned()
        } else {
            format!("{name}@{place}")
        };
        names.entry(food).or_default().push(packed);
    }
    names
}

// ---- Swaps ---------------------------------------------------------------------------------

/// The columns of each ingredient that a swap brings.
const BROUGHT: [(&str, [&str; 3]); 3] = [
    ("to1", ["low1", "ratio1", "high1"]),
    ("to2", ["low2", "ratio2", "high2"]),
    ("to3", ["low3", "ratio3", "high3"]),
];

/// What stands in the column of a swap that holds the other way round as well.
const BOTH_WAYS: &str = "both";

/// A swap that holds both ways may not stand again the other way round.
fn check_swaps(swaps: &Table) {
    let alone = |row: &Row| {
        row.text("to2")
            .is_empty()
            .then(|| (row.text("from").to_owned(), row.text("to1").to_owned()))
    };
    let pairs: BTreeSet<_> = swaps.rows.iter().filter_map(alone).collect();
    for row in &swaps.rows {
        if row.text("both") == BOTH_WAYS
            && alone(row).is_some_and(|(from, to)| pairs.contains(&(to, from)))
        {
            row.fault("holds both ways, and the other way has a row of its own");
        }
    }
}

/// Every kind of cake wants a row.
fn check_kinds(table: &Table, does: &str) {
    for (kind, _) in KINDS {
        if let Some(row) = table.rows.first()
            && table.rows.iter().all(|row| row.text("kind") != *kind)
        {
            row.fault(&format!("no row {does} {kind}"));
        }
    }
}

fn swap_cells(row: &Row, larder: &Larder) -> Cells {
    let from = row.reference("from", &larder.foods);
    let brought: Vec<String> = BROUGHT
        .iter()
        .filter_map(|(column, ratios)| brought_cells(row, column, *ratios, larder))
        .collect();
    row.needed("to1");
    if row.text("to2").is_empty() && !row.text("to3").is_empty() {
        row.fault("has a third ingredient but no second");
    }
    let mut keys = vec![row.text("from")];
    keys.extend(BROUGHT.iter().map(|(column, _)| row.text(column)));
    keys.retain(|key| !key.is_empty());
    keys.sort_unstable();
    if keys.windows(2).any(|pair| pair[0] == pair[1]) {
        row.fault("names an ingredient twice");
    }
    let both = match row.text("both") {
        "" => "",
        BOTH_WAYS if brought.len() == 1 => "1",
        BOTH_WAYS => {
            row.fault("brings several ingredients, so that it cannot hold both ways");
            ""
        }
        other => {
            row.fault(&format!("both `{other}` is neither empty nor {BOTH_WAYS}"));
            ""
        }
    };
    let [usual, most] =
        ["usual_pct", "most_pct"].map(|column| row.number_needed(column, (0.0, 100.0)));
    if usual > most || most == 0.0 {
        row.fault("usual_pct is above most_pct, or nothing may be replaced");
    }
    row.needed("jobs");
    let (kinds, not_kinds) = (kind_places(row, "kinds"), kind_places(row, "not_kinds"));
    if kinds.iter().any(|kind| not_kinds.contains(kind)) {
        row.fault("is meant for a kind of cake that it is not meant for");
    }
    if row.cells.iter().any(|cell| cell.contains(['|', '\t'])) {
        row.fault("holds a bar or a tab");
    }
    vec![
        from.to_string(),
        brought.join("|"),
        both.into(),
        format!("{} {}", figure(usual), figure(most)),
        job_places(row),
        kinds.join(" "),
        not_kinds.join(" "),
        row.text("taste").into(),
        row.text("colour").into(),
        row.text("keeping").into(),
        row.text("caution").into(),
        row.cited("source", "confidence", larder),
        row.text("source_place").into(),
        row.text("note").into(),
    ]
}

/// The place of one ingredient that a swap brings and its ratio; `None` where there is none.
fn brought_cells(row: &Row, column: &str, ratios: [&str; 3], larder: &Larder) -> Option<String> {
    if row.text(column).is_empty() {
        if ratios.iter().any(|ratio| !row.text(ratio).is_empty()) {
            row.fault(&format!("has a ratio but no {column}"));
        }
        return None;
    }
    let food = row.reference(column, &larder.foods);
    // Half a cup of buttermilk stands beside a quarter of a teaspoon of soda: 27 g for each gram of powder.
    let ratio = row.rising(ratios, (0.001, 30.0));
    Some(format!("{food};{}", range(ratio)))
}

fn job_places(row: &Row) -> String {
    let words = row.text("jobs").split_whitespace();
    words
        .map(|word| row.word_choice("jobs", word, JOBS))
        .collect::<Vec<_>>()
        .join(" ")
}

/// The places of the kinds that a cell names, one by one or several by one word.
fn kind_places(row: &Row, column: &str) -> Vec<String> {
    let mut places = Vec::new();
    for word in row.text(column).split_whitespace() {
        match KINDS_TOGETHER.iter().find(|(name, _)| *name == word) {
            Some((_, kinds)) => {
                places.extend(
                    kinds
                        .iter()
                        .map(|kind| row.word_choice(column, kind, KINDS)),
                );
            }
            None => places.push(row.word_choice(column, word, KINDS)),
        }
    }
    let named = places.len();
    places.sort_by_key(|place| place.parse::<usize>().unwrap_or(0));
    places.dedup();
    if places.len() < named {
        row.fault(&format!("{column} names a kind twice"));
    }
    places
}

// ---- Pans ----------------------------------------------------------------------------------

/// Sides in millimetres, nothing where the usual one holds; then how many cavities, what flutes leave, and what is printed.
fn pan_size_cells(row: &Row, larder: &Larder) -> Cells {
    check_key(row);
    let side = |column: &str| row.number(column, (10.0, 1500.0));
    let length = row.number_needed("length_mm", (10.0, 1500.0));
    let depth = row.number_needed("depth_mm", (10.0, 300.0));
    let has_width = ["rectangle", "sheet", "loaf", "oval"].contains(&row.text("shape"));
    if has_width == row.text("width_mm").is_empty() {
        row.fault("has a width that its shape has not, or lacks one");
    }
    let width = side("width_mm").unwrap_or(length);
    if width > length {
        row.fault("its width is above its length");
    }
    for (base, brim) in [("base_length_mm", length), ("base_width_mm", width)] {
        if side(base).is_some_and(|base| base > brim || base < brim / 2.0) {
            row.fault(&format!(
                "{base} is above the brim, or less than half of it"
            ));
        }
    }
    if side("core_base_mm")
        .or(side("core_mm"))
        .is_some_and(|core| core > length / 2.0)
    {
        row.fault("its core takes more than half of its diameter");
    }
    let sides: Vec<String> = [
        "length_mm",
        "width_mm",
        "base_length_mm",
        "base_width_mm",
        "depth_mm",
        "core_mm",
        "core_base_mm",
    ]
    .map(|column| figure(row.number(column, (0.0, 1500.0)).unwrap_or(0.0)))
    .into();
    let cavities = row.number_needed("cavities", (1.0, 48.0));
    let flutes = row.number("flutes_pct", (50.0, 100.0)).unwrap_or(0.0);
    let printed =
        ["brim_cups", "batter_cups", "textbook_cups"].map(|column| cups_printed(row, column));
    let mut cells = vec![
        row.text("key").into(),
        row.choice_needed("shape", SHAPES),
        row.choice_needed("made", MADE),
        row.text("name").into(),
        sides.join(" "),
        format!("{} {}", figure(cavities), figure(flutes)),
    ];
    cells.extend(printed);
    cells.push(row.cited("source", "confidence", larder));
    cells.push(row.text("note").into());
    if depth > length {
        row.fault("it is deeper than long");
    }
    cells
}

/// How full a kind's pans usually are, nothing where that is not known, and what its batter weighs, in grams per millilitre.
fn batter_cells(row: &Row, larder: &Larder) -> Cells {
    let ends = ["fill_low_pct", "fill_high_pct"].map(|column| row.number(column, (10.0, 100.0)));
    let (fill, fill_cited) = match ends {
        [Some(low), Some(high)] if low < high => (
            format!("{} {}", figure(low), figure(high)),
            row.cited("fill_source", "fill_confidence", larder),
        ),
        [None, None] => (String::new(), String::new()),
        _ => {
            row.fault("its fill has one end, or ends that don't rise");
            (String::new(), String::new())
        }
    };
    vec![
        row.choice_needed("kind", KINDS),
        fill,
        fill_cited,
        range(row.rising(["density_low", "density", "density_high"], (0.1, 1.5))),
        row.cited("density_source", "density_confidence", larder),
        row.text("note").into(),
    ]
}

/// Volumes in US cups, apart by blanks where charts disagree.
fn cups_printed(row: &Row, column: &str) -> String {
    let words: Vec<&str> = row.text(column).split_whitespace().collect();
    for word in &words {
        if !word
            .parse::<f64>()
            .is_ok_and(|cups| (0.05..100.0).contains(&cups))
        {
            row.fault(&format!("{column} `{word}` is no volume of a pan in cups"));
        }
    }
    words.join(" ")
}

/// What an egg or what stands for it does, from 0 to 3.
fn egg_work(row: &Row) -> String {
    let work = ["binding", "leavening", "emulsifying", "moistening"].map(|column| {
        let strength = row.number_needed(column, (0.0, 3.0));
        if strength.fract() != 0.0 {
            row.fault(&format!("{column} {strength} is not 0, 1, 2 or 3"));
        }
        figure(strength)
    });
    work.join(" ")
}

fn egg_wanted_cells(row: &Row, larder: &Larder) -> Cells {
    vec![
        row.choice_needed("kind", KINDS),
        egg_work(row),
        row.cited("source", "confidence", larder),
        row.text("note").into(),
    ]
}

fn egg_given_cells(row: &Row, larder: &Larder) -> Cells {
    vec![
        row.reference("key", &larder.foods).to_string(),
        egg_work(row),
        row.needed("result").into(),
        row.cited("source", "confidence", larder),
    ]
}

/// What fault tables name for each sign, in the order of the signs: the places of the causes, each with those of the tables
/// that name it.
fn causes_by_sign(
    likelihoods: &Table,
    signs: &Table,
    causes: &Table,
    larder: &Larder,
) -> Vec<Vec<String>> {
    let (sign_places, cause_places) = (places(signs), places(causes));
    let mut named: Vec<Vec<String>> = vec![Vec::new(); signs.rows.len()];
    let mut used: BTreeSet<usize> = BTreeSet::new();
    for row in &likelihoods.rows {
        let cause = row.reference("cause", &cause_places);
        used.insert(cause);
        let mut tables: Vec<String> = Vec::new();
        for key in row.needed("sources").split(' ') {
            match larder.sources.get(key) {
                Some(place) => tables.push(place.to_string()),
                None => row.fault(&format!("source `{key}` is in no table")),
            }
        }
        let list = format!("{cause};{}", tables.join(" "));
        if let Some(of_sign) = named.get_mut(row.reference("sign", &sign_places)) {
            of_sign.push(list);
        }
    }
    for (row, named) in signs.rows.iter().zip(&named) {
        if named.is_empty() {
            row.fault("no table names a cause of it");
        }
    }
    for (place, row) in causes.rows.iter().enumerate() {
        if !used.contains(&place) {
            row.fault("no table names it for any sign");
        }
    }
    named
}

fn sign_cells(row: &Row, named: &[String]) -> Cells {
    vec![
        row.needed("key").into(),
        row.choice_needed("group", SIGN_GROUPS),
        row.needed("words").into(),
        row.text("also").into(),
        named.join("|"),
    ]
}

fn cause_cells(row: &Row) -> Cells {
    let mut cells = vec![
        row.needed("key").into(),
        row.choice_needed("place", CAUSE_PLACES),
        figure(row.number_needed("prior", (1.0, 3.0))),
        row.choice_needed("figure", FIGURES),
    ];
    cells.extend(["name", "how", "tells", "remedy"].map(|column| row.needed(column).into()));
    cells.push(row.text("caution").into());
    cells
}

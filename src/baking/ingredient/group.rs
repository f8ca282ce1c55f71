//! Families of ingredients.

/// The family an ingredient belongs to. It decides what a line may be called, never a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// Flours and meals.
    Flour,
    /// Pure starches.
    Starch,
    /// Grains that are not flour: oats, bran, semolina.
    Grain,
    /// Dry sugars.
    Sugar,
    /// Syrups, honey.
    Syrup,
    /// Butter, margarine, shortening.
    Fat,
    /// Fats that pour.
    Oil,
    /// Milk and what is made of it.
    Dairy,
    /// Milks, yogurts, creams and curds from plants.
    PlantDairy,
    /// Eggs and their parts, and what replaces them.
    Egg,
    /// Soda, powders, leavening acids, yeast.
    Leavener,
    /// Juices.
    Juice,
    /// Vinegars and sour salts.
    Acid,
    /// Fresh, frozen and tinned fruit, purees.
    Fruit,
    /// Dried and candied fruit.
    DriedFruit,
    /// Vegetables.
    Vegetable,
    /// Cocoa powders.
    Cocoa,
    /// Chocolates.
    Chocolate,
    /// Nuts and their pastes.
    Nut,
    /// Seeds.
    Seed,
    /// Extracts, salt, coffee, tea.
    Flavour,
    /// Ground spices.
    Spice,
    /// Gums, gelatine, pectin.
    Thickener,
    /// Jams, marmalades.
    Jam,
    /// Water, wine, spirits.
    Drink,
    /// A baker's own, of which nobody said what it is like. No row of the tables has it.
    Own,
}

impl Group {
    /// The family on the page.
    pub fn words(self) -> &'static str {
        match self {
            Self::Flour => "Flours and meals",
            Self::Starch => "Starches",
            Self::Grain => "Grains and flakes",
            Self::Sugar => "Sugars",
            Self::Syrup => "Syrups and honey",
            Self::Fat => "Solid fats",
            Self::Oil => "Oils",
            Self::Dairy => "Milk and what is made of it",
            Self::PlantDairy => "Plant milks and what is made of them",
            Self::Egg => "Eggs and what replaces them",
            Self::Leavener => "Leavening",
            Self::Juice => "Juices",
            Self::Acid => "Vinegars and sour salts",
            Self::Fruit => "Fruit",
            Self::DriedFruit => "Dried and candied fruit",
            Self::Vegetable => "Vegetables",
            Self::Cocoa => "Cocoa powders",
            Self::Chocolate => "Chocolate",
            Self::Nut => "Nuts and nut pastes",
            Self::Seed => "Seeds",
            Self::Flavour => "Flavourings",
            Self::Spice => "Spices",
            Self::Thickener => "Gums and setting agents",
            Self::Jam => "Jams and marmalades",
            Self::Drink => "Water, wine and spirits",
            Self::Own => "Your own",
        }
    }
}

/// Whether an ingredient counts as flour, the 100 of baker's percentages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FlourBasis {
    /// Always: wheat and other flours.
    Always,
    /// Only in a formula with no other flour: nut meals, starches, oats.
    WhereNoOther,
    /// Never.
    Never,
}

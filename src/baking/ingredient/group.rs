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

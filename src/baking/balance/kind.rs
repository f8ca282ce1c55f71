//! The kind of a cake, as far as limits depend on it: by ratios, and by the title's words where a formula cannot tell.

use super::{Class, Constituent, Percentages, count, total};
use crate::baking::formula::{Formula, Weighed};
use crate::baking::ingredient::{Allergen, Group, Ingredient};
use crate::baking::quantity::{Mass, Share};
use crate::baking::text::{holds, lower};
use serde::{Deserialize, Serialize};

/// Kinds of which the crumb's pH or the want of gas differs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// Nothing tells.
    Plain,
    /// Beaten white, no fat.
    AngelFood,
    /// Beaten egg with oil.
    Chiffon,
    /// Beaten whole egg with butter and no powder.
    Genoise,
    /// Beaten egg, hardly any fat.
    Sponge,
    /// Much egg and fat, hardly any powder.
    Pound,
    /// The same raised by powder: equal weights.
    Victoria,
    /// Creamed and layer cakes with whole egg or yolk.
    YellowLayer,
    /// The same with whites alone.
    WhiteLayer,
    /// Layer cakes with clearly more sugar than flour, with whole egg or yolk.
    HighRatioYellow,
    /// The same with whites alone.
    HighRatioWhite,
    /// Creamed and layer cakes of flours without gluten.
    GlutenFree,
    /// Cocoa or much chocolate.
    Chocolate,
    /// The same, natural, with soda to darken it.
    DarkChocolate,
    /// Devil's food by its title.
    DevilsFood,
    /// Red velvet by its title.
    RedVelvet,
    /// Buttermilk, sour cream or yogurt.
    Buttermilk,
    /// Quick breads by their title, soda bread among them.
    QuickBread,
    /// Oil cakes.
    Oil,
    /// The same with nothing from an animal.
    PlantOil,
    /// Muffins.
    Muffin,
    /// Muffins and cakes with berries.
    Berry,
    /// Banana breads and others on fruit puree.
    Banana,
    /// Pumpkin, carrot, courgette.
    Pumpkin,
    /// Molasses.
    Gingerbread,
    /// Citrus or other sour juice in the batter.
    Citrus,
    /// Scones and US biscuits.
    Biscuit,
    /// Pancakes, waffles, griddle cakes.
    Pancake,
    /// Cookies.
    Cookie,
    /// Brownies.
    Brownie,
    /// Rich fruit cakes.
    FruitCake,
    /// Cakes with dried fruit by half their flour or more.
    LightFruit,
    /// Doughs and batters with yeast.
    Yeast,
}

/// By what a kind was recognised; this is its certainty.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum By {
    /// Ratios and title agree.
    Both,
    /// Ratios alone.
    Formula,
    /// The title alone.
    Title,
    /// Nothing: the widest band stands in.
    Neither,
    /// The baker said so.
    Said,
}

/// A cake as it was recognised.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Recognised {
    /// The kind, by which crumb and gas are judged.
    pub kind: Kind,
    /// By what.
    pub by: By,
    /// The kind by what carries the cake, whatever its flavour: a citrus cake may be a creamed one. `None` where ratios
    /// alone do not tell.
    pub carried_by: Option<Kind>,
}

impl By {
    /// The certainty in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Both => "very likely, by its formula and its title",
            Self::Formula => "likely, by its formula",
            Self::Title => "likely, by its title",
            Self::Neither => "not known: nothing tells the kind",
            Self::Said => "as you said",
        }
    }

    /// Whether a limit of the kind may be put with some force.
    pub fn is_sure(self) -> bool {
        matches!(self, Self::Both | Self::Said)
    }
}

impl Kind {
    /// Every kind that a baker may choose, from the lightest to those that are hardly cakes.
    pub const ALL: [Self; 32] = [
        Self::AngelFood,
        Self::Chiffon,
        Self::Genoise,
        Self::Sponge,
        Self::Victoria,
        Self::YellowLayer,
        Self::WhiteLayer,
        Self::HighRatioYellow,
        Self::HighRatioWhite,
        Self::GlutenFree,
        Self::Pound,
        Self::Oil,
        Self::PlantOil,
        Self::Chocolate,
        Self::DarkChocolate,
        Self::DevilsFood,
        Self::RedVelvet,
        Self::Buttermilk,
        Self::Citrus,
        Self::Pumpkin,
        Self::Gingerbread,
        Self::LightFruit,
        Self::FruitCake,
        Self::Brownie,
        Self::Muffin,
        Self::Berry,
        Self::Banana,
        Self::QuickBread,
        Self::Biscuit,
        Self::Pancake,
        Self::Cookie,
        Self::Yeast,
    ];

    /// The kind in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Plain => "cakes and quick breads",
            Self::AngelFood => "angel food cakes",
            Self::Chiffon => "chiffon cakes",
            Self::Genoise => "genoises",
            Self::Sponge => "sponges",
            Self::Pound => "pound cakes",
            Self::Victoria => "equal-weight creamed cakes",
            Self::YellowLayer => "creamed and yellow layer cakes",
            Self::WhiteLayer => "white layer cakes",
            Self::HighRatioYellow => "high-ratio yellow layer cakes",
            Self::HighRatioWhite => "high-ratio white layer cakes",
            Self::GlutenFree => "gluten-free cakes",
            Self::Chocolate => "chocolate cakes",
            Self::DarkChocolate => "dark chocolate cakes with soda",
            Self::DevilsFood => "devil's food",
            Self::RedVelvet => "red velvet cakes",
            Self::Buttermilk => "buttermilk cakes and breads",
            Self::QuickBread => "quick breads",
            Self::Oil => "oil cakes",
            Self::PlantOil => "plant-based oil cakes",
            Self::Muffin => "muffins",
            Self::Berry => "berry muffins and cakes",
            Self::Banana => "banana and fruit-puree breads",
            Self::Pumpkin => "pumpkin and carrot cakes",
            Self::Gingerbread => "gingerbreads",
            Self::Citrus => "citrus and juice cakes",
            Self::Biscuit => "scones and biscuits",
            Self::Pancake => "pancakes and waffles",
            Self::Cookie => "cookies",
            Self::Brownie => "brownies",
            Self::FruitCake => "rich fruit cakes",
            Self::LightFruit => "light fruit cakes",
            Self::Yeast => "yeast doughs",
        }
    }

    /// Whether beaten air does most of the lifting, so that little gas is no fault.
    pub fn leans_on_air(self) -> bool {
        self.is_foam() || self == Self::Pound
    }

    /// Whether it is built on beaten egg.
    pub fn is_foam(self) -> bool {
        matches!(
            self,
            Self::Sponge | Self::Genoise | Self::Chiffon | Self::AngelFood
        )
    }

    /// Pale layer and creamed cakes, of which reckoned crumbs on powder alone lie below the textbook bands.
    pub fn is_layer(self) -> bool {
        matches!(
            self,
            Self::YellowLayer
                | Self::WhiteLayer
                | Self::HighRatioYellow
                | Self::HighRatioWhite
                | Self::GlutenFree
                | Self::Victoria
                | Self::Chocolate
        )
    }

    /// Pale cakes that are creamed or mixed by the high-ratio way, whatever their flour.
    pub fn is_creamed(self) -> bool {
        self == Self::Pound || self.is_layer() && self != Self::Chocolate
    }

    /// Dark or spiced cakes, in which spare soda is meant or hidden.
    pub fn is_dark(self) -> bool {
        matches!(
            self,
            Self::Chocolate
                | Self::DarkChocolate
                | Self::DevilsFood
                | Self::Gingerbread
                | Self::Banana
                | Self::Pumpkin
                | Self::LightFruit
        )
    }
}

/// Titles that tell a kind, the more particular first.
const TITLES: [(&str, Kind); 29] = [
    ("pancake", Kind::Pancake),
    ("waffle", Kind::Pancake),
    ("griddle", Kind::Pancake),
    ("crumpet", Kind::Pancake),
    ("drop scone", Kind::Pancake),
    ("brownie", Kind::Brownie),
    ("cookie", Kind::Cookie),
    ("snaps", Kind::Cookie),
    ("doodle", Kind::Cookie),
    ("shortbread", Kind::Cookie),
    ("scone", Kind::Biscuit),
    ("biscuit", Kind::Biscuit),
    ("muffin", Kind::Muffin),
    ("devil", Kind::DevilsFood),
    ("red velvet", Kind::RedVelvet),
    ("gingerbread", Kind::Gingerbread),
    ("parkin", Kind::Gingerbread),
    ("fruit cake", Kind::FruitCake),
    ("fruitcake", Kind::FruitCake),
    ("christmas cake", Kind::FruitCake),
    ("pound cake", Kind::Pound),
    ("chiffon", Kind::Chiffon),
    ("angel", Kind::AngelFood),
    ("genoise", Kind::Genoise),
    ("banana", Kind::Banana),
    ("pumpkin", Kind::Pumpkin),
    ("carrot", Kind::Pumpkin),
    ("sponge", Kind::Sponge),
    ("bread", Kind::QuickBread),
];

/// Baker's percentages of what the kinds lean on.
struct Ratios {
    eggs: f64,
    whites: f64,
    fat: f64,
    oil: f64,
    water: f64,
    sweet: f64,
    milk: f64,
    cultured: f64,
    leavener: f64,
    soda: f64,
    raised: bool,
    yeast: bool,
    cocoa: f64,
    alkalised: bool,
    dried_fruit: f64,
    puree: f64,
    berries: f64,
    citrus: f64,
    vegetable: f64,
    molasses: f64,
    stands_in: bool,
    plant_based: bool,
    gluten_free: bool,
}

/// From here on sugar is called clearly more than flour, per cent of it: the low end of high-ratio formulas (Gisslen).
const HIGH_RATIO: f64 = 110.0;

/// Berries and cherries, fresh or frozen.
pub fn is_berry(ingredient: &Ingredient) -> bool {
    ingredient.group == Group::Fruit
        && ["berries", "cherries", "currants"]
            .iter()
            .any(|ending| ingredient.key.ends_with(ending))
}

/// Cocoa that alkali has answered already.
pub fn is_alkalised(ingredient: &Ingredient) -> bool {
    ingredient.group == Group::Cocoa
        && (holds(ingredient.key, "dutched") || ingredient.key == "cocoa_black")
}

/// Flours that the gluten of wheat or its kin is in.
pub fn has_gluten(ingredient: &Ingredient) -> bool {
    ingredient
        .allergens
        .iter()
        .any(|allergen| matches!(allergen, Allergen::Wheat | Allergen::Gluten))
}

/// Yeast and sourdough.
pub fn is_yeast(ingredient: &Ingredient) -> bool {
    ingredient.key.ends_with("yeast") || ingredient.key == "sourdough_starter"
}

impl Ratios {
    fn of(formula: &Formula, percentages: &Percentages) -> Self {
        let percent = |grams: Mass| percentages.of(grams).map_or(0.0, Share::to_percent);
        let share = |choose: &dyn Fn(&Weighed) -> bool| -> f64 {
            let lines = formula.batter().filter(|line| choose(line));
            percent(lines.map(|line| line.grams.mean).sum())
        };
        let of = |group: Group| share(&|line| line.ingredient.group == group);
        let named = |names: &'static [&'static str]| {
            share(&|line| names.iter().any(|name| holds(line.ingredient.key, name)))
        };
        let own_ph = |line: &Weighed| line.ingredient.acidity.map_or(7.0, |acidity| acidity.ph.1);
        let is_milk =
            |line: &Weighed| matches!(line.ingredient.group, Group::Dairy | Group::PlantDairy);
        let bicarbonate = |line: &Weighed| {
            line.ingredient
                .leavening
                .is_some_and(|leavening| leavening.bicarbonate.is_some())
        };
        let of_constituent = |constituent| percent(total(formula, constituent).grams.mean);
        Self {
            eggs: percent(count(formula, percentages, Class::Egg).grams.mean),
            whites: percent(
                formula
                    .batter()
                    .filter(|line| holds(line.ingredient.key, "egg_white"))
                    .map(|line| line.grams.mean * Class::Egg.share(line.ingredient).unwrap_or(0.0))
                    .sum(),
            ),
            fat: of_constituent(Constituent::Fat),
            oil: of(Group::Oil),
            water: of_constituent(Constituent::Water),
            sweet: of(Group::Sugar) + of(Group::Syrup),
            milk: share(&|line| {
                is_milk(line) || matches!(line.ingredient.group, Group::Drink | Group::Juice)
            }),
            cultured: share(&|line| is_milk(line) && own_ph(line) < 5.0),
            leavener: share(&|line| bicarbonate(line) && line.ingredient.group == Group::Leavener),
            soda: share(&|line| {
                bicarbonate(line)
                    && line
                        .ingredient
                        .leavening
                        .is_some_and(|leavening| leavening.neutralised.1 == 0.0)
            }),
            raised: formula.batter().any(bicarbonate),
            yeast: formula.batter().any(|line| is_yeast(line.ingredient)),
            // Cocoa solids without their fat, as cocoa: about half of unsweetened chocolate, a quarter of others.
            cocoa: of(Group::Cocoa)
                + 0.25 * (of(Group::Chocolate) + named(&["unsweetened_chocolate"])),
            alkalised: formula.batter().any(|line| is_alkalised(line.ingredient)),
            dried_fruit: of(Group::DriedFruit),
            puree: share(&|line| {
                line.ingredient.group == Group::Fruit
                    && !line.in_pieces
                    && ["banana", "puree", "sauce"]
                        .iter()
                        .any(|name| holds(line.ingredient.key, name))
            }),
            berries: share(&|line| is_berry(line.ingredient)),
            citrus: share(&|line| {
                own_ph(line) < 4.2
                    && (line.ingredient.group == Group::Juice
                        || line.ingredient.group == Group::Fruit
                            && [
                                "lemon",
                                "lime",
                                "orange",
                                "grapefruit",
                                "mandarin",
                                "passion",
                            ]
                            .iter()
                            .any(|name| line.ingredient.key.starts_with(name)))
            }),
            vegetable: of(Group::Vegetable),
            molasses: named(&["molasses", "black_treacle", "sorghum_syrup"]),
            stands_in: percentages.stands_in,
            plant_based: formula
                .batter()
                .all(|line| line.ingredient.plant_based != Some(false)),
            gluten_free: !percentages.stands_in
                && formula
                    .batter()
                    .filter(|line| percentages.flour_lines.contains(&line.line))
                    .all(|line| !has_gluten(line.ingredient)),
        }
    }

    /// The kind by ratios alone, from textbook ranges (from memory).
    fn kind(&self) -> Option<Kind> {
        let carried_by = self.carried_by();
        // A spoon of sourdough beside soda is there for its taste.
        let kind = if self.yeast && !self.raised {
            Kind::Yeast
        } else if carried_by == Some(Kind::AngelFood) {
            Kind::AngelFood
        } else if self.dried_fruit >= 150.0 {
            Kind::FruitCake
        } else if self.cocoa >= 15.0 && self.sweet >= 150.0 && self.fat >= 70.0 && self.milk < 40.0
        {
            Kind::Brownie
        } else if self.water < 48.0 && self.eggs < 35.0 && self.sweet >= 35.0 && self.fat >= 15.0 {
            Kind::Cookie
        } else if self.dried_fruit >= 50.0 {
            Kind::LightFruit
        } else if self.molasses >= 25.0 {
            Kind::Gingerbread
        } else if self.cocoa >= 7.5 {
            if self.soda >= 1.5 && !self.alkalised {
                Kind::DarkChocolate
            } else {
                Kind::Chocolate
            }
        } else if self.puree >= 40.0 {
            Kind::Banana
        } else if self.vegetable >= 35.0 {
            Kind::Pumpkin
        } else if let Some(foam) = carried_by.filter(|kind| kind.is_foam()) {
            foam
        } else if self.citrus >= 10.0 {
            Kind::Citrus
        } else if self.berries >= 15.0 {
            Kind::Berry
        } else if self.cultured >= 25.0 && !self.is_rich() {
            Kind::Buttermilk
        } else {
            return carried_by;
        };
        Some(kind)
    }

    /// Much egg and fat, little milk.
    fn is_rich(&self) -> bool {
        self.eggs >= 60.0 && self.fat >= 55.0 && self.milk < 20.0
    }

    /// The kind by what carries the cake: beaten egg, creamed fat, oil.
    fn carried_by(&self) -> Option<Kind> {
        let kind = if self.whites >= 150.0 && self.fat < 5.0 {
            Kind::AngelFood
        } else if self.eggs >= 120.0 && self.oil >= 20.0 && self.fat < 85.0 {
            Kind::Chiffon
        } else if self.eggs >= 75.0 && self.fat < 28.0 && self.milk < 45.0 && !self.stands_in {
            Kind::Sponge
        } else if self.eggs >= 120.0 && self.fat < 70.0 && !self.raised && !self.stands_in {
            Kind::Genoise
        } else if self.eggs >= 120.0 && self.fat < 70.0 && !self.stands_in {
            Kind::Sponge
        } else if self.is_rich() && self.leavener < 1.2 && !(self.raised && self.leavener == 0.0) {
            Kind::Pound
        } else if self.is_rich() {
            Kind::Victoria
        } else if self.sweet < 25.0 && self.eggs < 15.0 && self.fat >= 10.0 && self.water < 90.0 {
            Kind::Biscuit
        } else if self.oil >= 15.0 {
            if self.plant_based {
                Kind::PlantOil
            } else {
                Kind::Oil
            }
        } else if self.sweet < 45.0 || self.fat < 18.0 {
            return None;
        } else if self.whites >= 25.0 && self.eggs - self.whites < 5.0 {
            if self.sweet > HIGH_RATIO {
                Kind::HighRatioWhite
            } else {
                Kind::WhiteLayer
            }
        } else if self.eggs >= 15.0 {
            if self.sweet > HIGH_RATIO {
                Kind::HighRatioYellow
            } else {
                Kind::YellowLayer
            }
        } else {
            return None;
        };
        Some(if self.gluten_free && kind.is_creamed() {
            Kind::GlutenFree
        } else {
            kind
        })
    }
}

/// A kind and by what it was recognised; what the baker says goes before all else.
pub fn recognise(
    formula: &Formula,
    percentages: &Percentages,
    title: Option<&str>,
    said: Option<Kind>,
) -> Recognised {
    let ratios = Ratios::of(formula, percentages);
    let (kind, by) = match said {
        Some(kind) => (kind, By::Said),
        None => kind(&ratios, title),
    };
    Recognised {
        kind,
        by,
        carried_by: ratios.carried_by(),
    }
}

fn kind(ratios: &Ratios, title: Option<&str>) -> (Kind, By) {
    let title = lower(title.unwrap_or(""));
    let named = TITLES
        .iter()
        .find(|(word, _)| holds(&title, word))
        .map(|(_, kind)| *kind);
    // A British biscuit is a cookie; a fruit cake with little fruit is a light one.
    let named = match named {
        Some(Kind::Biscuit) if ratios.sweet >= 30.0 => Some(Kind::Cookie),
        Some(Kind::FruitCake) if ratios.dried_fruit < 20.0 => None,
        Some(Kind::FruitCake) if ratios.dried_fruit < 150.0 => Some(Kind::LightFruit),
        Some(Kind::Brownie) if ratios.fat < 40.0 => None,
        named => named,
    };
    let reckoned = ratios.kind();
    match (named, reckoned) {
        (Some(named), Some(reckoned)) if named == reckoned => (named, By::Both),
        // Ratios cannot tell these from others that are like them.
        (
            Some(
                kind @ (Kind::Pancake
                | Kind::Cookie
                | Kind::Biscuit
                | Kind::Brownie
                | Kind::RedVelvet
                | Kind::LightFruit),
            ),
            _,
        ) => (kind, By::Title),
        (Some(Kind::DevilsFood), Some(Kind::Chocolate | Kind::DarkChocolate)) => {
            (Kind::DevilsFood, By::Both)
        }
        (
            Some(
                kind @ (Kind::Muffin
                | Kind::QuickBread
                | Kind::Gingerbread
                | Kind::Banana
                | Kind::Pumpkin),
            ),
            None,
        ) => (kind, By::Title),
        (
            Some(Kind::Muffin),
            Some(
                Kind::Buttermilk
                | Kind::Oil
                | Kind::PlantOil
                | Kind::YellowLayer
                | Kind::HighRatioYellow
                | Kind::GlutenFree
                | Kind::Victoria
                | Kind::WhiteLayer
                | Kind::HighRatioWhite,
            ),
        ) => (Kind::Muffin, By::Title),
        // Milk and butter sponges hold more fat than ratios take for a foam.
        (Some(Kind::Sponge), Some(Kind::HighRatioYellow)) => (Kind::Sponge, By::Title),
        (Some(Kind::QuickBread), Some(Kind::Buttermilk | Kind::Oil | Kind::PlantOil)) => {
            (Kind::QuickBread, By::Title)
        }
        (_, Some(kind)) => (kind, By::Formula),
        (_, None) => (Kind::Plain, By::Neither),
    }
}

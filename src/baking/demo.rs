//! Demo recipes, all invented: the stall of Ines Marlowe in the harbour town of Tarrow Quay.
//!
//! Neither the baker nor the town exists. The recipes are our own.

/// An invented recipe to try the page with.
#[derive(Debug, PartialEq, Eq)]
pub struct Demo {
    /// Its name in addresses and records.
    pub key: &'static str,
    /// The title shown in the list.
    pub title: &'static str,
    /// What it shows, in a sentence.
    pub about: &'static str,
    /// The text, as a baker would paste it.
    pub text: &'static str,
}

/// Every demo, in the order shown; the page opens on the first.
pub const DEMOS: &[Demo] = &[
    Demo {
        key: "passion_fruit_version",
        title: "Harbour pear cake, passion-fruit version",
        about: "Passion-fruit juice went in for the pear purée and nothing else changed: dense and wet until the leavening is mended.",
        text: PASSION_FRUIT_VERSION,
    },
    Demo {
        key: "harbour_pear_cake",
        title: "Harbour pear cake",
        about: "The one-bowl spiced pear cake as it is sold: plant-based, baking powder alone.",
        text: HARBOUR_PEAR_CAKE,
    },
    Demo {
        key: "sour_milk_muffins",
        title: "Tide-table muffins",
        about: "Cultured buttermilk and soda that answer one another, in twelve cups.",
        text: TIDE_TABLE_MUFFINS,
    },
    Demo {
        key: "lamp_room_cocoa_loaf",
        title: "Lamp-room cocoa loaf",
        about: "A cocoa loaf in grams and spoons by a baker who writes in metric.",
        text: LAMP_ROOM_COCOA_LOAF,
    },
];

const PASSION_FRUIT_VERSION: &str = "\
Harbour pear cake, passion-fruit version
(An invented recipe from an invented stall in Tarrow Quay)

Dry
2 cups all-purpose flour
3/4 cup packed light brown sugar
2 1/2 teaspoons baking powder
1/2 teaspoon salt
1 1/2 teaspoons ground cinnamon
1/2 teaspoon ground ginger

Wet
1/2 cup passion-fruit juice, sieved
3/4 cup oat milk
1/3 cup sunflower oil
1 teaspoon vanilla extract

Method
Heat the oven to 350°F. Oil and line an 8-inch square pan.
Whisk the dry things in one bowl, stir in the wet ones until no flour shows.
Scrape into the pan and bake 32 to 36 minutes.
";

const HARBOUR_PEAR_CAKE: &str = "\
Harbour pear cake
(An invented recipe from an invented stall in Tarrow Quay)

Dry
2 cups all-purpose flour
3/4 cup packed light brown sugar
2 1/2 teaspoons baking powder
1/2 teaspoon salt
1 1/2 teaspoons ground cinnamon
1/2 teaspoon ground ginger

Wet
1/2 cup pear purée
3/4 cup oat milk
1/3 cup sunflower oil
1 teaspoon vanilla extract

Method
Heat the oven to 350°F. Oil and line an 8-inch square pan.
Whisk the dry things in one bowl, stir in the wet ones until no flour shows.
Scrape into the pan and bake 32 to 36 minutes.
";

const TIDE_TABLE_MUFFINS: &str = "\
Tide-table muffins
(An invented recipe from an invented stall in Tarrow Quay)

Ingredients
2 cups (250 g) all-purpose flour
1/2 cup sugar
1/2 teaspoon baking soda
1 teaspoon baking powder
1/2 teaspoon salt
1 cup buttermilk
2 large eggs
6 tablespoons unsalted butter, melted
1 cup blueberries

Method
Heat the oven to 400°F and line a 12-cup muffin tin.
Mix dry and wet apart, then together in a dozen strokes, berries last.
Bake 18 to 20 minutes.
";

const LAMP_ROOM_COCOA_LOAF: &str = "\
Lamp-room cocoa loaf
(An invented recipe from an invented stall in Tarrow Quay)

Ingredients
200 g plain flour
40 g natural cocoa powder
220 g caster sugar
1 tsp bicarbonate of soda
1/2 tsp baking powder
1/4 tsp fine salt
240 ml soya milk
15 ml cider vinegar
90 ml rapeseed oil
1 tsp vanilla extract

For the glaze
100 g icing sugar
1 tbsp lemon juice

Method
Heat the oven to 180°C. Line a 2 lb loaf tin.
Sour the milk with the vinegar, stir into the dry things with the oil.
Bake 50 to 55 minutes. Glaze when cold.
";

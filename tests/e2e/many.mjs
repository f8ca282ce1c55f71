// A store with many recipes in it, all invented: for tests and the bench.

const FIRST = ["Harbour", "Lamp-room", "Signal-hut", "Pump-house", "Quarry", "Orchard", "Ferry", "Windmill", "Toll-gate", "Lock-keeper's"];
const SECOND = ["plum", "pear", "cocoa", "lemon", "almond", "carrot", "ginger", "oat", "rhubarb", "poppy seed", "apricot", "walnut"];
const THIRD = ["cake", "loaf", "scones", "muffins", "biscuits", "tray bake", "sponge"];

/** A recipe of usual length: some 900 letters. */
const text = (title) => `${title}

2 1/4 cups all-purpose flour, spooned and levelled
1 tsp baking soda
1/2 tsp baking powder
1/2 tsp fine salt
3/4 cup soft brown sugar, packed
1/4 cup golden syrup
120 g unsalted butter, soft
2 large eggs, at room temperature
1 cup buttermilk
2 tsp vanilla extract
1 1/2 cups fruit, stoned and cut small
2 tbsp demerara sugar for the top

Heat the oven to 350 F and line a 9 by 5 inch loaf pan with paper.
Whisk flour, soda, powder and salt together in a bowl. In another, beat butter, sugar and syrup for 4 minutes until pale.
Beat the eggs in one by one. Stir a third of the flour in, then half of the buttermilk, and go on by turns; end with flour.
Fold the fruit in with a spatula, and stop as soon as no dry flour shows.
Scrape it into the pan, smooth the top and strew the demerara sugar over it.
Bake 50 to 55 minutes until a skewer comes out clean. Leave it in the pan for 10 minutes, then turn it out onto a rack.
Keeps three days in a tin, and freezes well.
`;

/** The title of the recipe of that number; no two are the same. */
export const titleOf = (number) =>
  `${FIRST[number % 10]} ${SECOND[Math.floor(number / 10) % 12]} ${THIRD[Math.floor(number / 120) % 7]} ${number}`;

/** The records of so many recipes by their keys, each a minute older than the one before; every tenth is a version of that. */
export function records(count, now = Date.now()) {
  const all = {};
  for (let number = 0; number < count; number += 1) {
    const isVersion = number % 10 === 9;
    const title = titleOf(isVersion ? number - 1 : number);
    const version = { name: "With less sugar", of: `many-${number - 1}`, original: { text: text(title) } };
    const body = { changed: now - number * 60_000, inputs: { text: text(title) }, ...(isVersion ? { version } : {}) };
    all[`batterwright/recipe/many-${number}`] = JSON.stringify({ format: "batterwright recipe", version: 2, body });
  }
  return all;
}

/** Puts so many recipes into the store of an open page; it shows them once its shelf is opened. */
export const fillShelf = (page, count) =>
  page.evaluate((records) => {
    for (const [key, text] of Object.entries(records)) localStorage.setItem(key, text);
  }, records(count));

const FORMULA = [
  ["plain_flour", "all-purpose flour", 270],
  ["baking_soda", "baking soda", 4.6],
  ["baking_powder", "baking powder", 2],
  ["salt", "fine salt", 3],
  ["light_brown_sugar", "soft brown sugar", 160],
  ["golden_syrup", "golden syrup", 85],
  ["butter", "unsalted butter", 120],
  ["egg", "eggs", 100],
  ["buttermilk", "buttermilk", 242],
  ["vanilla_extract", "vanilla extract", 8.4],
  ["fruit, stoned and cut small", "fruit, stoned and cut small", null],
  ["demerara_sugar", "demerara sugar", 26],
];
const SCALES = ["volume", "contour", "grain", "texture", "moistness", "crust", "crumb", "sourness", "sweetness", "flavour"];

/** The name of the record of the recipe that all those bakes are of. */
export const BAKED = "many-bakes";

/**
 * One recipe and so many bakes of it by their keys, a day between two: sugar, soda, oven and minutes go up and down, each
 * bake is held against the one before, and all figures are said.
 */
export function trialRecords(count, now = Date.now()) {
  const plan = { text: text(titleOf(0)) };
  const recipe = JSON.stringify({ format: "batterwright recipe", version: 2, body: { changed: now, inputs: plan } });
  const all = { [`batterwright/recipe/${BAKED}`]: recipe };
  const began = now - count * 86_400_000;
  const idOf = (number) => String((began + number * 86_400_000) * 1000 + 7);
  for (let number = 0; number < count; number += 1) {
    const baked = began + number * 86_400_000;
    const grams = { light_brown_sugar: 160 - (number % 5) * 10, baking_soda: 4.6 + (number % 3) * 0.4 };
    const body = {
      ...(number > 0 ? { against: idOf(number - 1) } : {}),
      baked,
      changed: baked + 3_600_000,
      method: 1,
      name: `Bake ${number}`,
      notes: "A little dense below, the top even, the edge dark on the side of the fan; better on the second day.",
      plan,
      said: [
        { field: "oven", typed: `${170 + (number % 4) * 5} C` },
        { field: "minutes", typed: `${50 + (number % 7)}` },
        { field: "core", typed: `${95 + (number % 3)} C` },
        { field: "height_centre", typed: `${60 + (number % 9)} mm` },
        { field: "height_edge", typed: `${52 + (number % 4)} mm` },
        { field: "mass_in", typed: "960" },
        { field: "mass_out", typed: `${850 + (number % 11)}` },
        { field: "crumb_ph", typed: `${(7 + (number % 6) / 10).toFixed(1)}` },
      ],
      scores: SCALES.map((scale, at) => ({ points: 1 + ((number * 7 + at * 3) % 5), scale })),
      weights: FORMULA.map(([ingredient, name, usual]) => ({ grams: grams[ingredient] ?? usual, ingredient, name })),
    };
    all[`batterwright/trial/${BAKED}/${idOf(number)}`] = JSON.stringify({ format: "batterwright trial", version: 1, body });
  }
  return all;
}

/** Puts one recipe with so many bakes into the store of an open page, as what was open last. */
export const fillTrials = (page, count) =>
  page.evaluate(
    ([records, open]) => {
      for (const [key, text] of Object.entries(records)) localStorage.setItem(key, text);
      localStorage.setItem("batterwright/open", open);
    },
    [trialRecords(count), BAKED],
  );

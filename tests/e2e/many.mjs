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

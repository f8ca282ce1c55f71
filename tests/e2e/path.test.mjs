// The whole path of a baker: the demo's verdict, the remedy, another pan, and then a recipe of her own.

import assert from "node:assert/strict";
import { inBrowser } from "./harness.mjs";
import { grams, near, part, sees, verdict, weightOf, weights } from "./hands.mjs";
import { wholeJob } from "./whole_job.mjs";

// A recipe nobody prepared the page for. It is our own.
const GINGER_SQUARES = `Wash-day ginger squares

2 cups all-purpose flour
1 tsp baking soda
1/2 tsp salt
2 tsp ground ginger

1 stick butter, softened
3/4 cup granulated sugar
1 cup buttermilk
2 large eggs
1 tbsp honey
a handful of candied quince, chopped

Grease a 9 inch square pan.
Cream the butter and sugar, beat in the eggs, then flour and buttermilk by turns.
Bake at 350 F for 30 minutes.`;

for (const screen of ["phone", "desk"]) {
  inBrowser("the demo is flagged, mended and put into another pan", { screen }, wholeJob);

  inBrowser("an ordinary recipe is weighed line by line", { screen }, async ({ page, paste, picture }) => {
    await paste(GINGER_SQUARES);
    await page.getByRole("heading", { level: 1, name: "Wash-day ginger squares" }).waitFor();
    const lines = await weights(page);
    // Every ingredient line has a row, and a weight or the reason why not.
    assert.deepEqual(lines.map(({ line }) => line), [3, 4, 5, 6, 8, 9, 10, 11, 12, 13]);
    for (const { line, weight, name } of lines) {
      assert.match(grams(weight) === null ? name : weight, grams(weight) === null ? /Check: .+\./ : /\d g/, `line ${line}`);
    }
    // USDA National Nutrient Database, release 28: a cup of flour 125 g, a teaspoon of soda 4.6 g, of salt 6 g,
    // a stick of butter 113 g, a cup of sugar 200 g, of buttermilk 245 g, a large egg 50 g, a tablespoon of honey 21 g.
    for (const [number, expected] of [
      [3, 250],
      [4, 4.6],
      [5, 3],
      [8, 113],
      [9, 150],
      [10, 245],
      [11, 100],
      [12, 21],
    ]) {
      near(await weightOf(page, number), expected, 0.03, `line ${number}`);
    }
    // The rest of the text is kept, word for word.
    for (const words of ["Grease a 9 inch square pan.", "Bake at 350 F for 30 minutes."]) await sees(part(page, "Method and notes"), new RegExp(words));
    await sees(part(page, "Pan"), /9 in square/);
    await sees(verdict(page, "Acid and soda"), /\w/);
    await picture("ginger-squares");
  });
}

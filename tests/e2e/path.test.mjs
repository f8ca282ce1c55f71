// The whole path of a baker: the demo's verdict, the remedy, another pan, and then a recipe of her own.

import assert from "node:assert/strict";
import { inBrowser } from "./harness.mjs";
import { choosePan, grams, line, near, part, remedy, row, sees, verdict, weightOf, weights } from "./hands.mjs";

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

/** From the first look at the demo to another pan and back. Leaves the mended recipe open. */
export async function wholeJob({ page }) {
  // Passion-fruit juice in place of pear purée, and baking powder alone: the soda is missing.
  await sees(verdict(page, "Acid and soda"), /Short of soda/);
  const acid = part(page, "Acid and gas");
  await sees(acid.getByRole("row").filter({ hasText: "passion-fruit juice" }), /meq acid/);
  await acid.getByRole("article").getByRole("link", { name: "Line 13" }).first().click();
  await sees(row(page, 13), /passion-fruit juice/);
  assert.equal(await line(page, 13).getAttribute("aria-expanded"), "true");
  await line(page, 13).click();

  // One touch mends it, one takes it back.
  await remedy(page).click();
  await sees(verdict(page, "Acid and soda"), /Acid and soda agree/);
  await page.getByRole("button", { name: "Take it back" }).click();
  await sees(verdict(page, "Acid and soda"), /Short of soda/);
  await remedy(page).click();
  await sees(verdict(page, "Acid and soda"), /Acid and soda agree/);
  await sees(part(page, "Weights"), /baking soda/);

  // Another pan. The text names an 8-inch square one.
  const before = await weights(page);
  await page.getByRole("button", { name: "Bake in another pan" }).click();
  await choosePan(page, { shape: "Rectangle or sheet", length: "13", width: "9", depth: "2" });
  // By hand: 13 x 9 x 2 against 8 x 8 x 2 is 117/64 = 1.83.
  await sees(verdict(page, "Pan"), /1\.83/);
  const pan = part(page, "Pan");
  await sees(pan, /1\.83/);
  // By hand: 234 cubic inches of 16.387 mL are 3.83 L, 128 are 2.10 L.
  await sees(pan, /holds 2\.10 L .* deep, \d+ % of its depth.*holds 3\.83 L .* deep, \d+ % of its depth/);
  const after = await weights(page);
  assert.equal(after.length, before.length);
  for (const [index, { line: number, weight, beside }] of after.entries()) {
    // Shown weights are rounded to 1 g, below 20 g to 0.1 g, so each side may be half of that off.
    const own = grams(before[index].weight);
    const step = own < 20 ? 0.05 : 0.5;
    const expected = (own * 117) / 64;
    assert.ok(Math.abs(grams(weight) - expected) <= step * (117 / 64) + 0.5, `line ${number}: ${weight} for ${own} g`);
    assert.equal(grams(beside), own, `line ${number} keeps the recipe's own weight beside it`);
  }
  await page.getByRole("button", { name: "Keep to the recipe's pan" }).click();
  await sees(verdict(page, "Pan"), /Another pan\?/);
  assert.deepEqual(await weights(page), before);
}

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

// The job that the page is for, from the first look at the demo to another pan and back, as a baker does it.

import assert from "node:assert/strict";
import { choosePan, grams, line, part, remedy, row, sees, verdict, weights } from "./hands.mjs";

/** Walks the whole path, starting from the demo; leaves the mended demo open. */
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
  await choosePan(page, { shape: "Rectangle", length: "13", width: "9", depth: "2" });
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

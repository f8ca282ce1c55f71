// Before the module arrives: a heading and a text box that can be written into at once.

import assert from "node:assert/strict";
import { inBrowser, ready } from "./harness.mjs";
import { row, sees } from "./hands.mjs";

for (const screen of ["phone", "desk"]) {
  inBrowser("what is typed before the module arrives is still there after it", { screen, opened: false }, async ({ page, site, reload }) => {
    let arrive;
    const arrived = new Promise((resolve) => {
      arrive = resolve;
    });
    await page.route(/\.wasm$/, async (route) => {
      await arrived;
      await route.continue();
    });
    await page.goto(site.address, { waitUntil: "commit" });
    await page.getByRole("heading", { level: 1 }).waitFor();
    const box = page.getByRole("textbox", { name: "Recipe text" });
    await box.fill("Early-boat rolls\n\n2 cups all-purpose flour\n1 tsp baking ");
    await box.press("Control+End");
    assert.equal(await page.evaluate(() => document.documentElement.dataset.ready), undefined);
    // The styles are there too: the first paint is no bare text.
    assert.notEqual(await page.evaluate(() => getComputedStyle(document.body).backgroundColor), "rgba(0, 0, 0, 0)");
    arrive();
    await ready(page);
    // The hands are where they were, and go on typing.
    await page.keyboard.type("soda");
    assert.equal(await page.getByRole("textbox", { name: "Recipe text" }).inputValue(), "Early-boat rolls\n\n2 cups all-purpose flour\n1 tsp baking soda");
    // USDA National Nutrient Database, release 28: a teaspoon of baking soda is 4.6 g.
    await sees(row(page, 4), /^4\.6 g/);
    await page.unroute(/\.wasm$/);
    await reload();
    await sees(row(page, 4), /^4\.6 g/);
  });
}

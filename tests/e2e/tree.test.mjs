// What a screen reader has to read out: each page as a list of roles, names and words in their order, kept under tree/.
//
// After a change that is meant, `UPDATE=1 node --test tests/e2e/tree.test.mjs` writes them anew. Read every line that
// differs as somebody hears it, who sees nothing of the page: does it say what it is, and what it does?

import assert from "node:assert/strict";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { inBrowser } from "./harness.mjs";
import { details, everything, go, line, part, sees, verdict } from "./hands.mjs";

const TREES = join(dirname(fileURLToPath(import.meta.url)), "tree");

// Weights and a pan that leave little to be reckoned, so that figures which are refined elsewhere do not change what is here.
const RECIPE = `Lantern squares

200 g plain flour
100 g granulated sugar
1 tsp baking powder
100 g whole milk
a little patience

Method
Stir it all together.
Bake in an 8 inch square pan at 180 C for 25 minutes.`;

/** Holds what is read out of a place, up to some words of it, against the text that is kept of it. */
async function reads(name, place, upTo) {
  const path = join(TREES, `${name}.txt`);
  const now = `${(await place.ariaSnapshot()).split(upTo)[0].trimEnd()}\n`;
  if (process.env.UPDATE) {
    mkdirSync(TREES, { recursive: true });
    writeFileSync(path, now);
  }
  assert.equal(now, readFileSync(path, "utf8"), `What is read out differs from tests/e2e/tree/${name}.txt`);
}

inBrowser("what is read out of the ticket", { screen: "phone", offline: true }, async ({ page, paste }) => {
  await paste(RECIPE);
  await sees(verdict(page, "Weights"), /without a weight/);
  await everything(page);
  await reads("head", page.getByRole("banner"));
  await reads("text", page.getByRole("region", { name: "Recipe text" }));
  await reads("verdicts", page.getByRole("navigation", { name: "Verdicts" }));
  await reads("weights", part(page, "Weights"));
  await line(page, 3).click();
  await reads("line", details(page, 3));
  await page.getByRole("button", { name: "Bake in another pan" }).click();
  await reads("pan", part(page, "Pan"));
});

for (const name of ["Bench", "Trials", "Shelf", "Larder", "Settings"]) {
  inBrowser(`what is read out of the page ${name}`, { screen: "phone", offline: true }, async ({ page }) => {
    await go(page, name);
    // How long it bakes comes a moment later.
    if (name === "Bench") await page.getByText("Look from").waitFor();
    await reads(name.toLowerCase(), page.getByRole("main"));
  });
}

inBrowser("what is read out of a card and of the page About", { screen: "phone", offline: true }, async ({ page }) => {
  await page.evaluate(() => {
    location.hash = "#/larder/baking_soda";
  });
  await page.getByRole("heading", { level: 1, name: "Baking soda" }).waitFor();
  await reads("card", page.getByRole("main"));
  await go(page, "About");
  // The sources go on for some pages, and grow.
  await reads("about", page.getByRole("main"), '- heading "Sources"');
});

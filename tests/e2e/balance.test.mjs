// The formula against formulas of its kind: its drawings in words, and the kind that the baker says.

import assert from "node:assert/strict";
import { everywhere, inBrowser } from "./harness.mjs";
import { part, sees } from "./hands.mjs";

const TEXT = ["Yellow layer cake", "", "300 g cake flour", "300 g sugar", "150 g butter", "165 g eggs", "195 g milk", "13 g baking powder", "4 g salt"].join("\n");

const panel = (page) => part(page, "Percentages").locator("details").filter({ hasText: "Against formulas of its kind" }).first();
const open = (page) => panel(page).getByText("Against formulas of its kind").click();
const kind = (page) => part(page, "Acid and gas").getByLabel("Judged as");

everywhere("ranges, rules and what pulls the batter are told in words", async ({ page, paste, reachable, picture }) => {
  await paste(TEXT);
  assert.equal(await panel(page).locator("svg").count(), 0, "nothing is drawn while it is shut");
  await open(page);
  const words = await sees(panel(page), /What pulls the batter/);
  for (const said of [
    /Laid against creamed and yellow layer cakes; the kind is likely, by its formula\./,
    /Sugar: within 80 to 110 %, usually 100 %\./,
    /Egg to fat: 110 %, where 100 % or more is the rule: kept\./,
    /Tougheners are \d+ % of both/,
    /Moisteners are \d+ % of both/,
  ]) {
    assert.match(words, said);
  }
  for (const drawing of await panel(page).locator("svg").all()) assert.equal(await drawing.getAttribute("aria-hidden"), "true");
  const wide = await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);
  assert.ok(wide, "nothing reaches over the edge");
  await reachable();
  await picture("balance");
});

inBrowser("the baker's word on the kind holds, is kept and is taken back", { screen: "phone" }, async ({ page, paste, reload }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await paste(TEXT);
  await kind(page).selectOption({ label: "pound cakes" });
  await sees(part(page, "Acid and gas"), /The band for pound cakes .* as you said/);
  await open(page);
  await sees(panel(page), /Egg: below 90 to 110 %/);
  await sees(part(page, "Findings"), /Little egg for its kind/);
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth), "nothing reaches over the edge");
  await reload();
  await sees(part(page, "Acid and gas"), /as you said/);
  await kind(page).selectOption({ label: "As its formula and title tell" });
  await sees(part(page, "Acid and gas"), /The band for creamed and yellow layer cakes/);
});

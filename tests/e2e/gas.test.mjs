// The gas from the bench to the crumb: its drawing in words, and what the baker says of the batter.

import assert from "node:assert/strict";
import { everywhere, inBrowser } from "./harness.mjs";
import { part, sees } from "./hands.mjs";

const TEXT = ["Ferry buns", "", "250 g plain flour", "200 g sugar", "4 g baking soda", "2 eggs", "240 g buttermilk", "100 g butter"].join("\n");

const acid = (page) => part(page, "Acid and gas");
const wait = (page) => page.getByLabel("Minutes between mixing and the oven");
const crumb = (page) => page.getByLabel("pH of the crumb, measured");
const lost = (text) => Number(/([\d.]+)\s%\sof the gas is lost in mixing and waiting/.exec(text)?.[1]);

everywhere("the rules are told in words, and nothing keeps anybody from them", async ({ page, paste, reachable, picture }) => {
  await paste(TEXT);
  const words = await sees(acid(page), /there before the oven/);
  for (const said of [
    /The crumb is reckoned at pH/,
    /the batter before the oven, with its gas in it, at/,
    /Triangle: the crumb\. Ring: the batter/,
    /beaten air and steam come to some/,
  ]) {
    assert.match(words, said);
  }
  for (const drawing of await acid(page).locator("svg").all()) assert.equal(await drawing.getAttribute("aria-hidden"), "true");
  await reachable();
  await picture("gas");
});

inBrowser("a wait and a measured crumb move the figures, and nonsense is said at its place", { screen: "phone" }, async ({ page, paste, reload }) => {
  await paste(TEXT);
  const five = lost(await sees(acid(page), /lost in mixing and waiting/));
  await wait(page).fill("30");
  const thirty = lost(await sees(acid(page), /33 min/));
  assert.ok(thirty > five, `${thirty} after 30 minutes, ${five} after 5`);
  await wait(page).fill("soon");
  await sees(acid(page), /Write minutes from 0 to 1440/);
  assert.equal(await wait(page).getAttribute("aria-invalid"), "true");
  await crumb(page).fill("6.1");
  await sees(acid(page), /from the bowl and your measurement/);
  await reload();
  assert.equal(await wait(page).inputValue(), "soon");
  assert.equal(await crumb(page).inputValue(), "6.1");
  await wait(page).fill("");
  // Three minutes of mixing and the usual five.
  assert.equal(lost(await sees(acid(page), /\b8 min/)), five);
});

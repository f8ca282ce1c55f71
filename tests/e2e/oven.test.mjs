// The oven: how long a recipe bakes in its own pan and in another, worked out while nobody waits for it.

import assert from "node:assert/strict";
import { everywhere, inBrowser, textBox } from "./harness.mjs";
import { part, sees } from "./hands.mjs";

const TEXT = [
  "Pilot house layer cake",
  "",
  "270 g plain flour",
  "300 g sugar",
  "13 g baking powder",
  "3 g salt",
  "180 g soy yogurt",
  "180 g soy milk",
  "110 g sunflower oil",
  "30 g lemon juice",
  "",
  "Heat the oven to 350F. Grease two 8-inch round tins, 2 inches deep.",
  "Mix everything and divide it.",
  "Bake for 30 to 35 minutes.",
].join("\n");

const oven = (page) => part(page, "Oven");
/** The likeliest minutes of each bake, once they are there. */
const likeliest = async (page, count) => {
  await page.waitForFunction((count) => document.querySelectorAll(".bake__look").length === count && document.querySelector(".bakes__working")?.hidden, count);
  const looks = await page.locator(".bake__look").allTextContents();
  return looks.map((look) => Number(/about (\d+) minutes is likeliest/.exec(look)?.[1]));
};

everywhere("a recipe's time comes up by itself, with its course in words", async ({ page, paste, reachable, picture }) => {
  await paste(TEXT);
  // The recipe says 30 to 35 minutes in its own pan.
  const words = await sees(oven(page), /about 32 minutes is likeliest/);
  assert.match(words, /350 °F \(177 °C\)/);
  for (const said of [/Half-way, at 16 minutes/, /The recipe says 30 to 35 minutes/, /skewer comes out clean/, /97 °C \(207 °F\) in the middle/]) {
    assert.match(words, said);
  }
  for (const drawing of await oven(page).locator("svg").all()) assert.equal(await drawing.getAttribute("aria-hidden"), "true");
  await oven(page).scrollIntoViewIfNeeded();
  await reachable();
  await picture("oven");
});

inBrowser("another pan, a timed bake and nonsense, all kept over a reload", { screen: "phone" }, async ({ page, paste, reload }) => {
  await paste(TEXT);
  await sees(oven(page), /about 32 minutes is likeliest/);
  await part(page, "Pan").getByRole("button", { name: "Bake in another pan" }).click();
  const two = await likeliest(page, 2);
  // The shelf begins with the recipe's own pan.
  assert.equal(two[0], two[1]);
  await oven(page).getByRole("button", { name: "Write down how long it took" }).first().click();
  await oven(page).getByText("Bakes that you timed").click();
  await page.getByLabel("Minutes until it was done").fill("until brown");
  await sees(oven(page), /"until brown" is no time of baking/);
  await page.getByLabel("Minutes until it was done").fill("41");
  await sees(oven(page), /about 41 minutes is likeliest/);
  await page.getByLabel("Your oven set to").fill("very hot");
  await sees(oven(page), /Write a setting such as 180 C/);
  await reload();
  assert.equal(await page.getByLabel("Your oven set to").inputValue(), "very hot");
  await sees(oven(page), /about 41 minutes is likeliest/);
  await page.getByLabel("Your oven set to").fill("90 C");
  await sees(oven(page), /Set it hotter/);
});

inBrowser("typing goes on while times are worked out, and the network is not needed", { screen: "phone", offline: true }, async ({ page, paste, cutNetwork }) => {
  await cutNetwork();
  await paste(TEXT);
  const box = await textBox(page);
  await box.focus();
  await page.keyboard.press("Control+End");
  // Letters that come faster than any time could be worked out: none of them is lost, and the last text counts.
  await page.keyboard.type("\nServe on a windy day with a cup of tea.", { delay: 15 });
  assert.match(await box.inputValue(), /with a cup of tea\.$/);
  await sees(oven(page), /about 32 minutes is likeliest/);
});

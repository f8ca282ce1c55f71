// Several pans at once, how much of the recipe goes into them, whole eggs, sizes to choose from, a pan by its water.

import assert from "node:assert/strict";
import { everywhere, inBrowser } from "./harness.mjs";
import { choosePan, grams, part, sees, verdict, weights } from "./hands.mjs";

const TEXT = [
  "Harbour slab",
  "",
  "300 g all-purpose flour",
  "300 g sugar",
  "150 g butter",
  "3 large eggs",
  "200 g milk",
  "10 g baking powder",
  "",
  "Bake in an 8 x 8 x 2 inch square pan.",
].join("\n");

const pans = (page) => part(page, "Pan");
const form = (page, name = "The pan on the shelf") => page.getByRole("group", { name });
const add = (page) => pans(page).getByRole("button", { name: /^(Bake in another pan|Add a pan)$/ });
const amount = (page) => pans(page).getByLabel("How much");

/** Two 6 in rounds and six standard cups on the shelf. */
async function roundsAndCups(page) {
  await add(page).click();
  await choosePan(page, { shape: "Round or springform", length: "6", depth: "2" });
  await form(page).getByLabel("How many").fill("2");
  await add(page).click();
  const cups = form(page, "Pan 2 on the shelf");
  await cups.getByLabel("Shape").selectOption({ label: "Muffin cups" });
  await cups.getByLabel("Cups to fill").fill("6");
}

inBrowser("rounds and cups take the batter together, and go one by one", { screen: "phone" }, async ({ page, paste, reload }) => {
  await paste(TEXT);
  await roundsAndCups(page);
  // By hand: two rounds of 56.5 and six cups of 6.70 cubic inches against 128 of the square: 1.2 times.
  await sees(verdict(page, "Pan"), /1\.2 times the recipe.*2 kinds of pan/s);
  const said = await sees(pans(page), /equally deep in all of them/);
  const each = [...said.matchAll(/Weigh ([\d,]+) g \([\d,]+ to [\d,]+ g\) of batter into each/g)].map((match) => Number(match[1].replace(",", "")));
  assert.equal(each.length, 2);
  // What is weighed into all of them is the batter: 1.2 times the sum of the recipe's weights.
  const rows = await weights(page);
  const all = rows.reduce((sum, row) => sum + grams(row.weight), 0);
  assert.ok(Math.abs(2 * each[0] + 6 * each[1] - all) < 8, `${each} for ${all} g`);
  await reload();
  await sees(pans(page), /equally deep in all of them/);
  await page.getByRole("button", { name: "Take pan 1 off the shelf" }).click();
  await sees(verdict(page, "Pan"), /0\.31 times the recipe/);
  await page.getByRole("button", { name: "Take it back" }).click();
  await sees(verdict(page, "Pan"), /1\.2 times the recipe/);
  await page.getByRole("button", { name: "Take pan 2 off the shelf" }).click();
  await page.getByRole("button", { name: "Keep to the recipe's pan" }).click();
  await sees(verdict(page, "Pan"), /Another pan\?/);
});

inBrowser("half the recipe asks for a part of an egg, and a whole one is a touch away", { screen: "phone" }, async ({ page, paste }) => {
  await paste(TEXT);
  await amount(page).selectOption({ label: "Half the recipe" });
  await sees(pans(page), /asks for 1\.5 eggs of 50 g each: beat 2 and weigh 75 g/);
  await sees(pans(page), /Take 2 eggs.*0\.67 times the recipe; the batter stands .* deep/s);
  await pans(page).getByRole("button", { name: "Take 2 eggs" }).click();
  await sees(verdict(page, "Pan"), /0\.67 times the recipe/);
  assert.equal(await pans(page).getByLabel("How many eggs").inputValue(), "2");
  assert.equal(grams((await weights(page))[0].weight), 200);
  await page.getByRole("button", { name: "Take it back" }).click();
  await sees(verdict(page, "Pan"), /0\.5 times the recipe/);
  // Wrong figures are said at their place and kept.
  await amount(page).selectOption({ label: "So many times the recipe" });
  const times = pans(page).getByLabel("How many times");
  // A part that is out of sight is drawn after the next frame.
  await page.waitForFunction((field) => field.value === "0.5", await times.elementHandle());
  await times.fill("2/0");
  await sees(pans(page), /"2\/0" does not fit: write how many times the recipe/);
  assert.equal(await times.getAttribute("aria-invalid"), "true");
  await times.fill("2/3");
  await sees(verdict(page, "Pan"), /0\.67 times the recipe/);
});

inBrowser("a common size fills the fields, and a pan may be known by its water", { screen: "desk" }, async ({ page, paste }) => {
  await paste(TEXT);
  await add(page).click();
  await choosePan(page, { shape: "Loaf" });
  const sizes = form(page).getByLabel("Common sizes");
  const options = await sizes.locator("option").allInnerTexts();
  assert.match(options[1], /^5 x 2\.25 in loaf, 2 in deep \(12\.7 x 5\.7 x 5\.1 cm\), mini loaf$/);
  await sizes.selectOption({ label: options.find((words) => /^8\.5 x 4\.5 in loaf, 2\.5 in deep/.test(words)) });
  const field = (name) => form(page).getByRole("textbox", { name, exact: true });
  assert.equal(await field("Length").inputValue(), "8.5");
  assert.equal(await field("Width").inputValue(), "4.5");
  assert.equal(await field("Depth").inputValue(), "2.5");
  // By hand, the prismatoid of 8.5 x 4.5 over 7.75 x 3.75, 2.5 in high: 83.9 cubic inches, 1.37 L.
  await sees(pans(page), /holds 1\.37 L at the brim/);
  await field("Depth").fill("2.6");
  assert.equal(await sizes.inputValue(), "0");
  // A base that closes it is told at its field.
  await form(page).getByText("Flare, core, corners, lining, fill line").click();
  await field("Width at the base").fill("0.1");
  await sees(form(page), /A base of 0\.1 in closes the pan/);
  await choosePan(page, { shape: "Known by its water" });
  await field("Water that one holds at the brim").fill("a lot");
  await sees(form(page), /"a lot" is not a volume/);
  await field("Water that one holds at the brim").fill("2100");
  await field("Depth").fill("2");
  await sees(pans(page), /pan that holds 2\.10 L, 2 in deep: holds 2\.10 L at the brim/);
  // The square holds 2.098 L.
  await sees(verdict(page, "Pan"), /1 times the recipe/);
});

inBrowser("a weighed cup of batter tells how high it stands", { screen: "phone" }, async ({ page, paste }) => {
  await paste(TEXT);
  const depth = async () => Number(/stands ([\d.]+) in/.exec(await sees(pans(page), /The batter stands [\d.]+ in/))?.[1]);
  const before = await depth();
  await pans(page).getByText("Weigh a cup of batter").click();
  await pans(page).getByLabel("Grams of batter in a level cup").fill("118.3");
  // Half a gram in a millilitre: it stands far higher.
  await sees(pans(page), /weigh 0\.5 g \(0\.49 to 0\.52\): by your cup/);
  assert.ok((await depth()) > before * 1.3);
  await pans(page).getByLabel("Grams of batter in a level cup").fill("5000");
  await sees(pans(page), /Write the grams of batter in one level cup, from 35 to 355/);
  assert.equal(await depth(), before);
});

inBrowser("the button that adds a pan keeps the focus", { screen: "desk" }, async ({ page, paste }) => {
  await paste(TEXT);
  await add(page).focus();
  await page.keyboard.press("Enter");
  await form(page).waitFor();
  await page.keyboard.press("Enter");
  await form(page, "Pan 2 on the shelf").waitFor();
  assert.equal(await page.evaluate(() => document.activeElement?.textContent), "Add a pan");
});

everywhere("no barrier with several pans, an egg in part and a mark", async ({ page, paste, reachable, picture }) => {
  await paste(TEXT);
  await roundsAndCups(page);
  await form(page).getByText("Flare, core, corners, lining, fill line").click();
  await form(page).getByLabel("Fill line, height").fill("1.5");
  await sees(pans(page), /Dotted: the fill line/);
  for (const drawing of await pans(page).locator("svg").all()) assert.equal(await drawing.getAttribute("aria-hidden"), "true");
  await reachable();
  await picture("pans");
});

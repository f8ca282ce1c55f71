// Bakes written down: from the bench or afterwards, what changed, what they teach, and the ways back.

import assert from "node:assert/strict";
import { everywhere, inBrowser } from "./harness.mjs";
import { go, sees } from "./hands.mjs";

const CAKE = `Breakwater bake

250 g plain flour
160 g brown sugar
5 g baking soda
180 g buttermilk
70 g sunflower oil

Stir it all together in a bowl.
Bake in a 20 cm square tin at 180 C for 35 minutes.`;

const main = (page) => page.getByRole("main");
const region = (page, name) => page.getByRole("region", { name, exact: true });
const heading = (page, name) => page.getByRole("heading", { level: 1, name });

/** The recipe, with the page of its trials. */
async function trials({ page, paste }, text = CAKE) {
  await paste(text);
  await page.getByRole("heading", { level: 1, name: text.split("\n")[0] }).waitFor();
  await go(page, "Trials");
}

/** Writes a bake down and gives it a name. */
async function writeDown(page, name) {
  await page.getByRole("button", { name: "Write a bake down" }).click();
  await page.getByLabel("Name of this trial").fill(name);
  await heading(page, name).waitFor();
}

const all = (page) => page.getByRole("link", { name: "All trials" }).click();

inBrowser("a bake from the bench is written down as it was weighed", { screen: "phone" }, async (test) => {
  const { page, paste, reload } = test;
  await paste(CAKE);
  await go(page, "Bench");
  await page.getByRole("button", { name: "Another weight of Plain flour" }).click();
  await page.getByLabel(/in grams/).fill("270");
  await page.getByRole("button", { name: "That is in" }).click();
  await page.getByRole("button", { name: "Write this bake down" }).click();
  await sees(region(page, "What went in"), /Otherwise than planned: 270 g plain flour\. The rest as planned\./);
  await page.getByLabel("Name of this trial").fill("too much flour");
  await page.getByLabel("Height in the middle").fill("5.2 cm");
  await page.getByLabel("Height at the edge").fill("5.2 cm");
  await page.getByRole("button", { name: "Texture: 2, firm" }).click();
  await page.getByLabel("In your own words").fill("Heavy.\nTwo slices left.");
  await sees(region(page, "What came out"), /Contour\s*level/);
  await reload();
  await heading(page, "too much flour").waitFor();
  assert.equal(await page.getByLabel("In your own words").inputValue(), "Heavy.\nTwo slices left.");
  assert.equal(await page.getByRole("button", { name: "Texture: 2, firm" }).getAttribute("aria-pressed"), "true");
});

inBrowser("what cannot be is said at its field, and stays", { screen: "phone" }, async (test) => {
  const { page } = test;
  await trials(test);
  await writeDown(page, "odd figures");
  for (const [label, typed, said] of [
    ["pH of the crumb", "15", /"15" is no pH of a crumb/],
    ["Height in the middle", "62 cm", /times as high as its pan is deep/],
    ["Core when it came out", "hot", /"hot" is no core of a cake/],
    ["Baked, minutes", "a while", /no time of baking/],
    ["Pan, if another", "a bag", /names no pan/],
  ]) {
    const field = page.getByLabel(label, { exact: true });
    await field.fill(typed);
    await sees(main(page), said);
    assert.equal(await field.inputValue(), typed);
    assert.equal(await field.getAttribute("aria-invalid"), "true", label);
  }
});

inBrowser("what changed is told in grams and per cent, and two things at once are marked", { screen: "phone" }, async (test) => {
  const { page } = test;
  await trials(test);
  await writeDown(page, "control");
  await all(page);
  await writeDown(page, "less sugar");
  await page.getByText("Say what really went in").click();
  await page.getByLabel(/^Brown sugar, planned/).fill("144");
  await sees(region(page, "What changed"), /Brown sugar 160 to 144 g \(−10 %\)\.\s*One thing changed/);
  await page.getByLabel("Oven set to").fill("160 C");
  await sees(region(page, "What changed"), /2 things changed at once/);
  await all(page);
  const tree = region(page, "Versions and bakes");
  await sees(tree, /Against control: brown sugar 160 to 144 g \(−10 %\); oven: as the recipe says to 160 C\.\s*2 things changed at once/);
});

inBrowser("a crumb's pH and a time teach the recipe, and both can be taken back", { screen: "phone" }, async (test) => {
  const { page } = test;
  await trials(test);
  await writeDown(page, "measured");
  await page.getByLabel("pH of the crumb").fill("8.4");
  await page.getByLabel("Baked, minutes").fill("41");
  const taught = region(page, "What it teaches");
  await taught.getByRole("button", { name: "Go by it: The pH of the crumb" }).click();
  await taught.getByRole("button", { name: "Go by it: The time in the oven" }).click();
  await sees(taught, /The recipe goes by it\.[^]*The recipe goes by it\./);
  await go(page, "Ticket");
  await sees(main(page), /A crumb read at pH 8\.4 moves this/);
  await go(page, "Trials");
  await page.getByRole("link", { name: "measured" }).click();
  await taught.getByRole("button", { name: "Take it back: The pH of the crumb" }).click();
  await taught.getByRole("button", { name: "Take it back: The time in the oven" }).click();
  await go(page, "Ticket");
  assert.doesNotMatch(await main(page).innerText(), /A crumb read at pH/);
});

inBrowser("a trial becomes a version, and the tree holds both", { screen: "desk" }, async (test) => {
  const { page } = test;
  await trials(test);
  await writeDown(page, "more soda");
  await page.getByText("Say what really went in").click();
  await page.getByLabel(/^Baking soda, planned/).fill("6");
  await page.getByLabel("Keep it as a version called").fill("with 6 g");
  await page.getByRole("button", { name: "Make a version as it was baked" }).click();
  await page.getByRole("navigation", { name: "Verdicts" }).waitFor();
  await go(page, "Trials");
  const tree = region(page, "Versions and bakes");
  await sees(tree, /Breakwater bake[^]*more soda[^]*with 6 g \(open\)\s*Baking soda 5 to 6 g \(\+20 %\)\./);
  await tree.getByRole("button", { name: "Open Breakwater bake" }).click();
  await sees(tree, /Breakwater bake \(open\)/);
});

inBrowser("a removed trial can be put back", { screen: "phone" }, async (test) => {
  const { page, reload } = test;
  await trials(test);
  await writeDown(page, "by mistake");
  await page.getByRole("button", { name: "Remove this trial" }).click();
  await sees(main(page), /Removed: by mistake\./);
  await page.getByRole("button", { name: "Put it back" }).click();
  await reload();
  await page.getByRole("link", { name: "by mistake" }).waitFor();
});

inBrowser("an own cup is begun from a bake, named as the recipe names it", { screen: "phone" }, async (test) => {
  const { page } = test;
  await trials(test, "Spelt slab\n\n2 cups spelt flour\n1 cup sugar\n1 tsp soda\n1 cup buttermilk\n\nBake at 180 C for 30 minutes.");
  await writeDown(page, "by cups");
  await page.getByRole("button", { name: /^Weigh your own spelt flour/ }).click();
  await page.getByLabel("Name", { exact: true }).waitFor();
  assert.equal(await page.getByLabel("Name", { exact: true }).inputValue(), "spelt flour");
});

everywhere("the page of trials and a trial have no barrier", async (test) => {
  const { page, reachable } = test;
  await trials(test);
  await reachable();
  await writeDown(page, "control");
  await page.getByLabel("pH of the crumb").fill("15");
  await page.getByLabel("Baked, minutes").fill("34");
  await page.getByText("Say what really went in").click();
  await reachable();
  await all(page);
  await writeDown(page, "second");
  await page.getByLabel("Oven set to").fill("160 C");
  await all(page);
  await reachable();
});

// The larder: looking an ingredient up by any name, its card with sources, ingredients of one's own, and their keeping.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { everywhere, inBrowser, ready } from "./harness.mjs";
import { details, go, line, part, sees } from "./hands.mjs";

const LARDER = "batterwright/larder";

const at = async (page, address, heading) => {
  await page.evaluate((address) => {
    location.hash = address;
  }, address);
  await page.getByRole("heading", { level: 1, name: heading }).waitFor();
};

const search = (page) => page.getByRole("searchbox", { name: "Look an ingredient up" });
const found = (page) => page.getByRole("list", { name: "Ingredients found" }).getByRole("listitem");
const field = (page, name) => page.getByRole("textbox", { name, exact: true });
const main = (page) => page.getByRole("main");

/** Begins an own ingredient and gives it a name. */
async function begin(page, name) {
  await go(page, "Larder");
  await page.getByRole("button", { name: "Add an ingredient of your own" }).click();
  await page.getByRole("heading", { level: 1, name: "An ingredient of your own" }).waitFor();
  await field(page, "Name").fill(name);
  await page.getByRole("heading", { level: 1, name }).waitFor();
}

/** Fills fields by their labels. */
async function fill(page, figures) {
  for (const [name, text] of Object.entries(figures)) await field(page, name).fill(text);
}

const kept = async (page, key = LARDER) => JSON.parse(await page.evaluate((key) => localStorage.getItem(key), key));

inBrowser("an ingredient is found by the words of three countries", { screen: "phone" }, async ({ page }) => {
  await go(page, "Larder");
  await search(page).fill("bicarb");
  assert.match(await sees(found(page).first(), /Baking soda/i), /called "bicarb"/);
  // The same word means two things on the two sides of the Atlantic.
  await search(page).fill("cornflour");
  await sees(found(page).filter({ hasText: "United States" }), /corn flour/i);
  await sees(found(page).filter({ hasText: "Australia, New Zealand, United Kingdom" }), /cornstarch/i);
  await search(page).fill("high grade");
  await sees(found(page).first(), /flour.*called "high grade flour" in New Zealand/i);
  await search(page).fill("zzzz");
  await page.getByText("The larder holds nothing of that name").waitFor();
  assert.equal(await found(page).count(), 0);
});

inBrowser("a card shows every figure with its source, and the way back keeps what was looked for", { screen: "phone" }, async ({ page }) => {
  await go(page, "Larder");
  await search(page).fill("lemon juice");
  await found(page).first().getByRole("link").click();
  await page.getByRole("heading", { level: 1, name: "Lemon juice, fresh" }).waitFor();
  // USDA National Nutrient Database, release 28, row 09152: 92.31 g of water. Penniston and others: 4.75 g of citric acid.
  const holds = page.getByRole("table", { name: "What 100 g hold" });
  await sees(holds.getByRole("row", { name: /^Water/ }), /92\.3 g/);
  await sees(main(page), /Source: US Department of Agriculture, Agricultural Research Service/);
  const acid = page.getByRole("table", { name: "Acid and buffer" });
  await sees(acid.getByRole("row", { name: /^Citric acid/ }), /Penniston.*\(published\).*4\.75 g/);
  await sees(acid.getByRole("row", { name: /^pH/ }), /from memory.*2\.4 2\.0 to 2\.6/);
  await page.getByRole("link", { name: "Back to the larder" }).click();
  await sees(found(page).first(), /Lemon juice/);
  assert.equal(await search(page).inputValue(), "lemon juice");
  await at(page, "#/larder/agar", "Agar powder");
  await sees(page.getByRole("row", { name: /^Starch/ }), /not known/);
  await at(page, "#/larder/patience", "Not in the larder");
});

inBrowser("a line of the ticket leads to the card of its ingredient", { screen: "phone" }, async ({ page, paste }) => {
  await paste("Signal-hut biscuits\n\n1 cup all-purpose flour\n1 tsp baking powder");
  await line(page, 3).click();
  await details(page, 3).getByRole("link", { name: "All figures for all-purpose (plain) flour" }).click();
  await page.getByRole("heading", { level: 1, name: "All-purpose (plain) flour" }).waitFor();
  await page.waitForFunction(() => document.activeElement?.id === "main");
  await sees(page.getByRole("row", { name: /^Starch/ }), /By difference: carbohydrate less sugars and fibre/);
});

inBrowser("an ingredient of one's own from its packet", { screen: "phone" }, async ({ page, reload }) => {
  await begin(page, "hazel block");
  await page.getByRole("combobox", { name: "Fibre is counted" }).selectOption("beside carbohydrate");
  await fill(page, {
    "Other names, with commas between them": "nut block, stall block",
    "Fat, g": "12",
    "Carbohydrate, g": "60",
    "Sugars, g": "30",
    "Protein, g": "8",
    "Salt, g": "1",
  });
  const packet = page.getByRole("list", { name: "What the packet's figures come to" });
  await sees(packet, /Water is not known by difference without: fibre\./);
  // By hand: 100 - 12 - (60 + 5) - 8 - 1 = 14 g; a gram of salt counts as 400 mg of sodium.
  await field(page, "Fibre, g").fill("5");
  await sees(packet, /Carbohydrate with its fibre: 65\.0 g.*Sodium: 400 mg.*Water by difference: 14\.0 g/);

  // What cannot be is said at its field, and what was typed stays.
  await field(page, "Sugars, g").fill("61");
  await sees(main(page), /More sugars than carbohydrate/);
  assert.equal(await field(page, "Sugars, g").getAttribute("aria-invalid"), "true");
  await field(page, "Sugars, g").fill("1,200");
  await sees(main(page), /can be read in two ways: write 1200 or 1\.200/);
  await field(page, "pH that you measured").fill("15");
  await sees(main(page), /a pH lies from 0 to 14/);
  await reload();
  await page.getByRole("heading", { level: 1, name: "hazel block" }).waitFor();
  assert.equal(await field(page, "Sugars, g").inputValue(), "1,200");
  assert.equal(await field(page, "Fat, g").inputValue(), "12");

  // It is found by its other names, and its figures are its own.
  await page.getByRole("button", { name: "Show all its figures" }).click();
  await sees(page.getByRole("table", { name: "What 100 g hold" }).getByRole("row", { name: /^Sugars/ }), /not known/);
  await sees(main(page), /Your own figure, from a packet or a scale/);
  await go(page, "Larder");
  await search(page).fill("stall bl");
  await sees(found(page).first(), /Hazel block called "stall block"/);
});

inBrowser("a cup weighed three times has a mean and a range", { screen: "desk" }, async ({ page, reload }) => {
  await begin(page, "rye malt");
  const cup = page.getByRole("group", { name: "Measure 1" });
  await fill(page, { "First, g": "120" });
  await sees(cup, /Mean 120 g, range 110 to 130 g: weighed once, so 8 % either side is assumed/);
  // By hand: mean 123, deviation 3, t 2.920 for two degrees of freedom: 123 -+ 2.920 x 3 x root of 4/3 = 10.1.
  await fill(page, { "Second, g": "126", "Third, g": "123" });
  await sees(cup, /Mean 123 g, range 113 to 133 g: weighed 3 times/);
  await fill(page, { "Third, g": "1230" });
  await sees(cup, /is not what 237 mL of a food weigh/);
  await fill(page, { "Third, g": "123" });

  // A second measure, of another country.
  await page.getByRole("button", { name: "Weigh another measure" }).click();
  const spoon = page.getByRole("group", { name: "Measure 2" });
  await spoon.getByLabel("Measure").selectOption("tablespoon");
  await spoon.getByLabel("Size of").selectOption("Australia");
  await spoon.getByLabel("First, g").fill("12");
  await reload();
  await sees(spoon, /Mean 12 g, range 11 to 13 g/);
  assert.equal(await spoon.getByLabel("Size of").locator("option:checked").innerText(), "Australia");
  await page.getByRole("button", { name: "Show all its figures" }).click();
  const weighs = page.getByRole("table", { name: "A level US measure weighs" });
  await sees(weighs.getByRole("row", { name: /^Cup/ }), /123 g 113 to 133 g/);
  // A US tablespoon is 14.787 mL of the 20 that were weighed.
  await sees(weighs.getByRole("row", { name: /^Tablespoon/ }), /12 g of a tablespoon of 20 mL.*8\.9 g/);

  // What it is like stands in and is named.
  await page.getByRole("searchbox", { name: "It is much like" }).fill("rye fl");
  await page.getByRole("list", { name: "Ingredients that it may be like" }).getByRole("button").first().click();
  await sees(page.getByRole("table", { name: "Acid and buffer" }).getByRole("row", { name: /^pH/ }), /As for .*rye/i);
  await page.waitForFunction(() => document.activeElement?.id === "own-like");
  await spoon.getByRole("button", { name: "Remove this measure" }).click();
  await spoon.waitFor({ state: "detached" });
});

inBrowser("own ingredients go and come back, out into a file and in again", { screen: "phone" }, async ({ page, context, site, reload }) => {
  await begin(page, "hazel block");
  await fill(page, { "Fat, g": "70" });
  await page.evaluate((key) => {
    const record = JSON.parse(localStorage.getItem(key));
    record.body.words = [
      { words: "plant block", key: "own/1" },
      { words: "for the stall", key: null },
    ];
    localStorage.setItem(key, JSON.stringify(record));
  }, LARDER);
  await reload();
  await page.getByRole("link", { name: "Back to your own ingredients" }).click();
  const items = main(page).getByRole("listitem");
  await sees(items.filter({ hasText: "plant block" }), /means hazel block/);
  await sees(items.filter({ hasText: "for the stall" }), /is no ingredient/);

  await page.getByRole("button", { name: "Remove Hazel block" }).click();
  await sees(items.filter({ hasText: "plant block" }), /is not here any more/);
  await page.waitForFunction(() => document.activeElement?.textContent === "Put it back");
  await page.keyboard.press("Enter");
  await sees(items.filter({ hasText: "plant block" }), /means hazel block/);
  await page.getByRole("button", { name: "Forget for the stall" }).click();
  await page.getByText("Forgotten: for the stall").waitFor();
  assert.equal((await kept(page)).body.words.length, 1);

  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Download them" }).click()]);
  const file = readFileSync(await download.path(), "utf8");
  assert.equal(JSON.parse(file).format, "batterwright larder");

  // Another window follows.
  const other = await context.newPage();
  await other.goto(`${site.address}#/larder/own`);
  await ready(other);
  await other.getByRole("button", { name: "Remove Hazel block" }).click();
  await page.getByRole("button", { name: "Remove Hazel block" }).waitFor({ state: "detached" });
  await other.close();

  const take = async (text) => {
    const chosen = { name: "larder.json", mimeType: "application/json", buffer: Buffer.from(text) };
    await page.getByLabel("Take in a file that was downloaded here or on another device").setInputFiles(chosen);
  };
  await take("{");
  await page.getByText("Nothing came in. It cannot be read: it ends too early, so it is cut off.").waitFor();
  await take(file);
  // Its number was given here before, so it gets the next.
  await page.getByText("1 ingredient came in; 1 got a new number").waitFor();
  await page.getByRole("button", { name: "Remove Hazel block" }).waitFor();
  await take(file);
  await page.getByText("Nothing new came in").waitFor();
  const record = await kept(page);
  assert.deepEqual(
    record.body.entries.map(({ key, name, label }) => [key, name, label.fat]),
    [["own/2", "hazel block", "70"]],
  );
});

for (const [what, text] of [
  ["damaged", '{"format":"batterwright larder","version":1,"body":{"entries":[{"na'],
  ["newer", '{"format":"batterwright larder","version":99,"body":{}}'],
]) {
  inBrowser(`a ${what} record of own ingredients is set aside and never written over`, { screen: "phone" }, async ({ page, reload }) => {
    await page.evaluate(([key, text]) => localStorage.setItem(key, text), [LARDER, text]);
    await reload();
    await sees(page.getByRole("alert").filter({ hasText: "set aside" }), /Your own ingredients and words were set aside/);
    await begin(page, "rye malt");
    assert.equal(await page.evaluate((key) => localStorage.getItem(key), LARDER), text);
    assert.equal((await kept(page, `${LARDER}/2`)).body.entries[0].name, "rye malt");
    await reload();
    await page.getByRole("heading", { level: 1, name: "rye malt" }).waitFor();
    await go(page, "Shelf");
    await sees(main(page).getByRole("listitem").filter({ hasText: LARDER }), what === "newer" ? /newer version/ : /cut off/);
  });
}

inBrowser("what cannot be kept of own ingredients is said", { screen: "phone", storage: "full" }, async ({ page }) => {
  await begin(page, "rye malt");
  await sees(page.getByRole("alert").filter({ hasText: "own ingredients" }), /are not being kept: the space/);
  await page.getByRole("heading", { level: 1, name: "rye malt" }).waitFor();
});

/** Fills a form with what is good and what is not, with everything open. */
async function full(page) {
  await begin(page, "hazel block of a very long name, baked every other Thursday");
  await fill(page, { "Fat, g": "heavy", "Carbohydrate, g": "20", "Sugars, g": "30", "First, g": "218", "pH that you measured": "15" });
  await page.getByRole("searchbox", { name: "It is much like" }).fill("marg");
  await page.getByRole("list", { name: "Ingredients that it may be like" }).getByRole("button").first().click();
  await page.getByRole("searchbox", { name: "It is much like" }).fill("but");
  await page.getByRole("checkbox", { name: "Tree nuts" }).check();
  await page.getByRole("button", { name: "Show all its figures" }).click();
  await page.getByRole("table", { name: "What 100 g hold" }).waitFor();
}

const PLACES = [
  ["#/larder/plain_flour", "All-purpose (plain) flour"],
  ["#/larder/baking_powder", "Baking powder, kind not said"],
  ["#/larder/own", "Your own ingredients and words"],
  ["#/larder", "Larder"],
];

everywhere("no barrier in the larder", async ({ page, reachable, picture }) => {
  await full(page);
  await reachable();
  await picture("larder-form");
  for (const [address, heading] of PLACES) {
    await at(page, address, heading);
    if (address === "#/larder") await search(page).fill("flour");
    await reachable();
    await picture(`larder-${heading.slice(0, 6)}`);
  }
});

inBrowser("the larder fits a screen 320 px wide, with targets of 48 px", { screen: "phone" }, async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  const fits = async (where) => {
    const wide = await page.evaluate(() => document.scrollingElement.scrollWidth);
    assert.ok(wide <= 320, `${where}: ${wide} px wide`);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll("main button, main a, main select, main input:not([type=checkbox]), main label:has(input[type=checkbox])")]
        .filter((element) => element.checkVisibility())
        .filter((element) => element.getBoundingClientRect().height < 47.9)
        .map((element) => element.outerHTML.slice(0, 120)),
    );
    assert.deepEqual(small, [], where);
  };
  await full(page);
  await fits("the form");
  for (const [address, heading] of PLACES) {
    await at(page, address, heading);
    if (address === "#/larder") await search(page).fill("flour");
    await fits(heading);
  }
});

inBrowser("the keyboard alone looks an ingredient up and adds one", { screen: "desk" }, async ({ page }) => {
  await go(page, "Larder");
  await page.waitForFunction(() => document.activeElement?.id === "main");
  await page.keyboard.press("Tab");
  await page.keyboard.type("buttermilk");
  await found(page).first().waitFor();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { level: 1, name: /^Buttermilk/ }).waitFor();
  await page.waitForFunction(() => document.activeElement?.id === "main");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { level: 1, name: "Larder" }).waitFor();
  await page.getByRole("button", { name: "Add an ingredient of your own" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { level: 1, name: "An ingredient of your own" }).waitFor();
  await page.waitForFunction(() => document.activeElement?.id === "main");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.type("rye malt");
  await page.getByRole("heading", { level: 1, name: "rye malt" }).waitFor();
  assert.equal(await field(page, "Name").inputValue(), "rye malt");
});

inBrowser("a card goes on paper without controls", { screen: "desk" }, async ({ page, picture }) => {
  await at(page, "#/larder/lemon_juice", "Lemon juice, fresh");
  await page.emulateMedia({ media: "print" });
  await sees(page.getByRole("table", { name: "What 100 g hold" }), /Water 92\.3 g/);
  const controls = await page.evaluate(() =>
    [...document.querySelectorAll("main a, button, input, select, nav")].filter((element) => element.checkVisibility()).map((element) => element.textContent.trim()),
  );
  assert.deepEqual(controls, []);
  await picture("larder-paper");
});

inBrowser("the larder works without a network", { screen: "phone", offline: true }, async ({ page, cutNetwork, reload }) => {
  await cutNetwork();
  await reload();
  await at(page, "#/larder/butter", /^Butter/);
  await begin(page, "rye malt");
  assert.equal(await part(page, "Weights").count(), 0);
});

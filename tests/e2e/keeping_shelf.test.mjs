// The shelf with thousands of recipes, the bin, the room that is left, and the browser's promise to keep it all.

import assert from "node:assert/strict";
import { everywhere, inBrowser } from "./harness.mjs";
import { go, sees } from "./hands.mjs";
import { fillShelf, titleOf } from "./many.mjs";

const BISCUITS = "Signal-hut biscuits\n\n1 cup all-purpose flour\n1/2 tsp baking soda";
const SCONES = "Pump-house scones\n\n250 g flour\n100 g butter";
const DAY = 86_400_000;

const rows = (page) => page.locator(".shelf--long > li");
const bin = (page) => page.locator("summary").filter({ hasText: /^Bin/ });
const keys = (page, beginning) => page.evaluate((beginning) => Object.keys(localStorage).filter((key) => key.startsWith(beginning)), beginning);
const stored = (page, key) => page.evaluate((key) => localStorage.getItem(key), key);

inBrowser("two thousand recipes stand on the shelf, the newest first, and all can be reached", { screen: "phone" }, async ({ page }) => {
  await fillShelf(page, 2000);
  await go(page, "Shelf");
  await page.getByText("2,000 recipes.").waitFor();
  await page.waitForFunction(() => document.querySelectorAll(".shelf--long .shelf__open").length === 2000);
  assert.equal(await rows(page).first().locator(".shelf__title").first().innerText(), titleOf(0));
  // Every tenth is a version, which stands with its original.
  assert.equal(await rows(page).count(), 1800);
  // The last of them is a link like the first: a keyboard gets there, and it opens.
  const last = page.locator(".shelf--long .shelf__open").last();
  await last.focus();
  assert.ok(await last.evaluate((link) => link.getBoundingClientRect().top < innerHeight), "It has the focus and is out of sight.");
  await last.press("Enter");
  await page.getByRole("heading", { level: 1 }).filter({ hasText: titleOf(1998) }).waitFor();
});

inBrowser("a recipe is looked up by words of its title", { screen: "desk" }, async ({ page }) => {
  await fillShelf(page, 300);
  await go(page, "Shelf");
  const field = page.getByLabel("Look a recipe up by words of its title");
  await field.fill("sponge HARBOUR");
  const expected = Array.from({ length: 300 }, (_, number) => titleOf(number - (number % 10 === 9 ? 1 : 0)));
  const found = new Set(expected.filter((title) => /harbour/i.test(title) && /sponge/i.test(title)));
  await page.waitForFunction((count) => document.querySelectorAll(".shelf--long > li").length === count, found.size);
  // The word of a version's name finds it with its original.
  await field.fill("less sugar");
  await page.waitForFunction(() => document.querySelectorAll(".shelf--long > li").length === 30);
  await field.fill("patience");
  await page.getByText("No title has all of these words.").waitFor();
  await field.fill("");
  await page.getByText("300 recipes.").waitFor();
});

inBrowser("the list of the shelf is a help and never the truth", { screen: "phone" }, async ({ page, reload }) => {
  await fillShelf(page, 40);
  await go(page, "Shelf");
  await page.getByText("40 recipes.").waitFor();
  const whole = await stored(page, "batterwright/shelf");
  assert.match(whole, /batterwright shelf/);
  for (const damage of [whole.slice(0, 300), "7", "{", JSON.stringify({ format: "batterwright shelf", version: 1, body: { text: 7 } }), whole.replaceAll("cake", "lie"), ""]) {
    await page.evaluate((damage) => localStorage.setItem("batterwright/shelf", damage), damage);
    await reload();
    await page.getByText("40 recipes.").waitFor();
    assert.equal(await page.getByText("Set aside").count(), 0);
  }
  // Another window changes a title, removes one and adds one without touching the list.
  await page.evaluate(() => {
    const record = (changed, text) => JSON.stringify({ format: "batterwright recipe", version: 2, body: { changed, inputs: { text } } });
    localStorage.setItem("batterwright/recipe/many-3", record(1, "Renamed"));
    localStorage.removeItem("batterwright/recipe/many-4");
    localStorage.setItem("batterwright/recipe/new", record(Date.now(), "Brand new"));
  });
  await reload();
  await page.getByText("40 recipes.").waitFor();
  assert.equal(await rows(page).first().locator(".shelf__title").innerText(), "Brand new");
  await page.getByRole("link", { name: /^Renamed/ }).waitFor();
  assert.equal(await page.getByRole("link", { name: titleOf(4) }).count(), 0);
});

inBrowser("a key typed writes its recipe and not the list of all", { screen: "desk" }, async ({ page, paste }) => {
  await fillShelf(page, 40);
  await go(page, "Shelf");
  await page.getByText("40 recipes.").waitFor();
  await go(page, "Ticket");
  await paste(SCONES);
  await page.evaluate(() => {
    window.written = [];
    const set = Storage.prototype.setItem;
    Storage.prototype.setItem = function (key, text) {
      window.written.push(key);
      set.call(this, key, text);
    };
  });
  const box = page.locator("#recipe-text");
  await box.press("Control+End");
  await box.pressSequentially("\n2 eggs");
  await page.waitForTimeout(500);
  const written = new Set(await page.evaluate(() => window.written));
  assert.equal(written.size, 1, [...written].join(", "));
});

inBrowser("removed recipes rest in the bin, come back, and go for good", { screen: "phone" }, async ({ page, paste, reload, reachable, picture }) => {
  await paste(BISCUITS);
  await page.getByRole("button", { name: "New", exact: true }).click();
  await paste(SCONES);
  await go(page, "Shelf");
  assert.equal(await bin(page).isVisible(), false);
  await page.getByRole("button", { name: "Remove Signal-hut biscuits" }).click();
  await page.getByRole("button", { name: "Remove Pump-house scones" }).click();
  await sees(bin(page), /Bin: 2 recipes/);
  assert.equal((await keys(page, "batterwright/recipe/")).length, 0);
  await reload();
  await bin(page).click();
  await sees(page.locator("[id='/bin']"), /Signal-hut biscuits 30 days left/);
  await reachable();
  await picture("bin");
  await page.getByRole("button", { name: "Put back Signal-hut biscuits" }).click();
  await page.getByRole("link", { name: /^Signal-hut biscuits/ }).waitFor();
  await sees(bin(page), /Bin: 1 recipe/);

  // For good, and still back while the page is open.
  await page.getByRole("button", { name: "Remove for good: Pump-house scones" }).click();
  await bin(page).waitFor({ state: "hidden" });
  await page.getByRole("button", { name: "Put it back" }).click();
  await sees(bin(page), /Bin: 1 recipe/);

  // Emptied once that was asked.
  await page.getByRole("button", { name: "Remove Signal-hut biscuits" }).click();
  await sees(bin(page), /Bin: 2 recipes/);
  await page.getByRole("button", { name: "Empty the bin" }).click();
  await page.getByRole("button", { name: "No", exact: true }).click();
  await page.getByRole("button", { name: "Empty the bin" }).click();
  await page.getByText("Remove all 2 for good?").waitFor();
  await page.getByRole("button", { name: "Yes, empty it" }).click();
  assert.equal((await keys(page, "batterwright/bin/")).length, 0);
  await sees(page.getByRole("status").filter({ hasText: "Removed for good" }), /2 from the bin/);
  await page.getByRole("button", { name: "Put it back" }).click();
  await sees(bin(page), /Bin: 2 recipes/);
});

inBrowser("what has rested for 30 days goes, and what has not stays", { screen: "phone" }, async ({ page, reload }) => {
  await page.evaluate((DAY) => {
    for (const [name, days] of [["over", 30.01], ["last", 29.5], ["ahead", -5]]) {
      const body = { id: name, title: `Cake ${name}`, removed: Math.round(Date.now() - days * DAY), text: "whatever stood there" };
      localStorage.setItem(`batterwright/bin/${name}`, JSON.stringify({ format: "batterwright bin", version: 1, body }));
    }
  }, DAY);
  await go(page, "Shelf");
  await sees(bin(page), /Bin: 2 recipes/);
  await bin(page).click();
  await sees(page.locator("[id='/bin']"), /Cake ahead 30 days left.*Cake last 1 day left/);
  assert.equal(await stored(page, "batterwright/bin/over"), null);
});

inBrowser("an original that goes into the bin leaves its versions on the shelf", { screen: "phone" }, async ({ page }) => {
  await fillShelf(page, 10);
  await go(page, "Shelf");
  const title = titleOf(8);
  await page.getByRole("button", { name: `Remove ${title}`, exact: true }).click();
  await page.getByRole("link", { name: new RegExp(`^${title}, With less sugar.*no longer here`) }).waitFor();
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByRole("list", { name: `Versions of ${title}` }).waitFor();
});

inBrowser("the room that is left is told in recipes, with how that is known", { screen: "phone" }, async ({ page, reachable }) => {
  await fillShelf(page, 2000);
  await go(page, "Shelf");
  const used = await page.evaluate(() => Object.entries(localStorage).reduce((sum, [key, text]) => sum + key.length + text.length, 0));
  const percent = Math.floor((used / 5_242_880) * 100);
  const room = page.locator("summary").filter({ hasText: /^Room/ });
  const said = await sees(room, /used\. There is room for about [\d,]+ more recipes like yours\./);
  const told = Number(/(\d+) % used/.exec(said)[1]);
  // The reserve and the list came in since, less than a hundredth each.
  assert.ok(told >= percent && told <= percent + 5, `${said} against ${percent} %`);
  await room.click();
  await sees(page.locator("details").filter({ has: room }), /Recipes [\d,]+ letters.*from memory/);
  await reachable();
});

inBrowser("that room runs short is said while there is some", { screen: "phone" }, async ({ page, paste, reachable }) => {
  await page.evaluate(() => localStorage.setItem("another page", "x".repeat(5_200_000)));
  await paste(SCONES);
  const banner = page.getByRole("status").filter({ hasText: "Room is running short" });
  await sees(banner, /room for about \d+ more recipes/);
  await reachable();
  await banner.getByRole("button", { name: "Close" }).click();
  await banner.waitFor({ state: "hidden" });
});

for (const [granted, words] of [[true, /has promised to keep it/], [false, /was asked to keep it and does not promise/]]) {
  inBrowser(
    `a browser that ${granted ? "promises" : "does not promise"} to keep what is kept is asked with the first recipe`,
    { screen: "phone", before: granted ? promise : noPromise },
    async ({ page, paste, reachable }) => {
      assert.equal(await page.evaluate(() => window.asked), 0);
      await paste(SCONES);
      await page.waitForFunction(() => window.asked === 1);
      await page.getByRole("button", { name: "New", exact: true }).click();
      await paste(BISCUITS);
      await go(page, "Shelf");
      await page.locator("summary").filter({ hasText: /^Room/ }).click();
      await sees(page.getByRole("main"), words);
      await reachable();
      assert.equal(await page.evaluate(() => window.asked), 1);
      assert.equal(await page.getByRole("button", { name: "Ask the browser to keep it" }).count(), granted ? 0 : 1);
    },
  );
}

function promise() {
  window.asked = 0;
  Object.defineProperty(navigator, "storage", {
    value: { persisted: async () => window.asked > 0, persist: async () => ++window.asked > 0 },
  });
}

function noPromise() {
  window.asked = 0;
  Object.defineProperty(navigator, "storage", {
    value: { persisted: async () => false, persist: async () => ++window.asked < 0 },
  });
}

inBrowser("own ingredients, words and measures that were removed come back one by one", { screen: "phone" }, async ({ page }) => {
  await go(page, "Larder");
  for (const name of ["Hazel block", "Oat drink"]) {
    await page.getByRole("button", { name: "Add an ingredient of your own" }).click();
    await page.getByLabel("Name", { exact: true }).fill(name);
    await page.getByLabel("First, g").fill("218");
    await page.getByRole("button", { name: "Remove this measure" }).click();
    await page.getByRole("button", { name: "Put it back" }).click();
    assert.equal(await page.getByLabel("First, g").inputValue(), "218");
    await page.getByRole("link", { name: "Back to your own ingredients" }).click();
  }
  await page.getByRole("button", { name: "Remove Hazel block" }).click();
  await page.getByRole("button", { name: "Remove Oat drink" }).click();
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByRole("link", { name: /^Oat drink/ }).waitFor();
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByRole("link", { name: /^Hazel block/ }).waitFor();
});

everywhere("no barrier, no sideways scrolling and fingers' room on a shelf with a bin and a record set aside", async ({ page, reachable, picture }) => {
  await fillShelf(page, 30);
  await page.evaluate(() => localStorage.setItem("batterwright/recipe/torn", "{"));
  await go(page, "Shelf");
  await page.getByRole("button", { name: `Remove ${titleOf(0)}`, exact: true }).click();
  await page.getByRole("button", { name: "Put it back" }).waitFor();
  await reachable();
  await page.getByRole("button", { name: "Close" }).click();
  await bin(page).click();
  await page.locator("summary").filter({ hasText: /^Room/ }).click();
  await page.getByRole("button", { name: "Empty the bin" }).click();
  await reachable();
  await picture("shelf");
  const small = await page.getByRole("main").evaluate((main) =>
    [...main.querySelectorAll("a, button, summary, input")]
      .filter((it) => it.checkVisibility() && it.getBoundingClientRect().height < 47.5)
      .map((it) => it.textContent),
  );
  assert.deepEqual(small, []);
  const outside = await page.getByRole("main").evaluate((main) =>
    [...main.querySelectorAll("*")].filter((it) => it.checkVisibility() && it.getBoundingClientRect().right > innerWidth + 1).map((it) => it.outerHTML.slice(0, 80)),
  );
  assert.deepEqual(outside, [], "The shelf runs off to the side.");
});

// Everything taken out and brought in again: what comes, what is refused, what is chosen, and the way back.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { everywhere, inBrowser, ready, textBox } from "./harness.mjs";
import { go, sees } from "./hands.mjs";

const RECIPE = "batterwright/recipe/";
const record = (text, changed, version) =>
  JSON.stringify({ format: "batterwright recipe", version: 2, body: { changed, inputs: { text }, ...(version && { version }) } });
const fileOf = (recipes, rest = {}) =>
  JSON.stringify({ format: "batterwright everything", version: 1, taken_out: "2026-11-28T11:30:00.000Z", ...rest, recipes });
const row = (id, text, changed) => ({ id, record: JSON.parse(record(text, changed)) });
const MARKUP = "<img src=x onerror=\"document.title='broken'\"> cake";

/** One of each standing: new, the same, newer, older. */
const HERE = {
  [`${RECIPE}same`]: record("Pear cake\n2 eggs", 5e11),
  [`${RECIPE}theirs`]: record("Fig cake\n2 eggs", 5e11),
  [`${RECIPE}ours`]: record("Date cake\n2 eggs", 9e11),
};
const FILE = fileOf(
  [
    row("new", `${MARKUP}\n2 eggs`, 5e11),
    row("same", "Pear cake\n2 eggs", 4e11),
    row("theirs", "Fig cake, theirs\n3 eggs", 9e11),
    row("ours", "Date cake, theirs\n3 eggs", 5e11),
  ],
  {
    settings: { format: "batterwright settings", version: 1, body: { height: "1600 m" } },
    larder: { format: "batterwright larder", version: 1, body: { entries: [{ key: "own/1", name: "hazel block" }], given: 1 } },
  },
);

const put = (page, records) => page.evaluate((records) => Object.entries(records).forEach(([key, text]) => localStorage.setItem(key, text)), records);
/** What is kept of recipes, by name; the text alone. */
const texts = (page) =>
  page.evaluate(() => {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith("batterwright/recipe/"));
    return Object.fromEntries(keys.map((key) => [key.slice(20), JSON.parse(localStorage[key]).body.inputs.text]));
  });
const all = (page) => page.evaluate(() => JSON.stringify(Object.entries(localStorage).filter(([key]) => !/open|shelf|reserve|limit/.test(key)).sort()));
const outAndIn = async (page) => {
  await page.evaluate(() => (location.hash = "#/out-and-in"));
  await page.getByRole("heading", { level: 1, name: "Out and in" }).waitFor();
};
const choose = (page, text) =>
  page.getByLabel("File that was taken out").setInputFiles({ name: "file.json", mimeType: "application/json", buffer: Buffer.from(text) });
const main = (page) => page.getByRole("main");
const bringIn = (page) => page.getByRole("button", { name: "Bring it in", exact: true });

async function here(page, reload) {
  await put(page, HERE);
  await reload();
  await outAndIn(page);
}

everywhere("out and in is within everybody's reach", async ({ page, reload, reachable, picture }) => {
  await here(page, reload);
  await reachable();
  await choose(page, FILE);
  await sees(main(page), /What the file holds/);
  await reachable();
  await picture("carry");
});

for (const screen of ["phone", "desk"]) {
  inBrowser("everything comes out and in again, on another device", { screen }, async ({ page, context, site, reload }) => {
    await put(page, HERE);
    await reload();
    await go(page, "Settings");
    await page.getByLabel("Height of your kitchen above the sea").fill("1600 m");
    await go(page, "Shelf");
    await page.getByRole("link", { name: "Take everything out, or bring a file in" }).click();
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Take everything out" }).click()]);
    assert.match(download.suggestedFilename(), /^batterwright-\d{4}-\d{2}-\d{2}\.json$/);
    await sees(main(page), /Taken out: 3 recipes and settings\./);
    const file = readFileSync(await download.path(), "utf8");
    assert.match(file, /"Fig cake",\n/);

    const fresh = await context.browser().newContext({ viewport: { width: 360, height: 740 } });
    const other = await fresh.newPage();
    await other.goto(site.address);
    await ready(other);
    await outAndIn(other);
    await choose(other, file);
    await sees(main(other), /It holds 3 recipes and settings/);
    await other.getByLabel("Take the file's").check();
    await sees(main(other), /Comes in: 3 new recipes and the file's settings\./);
    assert.deepEqual(await texts(other), {});
    await bringIn(other).click();
    await sees(main(other), /Done\. Came in: 3 new recipes/);
    assert.deepEqual(await texts(other), await texts(page));
    await go(other, "Settings");
    assert.equal(await other.getByLabel("Height of your kitchen above the sea").inputValue(), "1600 m");
    await go(other, "Shelf");
    await sees(main(other), /Fig cake/);
    // Once more, and nothing comes.
    await outAndIn(other);
    await choose(other, file);
    await sees(main(other), /Nothing comes in\. Here already, the same: 3 recipes\./);
    assert.ok(await bringIn(other).isHidden());
    await fresh.close();
  });
}

inBrowser("each choice does what it says, and can be taken back", { screen: "phone" }, async ({ page, reload }) => {
  await here(page, reload);
  const before = await all(page);
  const mine = await texts(page);

  // Both: nothing here is touched.
  await choose(page, FILE);
  await sees(main(page), /Comes in: 1 new recipe, 2 recipes beside the ones here and 1 own ingredient\. Here already, the same: 1 recipe\./);
  await bringIn(page).click();
  await sees(main(page), /Done\./);
  const both = await texts(page);
  for (const [id, text] of Object.entries(mine)) assert.equal(both[id], text);
  assert.deepEqual(Object.values(both).sort(), [...Object.values(mine), `${MARKUP}\n2 eggs`, "Fig cake, theirs\n3 eggs", "Date cake, theirs\n3 eggs"].sort());
  assert.equal(await page.locator("img[src=x]").count(), 0);
  await page.getByRole("button", { name: "Take it out again" }).click();
  await sees(main(page), /All stands as it stood before the file came in\./);
  assert.deepEqual(await texts(page), mine);

  // The newer: one is replaced and goes to the bin.
  await choose(page, FILE);
  await page.getByLabel("Keep the newer").check();
  await page.getByLabel("Leave them, but for what a recipe names").check();
  await sees(main(page), /1 recipe in the place of an older one, which goes to the bin\. .* Left out: 1 recipe\./);
  await bringIn(page).click();
  await sees(main(page), /Done\./);
  const newer = await texts(page);
  assert.equal(newer.theirs, "Fig cake, theirs\n3 eggs");
  assert.equal(newer.ours, "Date cake\n2 eggs");
  const bin = await page.evaluate(() => Object.entries(localStorage).filter(([key]) => key.startsWith("batterwright/bin/")).map(([, text]) => JSON.parse(text).body));
  assert.deepEqual(bin.map(({ id, title, text }) => ({ id, title, text })), [{ id: "theirs", title: "Fig cake", text: HERE[`${RECIPE}theirs`] }]);
  await page.getByRole("button", { name: "Take it out again" }).click();
  await sees(main(page), /All stands as it stood/);
  assert.deepEqual(await texts(page), mine);

  // Skipped, but for one.
  await choose(page, FILE);
  await page.getByLabel("Skip the file's").check();
  await page.getByRole("group", { name: "Date cake, theirs" }).getByLabel("What happens to it").selectOption({ label: "Keep both" });
  await page.getByRole("group", { name: MARKUP }).getByLabel("What happens to it").selectOption({ label: "Skip it" });
  await page.getByLabel("Leave them, but for what a recipe names").check();
  await sees(main(page), /Comes in: 1 recipe beside the one here\. Here already, the same: 1 recipe\. Left out: 2 recipes\./);
  await page.getByRole("button", { name: "Leave it" }).click();
  await sees(main(page), /Nothing was brought in\./);
  assert.deepEqual(await texts(page), mine);
  assert.equal(JSON.parse(await all(page)).length, JSON.parse(before).length + 1, "the larder as it was, empty");
});

inBrowser("what is brought in over the open recipe shows at once", { screen: "desk" }, async ({ page, reload }) => {
  await put(page, { ...HERE, "batterwright/open": "theirs" });
  await reload();
  await page.getByRole("heading", { level: 1, name: "Fig cake" }).waitFor();
  await outAndIn(page);
  await choose(page, FILE);
  await page.getByLabel("Keep the newer").check();
  await bringIn(page).click();
  await sees(main(page), /Done\./);
  await go(page, "Ticket");
  assert.equal(await (await textBox(page)).inputValue(), "Fig cake, theirs\n3 eggs");
});

inBrowser("a wrong file is refused whole, with the reason and the place", { screen: "phone" }, async ({ page, reload, reachable }) => {
  await here(page, reload);
  const before = await all(page);
  const wrong = row("b", "Plum cake\n2 eggs", 1);
  wrong.record.body.inputs.corrections = [{}, { milligrams: "much" }];
  for (const [file, said] of [
    [FILE.slice(0, -20), /it ends too early, so it is cut off\. Nothing was changed\./],
    ["not a file of ours", /it is damaged at line 1, letter/],
    [record("Plum cake", 1), /its format is "batterwright recipe", not "batterwright everything"/],
    [FILE.replace('"version":1', '"version":3'), /a newer version of this page wrote it \(file version 3; this page reads up to 2\)/],
    [fileOf([row("a", "Fig", 1), wrong]), /recipe 2 of 2, "Plum cake": its inputs\.corrections\[1\]\.milligrams is the text "much", which it cannot be\./],
    [fileOf([row("a", "Fig", 1), row("a", "Date", 1)]), /recipe 2 of 2, "Date" has the same id as recipe 1/],
    [fileOf([row("../a", MARKUP, 1)]), /is no name of a record/],
    ["[".repeat(300_000), /it is nested too deep/],
  ]) {
    await choose(page, file);
    await page.getByRole("alert").filter({ hasText: said }).waitFor();
    assert.equal(await bringIn(page).count(), 0);
    assert.equal(await page.locator("img[src=x]").count(), 0);
    assert.equal(await all(page), before);
  }
  await reachable();
});

inBrowser("where the store is full, nothing comes in and nothing is half done", { screen: "phone" }, async ({ page, reload }) => {
  await here(page, reload);
  await page.evaluate(() => {
    let most = 4_000_000;
    while (most > 100) {
      try {
        localStorage.setItem("other", (localStorage.getItem("other") ?? "") + "a".repeat(most));
      } catch {
        most = Math.floor(most / 2);
      }
    }
  });
  const before = await all(page);
  await choose(page, FILE);
  await bringIn(page).click();
  await page.getByRole("alert").filter({ hasText: /Nothing was brought in: .*full\. All stands as it stood\./ }).waitFor();
  assert.equal(await all(page), before);
});

inBrowser("a browser that keeps nothing says so", { screen: "phone", storage: "forbidden" }, async ({ page }) => {
  await outAndIn(page);
  await page.getByRole("button", { name: "Take everything out" }).click();
  await page.getByRole("alert").filter({ hasText: /Nothing was taken out: this browser does not let the page/ }).waitFor();
  await choose(page, FILE);
  await page.getByRole("alert").filter({ hasText: /Nothing was changed\./ }).waitFor();
});

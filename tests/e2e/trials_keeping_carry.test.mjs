// Bakes taken out and brought in: beside their recipes, with their pictures or without, each choice, and the way back.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { inBrowser, ready } from "./harness.mjs";
import { go, sees } from "./hands.mjs";

const SCONES = "Pump-house scones\n\n250 g flour\n100 g butter";
const RECIPE = "batterwright/recipe/scones";
const trialKey = (id) => `batterwright/trial/scones/${id}`;
const recipe = JSON.stringify({ format: "batterwright recipe", version: 2, body: { changed: 5, inputs: { text: SCONES } } });
const body = (name, changed = 5, more = {}) => ({ baked: 7, changed, name, plan: { text: SCONES }, ...more });
const record = (name, changed, more) => ({ format: "batterwright trial", version: 1, body: body(name, changed, more) });
const row = (id, name, changed, more) => ({ recipe: "scones", id, record: record(name, changed, more) });
const fileOf = (trials, more = {}) =>
  JSON.stringify({
    format: "batterwright everything",
    version: 2,
    taken_out: "2026-11-28T11:30:00.000Z",
    recipes: [{ id: "scones", record: JSON.parse(recipe) }],
    trials,
    ...more,
  });

const put = (page, records) => page.evaluate((records) => Object.entries(records).forEach(([key, text]) => localStorage.setItem(key, text)), records);
const everything = (page) => page.evaluate(() => Object.fromEntries(Object.entries({ ...localStorage }).filter(([key]) => !/open|shelf|reserve|limit/.test(key)).sort()));
const trials = async (page) =>
  Object.fromEntries(
    Object.entries(await everything(page))
      .filter(([key]) => key.startsWith("batterwright/trial/"))
      .map(([key, text]) => [key.split("/").at(-1), JSON.parse(text).body.name]),
  );
const main = (page) => page.getByRole("main");
const bringIn = (page) => page.getByRole("button", { name: "Bring it in", exact: true });
const outAndIn = async (page) => {
  await page.evaluate(() => (location.hash = "#/out-and-in"));
  await page.getByRole("heading", { level: 1, name: "Out and in" }).waitFor();
};
const choose = (page, text) =>
  page.getByLabel("File that was taken out").setInputFiles({ name: "file.json", mimeType: "application/json", buffer: Buffer.from(text) });
const takeOut = async (page) => {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Take everything out" }).click()]);
  return readFileSync(await download.path(), "utf8");
};

/** Makes and keeps a picture of so many dots a side, and gives its key. */
const takePicture = (page, side) =>
  page.evaluate(async (side) => {
    const canvas = Object.assign(document.createElement("canvas"), { width: side, height: side });
    canvas.getContext("2d").fillRect(0, 0, side / 2, side);
    const file = await new Promise((done) => canvas.toBlob(done, "image/png"));
    return (await window.batterwrightPictures.take(file)).id;
  }, side);
const countPictures = (page) => page.evaluate(() => window.batterwrightPictures.count());

async function anotherDevice(context, site) {
  const fresh = await context.browser().newContext({ viewport: { width: 360, height: 740 }, locale: "en-GB", acceptDownloads: true });
  const page = await fresh.newPage();
  await page.goto(site.address);
  await ready(page);
  await outAndIn(page);
  return { page, close: () => fresh.close() };
}

inBrowser("bakes come out and in again with their recipe, on another device, and with their pictures where that is ticked", { screen: "phone" }, async ({ page, context, site, reload, reachable }) => {
  const [here, gone] = [await takePicture(page, 40), "picture-000000000000000000000000"];
  const pictures = [{ key: here, words: "The cut face" }, { key: gone }];
  const trial = JSON.stringify(record("First", 5, { pictures, notes: "Two lines\nof notes" }));
  await put(page, { [RECIPE]: recipe, [trialKey(1)]: trial, [trialKey(2)]: JSON.stringify(record("Second", 5)) });
  await reload();
  await outAndIn(page);
  await reachable();
  const without = await takeOut(page);
  await sees(main(page), /Taken out: 1 recipe, 2 bakes and settings\. 2 pictures are not in it\./);
  assert.deepEqual(JSON.parse(without).pictures, {});
  await page.getByLabel("With the pictures of bakes").check();
  const file = await takeOut(page);
  await sees(main(page), /Taken out: 1 recipe, 2 bakes, 1 picture and settings\. 1 picture is not in it: it is not on this device/);
  assert.deepEqual(Object.keys(JSON.parse(file).pictures), [here]);

  const other = await anotherDevice(context, site);
  await choose(other.page, file);
  await sees(main(other.page), /It holds 1 recipe, 2 bakes, 1 picture and settings/);
  await sees(main(other.page), /New here\. Changed .*\. With 2 bakes/);
  await sees(main(other.page), /Comes in: 1 new recipe and 2 bakes\./);
  assert.equal(await countPictures(other.page), 0);
  await bringIn(other.page).click();
  await sees(main(other.page), /Done\. Came in: 1 new recipe and 2 bakes\. 1 picture came in\./);
  const [before, after] = [await everything(page), await everything(other.page)];
  for (const key of [RECIPE, trialKey(1), trialKey(2)]) assert.deepEqual(JSON.parse(after[key]), JSON.parse(before[key]), key);
  await go(other.page, "Shelf");
  await other.page.getByRole("link", { name: /^Pump-house scones/ }).click();
  await go(other.page, "Trials");
  await other.page.getByRole("link", { name: "First" }).click();
  const shown = other.page.getByRole("img", { name: "The cut face" });
  await shown.waitFor();
  assert.equal(await shown.evaluate((image) => image.decode().then(() => image.naturalWidth)), 40);
  // Once more, and nothing comes; a picture that was lost meanwhile does.
  await other.page.evaluate(() => new Promise((done) => (indexedDB.deleteDatabase("batterwright").onsuccess = done)));
  await outAndIn(other.page);
  await choose(other.page, file);
  await sees(main(other.page), /Nothing comes in\. Here already, the same: 1 recipe and 2 bakes\./);
  await bringIn(other.page).click();
  await sees(main(other.page), /1 picture came in\./);
  await choose(other.page, without);
  await sees(main(other.page), /Nothing comes in/);
  assert.ok(await bringIn(other.page).isHidden());
  await other.close();
});

/** One bake of each standing: new, changed later there, changed later here, the same. */
const HERE = {
  [RECIPE]: recipe,
  [trialKey(2)]: JSON.stringify(record("Second, here", 5)),
  [trialKey(3)]: JSON.stringify(record("Third, here", 9)),
  [trialKey(4)]: JSON.stringify(record("Fourth", 1, { baked: 4 })),
};
const FILE = fileOf([row(1, "First", 5, { baked: 1 }), row(2, "Second, theirs", 9), row(3, "Third, theirs", 5), row(4, "Fourth", 5, { baked: 4 })]);

for (const [choice, comes, stands, inBin] of [
  ["Keep both", /Comes in: 1 bake and 2 bakes beside the ones here\. Here already, the same: 1 recipe and 1 bake\./, { 1: "First", 2: "Second, here", 3: "Third, here", 4: "Fourth", 5: "Second, theirs", 6: "Third, theirs" }, 0],
  ["Keep the newer", /Comes in: 1 bake and 1 bake in the place of an older one, which goes to the bin\..*Left out: 1 bake\./, { 1: "First", 2: "Second, theirs", 3: "Third, here", 4: "Fourth" }, 1],
  ["Skip the file's", /Comes in: 1 bake\..*Left out: 2 bakes\./, { 1: "First", 2: "Second, here", 3: "Third, here", 4: "Fourth" }, 0],
]) {
  inBrowser(`of bakes that are here too and differ: ${choice.toLowerCase()}`, { screen: "phone" }, async ({ page, reload, reachable }) => {
    await put(page, HERE);
    await reload();
    await outAndIn(page);
    const before = await everything(page);
    await choose(page, FILE);
    await page.getByLabel(choice, { exact: true }).check();
    await sees(main(page), comes);
    await reachable();
    assert.deepEqual(await everything(page), before);
    await bringIn(page).click();
    await sees(main(page), /Done\. Came in/);
    assert.deepEqual(await trials(page), stands);
    const binned = Object.keys(await everything(page)).filter((key) => key.startsWith("batterwright/bin/"));
    assert.equal(binned.length, inBin);
    await page.getByRole("button", { name: "Take it out again" }).click();
    await sees(main(page), /All stands as it stood before/);
    assert.deepEqual(await everything(page), before);
  });
}

inBrowser("a bake that cannot be read is not written over, and not taken out", { screen: "phone" }, async ({ page, reload }) => {
  const damaged = '{"format":"batterwright trial","ver';
  await put(page, { [RECIPE]: recipe, [trialKey(1)]: damaged });
  await reload();
  await outAndIn(page);
  const file = await takeOut(page);
  await sees(main(page), /1 record that cannot be read is not in it/);
  assert.deepEqual(JSON.parse(file).trials, []);
  await choose(page, fileOf([row(1, "First", 5)]));
  await page.getByLabel("Keep the newer", { exact: true }).check();
  await bringIn(page).click();
  await sees(main(page), /Done/);
  assert.equal((await everything(page))[trialKey(1)], damaged);
  assert.equal(JSON.parse((await everything(page))[trialKey(2)]).body.name, "First");
});

inBrowser("bakes of a recipe that rests in the bin are not taken out; a file of an older page comes in as ever", { screen: "phone" }, async ({ page, reload }) => {
  await put(page, { [RECIPE]: recipe, [trialKey(1)]: JSON.stringify(record("First", 5)) });
  await reload();
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Pump-house scones" }).click();
  await outAndIn(page);
  assert.deepEqual(JSON.parse(await takeOut(page)).trials, []);
  const old = JSON.parse(fileOf([]));
  delete old.trials;
  await choose(page, JSON.stringify({ ...old, version: 1 }));
  await sees(main(page), /It holds 1 recipe\./);
  await bringIn(page).click();
  await sees(main(page), /Done\. Came in: 1 recipe that rests in the bin here\./);
  await go(page, "Shelf");
  await page.getByRole("link", { name: /^Pump-house scones/ }).click();
  await go(page, "Trials");
  await page.getByRole("link", { name: "First" }).waitFor();
});

inBrowser("a file with a wrong bake or a wrong picture is refused whole", { screen: "phone" }, async ({ page, reload }) => {
  await put(page, HERE);
  await reload();
  await outAndIn(page);
  const before = await everything(page);
  const wrong = { format: "batterwright trial", version: 1, body: { notes: 7 } };
  for (const [file, said] of [
    [fileOf([row(1, "First", 5), { recipe: "scones", id: 2, record: wrong }]), /trial 2 of 2: its notes is the number 7/],
    [fileOf([], { pictures: { "picture-0123456789abcdef01234567": "PHN2Zz4=" } }), /is no JPEG of 40 kB at most/],
    [fileOf([], { version: 3 }), /a newer version of this page wrote it/],
  ]) {
    await choose(page, file);
    const alert = page.getByRole("alert").filter({ hasText: "cannot be brought in" });
    await sees(alert, said);
    await sees(alert, /Nothing was changed/);
    assert.deepEqual(await everything(page), before);
  }
});

inBrowser("pictures that cannot be kept leave the bakes of a file here, and that is said", { screen: "phone" }, async ({ page, reload }) => {
  await reload();
  await page.evaluate(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("No.", "SecurityError");
    };
  });
  await outAndIn(page);
  const key = "picture-0123456789abcdef01234567";
  await choose(page, fileOf([row(1, "First", 5, { pictures: [{ key }] })], { pictures: { [key]: "/9j/4AAQSkZJRg==" } }));
  await bringIn(page).click();
  await sees(main(page), /Done\. Came in: 1 new recipe and 1 bake\. Its pictures did not come in\. This browser keeps no pictures/);
  assert.deepEqual(await trials(page), { 1: "First" });
});

// What is kept on the device: every letter, every recipe, and records that this page cannot read.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { inBrowser, ready, textBox } from "./harness.mjs";
import { go, line, row, sees, verdict } from "./hands.mjs";

const BISCUITS = "Signal-hut biscuits\n\n1 cup all-purpose flour\n1/2 tsp baking soda";
const SCONES = "Pump-house scones\n\n250 g flour\n100 g butter";

/** The text of the file that the browser is given at that touch. */
const downloaded = async (page, touch) => {
  const [download] = await Promise.all([page.waitForEvent("download"), touch()]);
  return readFileSync(await download.path(), "utf8");
};

/** Puts records where the page keeps its own. */
const put = (page, records) =>
  page.evaluate((records) => {
    for (const [key, text] of Object.entries(records)) localStorage.setItem(key, text);
  }, records);

/** What stands under a key of the store. */
const stored = (page, key) => page.evaluate((key) => localStorage.getItem(key), key);

const onShelf = (page, title) => page.getByRole("main").getByRole("listitem").filter({ hasText: title });

for (const screen of ["phone", "desk"]) {
  inBrowser("a reload in the middle of a word loses nothing", { screen }, async ({ page, context, site }) => {
    const box = await textBox(page);
    await box.press("Control+End");
    await box.pressSequentially("\n2 tablespoons po");
    const typed = await box.inputValue();
    await page.reload();
    await ready(page);
    assert.equal(await (await textBox(page)).inputValue(), typed);

    // Nor does a window that is closed at once.
    await (await textBox(page)).press("Control+End");
    await (await textBox(page)).pressSequentially("ppy seeds");
    await page.close();
    const next = await context.newPage();
    await next.goto(site.address);
    await ready(next);
    assert.equal(await (await textBox(next)).inputValue(), `${typed}ppy seeds`);
  });
}

inBrowser("recipes stand on the shelf, open, go, and come back", { screen: "phone" }, async ({ page, paste, reload, reachable }) => {
  await paste(BISCUITS);
  await page.getByRole("button", { name: "New", exact: true }).click();
  await paste(SCONES);
  await page.getByRole("heading", { level: 1, name: "Pump-house scones" }).waitFor();
  await reload();
  await page.getByRole("heading", { level: 1, name: "Pump-house scones" }).waitFor();

  await go(page, "Shelf");
  await onShelf(page, "Signal-hut biscuits").getByRole("link").click();
  await page.getByRole("heading", { level: 1, name: "Signal-hut biscuits" }).waitFor();
  assert.equal(await (await textBox(page)).inputValue(), BISCUITS);

  // The open recipe is removed and put back.
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Signal-hut biscuits" }).click();
  await onShelf(page, "Signal-hut biscuits").waitFor({ state: "detached" });
  await reachable();
  await page.getByRole("button", { name: "Put it back" }).click();
  await onShelf(page, "Signal-hut biscuits").getByRole("link").click();
  assert.equal(await (await textBox(page)).inputValue(), BISCUITS);

  // One that is removed for good is gone; the other stays.
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Signal-hut biscuits" }).click();
  await page.getByText("Removed: Signal-hut biscuits").waitFor();
  await reload();
  await onShelf(page, "Pump-house scones").waitFor();
  assert.equal(await onShelf(page, "Signal-hut biscuits").count(), 0);
});

inBrowser("a demo that was only looked at is not kept, a changed one is", { screen: "phone" }, async ({ page, paste }) => {
  await go(page, "Shelf");
  await onShelf(page, "Lamp-room cocoa loaf").getByRole("link").click();
  await page.getByRole("heading", { level: 1, name: "Lamp-room cocoa loaf" }).waitFor();
  await go(page, "Shelf");
  assert.equal(await page.getByRole("button", { name: /^Remove/ }).count(), 0);
  await go(page, "Ticket");
  const text = await (await textBox(page)).inputValue();
  await paste(text.replace("200 g", "210 g"));
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Lamp-room cocoa loaf" }).waitFor();
});

const NEWER = JSON.stringify({ format: "batterwright recipe", version: 4711, body: { shelves: ["of tomorrow"] } });
const TORN = '{"format":"batterwright recipe","version":1,"body":{"changed":17,"inp';

for (const [what, record, reason] of [
  ["newer", NEWER, /newer version/],
  ["torn", TORN, /cannot be read/],
]) {
  inBrowser(`a ${what} record is set aside and left as it is`, { screen: "phone" }, async ({ page, paste, reload, reachable }) => {
    const key = "batterwright/recipe/harbour";
    await put(page, { [key]: record, "batterwright/open": "harbour" });
    await reload();
    const banner = page.getByRole("alert").filter({ hasText: "set aside" });
    await sees(banner, reason);
    await reachable();
    // The page goes on working, and does not write over it.
    await paste(SCONES);
    await sees(row(page, 3), /^250 g/);
    assert.equal(await stored(page, key), record);
    await banner.getByRole("link", { name: "Go to the shelf" }).click();
    await page.getByRole("heading", { level: 2, name: "Set aside" }).waitFor();
    const item = onShelf(page, key);
    await sees(item, reason);
    assert.equal(await downloaded(page, () => item.getByRole("button", { name: "Download it" }).click()), record);
    await reload();
    await onShelf(page, "Pump-house scones").waitFor();
    assert.equal(await stored(page, key), record);
  });
}

inBrowser("settings that cannot be read are set aside, and new ones are kept beside them", { screen: "phone" }, async ({ page, reload }) => {
  const record = JSON.stringify({ format: "batterwright settings", version: 12, body: {} });
  await put(page, { "batterwright/settings": record });
  await reload();
  await go(page, "Shelf");
  const item = onShelf(page, "batterwright/settings");
  await sees(item, /newer version/);
  assert.equal(await downloaded(page, () => item.getByRole("button", { name: "Download it" }).click()), record);
  await go(page, "Settings");
  await page.getByRole("radio", { name: "Centimetres" }).check();
  await reload();
  assert.ok(await page.getByRole("radio", { name: "Centimetres" }).isChecked());
  assert.equal(await stored(page, "batterwright/settings"), record);
});

for (const [storage, reason] of [
  ["full", /not being kept: .* is full/],
  ["forbidden", /not being kept: this browser does not let/],
]) {
  inBrowser(`storage that is ${storage} is said, and the page goes on`, { screen: "phone", storage }, async ({ page, paste, reachable }) => {
    await sees(verdict(page, "Acid and soda"), /Short of soda/);
    await paste(BISCUITS);
    const banner = page.getByRole("alert").filter({ hasText: "This recipe is not being kept" });
    await sees(banner, reason);
    await reachable();
    await sees(row(page, 3), /^125 g/);
    await line(page, 3).click();
    await page.getByLabel("Your own weight in the recipe, in grams").fill("130");
    await sees(row(page, 3), /^130 g/);
    await go(page, "Settings");
    await page.getByRole("radio", { name: "Centimetres" }).check();
    await sees(page.getByRole("main"), /Nothing is being kept: /);
    await go(page, "Shelf");
    await go(page, "Ticket");
    await sees(banner, reason);
    assert.equal(await (await textBox(page)).inputValue(), BISCUITS);
    await sees(row(page, 3), /^130 g/);
    assert.equal(await downloaded(page, () => banner.getByRole("button", { name: "Download the text" }).click()), BISCUITS);
  });
}

inBrowser("what could not be kept is one touch away after another recipe was opened", { screen: "phone", storage: "full" }, async ({ page, paste }) => {
  await paste(BISCUITS);
  await page.getByRole("alert").filter({ hasText: "This recipe is not being kept" }).waitFor();
  await page.getByRole("button", { name: "New", exact: true }).click();
  assert.equal(await (await textBox(page)).inputValue(), "");
  await page.getByRole("button", { name: "Take it back" }).click();
  assert.equal(await (await textBox(page)).inputValue(), BISCUITS);
});

inBrowser("storage that fills up later leaves what was kept, and is kept again when there is room", { screen: "phone" }, async ({ page, paste, reload }) => {
  await paste(SCONES);
  await page.evaluate(() => {
    window.room = Storage.prototype.setItem;
    Storage.prototype.setItem = () => {
      throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
    };
  });
  await paste(`${SCONES}\n50 g currants`);
  const banner = page.getByRole("alert").filter({ hasText: "This recipe is not being kept" });
  await banner.waitFor();
  await page.evaluate(() => {
    Storage.prototype.setItem = window.room;
  });
  await paste(`${SCONES}\n60 g currants`);
  await banner.waitFor({ state: "detached" });
  await reload();
  await sees(row(page, 5), /^60 g/);
});

inBrowser(
  "that a recipe is not being kept is not forgotten over a setting that is",
  { screen: "phone" },
  async ({ page, paste }) => {
    await page.evaluate(() => {
      const room = Storage.prototype.setItem;
      Storage.prototype.setItem = function (key, text) {
        if (key.startsWith("batterwright/recipe/")) throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
        room.call(this, key, text);
      };
    });
    await paste(SCONES);
    const banner = page.getByRole("alert").filter({ hasText: "This recipe is not being kept" });
    await banner.waitFor();
    await go(page, "Settings");
    await page.getByRole("radio", { name: "Centimetres" }).check();
    await go(page, "Ticket");
    assert.ok(await banner.isVisible(), "The page claims that all is kept.");
  },
);

inBrowser(
  "settings that cannot be read are said at once, since weights hang on them",
  { screen: "phone" },
  async ({ page, reload }) => {
    await put(page, { "batterwright/settings": "{" });
    await reload();
    assert.ok(await page.getByRole("alert").filter({ hasText: "set aside" }).isVisible(), "The usual settings are taken in silence.");
  },
);

inBrowser("what another window changes is followed", { screen: "desk" }, async ({ page, context, site, paste }) => {
  await paste(SCONES);
  const other = await context.newPage();
  await other.goto(site.address);
  await ready(other);
  await (await textBox(other)).fill(SCONES.replace("250", "275"));
  await sees(row(page, 3), /^275 g/);
  assert.equal(await (await textBox(page)).inputValue(), SCONES.replace("250", "275"));
});

// Bakes written down are never lost: two windows, the bin, recipes that go and come back, storage that fails.

import assert from "node:assert/strict";
import { inBrowser, ready, textBox } from "./harness.mjs";
import { go, sees } from "./hands.mjs";

const SCONES = "Pump-house scones\n\n250 g flour\n100 g butter";
const BISCUITS = "Signal-hut biscuits\n\n1 cup all-purpose flour\n1/2 tsp baking soda";
const DAY = 86_400_000;

const phone = (name, options, body) => inBrowser(name, { screen: "phone", ...options }, body);
const main = (page) => page.getByRole("main");
const nameOf = (page) => page.getByLabel("Name of this trial");
const notes = (page) => page.getByLabel("In your own words");
const alert = (page, words) => page.getByRole("alert").filter({ hasText: words });

/** Every record of ours whose key begins so, by its key. */
const under = (page, beginning) =>
  page.evaluate(
    (beginning) => Object.fromEntries(Object.entries({ ...localStorage }).filter(([key]) => key.startsWith(beginning)).sort()),
    `batterwright/${beginning}/`,
  );
const bodies = async (page) => Object.values(await under(page, "trial")).map((text) => JSON.parse(text).body);

/** The names and notes of all bakes come to this. What another window writes takes a moment to be seen in this one. */
async function holds(page, wanted) {
  const held = async () => (await bodies(page)).map(({ name, notes }) => [name.replace(/ from .*/, ""), notes]);
  for (let tries = 0; tries < 50 && JSON.stringify(await held()) !== JSON.stringify(wanted); tries += 1) await page.waitForTimeout(100);
  assert.deepEqual(await held(), wanted);
}

/** A record of a bake. */
const record = (body) => JSON.stringify({ format: "batterwright trial", version: 1, body });

/** Puts records into the store of an open page. */
const put = (page, records) =>
  page.evaluate((records) => {
    for (const [key, text] of Object.entries(records)) localStorage.setItem(key, text);
  }, records);

/** Writes a bake of the open recipe down, under a name, and stands on its page. */
async function writeDown(page, name) {
  await go(page, "Trials");
  await page.getByRole("button", { name: "Write a bake down" }).click();
  await nameOf(page).fill(name);
  await page.getByRole("heading", { level: 1, name }).waitFor();
}

async function another(context, address) {
  const page = await context.newPage();
  await page.goto(address);
  await ready(page);
  return page;
}

/** Makes a window miss whatever others do, as one that sleeps does. Runs before the page's own scripts. */
const deaf = () => {
  window.asleep = false;
  for (const event of ["storage", "focus", "pageshow"]) {
    window.addEventListener(event, (told) => window.asleep && told.stopImmediatePropagation(), true);
  }
};
const sleep = (page, asleep = true) =>
  page.evaluate((asleep) => {
    window.asleep = asleep;
  }, asleep);

/** Has the store refuse to be written to, as a full one does, or no longer. */
const full = (page, isOn = true) =>
  page.evaluate((isOn) => {
    window.write ??= Storage.prototype.setItem;
    Storage.prototype.setItem = isOn
      ? () => {
          throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
        }
      : window.write;
  }, isOn);

phone("a bake that is open in two windows is the same in both, and a list follows what the other adds and removes", {}, async ({ page, paste, context }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  const other = await another(context, page.url());
  await notes(other).fill("Flat in the middle");
  await page.waitForFunction(() => document.querySelector("#trial-notes").value === "Flat in the middle");
  await nameOf(page).fill("First, renamed");
  await other.getByRole("heading", { level: 1, name: "First, renamed" }).waitFor();
  await go(page, "Trials");
  await writeDown(other, "Second");
  await page.getByRole("link", { name: "Second" }).waitFor();
  await other.getByRole("button", { name: "Remove this trial" }).click();
  await page.getByRole("link", { name: "Second" }).waitFor({ state: "detached" });
  await page.getByRole("link", { name: "First, renamed" }).waitFor();
  assert.equal(await page.getByRole("alert").filter({ hasText: "taken away" }).count(), 0);
  await holds(page, [["First, renamed", "Flat in the middle"]]);
});

phone("a window that slept does not write over a bake that another one changed", { before: deaf }, async ({ page, paste, context, reachable, reload }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  const other = await another(context, page.url());
  await sleep(page);
  await notes(other).fill("Theirs");
  await notes(page).fill("Ours");
  await sees(alert(page, "Two windows have changed this bake"), /Both are kept/);
  await sleep(page, false);
  await page.getByRole("heading", { level: 1, name: /^First, copy from \d/ }).waitFor();
  assert.equal(await notes(page).inputValue(), "Ours");
  await reachable();
  await holds(page, [["First", "Theirs"], ["First, copy", "Ours"]]);
  // From here on each goes on by itself.
  await notes(page).fill("Ours, later");
  await notes(other).fill("Theirs, later");
  await holds(page, [["First", "Theirs, later"], ["First, copy", "Ours, later"]]);
  await page.getByRole("button", { name: "Close" }).click();
  await alert(page, "Two windows").waitFor({ state: "detached" });
  await go(page, "Trials");
  await page.getByRole("link", { name: "First", exact: true }).waitFor();
  await page.getByRole("link", { name: /^First, copy/ }).waitFor();
  await reload();
  await page.getByRole("link", { name: /^First, copy/ }).waitFor();
});

phone("a window that wakes up shows what was written and removed meanwhile", { before: deaf }, async ({ page, paste, context }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  await go(page, "Trials");
  const other = await another(context, page.url());
  await sleep(page);
  await writeDown(other, "Second");
  await go(other, "Trials");
  await other.getByRole("link", { name: "First" }).click();
  await other.getByRole("button", { name: "Remove this trial" }).click();
  await sleep(page, false);
  await page.evaluate(() => window.dispatchEvent(new Event("focus")));
  await page.getByRole("link", { name: "Second" }).waitFor();
  await page.getByRole("link", { name: "First", exact: true }).waitFor({ state: "detached" });
});

phone("a bake that is removed rests in the bin, and comes back from there or at once", {}, async ({ page, paste, reload, reachable }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  const before = await under(page, "trial");
  await page.getByRole("button", { name: "Remove this trial" }).click();
  await page.getByText("Removed: First. It rests in the bin for 30 days.").waitFor();
  assert.deepEqual(await under(page, "trial"), {});
  await reachable();
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByRole("link", { name: "First" }).click();
  assert.deepEqual(await under(page, "trial"), before);
  assert.deepEqual(await under(page, "bin"), {});
  await page.getByRole("button", { name: "Remove this trial" }).click();
  await reload();
  await go(page, "Shelf");
  await page.locator("summary").filter({ hasText: "Bin: 1 bake" }).click();
  await sees(main(page), /First, Pump-house scones/);
  await page.getByRole("button", { name: "Put back First, Pump-house scones" }).click();
  await page.locator("summary").filter({ hasText: "Bin:" }).waitFor({ state: "hidden" });
  assert.deepEqual(await under(page, "trial"), before);
});

phone("a recipe takes its bakes to the bin with it, and brings them back", {}, async ({ page, paste, reachable }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  await writeDown(page, "Second");
  const before = await under(page, "trial");
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Pump-house scones" }).click();
  await page.locator("summary").filter({ hasText: "Bin: 1 recipe" }).click();
  await sees(main(page), /30 days left.*with 2 bakes/);
  await reachable();
  await page.getByRole("button", { name: "Put back Pump-house scones" }).click();
  await page.getByRole("link", { name: /^Pump-house scones/ }).click();
  await go(page, "Trials");
  await page.getByRole("link", { name: "First" }).waitFor();
  await page.getByRole("link", { name: "Second" }).waitFor();
  assert.deepEqual(await under(page, "trial"), before);
});

phone("a recipe that goes for good takes its bakes along, and that can be taken back", {}, async ({ page, paste }) => {
  await paste(BISCUITS);
  await writeDown(page, "Another recipe's");
  const others = await under(page, "trial");
  await go(page, "Shelf");
  await page.getByRole("button", { name: "New blank recipe" }).click();
  await paste(SCONES);
  await writeDown(page, "First");
  const before = await under(page, "trial");
  assert.equal(Object.keys(before).length, 2);
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Pump-house scones" }).click();
  await page.locator("summary").filter({ hasText: "Bin: 1 recipe" }).click();
  await page.getByRole("button", { name: "Remove for good: Pump-house scones" }).click();
  await page.getByText("Removed for good: Pump-house scones").waitFor();
  assert.deepEqual(await under(page, "trial"), others);
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.locator("summary").filter({ hasText: "Bin: 1 recipe" }).waitFor();
  assert.deepEqual(await under(page, "trial"), before);
  // After its 30 days the same happens by itself.
  await page.evaluate((later) => {
    const now = Date.now;
    Date.now = () => now() + later;
  }, 31 * DAY);
  await go(page, "Ticket");
  await go(page, "Shelf");
  await page.waitForFunction(() => !Object.keys(localStorage).some((key) => key.startsWith("batterwright/bin/")));
  assert.deepEqual(await under(page, "trial"), others);
});

phone("a bake whose recipe is gone stays, and brings its recipe back", {}, async ({ page, paste, reachable }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  await go(page, "Shelf");
  const [recipe] = Object.keys(await under(page, "recipe"));
  const trials = await under(page, "trial");
  await page.evaluate((key) => localStorage.removeItem(key), recipe);
  await go(page, "Ticket");
  await go(page, "Shelf");
  await page.getByRole("heading", { level: 2, name: "Bakes without a recipe" }).waitFor();
  await sees(main(page), /Pump-house scones 1 bake/);
  await reachable();
  await page.getByRole("button", { name: "Put the recipe back: Pump-house scones" }).click();
  await page.getByRole("link", { name: /^Pump-house scones/ }).click();
  assert.equal(await (await textBox(page)).inputValue(), SCONES);
  await go(page, "Trials");
  await page.getByRole("link", { name: "First" }).waitFor();
  assert.deepEqual([Object.keys(await under(page, "recipe")), await under(page, "trial")], [[recipe], trials]);
});

phone("a bake that is put back brings its recipe out of the bin", {}, async ({ page, paste }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  await page.getByRole("button", { name: "Remove this trial" }).click();
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Pump-house scones" }).click();
  await page.locator("summary").filter({ hasText: "Bin: 1 recipe, 1 bake" }).click();
  await page.getByRole("button", { name: "Put back First, Pump-house scones" }).click();
  await page.getByRole("link", { name: /^Pump-house scones/ }).click();
  await go(page, "Trials");
  await page.getByRole("link", { name: "First" }).waitFor();
  assert.deepEqual(await under(page, "bin"), {});
});

phone("where two windows part ways, bakes of either are in both, and go on with what stays", { before: deaf }, async ({ page, paste, context, site }) => {
  await paste(SCONES);
  await writeDown(page, "Before");
  await go(page, "Ticket");
  const other = await another(context, site.address);
  await sleep(page);
  await (await textBox(other)).fill(`${SCONES}\n2 eggs`);
  await other.waitForFunction(() => Object.values({ ...localStorage }).some((text) => text.includes("2 eggs")));
  await paste(`${SCONES}\n3 eggs`);
  const banner = alert(page, "Two windows have changed this recipe");
  await banner.waitFor();
  await sleep(page, false);
  // What stands here is a copy now; a bake of it is its own, and those of the first are in sight.
  await writeDown(page, "After");
  await go(page, "Trials");
  await page.getByRole("link", { name: "Before" }).waitFor();
  await page.getByRole("link", { name: "After" }).waitFor();
  assert.equal(Object.keys(await under(page, "recipe")).length, 2);
  await banner.getByRole("button", { name: "Only this one" }).click();
  await banner.waitFor({ state: "detached" });
  const [recipe, ...rest] = Object.keys(await under(page, "recipe"));
  assert.deepEqual(rest, []);
  const id = recipe.split("/").at(-1);
  const keys = Object.keys(await under(page, "trial"));
  assert.equal(keys.length, 2);
  for (const key of keys) assert.equal(key.split("/")[2], id, key);
  await page.getByRole("link", { name: "Before" }).waitFor();
  await page.getByRole("link", { name: "After" }).waitFor();
});

phone("in a full store what is written down stays in the window, is said, and is kept once there is room", {}, async ({ page, paste, reachable, reload }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  const before = await under(page, "trial");
  await full(page);
  await notes(page).fill("Not kept yet");
  await sees(alert(page, "What you write down is not being kept"), /is full.*It holds while this page is open/);
  await reachable();
  assert.deepEqual(await under(page, "trial"), before);
  // Looked at again in this window, it is still there.
  await go(page, "Trials");
  await page.getByRole("link", { name: "First" }).click();
  assert.equal(await notes(page).inputValue(), "Not kept yet");
  // So is one that was written down meanwhile.
  await writeDown(page, "Second");
  await go(page, "Trials");
  await page.getByRole("link", { name: "Second" }).waitFor();
  await full(page, false);
  await page.getByRole("link", { name: "Second" }).click();
  await notes(page).fill("Kept");
  await alert(page, "What you write down").waitFor({ state: "detached" });
  await reload();
  await holds(page, [["First", "Not kept yet"], ["Second", "Kept"]]);
});

phone("what could not be kept is there again after another recipe was open, and is kept once there is room", {}, async ({ page, paste }) => {
  await paste(BISCUITS);
  await go(page, "Shelf");
  await page.getByRole("button", { name: "New blank recipe" }).click();
  await paste(SCONES);
  await writeDown(page, "First");
  await full(page);
  await notes(page).fill("Not kept yet");
  await alert(page, "not being kept").waitFor();
  await go(page, "Shelf");
  await page.getByRole("link", { name: /^Signal-hut biscuits/ }).click();
  await go(page, "Trials");
  await page.getByText("No bake of this recipe is written down yet.").waitFor();
  await go(page, "Shelf");
  await page.getByRole("link", { name: /^Pump-house scones/ }).click();
  await go(page, "Trials");
  await page.getByRole("link", { name: "First" }).click();
  assert.equal(await notes(page).inputValue(), "Not kept yet");
  await full(page, false);
  await writeDown(page, "Second");
  await alert(page, "not being kept").waitFor({ state: "detached" });
  await holds(page, [["First", "Not kept yet"], ["Second", undefined]]);
});

phone("a version that another window makes and bakes comes into the list, and many bakes at once do", {}, async ({ page, paste, context }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  await go(page, "Trials");
  const [key, text] = Object.entries(await under(page, "trial"))[0];
  const [, , recipe] = key.split("/");
  const other = await another(context, page.url());
  const version = { name: "With oats", of: recipe, original: { text: SCONES } };
  await put(other, {
    "batterwright/recipe/oats": JSON.stringify({ format: "batterwright recipe", version: 2, body: { changed: 5, inputs: { text: `${SCONES}\n50 g rolled oats` }, version } }),
    "batterwright/trial/oats/20": text.replace('"First"', '"Of oats"'),
  });
  await page.getByRole("button", { name: "Open With oats" }).waitFor();
  await page.getByRole("link", { name: "Of oats" }).waitFor();
  const many = Array.from({ length: 120 }, (_, at) => [`batterwright/trial/oats/${100 + at}`, text.replace('"First"', `"Bake ${at}"`)]);
  await put(other, Object.fromEntries(many));
  await page.waitForFunction(() => document.querySelectorAll(".tree__link").length === 122);
  assert.equal(await page.getByRole("alert").filter({ hasText: "Two windows" }).count(), 0);
  await page.getByRole("link", { name: "Bake 119", exact: true }).click();
  await page.getByRole("heading", { level: 1, name: "Bake 119" }).waitFor();
});

for (const storage of ["full", "forbidden"]) {
  phone(`with storage that is ${storage} from the start a bake can be written down and is said not to be kept`, { storage }, async ({ page, paste, reachable }) => {
    await paste(SCONES);
    await writeDown(page, "First");
    await alert(page, "What you write down is not being kept").waitFor();
    await go(page, "Trials");
    await page.getByRole("link", { name: "First" }).waitFor();
    await reachable();
  });
}

phone("a store that does not let itself be read is said, and what stands there is not written over", {}, async ({ page, paste }) => {
  await paste(SCONES);
  await writeDown(page, "Another");
  await writeDown(page, "First");
  const before = await under(page, "trial");
  await page.evaluate(() => {
    window.read = Storage.prototype.getItem;
    Storage.prototype.getItem = () => {
      throw new DOMException("No.", "InvalidStateError");
    };
  });
  await notes(page).fill("Not kept yet");
  await sees(alert(page, "not being kept"), /does not let the page read/);
  await go(page, "Trials");
  await sees(alert(page, "cannot be listed"), /left as they are/);
  await page.getByRole("link", { name: "First" }).waitFor();
  await page.getByRole("link", { name: "Another" }).waitFor();
  await page.evaluate(() => (Storage.prototype.getItem = window.read));
  assert.deepEqual(await under(page, "trial"), before);
  await page.getByRole("link", { name: "First" }).click();
  await notes(page).fill("Kept now");
  await alert(page, "not being kept").waitFor({ state: "detached" });
  await holds(page, [["Another", undefined], ["First", "Kept now"]]);
});

phone("a record that was taken away under the page is said, stays in the window, and is kept again with the next letter", {}, async ({ page, paste, context, site, reachable }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  const other = await another(context, site.address);
  await other.evaluate(() => {
    const key = Object.keys(localStorage).find((key) => key.startsWith("batterwright/trial/"));
    localStorage.removeItem(key);
  });
  await sees(alert(page, "The record of a bake was taken away"), /still stands in this window/);
  await reachable();
  await notes(page).fill("Still here");
  await sees(alert(page, "taken away"), /is kept again since it goes on here/);
  assert.equal((await bodies(page))[0].notes, "Still here");
});

phone("what is cleared all at once is kept again with the open recipe", {}, async ({ page, paste, context, site }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  await writeDown(page, "Second");
  const before = await under(page, "trial");
  const other = await another(context, site.address);
  await other.evaluate(() => localStorage.clear());
  await alert(page, "The record of a bake was taken away").waitFor();
  await go(page, "Ticket");
  await paste(`${SCONES}\n2 eggs`);
  await alert(page, "has been cleared").waitFor();
  assert.deepEqual(await under(page, "trial"), before);
});

const DAMAGED = {
  "batterwright/trial/x/1": record({ name: "Cut" }).slice(0, 60),
  "batterwright/trial/x/2": "7",
  "batterwright/trial/x/3": record({ name: 7 }),
  "batterwright/trial/x/4": record({ said: [{ field: "moon", typed: "x" }] }),
  "batterwright/trial/x/5": JSON.stringify({ format: "batterwright trial", version: 9, body: {} }),
  "batterwright/trial/x/6": record({ notes: "n".repeat(20_001) }),
  "batterwright/trial/x/no number": "not a bake",
  "batterwright/trial/x": "not a bake either",
  "batterwright/trial/": "",
};

phone("records of bakes that are damaged, newer or too large are set aside, said on the page of trials, and left as they are", {}, async ({ page, paste, reload, reachable }) => {
  await paste(SCONES);
  await go(page, "Shelf");
  const [recipe] = Object.keys(await under(page, "recipe"));
  const id = recipe.split("/").at(-1);
  const damaged = Object.fromEntries(Object.entries(DAMAGED).map(([key, text]) => [key.replace("/x", `/${id}`), text]));
  await put(page, { ...damaged, [`batterwright/trial/${id}/10`]: record({ changed: 1, baked: 1, name: "Whole", plan: { text: SCONES } }) });
  await reload();
  await go(page, "Trials");
  await page.getByRole("link", { name: "Whole" }).waitFor();
  await sees(alert(page, "cannot be read"), /The records of 6 bakes cannot be read\. They are untouched/);
  await page.getByRole("link", { name: "Whole" }).click();
  await notes(page).fill("Goes on");
  await go(page, "Shelf");
  for (const key of Object.keys(damaged)) {
    await sees(page.getByRole("listitem").filter({ has: page.getByText(key, { exact: true }) }), /cannot be read: .{10}|newer version/);
  }
  await reachable();
  const after = await under(page, "trial");
  for (const [key, text] of Object.entries(damaged)) assert.equal(after[key], text, key);
  // One goes into the bin, to the letter, and comes back where it was; a recipe that goes leaves them where they are.
  const cut = page.getByRole("listitem").filter({ has: page.getByText(`batterwright/trial/${id}/1`, { exact: true }) });
  await cut.getByRole("button", { name: "Put it into the bin" }).click();
  await cut.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Put it back" }).click();
  await cut.waitFor();
  assert.equal((await under(page, "trial"))[`batterwright/trial/${id}/1`], damaged[`batterwright/trial/${id}/1`]);
});

phone("a record that this page cannot read is not written over by the window that had it open", { before: deaf }, async ({ page, paste }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  const [key] = Object.keys(await under(page, "trial"));
  const newer = JSON.stringify({ format: "batterwright trial", version: 9, body: { more: true } });
  await put(page, { [key]: newer });
  await notes(page).fill("Ours");
  await sees(alert(page, "not being kept"), /cannot read/);
  assert.equal((await under(page, "trial"))[key], newer);
});

phone("the room on the shelf counts bakes", {}, async ({ page, paste }) => {
  await paste(SCONES);
  await writeDown(page, "First");
  await go(page, "Shelf");
  await page.locator("summary").filter({ hasText: "Room" }).click();
  await sees(page.locator("details").filter({ hasText: "Room" }), /Trials [\d,]+ letters/);
});

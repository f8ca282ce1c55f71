// Two windows on the same recipe, settings and larder: neither overwrites the other in silence.

import assert from "node:assert/strict";
import { inBrowser, ready, textBox } from "./harness.mjs";
import { go, row, sees } from "./hands.mjs";

const SCONES = "Pump-house scones\n\n250 g flour\n100 g butter";
const THEIRS = SCONES.replace("250", "275");
const OURS = SCONES.replace("100", "110");

/** Another window on what is kept. */
async function another(context, site) {
  const page = await context.newPage();
  await page.goto(site.address);
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

/** The texts of all recipes that are kept, and what they are versions of. */
const kept = (page) =>
  page.evaluate(() =>
    Object.keys(localStorage)
      .filter((key) => key.startsWith("batterwright/recipe/"))
      .map((key) => JSON.parse(localStorage.getItem(key)).body)
      .map(({ inputs, version }) => ({ text: inputs.text, of: version?.of })),
  );

const inBin = (page) =>
  page.evaluate(() =>
    Object.keys(localStorage)
      .filter((key) => key.startsWith("batterwright/bin/"))
      .map((key) => JSON.parse(JSON.parse(localStorage.getItem(key)).body.text).body.inputs.text),
  );

const texts = (kept) => kept.map(({ text }) => text).sort();

/** A window that slept while another one changed its recipe, and is typed into after that. */
async function clash({ page, context, site, paste }) {
  await paste(SCONES);
  const other = await another(context, site);
  await page.evaluate(() => {
    window.asleep = true;
  });
  await (await textBox(other)).fill(THEIRS);
  await sees(row(other, 3), /^275 g/);
  await paste(OURS);
  const banner = page.getByRole("alert").filter({ hasText: "Two windows have changed this recipe" });
  await banner.waitFor();
  await page.evaluate(() => {
    window.asleep = false;
  });
  return { other, banner };
}

inBrowser("a window that slept does not write over what another one wrote meanwhile", { screen: "phone", before: deaf }, async (helpers) => {
  const { page, reachable } = helpers;
  const { other, banner } = await clash(helpers);
  await sees(banner, /The other one was changed at .*\d.*, yours at .*\d/);
  await reachable();
  // Both are kept before anything is answered, and ours tells what differs.
  assert.deepEqual(texts(await kept(page)), [OURS, THEIRS].sort());
  await page.getByText(/copy from/).first().waitFor();
  await banner.getByRole("button", { name: "Keep both" }).click();
  await banner.waitFor({ state: "detached" });
  assert.equal(await (await textBox(page)).inputValue(), OURS);
  assert.equal(await (await textBox(other)).inputValue(), THEIRS);
  // From here on each goes on by itself.
  await helpers.paste(`${OURS}\n1 egg`);
  await (await textBox(other)).fill(`${THEIRS}\n2 eggs`);
  await sees(row(other, 5), /egg/);
  assert.deepEqual(texts(await kept(page)), [`${OURS}\n1 egg`, `${THEIRS}\n2 eggs`].sort());
  await go(page, "Shelf");
  await page.getByRole("list", { name: "Versions of Pump-house scones" }).getByRole("link", { name: /A copy from/ }).waitFor();
});

inBrowser("of two states this window's alone can stay, and the other one rests in the bin", { screen: "phone", before: deaf }, async (helpers) => {
  const { page } = helpers;
  const { other, banner } = await clash(helpers);
  await banner.getByRole("button", { name: "Only this one" }).click();
  await banner.waitFor({ state: "detached" });
  const all = await kept(page);
  assert.deepEqual(all, [{ text: OURS, of: undefined }]);
  assert.deepEqual(await inBin(page), [THEIRS]);
  // The other window follows, since it has nothing of its own that is not kept.
  await sees(row(other, 4), /^110 g/);
});

inBrowser("of two states the other window's alone can stay, and this one rests in the bin", { screen: "phone", before: deaf }, async (helpers) => {
  const { page } = helpers;
  const { banner } = await clash(helpers);
  await banner.getByRole("button", { name: "Only the other" }).click();
  await banner.waitFor({ state: "detached" });
  assert.equal(await (await textBox(page)).inputValue(), THEIRS);
  assert.deepEqual(await kept(page), [{ text: THEIRS, of: undefined }]);
  assert.deepEqual(await inBin(page), [OURS]);
  await go(page, "Shelf");
  await page.locator("summary").filter({ hasText: "Bin: 1 recipe" }).click();
  await page.getByRole("button", { name: "Put back Pump-house scones" }).click();
  await page.getByRole("link", { name: /copy from/ }).waitFor();
  assert.deepEqual(texts(await kept(page)), [OURS, THEIRS].sort());
});

inBrowser("a window that wakes up shows what was changed meanwhile, and what stood there is one touch away", { screen: "phone", before: deaf }, async ({ page, context, site, paste }) => {
  await paste(SCONES);
  const other = await another(context, site);
  await page.evaluate(() => {
    window.asleep = true;
  });
  await (await textBox(other)).fill(THEIRS);
  await sees(row(other, 3), /^275 g/);
  await page.evaluate(() => {
    window.asleep = false;
    window.dispatchEvent(new Event("focus"));
  });
  await sees(row(page, 3), /^275 g/);
  await page.getByRole("button", { name: "Take it back" }).last().click();
  await sees(row(page, 3), /^250 g/);
});

inBrowser("two windows that type at the same moment lose nothing", { screen: "desk" }, async ({ page, context, site, paste }) => {
  await paste(SCONES);
  const other = await another(context, site);
  const type = (page, text) =>
    page.evaluate((text) => {
      const field = document.getElementById("recipe-text");
      field.value = text;
      field.dispatchEvent(new InputEvent("input", { bubbles: true }));
    }, text);
  for (let round = 0; round < 5; round += 1) {
    await Promise.all([type(page, `${SCONES}\n${round + 1} eggs`), type(other, `${SCONES}\n${round + 1} pears`)]);
    await page.waitForTimeout(300);
    const all = (await kept(page)).map(({ text }) => text);
    const shown = [await (await textBox(page)).inputValue(), await (await textBox(other)).inputValue()];
    for (const text of shown) assert.ok(all.includes(text), `Round ${round}: shown and not kept: ${text}`);
    // What one typed stands somewhere: shown, kept, or one step back.
    for (const [window, word] of [[page, "eggs"], [other, "pears"]]) {
      const wanted = `${SCONES}\n${round + 1} ${word}`;
      if (all.includes(wanted)) continue;
      await window.getByRole("button", { name: "Take back" }).first().click();
      assert.equal(await (await textBox(window)).inputValue(), wanted, `Round ${round}: ${word} are gone.`);
    }
  }
});

inBrowser("a recipe that another window removes is said, and kept again when it goes on here", { screen: "phone" }, async ({ page, context, site, paste, reachable }) => {
  await paste(SCONES);
  const other = await another(context, site);
  await go(other, "Shelf");
  await other.getByRole("button", { name: "Remove Pump-house scones" }).click();
  const banner = page.getByRole("alert").filter({ hasText: "taken away" });
  await sees(banner, /It still stands in this window/);
  await reachable();
  assert.deepEqual(await kept(page), []);
  await paste(OURS);
  await sees(page.getByRole("alert").filter({ hasText: "removed in another window" }), /kept again.*rests in the bin/);
  assert.deepEqual(texts(await kept(page)), [OURS]);
  assert.deepEqual(await inBin(page), [SCONES]);
});

inBrowser("settings of two windows are brought together", { screen: "phone", before: deaf }, async ({ page, context, site, reload }) => {
  await go(page, "Settings");
  const other = await another(context, site);
  await go(other, "Settings");
  await other.getByRole("radio", { name: "Small" }).check();
  await page.waitForFunction(() => [...document.querySelectorAll("[name=eggs]")].findIndex((it) => it.checked) === 0);
  // One that has not heard of it keeps what it does not know.
  await page.evaluate(() => {
    window.asleep = true;
  });
  await other.getByRole("radio", { name: "Jumbo or king" }).check();
  await page.getByRole("radio", { name: "Centimetres" }).check();
  await page.waitForFunction(() => [...document.querySelectorAll("[name=eggs]")].findIndex((it) => it.checked) === 4);
  await reload();
  assert.ok(await page.getByRole("radio", { name: "Centimetres" }).isChecked());
  assert.ok(await page.getByRole("radio", { name: "Jumbo or king" }).isChecked());
});

inBrowser("larders of two windows are brought together", { screen: "phone", before: deaf }, async ({ page, context, site }) => {
  await go(page, "Larder");
  const other = await another(context, site);
  await go(other, "Larder");
  await page.evaluate(() => {
    window.asleep = true;
  });
  for (const [window, name] of [[other, "Their block"], [page, "Our cocoa"]]) {
    await window.getByRole("button", { name: "Add an ingredient of your own" }).click();
    await window.getByLabel("Name", { exact: true }).fill(name);
  }
  // Both began as number one; ours goes on under a number of its own, and the form with it.
  await page.waitForFunction(() => location.hash === "#/larder/own/2");
  await page.getByRole("heading", { level: 1, name: "Our cocoa" }).waitFor();
  const names = await page.evaluate(() => JSON.parse(localStorage.getItem("batterwright/larder")).body.entries.map(({ key, name }) => `${key} ${name}`));
  assert.deepEqual(names, ["own/1 Their block", "own/2 Our cocoa"]);
});

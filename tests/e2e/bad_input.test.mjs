// Text and figures that are none: a plain sentence at their place, nothing lost, the page stays quick.

import assert from "node:assert/strict";
import { inBrowser, textBox } from "./harness.mjs";
import { choosePan, everything, go, line, near, part, row, sees, table, verdict, weightOf, weights } from "./hands.mjs";

inBrowser("an empty text claims nothing", { screen: "phone" }, async ({ page, paste, reload, reachable }) => {
  for (const nothing of ["", "   \n\n\t\n"]) {
    await paste(nothing);
    await page.getByRole("heading", { level: 1, name: "Untitled recipe" }).waitFor();
    await sees(part(page, "Weights"), /No ingredients yet/);
    await sees(verdict(page, "Weights"), /Nothing yet/);
    assert.equal(await (await textBox(page)).inputValue(), nothing);
  }
  assert.doesNotMatch(await everything(page), /NaN|inf|undefined|null/);
  await reachable();
  await reload();
  assert.equal(await (await textBox(page)).inputValue(), "   \n\n\t\n");
});

const STRANGE = [
  ["1/0 cup flour", /^No weight .*Check: .*\./],
  ["1e308 cups sugar", /^No weight .*Check: .*\./],
  // People write lists with dashes, so this one is read as two cups, and says so.
  ["-2 cups milk", /Check: .*\bminus\b.*\./],
  ["sugar, -2 cups", /Check: .*\./],
  ["2 cups", /^No weight .*Check: .*\./],
  ["99999999999999999999999 tsp salt", /^No weight .*Check: .*\./],
];

inBrowser("amounts that cannot be are said at their line, and the text stays", { screen: "phone" }, async ({ page, paste, reload }) => {
  const text = ["Lock-keeper's riddles", "", "1 cup flour", ...STRANGE.map(([words]) => words)].join("\n");
  await paste(text);
  await sees(row(page, 3), /^125 g/);
  for (const [index, [words, said]] of STRANGE.entries()) {
    await sees(row(page, index + 4), said);
    await line(page, index + 4).click();
    await sees(page.getByRole("group", { name: `Line ${index + 4}`, exact: true }), new RegExp(`As pasted ${words.replace(/[+*?/]/g, "\\$&")}`));
  }
  assert.doesNotMatch(await everything(page), /NaN|\binf\b|undefined/);
  await sees(verdict(page, "Weights"), /without a weight/);
  await reload();
  assert.equal(await (await textBox(page)).inputValue(), text);
});

inBrowser("markup is text and nothing more", { screen: "phone" }, async ({ page, paste, reload }) => {
  let asked = 0;
  page.on("dialog", (dialog) => {
    asked += 1;
    return dialog.dismiss();
  });
  const text = [
    "<script>alert(1)</script> cake",
    "",
    "2 cups <b>flour</b>",
    '1 cup <img src=x onerror="alert(2)">',
    "1 tsp soda</textarea><svg onload=alert(3)>",
    "",
    "Method",
    "Stir <img src=x onerror=alert(4)> and bake &amp; serve.",
  ].join("\n");
  await paste(text);
  // The heading leaves tags out; nothing of them is lost in the text.
  await page.getByRole("heading", { level: 1, name: /alert\(1\).* cake$/ }).waitFor();
  await sees(part(page, "Method and notes"), /Stir <img src=x onerror=alert\(4\)> and bake &amp; serve\./);
  await line(page, 4).click();
  await go(page, "Shelf");
  await page.getByRole("main").getByRole("link", { name: /<script>alert\(1\)<\/script> cake/ }).click();
  await reload();
  assert.equal(await (await textBox(page)).inputValue(), text);
  assert.equal(await page.locator("main img, main script, main b").count(), 0);
  assert.equal(asked, 0, "The page ran what was pasted.");
});

inBrowser("pictures in letters and writing from right to left stay as they are", { screen: "phone" }, async ({ page, paste, reload }) => {
  const text = ["🍐 كعكة الإجاص 👩🏽‍🍳", "", "2 cups flour 🌾", "1 cup 🥛", "كوب سكر واحد", "½ cup sugar", "\u202e1 cup milk\u202c", "قليل من الملح"].join("\n");
  await paste(text);
  const title = page.getByRole("heading", { level: 1, name: /كعكة الإجاص/ });
  await title.waitFor();
  assert.equal(await title.evaluate((title) => getComputedStyle(title).direction), "rtl");
  await sees(row(page, 3), /^250 g/);
  // USDA National Nutrient Database, release 28: a cup of sugar is 200 g.
  near(await weightOf(page, 6), 100, 0.03, "half a cup of sugar");
  // Every other line is somewhere on the ticket, word for word.
  const main = await everything(page);
  assert.ok(main.length > 500, "Little is shown.");
  for (const words of ["🥛", "كوب سكر واحد", "قليل من الملح"]) assert.ok(main.includes(words), words);
  await reload();
  assert.equal(await (await textBox(page)).inputValue(), text);
});

inBrowser("ten thousand lines are taken, counted and kept", { screen: "phone" }, async ({ page, paste, reload }) => {
  const text = `Flotilla flour\n\n${Array.from({ length: 9_998 }, (_, index) => `${(index % 7) + 1} cups flour`).join("\n")}`;
  assert.equal(text.split("\n").length, 10_000);
  const begun = Date.now();
  await paste(text);
  // Gone before the pause in typing has passed.
  await reload();
  await sees(verdict(page, "Weights"), /9998 lines weighed/);
  assert.ok(Date.now() - begun < 20_000, "It takes too long.");
  assert.equal((await (await textBox(page)).inputValue()).length, text.length);
  assert.ok((await weights(page)).length >= 100, "Hardly any line is shown.");
  // The page still answers.
  await line(page, 4).click();
  await sees(page.getByRole("group", { name: "Line 4", exact: true }), /As pasted 2 cups flour/);
  await go(page, "Settings");
  await go(page, "Ticket");
  await page.getByRole("button", { name: "New", exact: true }).click();
  await sees(part(page, "Weights"), /No ingredients yet/);
  assert.equal(await table(page).count(), 0);
});

inBrowser("fields of a pan say what is wrong with them, and keep what was written", { screen: "phone" }, async ({ page, reachable }) => {
  await page.getByRole("button", { name: "Bake in another pan" }).click();
  await choosePan(page, { shape: "Rectangle" });
  const form = page.getByRole("group", { name: "The pan on the shelf" });
  for (const [label, wrong, right] of [
    ["Length", ["nine", "", "0", "40000", "-9", "1/0"], "13"],
    ["Width", ["nine", "", "0", "40000"], "9"],
    ["Depth", ["nine", "", "0", "40000"], "2"],
    ["How many", ["two", "", "0", "40000", "1.5"], "1"],
  ]) {
    const field = form.getByRole("textbox", { name: label, exact: true });
    for (const written of wrong) {
      await field.fill(written);
      assert.equal(await field.getAttribute("aria-invalid"), "true", `${label} "${written}"`);
      const said = await field.evaluate((field) => document.getElementById(field.getAttribute("aria-describedby"))?.textContent);
      assert.match(said, /^.{10,}\.$/, `${label} "${written}"`);
      assert.equal(await field.inputValue(), written);
      // What is beside it does not move to figures that nobody gave.
      assert.doesNotMatch(await table(page).innerText(), /NaN|inf/);
    }
    await reachable();
    await field.fill(right);
    assert.equal(await field.getAttribute("aria-invalid"), null, label);
  }
  // By hand: 13 x 9 against 8 x 8 is 117/64 = 1.83, as if nothing had been written wrong.
  await sees(verdict(page, "Pan"), /1\.83/);
});

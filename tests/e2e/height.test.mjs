// A kitchen high above the sea, its oven, and how warm a batter is.

import assert from "node:assert/strict";
import { inBrowser } from "./harness.mjs";
import { go, part, row, sees, weightOf } from "./hands.mjs";

const TEXT = "Ridge-hut layer cake\n\nIngredients\n200 g cake flour\n200 g sugar\n100 g butter\n110 g egg\n130 g milk\n9 g baking powder";

const write = async (page, label, text) => {
  await go(page, "Settings");
  await page.getByLabel(label).fill(text);
};

inBrowser("a high kitchen gets its weights at one touch, and they can be taken back", { screen: "phone" }, async ({ page, paste, reload, reachable, picture }) => {
  await paste(TEXT);
  assert.ok(await part(page, "At your height").isHidden(), "A kitchen of unknown height is told of it.");
  await write(page, "Height of your kitchen above the sea", "5000 ft");
  await go(page, "Ticket");
  // ICAO's standard atmosphere and IAPWS-IF97: water boils at 94.9 °C at 1,524 m.
  await sees(part(page, "At your height"), /1,524 m \(5,000 ft\).*94\.9 °C/);
  await sees(part(page, "At your height"), /University of Wyoming Extension/);
  await reachable();
  await picture("height");
  await page.getByRole("button", { name: "Take these weights" }).click();
  await sees(part(page, "At your height"), /made for your height/);
  // The tables take a quarter off the powder at most, 6.75 g, and add a quarter of the milk at most.
  const powder = await weightOf(page, 9);
  assert.ok(powder >= 6.7 && powder < 9, `${powder} g of powder`);
  const milk = await weightOf(page, 8);
  assert.ok(milk > 130 && milk <= 163, `${milk} g of milk`);
  await reload();
  await sees(part(page, "At your height"), /made for your height/);
  assert.equal(await page.getByLabel("The recipe is made for a kitchen at").inputValue(), "5000 ft");
});

inBrowser("what is taken can be taken back", { screen: "desk" }, async ({ page, paste }) => {
  await paste(TEXT);
  await write(page, "Height of your kitchen above the sea", "2000 m");
  await go(page, "Ticket");
  await page.getByRole("button", { name: "Take these weights" }).click();
  await sees(part(page, "At your height"), /made for your height/);
  await page.getByRole("button", { name: /Take back/ }).first().click();
  await sees(row(page, 9), /^9 g/);
  assert.ok(await page.getByRole("button", { name: "Take these weights" }).isVisible());
});

inBrowser("what is no height or no oven gets a sentence at its field, and stays as typed", { screen: "phone" }, async ({ page, reload, reachable, picture }) => {
  for (const [label, wrong, said] of [
    ["Height of your kitchen above the sea", "1600", /metres or feet/],
    ["Height of your kitchen above the sea", "8849 m", /5,000 m/],
    ["How far your oven is off its dial", "a lot", /with its scale/],
    ["How much cooler an oven with a fan is set", "-5 C", /from 0 to 40 C/],
  ]) {
    await write(page, label, wrong);
    await sees(page.locator(".field").filter({ has: page.getByLabel(label) }), said);
    assert.equal(await page.getByLabel(label).getAttribute("aria-invalid"), "true");
  }
  await reachable();
  await picture("kitchen");
  await page.getByRole("radio", { name: "With a fan" }).check();
  await page.getByRole("radio", { name: "Gas marks" }).check();
  await reload();
  await go(page, "Settings");
  assert.equal(await page.getByLabel("How far your oven is off its dial").inputValue(), "a lot");
  assert.ok(await page.getByRole("radio", { name: "With a fan" }).isChecked());
  assert.ok(await page.getByRole("radio", { name: "Gas marks" }).isChecked());
});

inBrowser("the milk for a warm batter is worked out", { screen: "phone" }, async ({ page, paste, reachable, picture }) => {
  await paste(TEXT);
  await page.getByText("How warm the batter is").click();
  // All at 21 °C and a degree from mixing.
  await sees(page.locator(".plan").filter({ hasText: "As it stands" }), /about 22 °C \(72 °F\)/);
  await page.getByLabel("The batter is to be at").fill("24 C");
  await sees(page.locator(".plan").filter({ hasText: "As it stands" }), /For a batter at 24 °C .* its liquid \(milk, whole\) has to be at \d\d °C/);
  await page.getByRole("group", { name: "Out of the fridge" }).getByRole("checkbox", { name: /egg/ }).check();
  // By hand: 110 g of egg at 3.39 J/(g K) are 373 of 1736 J/K, and 17 °C colder: 3.7 °C less.
  await sees(page.locator(".plan").filter({ hasText: "As it stands" }), /about 18 °C/);
  await reachable();
  await picture("mixing");
});

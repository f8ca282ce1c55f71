// Why a bake failed: signs ticked, causes opened, a mend made a version, nothing seen and nothing that fits.

import assert from "node:assert/strict";
import { everywhere, inBrowser } from "./harness.mjs";
import { go, sees } from "./hands.mjs";

// A layer cake with three times its powder.
const CAKE = `Lantern layer cake

300 g cake flour
300 g caster sugar
150 g butter
165 g eggs
195 g milk
42 g baking powder
4.5 g salt

Cream the butter and sugar, beat in the eggs, then the dry things in turn with the milk.
Bake in two 20 cm round tins, 5 cm deep, at 180 C for 30 minutes.`;

const faults = (page) => page.getByRole("region", { name: "What was wrong", exact: true });
const group = (page, name) => faults(page).locator("summary").filter({ hasText: new RegExp(`^${name}`) });

/** A bake of the cake, written down. */
async function written({ page, paste }) {
  await paste(CAKE);
  await page.getByRole("heading", { level: 1, name: "Lantern layer cake" }).waitFor();
  await go(page, "Trials");
  await page.getByRole("button", { name: "Write a bake down" }).click();
  await faults(page).waitFor();
}

const tickSunken = async (page) => {
  await group(page, "Shape").click();
  await faults(page).getByLabel(/^Sunk in the middle/).check();
};

inBrowser("a sunken cake is laid to its powder, with the figure, and mended as a version", { screen: "phone" }, async (test) => {
  const { page, reload } = test;
  await written(test);
  await sees(faults(page), /Tick what you see on the cake/);
  await tickSunken(page);
  await sees(faults(page), /Too much leavening: (very )?likely, about \d in 10/);
  await sees(faults(page), /Ruled out by the figures[^]*Too much liquid: Liquid is 65 %/);
  await faults(page).locator("summary").filter({ hasText: /^Too much leavening/ }).click();
  await sees(faults(page), /Soda and powder make gas of [^]* of the flour/);
  await sees(faults(page), /\d of \d+ tables name it\./);
  await reload();
  await sees(faults(page), /Too much leavening: /);
  await faults(page).locator("summary").filter({ hasText: /^Too much leavening/ }).click();
  await faults(page).getByRole("button", { name: /^Use .* as a new version$/ }).click();
  await sees(page.getByRole("main"), /baking powder/);
  assert.match(page.url(), /#\/$/);
});

inBrowser("a measured core speaks before anything that is reckoned", { screen: "phone" }, async (test) => {
  const { page } = test;
  await written(test);
  await tickSunken(page);
  await page.getByLabel("Core when it came out").fill("97 C");
  await sees(faults(page), /Ruled out by the figures[^]*Taken out too soon: Its core was 97 °C/);
});

inBrowser("in another tin minutes are held against heat flow, and a thermometer in the oven speaks", { screen: "phone" }, async (test) => {
  const { page } = test;
  await written(test);
  await faults(page).locator("summary").filter({ hasText: /^Crumb/ }).click();
  await faults(page).getByLabel(/^Wet, pasty/).check();
  await page.getByLabel("Baked, minutes").fill("30");
  await sees(faults(page), /Taken out too soon: It baked 30 minutes; the recipe says 30 to 30/);
  // Twice as deep as the recipe's two tins.
  await page.getByLabel("Pan, if another").fill("20 cm round tin, 12 cm deep");
  await sees(faults(page), /Taken out too soon/);
  await faults(page).locator("summary").filter({ hasText: /^Taken out too soon/ }).click();
  await sees(faults(page), /It baked 30 minutes; heat flow reckons with \d+ to \d+/);
  await page.getByLabel("A thermometer in it read").fill("hot");
  await sees(page.getByRole("main"), /"hot" is no heat of an oven/);
  await page.getByLabel("A thermometer in it read").fill("130 C");
  await sees(faults(page), /Oven too cool/);
  await faults(page).locator("summary").filter({ hasText: /^Oven too cool/ }).click();
  await sees(faults(page), /The oven was measured at 130 °C/);
});

inBrowser("it is judged as what it was meant to be", { screen: "phone" }, async (test) => {
  const { page, reload } = test;
  await written(test);
  await tickSunken(page);
  await sees(faults(page), /Judged as /);
  await faults(page).getByLabel("It was meant as").selectOption({ label: "pound cakes" });
  await sees(faults(page), /Judged as pound cakes\./);
  await reload();
  await sees(faults(page), /Judged as pound cakes\./);
});

inBrowser("signs are ticked and causes opened by the keyboard alone", { screen: "desk" }, async (test) => {
  const { page } = test;
  await written(test);
  await group(page, "Shape").focus();
  await page.keyboard.press("Enter");
  await faults(page).getByLabel(/^Sunk in the middle/).focus();
  await page.keyboard.press("Space");
  await sees(faults(page), /Too much leavening: /);
  await faults(page).locator("summary").filter({ hasText: /^Too much leavening/ }).focus();
  await page.keyboard.press("Enter");
  await sees(faults(page), /What speaks for and against it/);
});

everywhere("no barrier, and nothing to scroll sideways, with every sign and cause open", async (test) => {
  const { page, reachable, picture } = test;
  await written(test);
  await tickSunken(page);
  await sees(faults(page), /Too much leavening: /);
  await page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });
  await reachable();
  await picture("diagnosis");
  const small = await faults(page).locator("label:has(input), summary").evaluateAll((all) => all.filter((it) => it.getBoundingClientRect().height < 47.5).map((it) => it.textContent));
  assert.deepEqual(small, []);
  await page.setViewportSize({ width: 320, height: 640 });
  assert.ok(await page.evaluate(() => document.scrollingElement.scrollWidth <= 320), "it has to be scrolled sideways");
});

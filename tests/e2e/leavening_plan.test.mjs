// The leavening worked out from what is wished: chosen, carried out, taken back, and kept.

import assert from "node:assert/strict";
import { inBrowser, textBox } from "./harness.mjs";
import { part, sees } from "./hands.mjs";

const TEXT = `Lemon cake
250 g cake flour
250 g sugar
125 g butter
125 g egg
130 g whole milk
60 g lemon juice
12.5 g baking powder
4 g salt`;

const panel = (page) => part(page, "Acid and gas").locator("details").filter({ hasText: "Work out the leavening" });

inBrowser("leavening is worked out, used and taken back", { screen: "phone" }, async ({ page, paste, reload, reachable }) => {
  await paste(TEXT);
  const plan = panel(page);
  await plan.getByText("Work out the leavening").click();
  // Lemon wants soda, and soda's gas less powder.
  await sees(plan, /Use [\d.]+ g \(.* tsp\) baking soda and [\d.]+ g .*baking powder\./);
  await reachable();

  // With powder alone the acid stays unanswered, and that is said.
  await plan.getByLabel("Baking soda").uncheck();
  await sees(plan, /The pH gives way/);
  await plan.getByLabel("Baking soda").check();

  // A limit that is none says so at its field.
  const limit = plan.getByLabel(/At most so much sodium/);
  await limit.fill("salty");
  assert.equal(await limit.getAttribute("aria-invalid"), "true");
  await sees(plan, /"salty" is not a limit/);
  await limit.fill("");

  // The sourer wish wants less soda.
  const soda = async () => Number(/Use ([\d.]+) g/.exec(await sees(plan, /Use [\d.]+ g .*baking soda/))[1]);
  const usual = await soda();
  await plan.getByLabel("The crumb is to be").selectOption({ label: "Tangy" });
  await sees(plan, new RegExp(`Use (?!${usual} )[\\d.]+ g .*baking soda`));
  assert.ok((await soda()) < usual);
  await plan.getByLabel("The crumb is to be").selectOption({ label: "As usual for this kind of cake" });
  await sees(plan, new RegExp(`Use ${usual} g`));

  await plan.getByRole("button", { name: "Use these amounts" }).click();
  await sees(part(page, "Acid and gas"), /Acid and soda agree/);
  await sees(plan, /leave it as it is/);
  assert.match(await (await textBox(page)).inputValue(), /^[\d.]+ g baking soda$/m);

  await page.getByRole("region", { name: "Recipe text" }).getByRole("button", { name: /^Take back/ }).click();
  assert.equal(await (await textBox(page)).inputValue(), TEXT);
  await sees(part(page, "Acid and gas"), /Short of soda/);

  // The wish stays with the recipe.
  await panel(page).getByLabel("Cream of tartar").check();
  await reload();
  await panel(page).getByText("Work out the leavening").click();
  assert.equal(await panel(page).getByLabel("Cream of tartar").isChecked(), true);
});

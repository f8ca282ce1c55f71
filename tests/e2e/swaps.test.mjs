// Something else in an ingredient's place: chosen, seen, taken, taken back, and kept as a version.

import assert from "node:assert/strict";
import { inBrowser, textBox } from "./harness.mjs";
import { details, line, part, sees } from "./hands.mjs";

const TEXT = `Plain cake
225 g plain flour
225 g sugar
225 g butter
200 g egg
240 g whole milk
10 g baking powder
3 g salt`;

const panel = (page) => part(page, "Use something else");
const status = (page) => panel(page).getByRole("status").filter({ hasText: /[a-z]/ }).first();
const offer = (page, name) => panel(page).getByRole("list", { name: "What may come in its place" }).getByRole("button", { name });
const chosen = (page) => panel(page).getByRole("listitem").filter({ has: page.getByRole("button", { name: "Take it back" }) });
const amounts = (page) => panel(page).getByRole("table", { name: /^What to weigh/ });

/** Opens the part by its own head. */
const open = (page) => panel(page).getByText("Swap an ingredient, or bake it plant-based").click();

/** Picks the line whose words match. */
async function pick(page, name) {
  const field = panel(page).getByLabel("Which ingredient?");
  const words = await field.evaluate((field) => [...field.options].map((option) => option.textContent));
  await field.selectOption({ label: words.find((words) => name.test(words)) });
}

const choose = async (page, name, to) => {
  await pick(page, name);
  await offer(page, to).click();
};

inBrowser("something else is chosen from a line, taken into the recipe and taken back", { screen: "phone" }, async ({ page, paste, reload, reachable }) => {
  await paste(TEXT);
  assert.equal(await panel(page).getByLabel("Which ingredient?").count(), 0, "nothing is drawn while the part is shut");
  await line(page, 6).click();
  await details(page, 6).getByRole("button", { name: "Use something else" }).click();
  await page.waitForFunction(() => document.activeElement?.id === "instead-line");
  assert.match(await panel(page).getByLabel("Which ingredient?").evaluate((field) => field.selectedOptions[0].textContent), /milk.*line 6/);
  await offer(page, /^soya milk, unsweetened$/).click();
  assert.equal(await offer(page, /^soya milk, unsweetened$/).getAttribute("aria-pressed"), "true");
  await sees(status(page), /kept/);
  await sees(amounts(page), /soya milk, unsweetened comes in none \d+ g/);
  await sees(panel(page), /Allergens that come in: soya/i);
  await reachable();

  // The choice is kept with the recipe, and shown again with what it comes to.
  await reload();
  await sees(amounts(page), /soya milk/);
  await sees(chosen(page), /milk.*→ soya milk/);

  await panel(page).getByRole("button", { name: "Take it into this recipe" }).click();
  assert.match(await (await textBox(page)).inputValue(), /^\d+ g soya milk, unsweetened$/m);
  await page.getByRole("button", { name: "Take it back", exact: true }).first().click();
  assert.equal(await (await textBox(page)).inputValue(), TEXT);
});

inBrowser("several are chosen, and each can be taken back", { screen: "desk" }, async ({ page, paste }) => {
  await paste(TEXT);
  await open(page);
  await choose(page, /^milk, whole/, /^oat milk$/);
  await pick(page, /^butter/);
  await panel(page).getByLabel("Or any other ingredient").fill("sunflower oil");
  await panel(page).getByRole("list", { name: "Ingredients found" }).getByRole("button", { name: "sunflower oil" }).first().click();
  await page.waitForFunction(() => document.activeElement?.id === "instead-much");
  assert.equal(await chosen(page).count(), 2);
  await sees(amounts(page), /oat milk.*|sunflower oil/);

  // Half of it leaves the other half: 225 g of butter, so 112 or 113 g.
  await panel(page).getByLabel("How much of it goes?").selectOption({ label: "A part of it" });
  await sees(amounts(page), /butter.*less 225 g 11[23] g/);
  const share = panel(page).getByLabel("Per cent of it that goes");
  await share.fill("most");
  assert.equal(await share.getAttribute("aria-invalid"), "true");
  await sees(panel(page), /Write a whole number from 1 to 100/);
  await share.fill("100");
  await sees(amounts(page), /butter.*left out 225 g none/);

  await chosen(page).filter({ hasText: "butter" }).getByRole("button", { name: "Take it back" }).click();
  assert.equal(await chosen(page).count(), 1);
  await sees(amounts(page), /^(?!.*sunflower oil)/);
});

inBrowser("the whole cake becomes a version without a network", { screen: "phone", offline: true }, async ({ page, paste, reload, cutNetwork, reachable }) => {
  await cutNetwork();
  await reload();
  await paste(TEXT);
  await open(page);
  await panel(page).getByLabel("Plant-based").check();
  await sees(amounts(page), /milk, whole left out 240 g none/);
  await sees(panel(page), /Allergens that go out: .*milk/i);
  await panel(page).getByText("Before and after, side by side").click();
  await sees(panel(page), /Crumb pH/);
  await reachable();
  await panel(page).getByRole("button", { name: "Take it as a new version" }).click();
  await sees(panel(page), /This is "plant-based" now/);
  assert.doesNotMatch(await (await textBox(page)).inputValue(), /butter$/m);
  await page.getByRole("link", { name: "Open the original" }).click();
  assert.equal(await (await textBox(page)).inputValue(), TEXT);
  // It is as it was before: nothing is chosen in it.
  if (!(await panel(page).getByLabel("Plant-based").isVisible())) await open(page);
  assert.equal(await panel(page).getByLabel("Plant-based").isChecked(), false);
});

inBrowser("what has no swap says so, and changes nothing", { screen: "phone" }, async ({ page, paste }) => {
  await paste("Salt cake\n200 g plain flour\n100 g water\n5 g salt");
  await open(page);
  await panel(page).getByLabel("Plant-based").check();
  await sees(status(page), /Nothing in this recipe has to change for that/);
  assert.equal(await panel(page).getByRole("button", { name: "Take it into this recipe" }).isVisible(), false);
  await panel(page).getByText("I do not have").click();
  await panel(page).getByLabel("water", { exact: true }).check();
  await panel(page).getByLabel("Plant-based").uncheck();
  await sees(status(page), /water/);
  assert.equal(await (await textBox(page)).inputValue(), "Salt cake\n200 g plain flour\n100 g water\n5 g salt");
});

// A key in haste: what is in sight answers before the next frame, what is not right after it.

import assert from "node:assert/strict";
import { inBrowser, textBox } from "./harness.mjs";

const TEXT = "Lamp room loaf\n\n2 cups plain flour\n1 cup sugar\n1 cup milk\n2 tsp baking powder\n1/2 cup oil";

inBrowser("a key is answered in sight at once, and out of sight in the next moment", { screen: "desk" }, async ({ page, paste }) => {
  await paste(TEXT);
  const far = page.getByRole("region", { name: "Percentages" });
  await far.getByText("of flour").first().waitFor({ state: "attached" });
  const inSight = await page.evaluate(() => {
    const top = (element) => element.getBoundingClientRect().top;
    return [top(document.querySelector(".row__mass")) < innerHeight, top(document.querySelector(".percentages")) > innerHeight];
  });
  assert.deepEqual(inSight, [true, true], "the first weight is to be in sight and the percentages are not");
  await (await textBox(page)).evaluate((field) => {
    const at = field.value.indexOf("2 cups") + 1;
    field.focus();
    field.setSelectionRange(at, at);
    const said = () => [document.querySelector(".row__mass").textContent, document.querySelector(".percentages").textContent];
    window.before = said();
    // Called after everything that the box's own listener set off at once.
    addEventListener("input", () => {
      window.then = said();
    });
  });
  await page.keyboard.press("4");
  const { before, then } = await page.evaluate(() => ({ before: window.before, then: window.then }));
  assert.notEqual(then[0], before[0], "the weight in sight follows the key at once");
  assert.equal(then[1], before[1], "the percentages out of sight wait");
  await page.waitForFunction((old) => document.querySelector(".percentages").textContent !== old, before[1]);
});

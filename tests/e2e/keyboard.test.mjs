// The whole job by Tab, Enter, Space, arrows and letters alone, with the focus in sight all the way.

import assert from "node:assert/strict";
import { inBrowser, textBox } from "./harness.mjs";
import { part, row, sees, verdict } from "./hands.mjs";
import { clear, focused, tabTo } from "./keyboard.mjs";

const TEXT = `Breakwater cake

225 g plain flour
225 g granulated sugar
225 g butter
200 g egg
240 g whole milk
10 g baking powder

Bake in an 8 inch square pan.`;

for (const screen of ["phone", "desk"]) {
  inBrowser("the whole job is done by the keyboard alone", { screen, before: () => (window.print = () => (window.printed = true)) }, async ({ page, context }) => {
    const { keyboard } = page;
    // A recipe is pasted in place of the demo.
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await page.evaluate((text) => navigator.clipboard.writeText(text), TEXT);
    if (screen === "phone") {
      await tabTo(page, "Edit text");
      await keyboard.press("Enter");
    }
    await tabTo(page, "Recipe text");
    await keyboard.press("Control+A");
    await keyboard.press("Control+V");
    await page.getByRole("heading", { level: 1, name: "Breakwater cake" }).waitFor();

    // A line is mended.
    await tabTo(page, /^granulated sugar/);
    await keyboard.press("Enter");
    await tabTo(page, "Your own weight in the recipe, in grams");
    await keyboard.type("200");
    await sees(row(page, 4), /^200 g .*mended by you/);
    await tabTo(page, /^granulated sugar/, "Shift+Tab");
    await keyboard.press("Space");

    // Something else takes the place of the milk.
    await tabTo(page, /^milk, whole/);
    await keyboard.press("Space");
    await tabTo(page, "Use something else");
    await keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "instead-line");
    clear(await focused(page));
    await tabTo(page, "soya milk, unsweetened");
    await keyboard.press("Space");
    await tabTo(page, "Take it into this recipe");
    await keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "take-it-back");
    clear(await focused(page));
    assert.match(await (await textBox(page)).inputValue(), /g soya milk, unsweetened/);

    // Another pan: letters and arrows choose from a list.
    await tabTo(page, "Bake in another pan");
    await keyboard.press("Enter");
    await tabTo(page, "Shape");
    await keyboard.type("Rec");
    await tabTo(page, "Length");
    for (const [name, figure] of [["Length", "13"], ["Width", "9"], ["Depth", "2"]]) {
      if ((await focused(page)).name !== name) await tabTo(page, name);
      await keyboard.press("Control+A");
      await keyboard.type(figure);
    }
    // By hand: 13 x 9 x 2 against 8 x 8 x 2 is 117/64 = 1.83, and 225 g of flour are 411 g.
    await sees(verdict(page, "Pan"), /1\.83/);
    await sees(row(page, 3), /^411 g/);

    // On paper.
    await tabTo(page, "Print", "Shift+Tab");
    await keyboard.press("Enter");
    await page.waitForFunction(() => window.printed);

    // At the bench one ingredient is weighed in.
    await tabTo(page, "Bench", "Shift+Tab");
    await keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "main");
    await tabTo(page, /^Plain flour/);
    await keyboard.press("Space");
    await page.getByText("1 of 6 weighed", { exact: true }).waitFor();
    clear(await focused(page));

    // Another page, and back.
    await tabTo(page, "Shelf", "Shift+Tab");
    await keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "main");
    await tabTo(page, /^Breakwater cake/);
    await keyboard.press("Enter");
    await sees(part(page, "Weights"), /soya milk/);
  });
}

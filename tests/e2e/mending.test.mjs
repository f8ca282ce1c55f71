// Mending a line by hand: how it was got, an own weight, another ingredient, not an ingredient, and the way back.

import assert from "node:assert/strict";
import { inBrowser, textBox } from "./harness.mjs";
import { details, line, part, row, sees, weights } from "./hands.mjs";

const TEXT = "Pump-house scones\n\n2 cups all-purpose flour\n1 cup mystery milk\n1 tsp baking soda\n2 cups patience";

for (const screen of ["phone", "desk"]) {
  inBrowser("a line is opened, mended in every way, and kept so", { screen }, async ({ page, paste, reload, reachable }) => {
    await paste(TEXT);

    // How the weight was got, and from what source.
    await line(page, 3).click();
    const flour = details(page, 3);
    await sees(flour, /As pasted 2 cups all-purpose flour/);
    // By hand: two US cups are 2 x 236.6 mL.
    await sees(flour, /Weight .*cup .* 125 g .* 473 mL/);
    await sees(flour, /Source .*(Department of Agriculture|USDA)/);

    // Her own weight, with a comma as much of the world writes it.
    const own = flour.getByLabel("Your own weight in the recipe, in grams");
    await own.fill("263,5");
    await sees(row(page, 3), /^26[34](\.5)? g/);
    await sees(row(page, 3), /mended by you/);
    await reachable();

    // Another ingredient, by the beginning of its name.
    await line(page, 4).click();
    const milk = details(page, 4);
    await milk.getByLabel("It is another ingredient").fill("butterm");
    await milk.getByRole("list", { name: "Ingredients that it may be" }).getByRole("button", { name: /^buttermilk/i }).first().click();
    await sees(row(page, 4), /buttermilk/);
    // USDA National Nutrient Database, release 28: a cup of buttermilk is 245 g.
    await sees(row(page, 4), /^24[45] g/);

    // Not an ingredient: it leaves the weights and stays in the text.
    await line(page, 6).click();
    await details(page, 6).getByRole("button", { name: "Not an ingredient" }).click();
    await line(page, 6).waitFor({ state: "detached" });
    await sees(part(page, "Method and notes"), /2 cups patience/);

    // All of it is there after a reload.
    await reload();
    await sees(row(page, 3), /^26[34](\.5)? g/);
    await sees(row(page, 4), /^24[45] g .*buttermilk/);
    await sees(part(page, "Method and notes"), /2 cups patience/);
    assert.deepEqual((await weights(page)).map(({ line }) => line), [3, 4, 5]);

    // And each can be taken back.
    await line(page, 3).click();
    assert.equal(await details(page, 3).getByLabel("Your own weight in the recipe, in grams").inputValue(), "263.5");
    await details(page, 3).getByRole("button", { name: "Take back what I changed" }).click();
    await sees(row(page, 3), /^250 g/);
    await part(page, "Method and notes").getByText("Is one of these an ingredient?").click();
    await part(page, "Method and notes").getByRole("button", { name: /Take back what I changed: 2 cups patience/ }).click();
    await line(page, 6).waitFor();
    await reload();
    await sees(row(page, 3), /^250 g/);
    await line(page, 6).waitFor();
  });
}

inBrowser("a weight that is none says so at its field, and what was written stays", { screen: "phone" }, async ({ page, paste }) => {
  await paste(TEXT);
  await line(page, 3).click();
  const own = details(page, 3).getByLabel("Your own weight in the recipe, in grams");
  for (const written of ["heavy", "-20", "1e999"]) {
    await own.fill(written);
    assert.equal(await own.getAttribute("aria-invalid"), "true", written);
    const said = await own.evaluate((field) => field.getAttribute("aria-describedby").split(" ").map((id) => document.getElementById(id)?.textContent).join(" "));
    assert.match(said, /grams|number|weight/i, written);
    assert.ok(said.length > "From the scale or the packet. Empty takes it back. ".length, `nothing is said of ${written}`);
    assert.equal(await own.inputValue(), written);
    await sees(row(page, 3), /^250 g/);
  }
  await own.fill("");
  assert.equal(await own.getAttribute("aria-invalid"), null);
});

inBrowser("changes are taken back one after another, and put back", { screen: "desk" }, async ({ page, paste }) => {
  await paste(TEXT);
  await line(page, 3).click();
  await details(page, 3).getByLabel("Your own weight in the recipe, in grams").fill("300");
  await sees(row(page, 3), /^300 g/);
  await line(page, 6).click();
  await details(page, 6).getByRole("button", { name: "Not an ingredient" }).click();
  const text = page.getByRole("region", { name: "Recipe text" });
  await text.getByRole("button", { name: /^Take back/ }).click();
  await line(page, 6).waitFor();
  await text.getByRole("button", { name: /^Take back/ }).click();
  await sees(row(page, 3), /^250 g/);
  await text.getByRole("button", { name: /^Put back/ }).click();
  await sees(row(page, 3), /^300 g/);
  assert.equal(await (await textBox(page)).inputValue(), TEXT);
});

// What the reader makes of a paste, on the page: whose words it is in, several ingredients on a line, choices, what is
// remembered, pages and files.

import assert from "node:assert/strict";
import { inBrowser, textBox } from "./harness.mjs";
import { details, go, line, part, row, sees, weights } from "./hands.mjs";

const CANAL = "Canal-side loaf\n\n2 cups plain flour\n1 cup caster sugar\n1/2 tsp bicarbonate of soda\n1 cup milk\n2 tbsp cornflour";

inBrowser("the recipe's words tell its country, which can be changed", { screen: "phone" }, async ({ page, paste, reload }) => {
  await paste(CANAL);
  const weights = part(page, "Weights");
  await sees(weights, /caster sugar/);
  await sees(weights, /by its words/);
  // SR28: a US cup of whole milk is 244 g; by hand, a metric cup of 250 mL 257.8 g.
  await sees(row(page, 6), /^258 g/);
  // Cornflour is a starch there.
  await sees(row(page, 7), /starch/);
  await page.getByLabel("Cups, spoons and words of").selectOption({ label: "United States" });
  await sees(row(page, 6), /^244 g/);
  await sees(row(page, 7), /corn flour|maize/i);
  await sees(weights, /you said so/);
  await reload();
  await sees(row(page, 6), /^244 g/);
  await page.getByLabel("Cups, spoons and words of").selectOption({ label: "As its words tell" });
  await sees(row(page, 6), /^258 g/);
});

inBrowser("a line of two ingredients has a row for each, and each is mended by itself", { screen: "phone" }, async ({ page, paste }) => {
  await paste("Twin buns\n\n200 g flour\n1 egg plus 1 egg yolk\n1/2 cup butter or 1/3 cup oil");
  assert.equal((await weights(page)).length, 4);
  const yolk = page.locator('[id="/line/4/1"]');
  await yolk.getByRole("button").first().click();
  const form = page.getByRole("group", { name: "Line 4, ingredient 2" });
  await form.getByLabel("Your own weight").fill("21");
  await sees(yolk, /^21 g/);
  await sees(page.locator('[id="/line/4"]'), /^50 g/);
  // The amount of the first, as it ought to read: half a dozen eggs of 50 g.
  await line(page, 4).first().click();
  const first = page.getByRole("group", { name: "Line 4", exact: true });
  await first.getByLabel(/It is this much/).fill("6");
  await sees(page.locator('[id="/line/4"]'), /^300 g/);
  await first.getByLabel(/It is this much/).fill("six of them");
  await sees(first, /is not an amount/);
  await first.getByLabel(/It is this much/).fill("");
  await sees(page.locator('[id="/line/4"]'), /^50 g/);
  // What the line itself offers comes with its own amount: a third of a cup of oil is 73 g (SR28: 218 g a cup).
  await line(page, 5).click();
  await details(page, 5).getByRole("button", { name: /oil/ }).click();
  await sees(row(page, 5), /^7[0-9](\.\d)? g/);
  await sees(row(page, 5), /oil/);
});

inBrowser("what is mended once is remembered, shown, and can be taken back", { screen: "phone" }, async ({ page, paste, reload }) => {
  await paste("Wharf bars\n\n200 g flour\n100 g sunny block");
  await sees(row(page, 4), /Check/);
  await line(page, 4).click();
  await details(page, 4).getByLabel("It is another ingredient").fill("margarine");
  await details(page, 4).getByRole("button", { name: /margarine/ }).first().click();
  await sees(row(page, 4), /margarine/);
  await sees(page.getByRole("status").filter({ hasText: "Done" }), /remembered for "sunny block"/);
  // Another recipe with the same words.
  await page.getByRole("button", { name: "New", exact: true }).click();
  await paste("Quay bars\n\n300 g flour\n150 g sunny block, soft");
  await sees(row(page, 4), /margarine/);
  await reload();
  await sees(row(page, 4), /margarine/);
  await line(page, 4).click();
  await sees(details(page, 4), /Remembered/);
  await details(page, 4).getByRole("button", { name: "Take back what I changed" }).click();
  await sees(row(page, 4), /sunny block/);
  await page.getByRole("button", { name: "Take it back" }).click();
  await sees(row(page, 4), /margarine/);
});

inBrowser("a line that is none is none the next time too", { screen: "desk" }, async ({ page, paste }) => {
  await paste("Pier cake\n\n200 g flour\n1 paper collar");
  await line(page, 4).click();
  await details(page, 4).getByRole("button", { name: "Not an ingredient" }).click();
  assert.equal((await weights(page)).length, 1);
  await page.getByRole("button", { name: "New", exact: true }).click();
  await paste("Jetty cake\n\n250 g flour\n1 paper collar");
  assert.equal((await weights(page)).length, 1);
  await go(page, "Larder");
});

const PAGE = `<!doctype html><html><head><title>Invented</title><script type="application/ld+json">
{"@context":"https://schema.org","@type":"Recipe","name":"Lantern loaf","recipeYield":"1 loaf",
"recipeIngredient":["250 g plain flour","150 g caster sugar","2 eggs","1 tsp baking powder"],
"recipeInstructions":[{"@type":"HowToStep","text":"Mix &amp; bake in a 2 lb loaf tin."}]}
</script></head><body><script>document.title = "ran"</script><p>A story.</p></body></html>`;

inBrowser("a page's source becomes the recipe in it, and can be had back", { screen: "phone" }, async ({ page, paste }) => {
  await paste(PAGE);
  await sees(page.getByRole("status").filter({ hasText: "Done" }), /4 ingredients/);
  assert.match(await (await textBox(page)).inputValue(), /^Lantern loaf/);
  assert.equal((await weights(page)).length, 4);
  assert.doesNotMatch(await page.title(), /ran/);
  await page.getByRole("button", { name: "Take it back" }).click();
  assert.match(await (await textBox(page)).inputValue(), /^<!doctype html>/);
});

inBrowser("a saved page is opened as a file", { screen: "desk" }, async ({ page }) => {
  await textBox(page);
  await page.getByLabel(/open a file/).setInputFiles({ name: "lantern.html", mimeType: "text/html", buffer: Buffer.from(PAGE) });
  await sees(row(page, 5), /flour/);
  await page.getByRole("heading", { level: 1, name: "Lantern loaf" }).waitFor();
});

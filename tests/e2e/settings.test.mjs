// What holds for every recipe: how a cup is filled, whose cup it is, the eggs, the unit of pans.

import assert from "node:assert/strict";
import { inBrowser } from "./harness.mjs";
import { go, near, row, sees, weightOf } from "./hands.mjs";

// No word of it tells a country.
const TEXT = "Signal-hut loaf\n\n1 cup flour\n1 cup whole milk\n1 tablespoon water\n1 egg\n\nBake in an 8 inch square pan.";

const choose = async (page, question, answer) => {
  await go(page, "Settings");
  const radio = page.getByRole("group", { name: question }).getByRole("radio", { name: answer });
  await radio.check();
  await go(page, "Ticket");
};

inBrowser("a cup weighs what its filling makes it weigh", { screen: "phone" }, async ({ page, paste, reload }) => {
  await paste(TEXT);
  // USDA Home Economics Research Report 41: a cup of flour spooned in and levelled is 126 g, sifted first 116 g.
  // Dipped into the bag it is 142 g, the mean of dozens of people in published cookery trials.
  for (const [answer, expected] of [
    ["Spooned in and levelled", /^126 g/],
    ["Dipped into the bag and levelled", /^142 g/],
    ["Sifted first, then spooned in", /^116 g/],
  ]) {
    await choose(page, "How a cup of flour is filled", answer);
    await sees(row(page, 3), expected);
  }
  await reload();
  await sees(row(page, 3), /^116 g/);
  await go(page, "Settings");
  assert.ok(await page.getByRole("radio", { name: "Sifted first, then spooned in" }).isChecked());
});

inBrowser("another country has another cup, spoon and egg", { screen: "phone" }, async ({ page, paste }) => {
  await paste(TEXT);
  // USDA National Nutrient Database, release 28: a US cup of whole milk is 244 g. A US tablespoon is 14.79 mL.
  await sees(row(page, 4), /^244 g/);
  near(await weightOf(page, 5), 14.8, 0.02, "a US tablespoon of water");
  await choose(page, "Your country", "Australia");
  // By hand: a metric cup is 250 mL against 236.59 mL, so 244 g become 257.8 g; an Australian tablespoon is 20 mL.
  await sees(row(page, 4), /^258 g/);
  near(await weightOf(page, 5), 20, 0.02, "an Australian tablespoon of water");
  await choose(page, "Your country", "United States");
  await sees(row(page, 4), /^244 g/);
  // A large US egg without its shell is 50 g, a small one 38 g (USDA National Nutrient Database, release 28).
  await sees(row(page, 6), /^50 g/);
  await choose(page, "Eggs on the shelf", "Small");
  await sees(row(page, 6), /^38 g/);
});

inBrowser("pans are asked for in centimetres by those who measure so", { screen: "desk" }, async ({ page, paste, reload }) => {
  await paste(TEXT);
  await choose(page, "Pans in", "Centimetres");
  await reload();
  await page.getByRole("button", { name: "Bake in another pan" }).click();
  const form = page.getByRole("group", { name: "The pan on the shelf" });
  // By hand: 8 inches are 20.32 cm, 2 inches 5.08 cm.
  assert.match(await form.getByLabel("Side").inputValue(), /^20\.3/);
  assert.match(await form.getByLabel("Depth").inputValue(), /^5\.1|^5\.08/);
  // Changing the unit of a pan keeps the pan.
  await form.getByLabel("Lengths in").selectOption({ label: "inches" });
  near(Number(await form.getByLabel("Side").inputValue()), 8, 0.002, "the side in inches");
});

// Reaching everyone: no barrier on any page in any state, a narrow screen, the keyboard alone, floury fingers, paper.

import assert from "node:assert/strict";
import { everywhere, inBrowser } from "./harness.mjs";
import { details, everything, go, line, part, remedy, sees, verdict } from "./hands.mjs";

const TEXT = "Light-ship slices\n\n2 cups all-purpose flour\n1 cup lemon juice\n1 tsp baking soda\n2 cups patience\n1/0 cup milk";

/** Opens everything that can be opened on the ticket, with a trouble at a field and a banner at the head. */
async function openAll(page) {
  await line(page, 3).click();
  await details(page, 3).getByLabel("Your own weight in the recipe, in grams").fill("heavy");
  await details(page, 3).getByLabel("It is another ingredient").fill("but");
  await details(page, 3).getByRole("list", { name: "Ingredients that it may be" }).getByRole("button").first().waitFor();
  await page.getByRole("button", { name: "Bake in another pan" }).click();
  await page.getByRole("group", { name: "The pan on the shelf" }).getByLabel("Depth").fill("nine");
  await unfold(page);
  // What may come in a line's place is drawn once that is open, and what is folded there once more is.
  await part(page, "Use something else").getByLabel("Which ingredient?").selectOption({ index: 1 });
  await part(page, "Use something else").getByRole("list", { name: "What may come in its place" }).getByRole("button").first().click();
  await part(page, "Use something else").getByLabel("How much of it goes?").selectOption({ label: "A part of it" });
  await part(page, "Use something else").getByLabel("Per cent of it that goes").fill("most");
  await unfold(page);
}

/** Opens everything that is folded. */
const unfold = (page) =>
  page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });

everywhere("no barrier on any page, open or in trouble", async ({ page, paste, reload, reachable, picture }) => {
  await page.evaluate(() => {
    localStorage.setItem("batterwright/recipe/gone", "{");
    localStorage.setItem("batterwright/open", "gone");
  });
  await reload();
  await page.getByRole("alert").filter({ hasText: "set aside" }).waitFor();
  await paste(TEXT);
  await openAll(page);
  await everything(page);
  await reachable();
  await picture("all-open");
  for (const name of ["Settings", "About", "Shelf", "Larder"]) {
    await go(page, name);
    await reachable();
    await picture(name.toLowerCase());
  }
});

const NARROW = { width: 320, height: 640 };

/** Asserts that nothing has to be scrolled sideways, and names what sticks out. */
async function fits(page, where) {
  const wide = await page.evaluate(() => {
    const { scrollWidth } = document.scrollingElement;
    const width = document.documentElement.clientWidth;
    const far = (element) => element.getBoundingClientRect().right > width + 1 && element.children.length === 0;
    return { scrollWidth, width, out: scrollWidth > width ? [...document.querySelectorAll("body *")].filter(far).map((element) => element.outerHTML.slice(0, 120)) : [] };
  });
  assert.ok(wide.scrollWidth <= NARROW.width, `${where}: ${wide.scrollWidth} px wide. Sticking out: ${wide.out.slice(0, 5).join("\n")}`);
}

inBrowser("nothing has to be scrolled sideways on a screen 320 px wide", { screen: "phone" }, async ({ page, paste, reload }) => {
  await page.setViewportSize(NARROW);
  await reload();
  await fits(page, "the demo");
  await remedy(page).click();
  await sees(verdict(page, "Acid and soda"), /agree/);
  await fits(page, "the demo, mended");
  await paste(`${TEXT}\n3 cups flour`);
  await openAll(page);
  await everything(page);
  await fits(page, "all open");
  for (const name of ["Shelf", "Larder", "Settings", "About"]) {
    await go(page, name);
    await fits(page, name);
  }
});

inBrowser("a word that never ends is broken on a narrow screen", { screen: "phone" }, async ({ page, paste, reload }) => {
  const endless = "Mehlbutterzucker".repeat(12);
  await page.setViewportSize(NARROW);
  await paste(`${endless}\n\n2 cups ${endless}\n1 cup flour\n\nMethod\nStir ${endless}.`);
  await line(page, 3).click();
  await unfold(page);
  await everything(page);
  await fits(page, "the ticket");
  await page.evaluate(() => localStorage.setItem(`batterwright/recipe/${"harbour".repeat(6)}`, "{"));
  await go(page, "Shelf");
  await fits(page, "the shelf");
  await reload();
  await fits(page, "the shelf with a record set aside");
});

/** What has the focus, whether it can be seen that it has it, and whether it is in sight. */
const focused = (page) =>
  page.evaluate(() => {
    const element = document.activeElement;
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
    const box = element.getBoundingClientRect();
    const [x, y] = [box.left + box.width / 2, box.top + Math.min(box.height, innerHeight) / 2];
    const top = document.elementFromPoint(x, y);
    return {
      name: element === document.body ? "" : element.textContent.trim().slice(0, 200) || element.id,
      tag: element.tagName,
      ringed: (outlineStyle !== "none" && parseFloat(outlineWidth) >= 2) || boxShadow !== "none",
      inSight: element === top || element.contains(top) || Boolean(top?.contains(element) && top.closest("label")),
    };
  });

for (const screen of ["phone", "desk"]) {
  inBrowser("the keyboard alone mends the demo and takes it back", { screen }, async ({ page }) => {
    await sees(verdict(page, "Acid and soda"), /Short of soda/);
    const wanted = await remedy(page).innerText();
    let on = { name: "" };
    for (let step = 0; step < 80 && on.name !== wanted; step += 1) {
      await page.keyboard.press("Tab");
      on = await focused(page);
      assert.notEqual(on.tag, "BODY", `the focus is lost after ${step} steps`);
      assert.ok(on.ringed, `no ring around "${on.name}" (${on.tag})`);
      assert.ok(on.inSight, `"${on.name}" (${on.tag}) has the focus out of sight`);
    }
    assert.equal(on.name, wanted);
    await page.keyboard.press("Enter");
    await sees(verdict(page, "Acid and soda"), /Acid and soda agree/);
    // What was touched is gone; the focus stands on the way back.
    await page.waitForFunction(() => document.activeElement?.textContent === "Take it back");
    assert.ok((await focused(page)).ringed);
    await page.keyboard.press("Enter");
    await sees(verdict(page, "Acid and soda"), /Short of soda/);
    await page.waitForFunction(() => document.activeElement?.id === "main");
  });
}

inBrowser("the keyboard opens a row, and a new page takes the focus", { screen: "desk" }, async ({ page }) => {
  await line(page, 13).focus();
  await page.keyboard.press("Enter");
  await details(page, 13).waitFor();
  await page.keyboard.press("Tab");
  assert.equal((await focused(page)).name, "All figures for passion-fruit juice");
  await page.keyboard.press("Tab");
  assert.equal((await focused(page)).name, "own-amount-13");
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Space");
  await details(page, 13).waitFor({ state: "detached" });
  await page.getByRole("navigation", { name: "Pages" }).getByRole("link", { name: "Settings" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { level: 1, name: "Settings" }).waitFor();
  await page.waitForFunction(() => document.activeElement?.id === "main");
  // From there the first radio is one step away, and arrows choose.
  await page.keyboard.press("Tab");
  await page.keyboard.press("ArrowDown");
  assert.ok(await page.getByRole("radio", { name: "United Kingdom and Ireland" }).isChecked());
});

/** Everything to be touched that is lower than 48 px, by its words and height. */
const small = (page) =>
  page.evaluate(() => {
    const touched = "button, nav a, summary, select, textarea, input:not([type=radio], [type=checkbox]), label:has(input[type=radio], input[type=checkbox]), .button, ul a, li a";
    return [...document.querySelectorAll(touched)]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }))
      .map((element) => ({ words: element.textContent.trim().slice(0, 60) || element.id, height: element.getBoundingClientRect().height }))
      .filter(({ height }) => height > 0 && height < 47.9)
      .map(({ words, height }) => `${words}: ${Math.round(height)} px`);
  });

inBrowser("everything to be touched is 48 px high on a phone", { screen: "phone" }, async ({ page, paste }) => {
  await paste(TEXT);
  await openAll(page);
  await everything(page);
  assert.deepEqual(await small(page), []);
  for (const name of ["Shelf", "Larder", "Settings", "About"]) {
    await go(page, name);
    assert.deepEqual(await small(page), [], name);
  }
});

inBrowser("paper has the weights and no controls", { screen: "desk" }, async ({ page, picture }) => {
  await remedy(page).click();
  await sees(verdict(page, "Acid and soda"), /agree/);
  await line(page, 5).click();
  await page.emulateMedia({ media: "print" });
  const rows = part(page, "Weights").getByRole("row");
  for (const name of ["all-purpose (plain) flour", "passion-fruit juice", "baking soda"]) await sees(rows.filter({ hasText: name }), /^[\d.]+ g/);
  await page.getByRole("heading", { level: 1, name: "Harbour pear cake, passion-fruit version" }).waitFor();
  await sees(part(page, "Method and notes"), /Whisk the dry things in one bowl/);
  await sees(part(page, "Allergens and cautions"), /Wheat/);
  // The names of the rows are buttons on the screen; any other control is gone.
  const controls = await page.evaluate(() =>
    [...document.querySelectorAll("button, input, select, textarea, nav, summary")]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }) && !element.closest("table") && element.tagName !== "SUMMARY")
      .map((element) => element.textContent.trim() || element.id),
  );
  assert.deepEqual(controls, []);
  assert.equal(await details(page, 5).isVisible(), false);
  await picture("paper");
});

inBrowser("what changes is said, but not at each letter", { screen: "desk" }, async ({ page, paste }) => {
  // The summary for screen readers: a status that follows after a pause.
  await paste("Light-ship slices\n\n2 cups all-purpose flour\n1 cup lemon juice\n1 tsp baking powder");
  const spoken = page.getByRole("status").filter({ hasText: /soda|acid/i });
  await spoken.first().waitFor({ state: "attached" });
  assert.match(await spoken.first().textContent(), /soda/i);
});

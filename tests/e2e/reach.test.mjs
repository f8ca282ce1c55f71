// Reaching everyone: no barrier on any page in any state, a narrow screen, the keyboard alone, floury fingers, paper.

import assert from "node:assert/strict";
import { everywhere, inBrowser, textBox } from "./harness.mjs";
import { focused, tabTo } from "./keyboard.mjs";
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
  for (const name of ["Bench", "Trials", "Settings", "About", "Shelf", "Larder"]) {
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
  for (const name of ["Bench", "Trials", "Shelf", "Larder", "Settings", "About"]) {
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

for (const screen of ["phone", "desk"]) {
  inBrowser("the keyboard alone mends the demo and takes it back", { screen }, async ({ page }) => {
    await sees(verdict(page, "Acid and soda"), /Short of soda/);
    const wanted = await remedy(page).innerText();
    await tabTo(page, wanted);
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
  assert.equal((await focused(page)).id, "own-amount-13");
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

/**
 * Everything to be touched that is smaller than it has to be, by its words and size. 48 px high is what a floury thumb
 * needs; 24 px each way, or as much room around, is the least of WCAG 2.2 (2.5.8), which links within a sentence need not keep.
 */
const small = (page) =>
  page.evaluate(() => {
    const touched = "button, nav a, summary, select, textarea, input:not([type=radio], [type=checkbox]), label:has(input[type=radio], input[type=checkbox]), .button, ul a, li a";
    const any = "a[href], button, summary, select, textarea, input, [tabindex='0'], [role=button]";
    const seen = (selector) => [...document.querySelectorAll(selector)].filter((element) => element.checkVisibility({ visibilityProperty: true }));
    const sized = (element) => ({ words: element.textContent.trim().slice(0, 60) || element.id, ...element.getBoundingClientRect().toJSON() });
    const low = seen(touched).map(sized).filter(({ height }) => height > 0 && height < 47.9);
    const tiny = seen(any)
      .map((element) => sized(element.closest("label") ?? element))
      .filter(({ width, height }) => width > 0 && (width < 24 || height < 24));
    return [...low, ...tiny].map(({ words, width, height }) => `${words}: ${Math.round(width)} by ${Math.round(height)} px`);
  });

inBrowser("everything to be touched is 48 px high on a phone", { screen: "phone" }, async ({ page, paste }) => {
  await paste(TEXT);
  await openAll(page);
  await everything(page);
  assert.deepEqual(await small(page), []);
  for (const name of ["Bench", "Trials", "Shelf", "Larder", "Settings", "About"]) {
    await go(page, name);
    assert.deepEqual(await small(page), [], name);
  }
});

/** Runs in the page: from now on `window.said` holds each text that came up in a place that is read out by itself. */
function listen() {
  const regions = "[role=status], [role=alert], [aria-live], output";
  const last = new Map();
  const look = () => {
    for (const region of document.querySelectorAll(regions)) {
      const text = region.textContent.trim().replace(/\s+/g, " ");
      if (text && text !== last.get(region)) window.said.push({ text, how: region.getAttribute("role") ?? region.getAttribute("aria-live") });
      last.set(region, text);
    }
  };
  window.said = [];
  look();
  window.said = [];
  new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
}

/** What was said since the last time, once nothing more comes. */
const said = async (page) => {
  await page.waitForTimeout(2000);
  return page.evaluate(() => window.said.splice(0));
};

inBrowser("a change is said politely, in one sentence and once, and not at each letter", { screen: "desk", offline: true }, async ({ page, paste }) => {
  await page.evaluate(listen);
  await paste("Light-ship slices\n\n2 cups all-purpose flour\n1 cup lemon juice\n1 tsp baking powder");
  const pasted = await said(page);
  assert.deepEqual(pasted.map(({ how }) => how), ["status"], JSON.stringify(pasted));
  assert.match(pasted[0].text, /^3 ingredients weighed.*soda/i);
  await (await textBox(page)).press("End");
  await page.keyboard.type("\n1 tsp salt", { delay: 40 });
  const typed = await said(page);
  assert.deepEqual(typed.map(({ how }) => how), ["status"], JSON.stringify(typed));
  assert.match(typed[0].text, /^4 ingredients weighed/);
  // What does not change a verdict says nothing again.
  await page.keyboard.type(" and stir");
  assert.deepEqual(await said(page), []);
  // A remedy says what it did, and then what came of it.
  await remedy(page).click();
  const mended = await said(page);
  assert.deepEqual(mended.map(({ how }) => how), ["status", "status"], JSON.stringify(mended));
  assert.match(mended[0].text, /^Done: /);
  assert.match(mended[1].text, /^\d+ ingredients weighed/);
});

inBrowser("nothing moves for somebody who asked for less motion", { screen: "phone" }, async ({ page }) => {
  assert.equal(await page.evaluate(() => matchMedia("(prefers-reduced-motion: reduce)").matches), true);
  const moving = () =>
    page.evaluate(() => [
      getComputedStyle(document.documentElement).scrollBehavior,
      ...document.getAnimations().map((animation) => animation.animationName ?? animation.transitionProperty ?? "an animation"),
      ...[...document.querySelectorAll("*")].filter((element) => {
        const style = getComputedStyle(element);
        return /[1-9]/.test(style.transitionDuration) || (style.animationName !== "none" && /[1-9]/.test(style.animationDuration));
      }).map((element) => element.className),
      ...document.querySelectorAll("marquee, video, animate, animateTransform"),
    ]);
  await verdict(page, "Pan").click();
  // A jump is there at once: no frame lies between.
  const place = () => page.evaluate(() => Math.round(document.getElementById("/pan").getBoundingClientRect().top));
  const first = await place();
  await page.waitForTimeout(300);
  assert.equal(await place(), first);
  assert.deepEqual(await moving(), ["auto"]);
  for (const name of ["Bench", "Trials", "Shelf", "Larder", "Settings", "About"]) {
    await go(page, name);
    assert.deepEqual(await moving(), ["auto"], name);
  }
});

// At the bench: weighing by touch, overshoots, timers, what a lock or a reload leaves, and the printed sheet.

import assert from "node:assert/strict";
import { everywhere, inBrowser, ready, textBox } from "./harness.mjs";
import { go, sees } from "./hands.mjs";

const CAKE = `Ferry-landing cake

Dry
250 g plain flour
160 g brown sugar
11 g baking powder

Wet
120 g apple purée
180 g oat milk
70 g sunflower oil

For the glaze
100 g icing sugar
15 g lemon juice

Method
Heat the oven to 350 F. Line an 8 inch square pan.
Whisk the dry things in a large bowl, stir in the wet ones.
Bake 32 to 36 minutes. Cool for 1 hour.
Mix the glaze and pour it over the cold cake.`;

const weight = (page, name) => page.getByRole("main").getByRole("button", { name, pressed: undefined }).filter({ has: page.locator(".weight__tick") });
const pressed = async (page, name) => (await weight(page, name).getAttribute("aria-pressed")) === "true";
const soFar = (page) => page.getByRole("status").filter({ hasText: /of \d+ weighed/ });
const alarm = (page) => page.getByRole("alert").filter({ hasText: "Time is up" });

/** The recipe at the bench. */
async function atBench({ page, paste }, text = CAKE) {
  await paste(text);
  await page.getByRole("heading", { level: 1, name: text.split("\n")[0] }).waitFor();
  await go(page, "Bench");
}

/** Types what the scale shows for an ingredient. */
async function other(page, name, grams) {
  await page.getByRole("button", { name: `Another weight of ${name}` }).click();
  await page.getByLabel(/in grams/).fill(grams);
  await page.getByRole("button", { name: "That is in" }).click();
}

inBrowser("each weight is one touch, and one takes it back", { screen: "phone" }, async (test) => {
  const { page } = test;
  await atBench(test);
  const bowls = page.getByRole("heading", { level: 2 }).filter({ hasText: "Bowl" });
  assert.deepEqual(await bowls.allTextContents(), ["Bowl 1: large bowl", "Bowl 2: for the glaze"]);
  await sees(soFar(page), /0 of 8 weighed/);
  // The running total: 250, + 160, + 11.
  await sees(weight(page, /^Plain flour/), /250 g$/);
  await sees(weight(page, /^Brown sugar/), /160 g.*in all 410 g/);
  await sees(weight(page, /^Baking powder/), /11 g.*in all 421 g/);
  // Another bowl begins at nothing.
  await sees(weight(page, /^Lemon juice/), /15 g.*in all 115 g/);
  await weight(page, /^Plain flour/).tap();
  await sees(soFar(page), /1 of 8 weighed/);
  assert.equal(await pressed(page, /^Plain flour/), true);
  assert.equal(await page.locator("[aria-current=step]").textContent().then((words) => /Brown sugar/.test(words)), true);
  await weight(page, /^Plain flour/).tap();
  await sees(soFar(page), /0 of 8 weighed/);
  // And that can be taken back too.
  await page.getByRole("button", { name: "Take it back" }).tap();
  await sees(soFar(page), /1 of 8 weighed/);
});

inBrowser("an overshoot says what it does, or everything is weighed to suit it", { screen: "phone" }, async (test) => {
  const { page } = test;
  await atBench(test);
  await weight(page, /^Plain flour/).tap();
  await weight(page, /^Brown sugar/).tap();
  // The scale showed 410 g; now it shows 432: 22 g of powder, twice as much as wanted.
  await page.getByRole("button", { name: "Another weight of Baking powder" }).tap();
  await page.getByLabel(/scale shows now/).fill("300");
  await page.getByRole("button", { name: "That is in" }).tap();
  await page.getByText("The scale showed 410 g before it").waitFor();
  await page.getByLabel(/scale shows now/).fill("432");
  await page.getByRole("button", { name: "That is in" }).tap();
  await sees(weight(page, /^Baking powder/), /22 g in: 11 g over, 100 %/);
  const effect = page.getByRole("status").filter({ hasText: "As it lies in the bowls" });
  // 22 g on 250 g of flour are 8.8 %, planned 4.4 %.
  await sees(effect, /baking powder.*8\.8 % of flour, planned 4\.4 %/i);
  await sees(effect, /Crumb pH/);
  await page.getByRole("button", { name: "Weigh everything 2 times, to suit it" }).tap();
  await sees(weight(page, /^Plain flour/), /500 g/);
  await sees(weight(page, /^Plain flour/), /250 g more to go in/);
  await sees(weight(page, /^Oat milk/), /360 g/);
  await page.getByRole("button", { name: "Weigh as planned again" }).tap();
  await sees(weight(page, /^Plain flour/), /^Plain flour\s*250 g/);
});

inBrowser("a weigh-in goes on after a reload, in another window and in the air of a tunnel", { screen: "phone", offline: true }, async (test) => {
  const { page, context, site, reload, cutNetwork } = test;
  await atBench(test);
  await weight(page, /^Plain flour/).tap();
  await page.getByRole("button", { name: /^Start a timer: Bake/ }).tap();
  await page.getByRole("button", { name: "I zero the scale" }).or(page.getByLabel("I zero the scale before each weight")).check();
  await cutNetwork();
  await reload();
  await sees(soFar(page), /1 of 8 weighed/);
  assert.equal(await page.getByLabel("I zero the scale before each weight").isChecked(), true);
  await sees(page.getByRole("timer", { name: "Bake, time left" }), /^3[12]:\d\d$/);
  // The page is closed, and opened again.
  const other = await context.newPage();
  await page.close();
  await other.goto(`${site.address}#/bench`);
  await ready(other);
  await sees(soFar(other), /1 of 8 weighed/);
  await sees(other.getByRole("timer", { name: "Bake, time left" }), /^3[12]:\d\d$/);
});

inBrowser("two windows at one bench see the same bowls", { screen: "desk" }, async (test) => {
  const { page, context, site } = test;
  await atBench(test);
  await weight(page, /^Plain flour/).click();
  const other = await context.newPage();
  await other.goto(`${site.address}#/bench`);
  await ready(other);
  await sees(soFar(other), /1 of 8 weighed/);
  await weight(other, /^Brown sugar/).click();
  await sees(soFar(page), /2 of 8 weighed/);
});

inBrowser("what another window weighed while this one slept stays in the bowl", { screen: "phone" }, async (test) => {
  const { page } = test;
  await atBench(test);
  await weight(page, /^Plain flour/).tap();
  await sees(soFar(page), /1 of 8 weighed/);
  // Written in this same window it is no news to it, as to one that slept.
  await page.evaluate(() => {
    const key = Object.keys(localStorage).find((key) => key.startsWith("batterwright/weigh-in/"));
    const record = JSON.parse(localStorage.getItem(key));
    record.body.put_in.push({ line: { text: "160 g brown sugar" }, name: "Brown sugar", grams: 160 });
    localStorage.setItem(key, JSON.stringify(record));
  });
  await weight(page, /^Baking powder/).tap();
  await sees(soFar(page), /3 of 8 weighed/);
  assert.equal(await pressed(page, /^Brown sugar/), true);
});

inBrowser("what is in the bowls goes with a recipe that two windows changed", { screen: "desk" }, async (test) => {
  const { page } = test;
  await atBench(test);
  await weight(page, /^Plain flour/).click();
  await go(page, "Ticket");
  // Another window has changed it, and this one has not heard of it.
  await page.evaluate(() => {
    const key = Object.keys(localStorage).find((key) => key.startsWith("batterwright/recipe/"));
    const record = JSON.parse(localStorage.getItem(key));
    record.body.inputs.text += "\n5 g poppy seeds";
    localStorage.setItem(key, JSON.stringify(record));
  });
  const box = await textBox(page);
  await box.press("Control+Home");
  await box.press("End");
  await box.pressSequentially(" again");
  await page.getByRole("alert").filter({ hasText: "another window" }).or(page.getByText(/copy from/)).first().waitFor();
  await go(page, "Bench");
  await sees(soFar(page), /1 of 8 weighed/);
  assert.equal(await pressed(page, /^Plain flour/), true);
});

inBrowser("a bench of thousands of lines opens, and answers", { screen: "phone" }, async (test) => {
  const { page, paste } = test;
  const lines = Array.from({ length: 3000 }, (_, at) => `${at + 1} g flour`);
  await paste(`Ballast cake\n\n${lines.join("\n")}\n\nMethod\n${"Mix the flour and bake for 5 minutes.\n".repeat(500)}`);
  await page.getByRole("heading", { level: 1, name: "Ballast cake" }).waitFor();
  await go(page, "Bench");
  await sees(soFar(page), /0 of 3000 weighed/);
  await page.getByRole("button", { name: /^Flour 1 g/ }).first().tap();
  await sees(soFar(page), /1 of 3000 weighed/);
});

inBrowser("a timer rings at its moment on any page, after a lock too", { screen: "phone", before: () => {
  // A clock that a test can move, and an ear.
  const began = Date.now();
  window.shift = 0;
  const Real = Date;
  Date.now = () => Real.prototype.constructor === Real ? new Real().getTime() + window.shift : began;
  window.shaken = 0;
  navigator.vibrate = () => { window.shaken += 1; return true; };
} }, async (test) => {
  const { page } = test;
  await atBench(test);
  await page.getByLabel("Another timer: what for").fill("Oats");
  await page.getByLabel("How long, in minutes").fill("soon");
  await page.getByRole("button", { name: "Start it" }).tap();
  await page.getByText('"soon" is no time to wait for').waitFor();
  await page.getByLabel("How long, in minutes").fill("12");
  await page.getByRole("button", { name: "Start it" }).tap();
  await sees(page.getByRole("timer", { name: "Oats, time left" }), /^1[12]:\d\d$/);
  await page.getByRole("button", { name: /^Start a timer: Cool/ }).tap();
  await go(page, "Settings");
  await sees(page.getByRole("region", { name: "Time left" }).getByRole("link"), /Oats 1[12]:\d\d · Cool (1:00:00|59:\d\d)/);
  assert.equal(await alarm(page).count(), 0);
  await page.evaluate(() => { window.shift = 13 * 60_000; });
  await sees(alarm(page), /Time is up: Oats/);
  await page.waitForFunction(() => window.shaken > 0);
  await page.getByRole("button", { name: "5 minutes more for Oats" }).tap();
  await alarm(page).waitFor({ state: "detached" });
  await page.evaluate(() => { window.shift = 20 * 60_000; });
  await page.getByRole("button", { name: "Stop Oats" }).tap();
  await alarm(page).waitFor({ state: "detached" });
  const shaken = await page.evaluate(() => window.shaken);
  await page.waitForTimeout(2500);
  // Once to stop what was shaking, and no more.
  assert.ok((await page.evaluate(() => window.shaken)) <= shaken + 1);
  // A timer that was stopped can be put back.
  await go(page, "Bench");
  await page.getByRole("button", { name: "Take it back" }).tap();
  await sees(alarm(page), /Oats/);
});

inBrowser("the screen is kept awake at the bench and nowhere else", { screen: "phone", before: () => {
  window.locks = 0;
  const request = async () => {
    window.locks += 1;
    await new Promise((later) => setTimeout(later, 500));
    const lock = new EventTarget();
    lock.release = async () => { window.locks -= 1; };
    return lock;
  };
  Object.defineProperty(navigator, "wakeLock", { value: { request }, configurable: true });
} }, async (test) => {
  const { page } = test;
  await atBench(test);
  // A page that comes into sight while it asks gets no second lock.
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
  await page.getByText("The screen stays on while this page is open.").waitFor();
  assert.equal(await page.evaluate(() => window.locks), 1);
  await go(page, "Ticket");
  await page.waitForFunction(() => window.locks === 0);
});

inBrowser("a browser that cannot keep the screen on is said to", { screen: "phone", before: () => {
  Object.defineProperty(navigator, "wakeLock", { value: { request: async () => { throw new DOMException("no", "NotAllowedError"); } }, configurable: true });
} }, async (test) => {
  await atBench(test);
  await test.page.getByText("This browser cannot keep the screen on").waitFor();
});

everywhere("no barrier at the bench, in the middle of everything", async (test) => {
  const { page, reachable, picture } = test;
  await atBench(test);
  await weight(page, /^Plain flour/).click();
  await other(page, "Brown sugar", "450");
  await page.getByRole("button", { name: /^Start a timer: Bake/ }).click();
  await page.getByRole("button", { name: "Another weight of Oat milk" }).click();
  // What a bar that stays in view covers is scrolled to, and never touched there.
  await page.evaluate(() => window.scrollTo(0, 0));
  await reachable();
  await picture("bench");
});

inBrowser("everything that is touched at the bench is 48 px high and wide, at 320 px too", { screen: "phone" }, async (test) => {
  const { page } = test;
  await page.setViewportSize({ width: 320, height: 640 });
  await atBench(test);
  await other(page, "Plain flour", "300");
  await page.getByRole("button", { name: /^Start a timer: Bake/ }).click();
  await page.getByRole("button", { name: "Another weight of Oat milk" }).click();
  const small = await page.evaluate(() =>
    [...document.querySelectorAll("main button, main a, main input, main label:has(input[type=checkbox]), .alarms a, nav a")]
      .filter((element) => element.checkVisibility() && element.type !== "checkbox")
      .map((element) => ({ name: element.textContent.trim() || element.id, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.height < 47.5 || box.width < 47.5)
      .map(({ name, box }) => `${name}: ${box.width} x ${box.height}`),
  );
  assert.deepEqual(small, []);
  const scrollWidth = await page.evaluate(() => document.scrollingElement.scrollWidth);
  assert.ok(scrollWidth <= 320, `${scrollWidth} px wide`);
});

inBrowser("the keyboard alone weighs, overshoots and sets a timer", { screen: "desk" }, async (test) => {
  const { page } = test;
  await atBench(test);
  await weight(page, /^Plain flour/).focus();
  await page.keyboard.press("Space");
  await sees(soFar(page), /1 of 8 weighed/);
  // The focus stays where it was.
  assert.match(await page.evaluate(() => document.activeElement.textContent), /Plain flour/);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement.tagName === "INPUT");
  await page.keyboard.type("260");
  await page.keyboard.press("Enter");
  await sees(weight(page, /^Plain flour/), /260 g in: 10 g over, 4 %/);
  await page.waitForFunction(() => /Plain flour/.test(document.activeElement.textContent));
});

inBrowser("a demo that is weighed becomes a recipe of one's own", { screen: "phone" }, async ({ page, reload }) => {
  await go(page, "Bench");
  await weight(page, /^All-purpose flour/).tap();
  await sees(soFar(page), /1 of 10 weighed/);
  await reload();
  await sees(soFar(page), /1 of 10 weighed/);
  await go(page, "Shelf");
  await page.getByRole("main").getByRole("listitem").filter({ hasText: "Harbour pear cake, passion-fruit version" }).first().waitFor();
});

/** How many pages the browser prints, and what stands on the first. */
async function printed(page, format) {
  const file = await page.pdf({ format });
  return (file.toString("latin1").match(/\/Type\s*\/Page\b/g) ?? []).length;
}

const OF_25_LINES = [
  "Lock-keeper's fruit loaf", "", "For the cake",
  ..."300 g plain flour,2 tsp baking powder,1/2 tsp baking soda,1 tsp cinnamon,1/2 tsp nutmeg,1/4 tsp cloves,1/2 tsp salt,150 g light brown sugar,1 cup apple purée,2 eggs,1/2 cup oil,1 tbsp vinegar,2 tsp vanilla extract,1 cup raisins,1/2 cup walnuts,1/2 cup dates,50 g candied peel,2 tbsp poppy seeds".split(","),
  "", "For the glaze",
  ..."1 cup icing sugar,2 tbsp lemon juice,1 tsp honey,1 pinch salt,1 tbsp butter,1 tsp lemon zest,1 tbsp water".split(","),
  "", "Method",
  ...Array.from({ length: 8 }, (_, at) => `${at + 1}. Whisk what is dry in a large bowl, and stir what is wet together in a jug until nothing of it can be told apart any more; then bring both together quickly.`),
  "9. Bake in a 9 x 5 inch loaf pan at 350 F for 60 minutes.",
].join("\n");

for (const format of ["A4", "Letter"]) {
  inBrowser(`a recipe of 25 lines is one page of ${format}`, { screen: "desk" }, async ({ page, paste }) => {
    await page.getByText("Look from").first().waitFor({ state: "attached" });
    assert.equal(await printed(page, format), 1, "the demo");
    await paste(OF_25_LINES);
    await page.getByRole("heading", { level: 1, name: "Lock-keeper's fruit loaf" }).waitFor();
    assert.equal(await printed(page, format), 1, "25 lines");
    await go(page, "Bench");
    assert.equal(await printed(page, format), 1, "from the bench");
  });
}

inBrowser("paper has weights with their spread, percentages, method, pan, oven, allergens and room", { screen: "desk" }, async (test) => {
  const { page, paste, picture } = test;
  await paste(`${CAKE}\n`.replace("250 g plain flour", "2 cups plain flour"));
  await page.getByText("Look from").first().waitFor({ state: "attached" });
  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
  const sheet = page.locator(".paper__sheet");
  await sheet.waitFor();
  const rows = sheet.getByRole("row");
  await sees(rows.filter({ hasText: "Plain flour" }), /2\d\d g\s*\d{3} to \d{3} g\s*100 %\s*2 cups plain flour/);
  await sees(rows.filter({ hasText: "Brown sugar" }), /160 g/);
  for (const words of [/Bowl 1: large bowl/, /350 °F/, /8 in square/, /\d+ to \d+ minutes/, /Whisk the dry things/, /Allergens: Wheat/, /Notes at the bench/, /never a guarantee/, /Against the flour: water \d+ %/]) await sees(sheet, words);
  // Nothing but the sheet, and no controls.
  const seen = await page.evaluate(() =>
    [...document.querySelectorAll("button, input, select, textarea, nav, main h1")].filter((element) => element.checkVisibility()).map((element) => element.textContent),
  );
  assert.deepEqual(seen, []);
  await picture("paper");
  await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  await sheet.waitFor({ state: "detached" });
});

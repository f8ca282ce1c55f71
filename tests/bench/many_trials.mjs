// 500 bakes of one recipe: how long the page of trials takes to show them, and what one touch costs there. From the touch
// to the frame that shows it, in milliseconds, slowed as many times as asked.

import { serve } from "../../.make/serve.mjs";
import { BAKED, fillTrials } from "../e2e/many.mjs";
import { SCREENS, ready } from "../e2e/screens.mjs";

const VISITS = 5;
const TRIALS = 500;
/** What the page still works out after it can be used is over by then, in milliseconds. */
const SETTLED = 1500;

const median = (values) => [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)];

/**
 * Runs in the page: goes to an address and gives how long it takes until something that matches `first` has been painted,
 * until `count` of `all` stand there and are laid out, and how long the longest stretch in between kept the page from
 * answering.
 */
async function look({ hash, first, all, count }) {
  const begun = performance.now();
  let last = begun;
  let longest = 0;
  const frame = () =>
    new Promise((later) => {
      requestAnimationFrame(() => {
        // A message sent from the last step before painting arrives right after it.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          const now = performance.now();
          longest = Math.max(longest, now - last);
          last = now;
          later();
        };
        port2.postMessage(null);
      });
    });
  location.hash = hash;
  do await frame();
  while (!document.querySelector(first));
  const shown = performance.now() - begun;
  while (document.querySelectorAll(all).length < count) await frame();
  document.body.getBoundingClientRect();
  return { shown, whole: performance.now() - begun, longest };
}

/** Runs in the page: types a letter into a field and gives how long it takes until that is painted with all it changes. */
async function letter({ field }) {
  const box = document.querySelector(field);
  const begun = performance.now();
  box.value += "e";
  box.dispatchEvent(new InputEvent("input", { bubbles: true }));
  await new Promise((later) => requestAnimationFrame(() => setTimeout(later)));
  return performance.now() - begun;
}

/** All of it, slowed so many times. */
export async function manyTrials(browser, folder, slowed) {
  const server = await serve({ folder, packs: true });
  const context = await browser.newContext(SCREENS.phone);
  const visits = [];
  for (let round = 0; round < VISITS; round += 1) {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: slowed });
    await page.goto(server.address);
    await ready(page);
    if (round === 0) {
      await fillTrials(page, TRIALS);
      await page.reload();
      await ready(page);
    }
    const list = { hash: "#/trials", first: ".tree__link", all: ".tree__link", count: TRIALS };
    await page.waitForTimeout(SETTLED);
    const ids = await page.evaluate((baked) => Object.keys(localStorage).filter((key) => key.includes(`/trial/${baked}/`)).map((key) => key.split("/").at(-1)).sort(), BAKED);
    const one = { hash: `#/trials/${ids.at(-1)}`, first: "#trial-notes", all: "#trial-notes", count: 1 };
    const shelf = { hash: "#/shelf", first: ".shelf__open", all: ".shelf__open", count: 1 };
    const first = await page.evaluate(look, list);
    const trial = await page.evaluate(look, one);
    const keys = [];
    for (const field of ["#trial-notes", "#trial-name"]) for (let press = 0; press < 3; press += 1) keys.push(await page.evaluate(letter, { field }));
    const again = await page.evaluate(look, list);
    const kept = await page.evaluate(look, shelf);
    visits.push({
      first: first.shown,
      whole: first.whole,
      longest: first.longest,
      again: again.shown,
      againWhole: again.whole,
      againLongest: again.longest,
      trial: trial.shown,
      key: median(keys),
      shelf: kept.shown,
    });
    await page.close();
  }
  await context.close();
  await server.close();
  return Object.fromEntries(Object.keys(visits[0]).map((name) => [name, median(visits.map((visit) => visit[name]))]));
}

// The page on a slow phone: its processor slowed four times, and for a first visit a network of 1.4 Mbit/s whose answers
// take 0.56 s, as Lighthouse sets its slow phone where it slows for real.

import { serve } from "../../.make/serve.mjs";
import { fillShelf } from "../e2e/many.mjs";
import { SCREENS, ready } from "../e2e/screens.mjs";

const SLOWED = 4;
const KILOBIT = 1024 / 8;
const NETWORK = { offline: false, latency: 562.5, downloadThroughput: 1474.56 * KILOBIT, uploadThroughput: 675 * KILOBIT };
const VISITS = 3;
const RECIPES = 2000;

const median = (values) => [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)];
const medians = (visits) => Object.fromEntries(Object.keys(visits[0]).map((name) => [name, median(visits.map((visit) => visit[name]))]));

/** Runs in the page before anything else: writes down when the largest thing was painted, when the first
 * screen stood and took touches, and when all of the page did. */
function watch() {
  window.largest = 0;
  new PerformanceObserver((list) => {
    window.largest = list.getEntries().at(-1).startTime;
  }).observe({ type: "largest-contentful-paint", buffered: true });
  new MutationObserver(() => {
    const marks = document.documentElement?.dataset;
    if (marks?.standing === "true") window.standing ??= performance.now();
    if (marks?.ready === "true") window.usable ??= performance.now();
  }).observe(document, { attributes: true, childList: true, subtree: true });
}

/** Opens an address in a new page of the context, slowed; gives the page. */
async function open(context, address, network) {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  if (network) await session.send("Network.emulateNetworkConditions", network);
  await page.goto(address);
  await ready(page);
  return page;
}

const times = async (page) => {
  // The largest thing is the last one painted before anybody touches the page, so it is waited for.
  await page.waitForTimeout(1000);
  return page.evaluate(() => ({
    painted: performance.getEntriesByName("first-contentful-paint")[0].startTime,
    largest: window.largest,
    // The one-button page is drawn at once.
    standing: window.standing ?? window.usable,
    usable: window.usable,
  }));
};

async function fresh(browser) {
  const context = await browser.newContext(SCREENS.phone);
  await context.addInitScript(watch);
  return context;
}

/** First visits: when something is painted, when the largest thing is, and when the page can be used, in milliseconds. */
export async function firstVisit(browser, folder) {
  const server = await serve({ folder, packs: true });
  const visits = [];
  for (let round = 0; round < VISITS; round += 1) {
    const context = await fresh(browser);
    visits.push(await times(await open(context, server.address, NETWORK)));
    await context.close();
  }
  await server.close();
  return medians(visits);
}

/** Visits after the first, with no network at all: the same times. */
export async function laterVisit(browser, folder) {
  const server = await serve({ folder, packs: true });
  const context = await fresh(browser);
  const first = await context.newPage();
  await first.goto(server.address);
  await first.waitForSelector("html[data-offline=ready]", { state: "attached" });
  await first.close();
  await context.setOffline(true);
  await server.close();
  const visits = [];
  for (let round = 0; round < VISITS; round += 1) {
    const page = await open(context, server.address);
    visits.push(await times(page));
    await page.close();
  }
  await context.close();
  return medians(visits);
}

/** The list of 2,000 recipes, in milliseconds: from the touch that opens the shelf to all of it in the page and laid out. */
export async function longShelf(browser, folder) {
  const server = await serve({ folder, packs: true });
  const context = await fresh(browser);
  const page = await open(context, server.address);
  await fillShelf(page, RECIPES);
  // What was put in behind the page's back is looked through once.
  await page.goto(`${server.address}#/shelf`);
  await page.reload();
  await ready(page);
  const looks = [];
  for (let round = 0; round < VISITS; round += 1) {
    await page.evaluate(() => {
      location.hash = "#/about";
    });
    await page.getByRole("heading", { level: 1, name: "About" }).waitFor();
    looks.push(
      await page.evaluate(async (count) => {
        const begun = performance.now();
        location.hash = "#/shelf";
        while (document.querySelectorAll(".shelf__open").length < count) await new Promise(requestAnimationFrame);
        document.body.getBoundingClientRect();
        return performance.now() - begun;
      }, RECIPES),
    );
  }
  await context.close();
  await server.close();
  return median(looks);
}


// The page without a network, and the change from one version to the next.

import assert from "node:assert/strict";
import { appendFileSync, cpSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { DIST, inBrowser, ready } from "./harness.mjs";
import { go, row, sees, verdict } from "./hands.mjs";
import { wholeJob } from "./whole_job.mjs";

for (const under of ["/", "/market/stall/"]) {
  inBrowser(`loaded once, the page opens without a network at ${under}`, { under, offline: true }, async ({ page, cutNetwork, reload }) => {
    await cutNetwork();
    await reload();
    assert.match(await page.title(), /Batterwright/);
    // A link with a query, as an installed page or a shared address has.
    await page.goto(`${page.url().split("#")[0]}?from=home`);
    await ready(page);
  });
}

inBrowser("the worker keeps every file of the folder and nothing else", { offline: true }, async ({ page, site }) => {
  const kept = await page.evaluate(async () => {
    const names = await caches.keys();
    const requests = await (await caches.open(names[0])).keys();
    return { caches: names.length, files: requests.map((request) => new URL(request.url).pathname.slice(1)).sort() };
  });
  assert.equal(kept.caches, 1);
  const built = readdirSync(site.folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== "worker.js")
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(site.folder.length + 1))
    .sort();
  assert.deepEqual(kept.files, built);
});

/** Looks for a new version, as a browser does when the page is opened another day; tells what became of it. */
const lookForUpdate = (page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    const outcome = new Promise((decided) => {
      registration.addEventListener("updatefound", () => {
        const worker = registration.installing;
        worker.addEventListener("statechange", () => decided(worker.state), { once: true });
      });
    });
    await registration.update();
    return outcome;
  });

/** Which published version the page is; undefined for the first. */
const version = (page) => page.evaluate(() => document.documentElement.dataset.version);

/** How many versions are kept, once the worker has become active and has tidied up. */
const numberOfCaches = (page) =>
  page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    while (active.state !== "activated") await new Promise((changed) => active.addEventListener("statechange", changed, { once: true }));
    return (await caches.keys()).length;
  });

/** Says yes to the version that waits, and waits until it is shown. */
async function takeOver(page) {
  await page.waitForSelector("html[data-update=ready]", { state: "attached" });
  const loaded = page.waitForEvent("load");
  await page.evaluate(() => window.dispatchEvent(new CustomEvent("batterwright:take-over")));
  await loaded;
  await ready(page);
}

inBrowser("a new version waits for a yes, and then takes over", { offline: true }, async ({ page, site, reload }) => {
  await reload();
  site.publish("second");
  assert.equal(await lookForUpdate(page), "installed");
  await page.waitForSelector("html[data-update=ready]", { state: "attached" });
  await reload();
  assert.equal(await version(page), undefined, "The new version came without being asked.");
  await takeOver(page);
  assert.equal(await version(page), "second");
  assert.equal(await numberOfCaches(page), 1, "The old version is still kept.");
});

/** A file of the built page, by the end of its name. */
const fileOf = (site, end) => readdirSync(site.folder).find((name) => name.endsWith(end));

/** What can go wrong while a version is fetched: each leaves the version before whole, and nothing of the new one. */
const HALVES = {
  "a file is missing": ({ site }) => rmSync(join(site.folder, "manifest.webmanifest")),
  "the module breaks off in its middle": ({ site }) => site.breakOff(fileOf(site, ".wasm")),
  "the style is not the one of its list": ({ site }) => appendFileSync(join(site.folder, fileOf(site, ".css")), "p { color: red; }"),
  "the page is still the old one": ({ site }) => cpSync(join(DIST, "index.html"), join(site.folder, "index.html")),
  "there is no room for it": async ({ page, context, site }) => {
    const session = await context.newCDPSession(page);
    const { usage } = await session.send("Storage.getUsageAndQuota", { origin: new URL(site.address).origin });
    await session.send("Storage.overrideQuotaForOrigin", { origin: new URL(site.address).origin, quotaSize: usage + 200_000 });
  },
};

for (const [what, spoil] of Object.entries(HALVES)) {
  inBrowser(`the old version stays whole where ${what}`, { offline: true, allow: /404|Failed to load|net::ERR/ }, async (test) => {
    const { page, site, reload, cutNetwork } = test;
    await reload();
    site.publish("half");
    await spoil(test);
    assert.equal(await lookForUpdate(page), "redundant");
    assert.equal(await numberOfCaches(page), 1, "Half a version is kept.");
    await cutNetwork();
    await reload();
    assert.equal(await version(page), undefined);
  });
}

inBrowser("a version can be taken back by publishing the one before it", { offline: true }, async ({ page, site, reload, cutNetwork }) => {
  await reload();
  site.publish("second");
  assert.equal(await lookForUpdate(page), "installed");
  await takeOver(page);
  assert.equal(await version(page), "second");
  site.publishFirst();
  assert.equal(await lookForUpdate(page), "installed");
  await takeOver(page);
  assert.equal(await version(page), undefined);
  assert.equal(await numberOfCaches(page), 1);
  await cutNetwork();
  await reload();
  assert.equal(await version(page), undefined);
});

inBrowser("a version that is taken back before anyone said yes to it is never shown", { offline: true }, async ({ page, site, reload, cutNetwork }) => {
  await reload();
  site.publish("second");
  assert.equal(await lookForUpdate(page), "installed");
  site.publishFirst();
  // The one that is in use is whole already, and is not put at risk by fetching it once more.
  site.breakOff(fileOf(site, ".wasm"));
  assert.equal(await lookForUpdate(page), "installed");
  await takeOver(page);
  assert.equal(await version(page), undefined);
  assert.equal(await numberOfCaches(page), 1);
  await cutNetwork();
  await reload();
});

/** Takes away what the worker keeps, as a browser does that runs out of room. */
const clearCaches = (page) => page.evaluate(async () => Promise.all((await caches.keys()).map((name) => caches.delete(name))));

inBrowser("what the browser cleared is fetched again by itself", { offline: true }, async ({ page, reload, keptOffline, cutNetwork }) => {
  await reload();
  await clearCaches(page);
  await reload();
  await keptOffline();
  await cutNetwork();
  await reload();
});

inBrowser("what the browser cleared without a network is explained", { offline: true, allow: /503|net::ERR/ }, async (test) => {
  const { page, paste, reload, cutNetwork, mendNetwork, keptOffline } = test;
  await reload();
  await paste("Quay loaf\n\n200 g flour");
  await sees(row(page, 3), /^200 g/);
  await clearCaches(page);
  await cutNetwork();
  await page.reload();
  await page.getByRole("heading", { level: 1, name: "Batterwright cannot open just now" }).waitFor();
  assert.match(await page.getByRole("main").innerText(), /cleared the copy .* no network .*recipes are kept in a place of their own/s);
  await test.reachable();
  await mendNetwork();
  await page.getByRole("link", { name: "Try again" }).click();
  await ready(page);
  await sees(row(page, 3), /^200 g/);
  await keptOffline();
  await cutNetwork();
  await reload();
  await sees(row(page, 3), /^200 g/);
});

inBrowser("what an address hands over stays on the device", { offline: true, under: "/market/" }, async ({ page, site, keptOffline }) => {
  const shared = `${site.address}?title=Secret%20buns&text=${encodeURIComponent("2 cups secret flour")}&url=`;
  const before = site.asked.length;
  await page.goto(shared);
  await ready(page);
  assert.deepEqual(site.asked.slice(before).filter((address) => !/worker\.js$/.test(address)), [], "It was not answered from what is kept.");
  await clearCaches(page);
  await page.goto(`${shared}2`);
  await ready(page);
  await keptOffline();
  assert.deepEqual(site.asked.filter((address) => address.includes("?") || address.includes("ecret")), []);
});

// The whole job once more, where it is done: in a kitchen without a network.
inBrowser("the whole job is done without a network, and is still there after a reload", { screen: "phone", offline: true }, async (test) => {
  const { page, cutNetwork, reload, paste } = test;
  await cutNetwork();
  await reload();
  await wholeJob(test);
  await reload();
  // The mended demo is a recipe of her own now.
  await sees(verdict(page, "Acid and soda"), /Acid and soda agree/);
  await paste("Fog-bell buns\n\n2 cups all-purpose flour\n1 tsp baking soda\n1 stick butter");
  // USDA National Nutrient Database, release 28: a cup of flour 125 g, a teaspoon of soda 4.6 g, a stick of butter 113 g.
  for (const [number, expected] of [
    [3, /^250 g/],
    [4, /^4\.6 g/],
    [5, /^113 g/],
  ]) {
    await sees(row(page, number), expected);
  }
  for (const name of ["Shelf", "Settings", "About", "Ticket"]) await go(page, name);
  await reload();
  await sees(row(page, 5), /^113 g/);
});

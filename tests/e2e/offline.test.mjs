// The page without a network, and the change from one version to the next.

import assert from "node:assert/strict";
import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { inBrowser, ready } from "./harness.mjs";
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

inBrowser("a new version waits for a yes, and then takes over", { offline: true }, async ({ page, site, reload }) => {
  await reload();
  site.publish("second");
  assert.equal(await lookForUpdate(page), "installed");
  await page.waitForSelector("html[data-update=ready]", { state: "attached" });
  await reload();
  assert.equal(await version(page), undefined, "The new version came without being asked.");
  await page.waitForSelector("html[data-update=ready]", { state: "attached" });
  const loaded = page.waitForEvent("load");
  await page.evaluate(() => window.dispatchEvent(new CustomEvent("batterwright:take-over")));
  await loaded;
  await ready(page);
  assert.equal(await version(page), "second");
  assert.equal(await numberOfCaches(page), 1, "The old version is still kept.");
});

inBrowser("an update that breaks off half way leaves the old version whole", { offline: true, allow: /404/ }, async (test) => {
  const { page, site, reload, cutNetwork } = test;
  await reload();
  site.publish("half");
  rmSync(join(site.folder, "manifest.webmanifest"));
  assert.equal(await lookForUpdate(page), "redundant");
  assert.equal(await numberOfCaches(page), 1, "Half a version is kept.");
  await cutNetwork();
  await reload();
  assert.equal(await version(page), undefined);
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

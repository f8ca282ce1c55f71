// The page opens wherever it is put: at the root of a server and under a sub-path, on both screens and in both
// colour schemes, without an error and without a barrier.

import assert from "node:assert/strict";
import { everywhere, inBrowser } from "./harness.mjs";

everywhere("the page opens", async ({ page, reachable, picture }) => {
  assert.match(await page.title(), /Batterwright/);
  assert.equal(await page.locator("h1").count(), 1);
  await reachable();
  await picture("opens");
});

inBrowser("the page opens under a sub-path", { under: "/market/stall/", screen: "desk" }, async ({ page, site }) => {
  assert.equal(page.url(), site.address);
  assert.match(await page.title(), /Batterwright/);
});

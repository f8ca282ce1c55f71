// The page opens wherever it is put: at the root of a server and under a sub-path, on both screens and in both
// colour schemes, without an error and without a barrier; and it follows what is pasted.

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

inBrowser("what is pasted is on the ticket at once", { screen: "phone" }, async ({ page, paste }) => {
  await paste("Breakwater loaf\n\n2 cups plain flour\n1 cup buttermilk");
  await page.getByRole("heading", { level: 1, name: "Breakwater loaf" }).waitFor();
});

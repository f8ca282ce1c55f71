// A recipe given on and taken up: its link, its text, its linked data, the share sheet, and what other programs share.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { everywhere, inBrowser, ready, textBox } from "./harness.mjs";
import { go, line, row, sees } from "./hands.mjs";

const LOAF = readFileSync(new URL("../carry/lemon_loaf.txt", import.meta.url), "utf8");
const HOSTILE = "<img src=x onerror=\"document.title='broken'\"><script>document.title='broken'</script> loaf\n\n200 g flour\n2 eggs\n<b>100 g sugar</b>";

// The browser fetches the tab's icon by itself, past the worker, when the address changes.
const ICON = /icons\/icon\.svg/;

const share = (page) => page.getByRole("button", { name: "Share", exact: true });
const place = (page) => page.getByRole("region", { name: "Share this recipe" });
const link = (page) => place(page).getByLabel("Link that holds the recipe").inputValue();
const title = (page, name) => page.getByRole("heading", { level: 1, name, exact: true });
const records = (page) => page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("batterwright/recipe/")).length);

const downloaded = async (page, touch) => {
  const [download] = await Promise.all([page.waitForEvent("download"), touch()]);
  return readFileSync(await download.path(), "utf8");
};

/** Opens an address in a window that has never seen this page. */
const elsewhere = async (context, address, before) => {
  const fresh = await context.browser().newContext({ viewport: { width: 360, height: 740 } });
  const asked = [];
  fresh.on("request", (request) => asked.push(request.url()));
  const page = await fresh.newPage();
  const errors = [];
  page.on("pageerror", (error) => errors.push(error.message));
  if (before) await before(page);
  await page.goto(address);
  await ready(page);
  return { page, asked, errors, close: () => fresh.close() };
};

everywhere("the place to share from is within everybody's reach", async ({ page, paste, reachable, picture }) => {
  await paste(LOAF);
  await share(page).click();
  await sees(place(page), /letters\. Whoever opens it gets the recipe from the link itself/);
  await reachable();
  await picture("share");
});

for (const screen of ["phone", "desk"]) {
  inBrowser("a link brings the recipe to another device, and no server hears of it", { screen }, async ({ page, context, paste }) => {
    await paste(LOAF);
    await line(page, 5).click();
    await page.getByLabel("Your own weight in the recipe, in grams").fill("180");
    await sees(row(page, 5), /180/);
    await share(page).click();
    await sees(place(page), /\d+ letters/);
    const address = await link(page);
    assert.ok(address.length < 600, `${address.length}`);
    assert.match(await place(page).innerText(), new RegExp(`${address.length} letters`));

    const other = await elsewhere(context, address);
    await title(other.page, "Quayside lemon and poppy seed loaf").waitFor();
    assert.ok(other.asked.every((url) => !url.includes("given")), other.asked.join("\n"));
    await sees(row(other.page, 5), /180/);
    await other.page.getByText("This recipe came by a link.").waitFor();
    assert.equal(new URL(other.page.url()).hash, "#/");
    assert.equal(await records(other.page), 0);
    await other.page.getByRole("button", { name: "Keep it", exact: true }).click();
    await other.page.getByText("This recipe came by a link.").waitFor({ state: "detached" });
    await other.page.reload();
    await ready(other.page);
    await title(other.page, "Quayside lemon and poppy seed loaf").waitFor();
    assert.equal(await records(other.page), 1);
    assert.deepEqual(other.errors, []);
    await other.close();
  });
}

inBrowser("a link opens without a network, and touches nothing that was open", { screen: "phone", offline: true, allow: ICON }, async ({ page, paste, cutNetwork }) => {
  await paste(LOAF);
  await share(page).click();
  await sees(place(page), /\d+ letters/);
  const address = await link(page);
  await page.getByRole("button", { name: "New", exact: true }).click();
  await paste("Pump-house scones\n\n250 g flour\n100 g butter");
  await title(page, "Pump-house scones").waitFor();
  await cutNetwork();
  await page.evaluate((hash) => (location.hash = hash), new URL(address).hash);
  await title(page, "Quayside lemon and poppy seed loaf").waitFor();
  assert.equal(await records(page), 2);
  // The same again, once it was changed.
  await (await textBox(page)).press("Control+End");
  await (await textBox(page)).pressSequentially("\n1 pinch salt");
  await page.getByText("This recipe came by a link.").waitFor({ state: "detached" });
  await go(page, "Shelf");
  await sees(page.getByRole("main"), /Pump-house scones/);
  assert.equal(await records(page), 3);
  await page.evaluate((hash) => (location.hash = hash), new URL(address).hash);
  await title(page, "Quayside lemon and poppy seed loaf").waitFor();
  assert.equal(await (await textBox(page)).inputValue(), LOAF);
});

inBrowser("a link with markup in it shows it as text", { screen: "desk" }, async ({ page, context, paste }) => {
  await paste(HOSTILE);
  await share(page).click();
  await sees(place(page), /\d+ letters/);
  const other = await elsewhere(context, await link(page));
  await other.page.getByText("This recipe came by a link.").waitFor();
  assert.equal(await (await textBox(other.page)).inputValue(), HOSTILE);
  await sees(other.page.getByRole("main"), /200 g/);
  assert.equal(await other.page.locator("img[src=x], b").count(), 0);
  assert.doesNotMatch(await other.page.title(), /^broken/);
  assert.deepEqual(other.errors, []);
  await other.close();
});

inBrowser("a link that is not whole says so, and leaves the open recipe alone", { screen: "phone" }, async ({ page, paste, reachable }) => {
  await paste(LOAF);
  await title(page, "Quayside lemon and poppy seed loaf").waitFor();
  for (const [given, said] of [
    ["", /its end is missing/],
    ["aAAAA", /its end is missing/],
    ["a!", /it is damaged/],
    ["z", /a newer version of this page made it/],
    [`a${"A".repeat(20_000)}`, /20001 letters long, and 16000 are the most/],
  ]) {
    await page.evaluate((given) => (location.hash = `#/given/${given}`), given);
    const alert = page.getByRole("alert").filter({ hasText: said });
    await alert.waitFor();
    assert.match(await alert.innerText(), /Nothing was changed\./);
    await reachable();
    await page.getByRole("button", { name: "Close", exact: true }).click();
    await alert.waitFor({ state: "detached" });
    assert.equal(await (await textBox(page)).inputValue(), LOAF);
    assert.equal(new URL(page.url()).hash, "#/");
  }
});

inBrowser("text and linked data come back alike", { screen: "desk" }, async ({ page, paste }) => {
  await paste(LOAF);
  await share(page).click();
  const text = await downloaded(page, () => place(page).getByRole("button", { name: "Download as text" }).click());
  assert.match(text, /^Quayside lemon and poppy seed loaf\n/);
  assert.match(text, /\n1\/2 tsp baking powder \([\d.]+ g\)\n/);
  const data = await downloaded(page, () => place(page).getByRole("button", { name: "Download as linked data" }).click());
  const recipe = JSON.parse(data);
  assert.equal(recipe["@type"], "Recipe");
  assert.equal(recipe.name, "Quayside lemon and poppy seed loaf");
  await page.getByRole("button", { name: "New", exact: true }).click();
  await paste(data);
  await title(page, "Quayside lemon and poppy seed loaf").waitFor();
  assert.match(await (await textBox(page)).inputValue(), /175 g unsalted butter, softened/);
});

inBrowser(
  "the share sheet gets the title and the link, where there is one",
  {
    screen: "phone",
    before: () => {
      Object.defineProperty(navigator, "share", { value: async (what) => (window.shared = what), configurable: true });
    },
  },
  async ({ page, paste }) => {
    await paste(LOAF);
    await title(page, "Quayside lemon and poppy seed loaf").waitFor();
    await share(page).click();
    await place(page).getByRole("button", { name: "Hand the link on" }).click();
    const shared = await page.evaluate(() => window.shared);
    assert.deepEqual(shared, { title: "Quayside lemon and poppy seed loaf", url: await link(page) });
  },
);

inBrowser("without a share sheet no button offers one", { screen: "desk", before: () => delete Navigator.prototype.share }, async ({ page, paste }) => {
  await paste(LOAF);
  await share(page).click();
  await place(page).getByRole("button", { name: "Copy the link" }).waitFor();
  assert.equal(await page.getByRole("button", { name: "Hand the link on" }).count(), 0);
});

inBrowser("what another program shares comes into the reader, beside what was open", { screen: "phone" }, async ({ page, site, paste, reload }) => {
  await paste(LOAF);
  await title(page, "Quayside lemon and poppy seed loaf").waitFor();
  const query = new URLSearchParams({ title: "Harbour scones", text: "250 g flour\n100 g butter\n<img src=x onerror=alert(1)>", url: "https://example.org/scones" });
  await page.goto(`${site.address}?${query}`);
  await ready(page);
  await title(page, "Harbour scones").waitFor();
  assert.equal(await (await textBox(page)).inputValue(), "Harbour scones\n250 g flour\n100 g butter\n<img src=x onerror=alert(1)>\nhttps://example.org/scones");
  assert.equal(await page.locator("img[src=x]").count(), 0);
  const { search, hash } = new URL(page.url());
  assert.deepEqual([search, hash], ["", "#/"]);
  // It is kept, and the one before is on the shelf.
  await reload();
  await title(page, "Harbour scones").waitFor();
  assert.equal(await records(page), 2);
  await go(page, "Shelf");
  await sees(page.getByRole("main"), /Quayside lemon and poppy seed loaf/);
});

inBrowser("the manifest names the page as a place to share to", { screen: "phone" }, async ({ page }) => {
  const target = await page.evaluate(async () => (await (await fetch(document.querySelector("link[rel=manifest]").href)).json()).share_target);
  assert.deepEqual(target, { action: "./", method: "GET", params: { title: "title", text: "text", url: "url" } });
});

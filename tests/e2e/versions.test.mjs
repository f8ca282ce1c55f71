// Versions of a recipe: kept, changed, held against the original, and safe when that goes.

import assert from "node:assert/strict";
import { everywhere, inBrowser, textBox } from "./harness.mjs";
import { everything, go, line, part, remedy, sees, weightOf } from "./hands.mjs";

const CAKE = "Mole-end cake\n\n200 g plain flour\n100 g granulated sugar\n100 g unsalted butter\n100 g water\n2 g salt\n\nBake for 30 minutes.";
const WITH_OIL = CAKE.replace("100 g unsalted butter", "80 g sunflower oil").replace("100 g granulated", "150 g granulated");

const differs = (page) => part(page, "What differs");
const change = (page, name) => differs(page).getByRole("row").filter({ has: page.getByRole("rowheader", { name, exact: true }) });
const onShelf = (page, title) => page.getByRole("main").getByRole("listitem").filter({ hasText: title });

/** Keeps the open recipe as a new version; without a name, by the one that is suggested. */
async function keepVersion(page, name) {
  await page.getByRole("button", { name: "Keep as a new version" }).click();
  const form = page.getByRole("form", { name: "New version" });
  if (name) await form.getByLabel("Name of the new version").fill(name);
  await form.getByRole("button", { name: "Keep it" }).click();
  await page.getByRole("status").filter({ hasText: "is this version" }).waitFor();
}

/** The oil version of the cake, open. */
async function oilVersion({ page, paste }) {
  await paste(CAKE);
  await keepVersion(page, "with oil");
  await paste(WITH_OIL);
}

for (const screen of ["phone", "desk"]) {
  inBrowser("a version is kept, changed, and always seen against the original", { screen }, async ({ page, paste, reload, context }) => {
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await paste(CAKE);
    assert.equal(await differs(page).count(), 0, "A recipe by itself has nothing to differ from.");
    await page.getByRole("button", { name: "Keep as a new version" }).click();
    // The name that is suggested stands there; without any the form says so at its field.
    const form = page.getByRole("form", { name: "New version" });
    const name = form.getByLabel("Name of the new version");
    assert.equal(await name.inputValue(), "Version 2");
    await name.fill(" ");
    await form.getByRole("button", { name: "Keep it" }).click();
    await sees(form, /Write a name/);
    await name.fill("with oil");
    await name.press("Enter");
    await sees(page.getByText(/made from Mole-end cake/).first(), /with oil/);
    await sees(differs(page), /Nothing differs/);

    // By hand: 100 to 150 g of sugar on 200 g of flour; 502 g of batter become 532 g.
    await paste(WITH_OIL);
    await sees(change(page, "granulated sugar"), /100 g .*50 % .*150 g .*75 % .*\+50 g/);
    await sees(change(page, "butter, unsalted"), /100 g .*left out/);
    await sees(change(page, "sunflower oil"), /not there .*80 g/);
    await sees(change(page, "Batter"), /502 g .*532 g .*\+30 g/);
    await sees(change(page, "Plant-based"), /no .*yes/);
    await sees(differs(page), /Allergens that went out Milk/);
    const words = /Mole-end cake, with oil: 50 g more granulated sugar, 150 g in all; 80 g sunflower oil instead of 100 g unsalted butter\./;
    await sees(differs(page), words);
    await differs(page).getByRole("button", { name: "Copy these words" }).click();
    await sees(differs(page), /Copied\./);
    assert.match(await page.evaluate(() => navigator.clipboard.readText()), words);

    await reload();
    assert.equal(await (await textBox(page)).inputValue(), WITH_OIL);
    await sees(change(page, "sunflower oil"), /80 g/);
    // The original is as it was, and has no such part.
    await differs(page).getByRole("link", { name: "Open the original" }).click();
    await differs(page).waitFor({ state: "detached" });
    assert.equal(await (await textBox(page)).inputValue(), CAKE);
  });
}

inBrowser("the shelf has versions behind the recipe that they were made from", { screen: "phone" }, async (hands) => {
  const { page, paste, reachable } = hands;
  await oilVersion(hands);
  await sees(change(page, "sunflower oil"), /80 g/);
  // One of the version, by the name that is suggested.
  await keepVersion(page);
  await go(page, "Shelf");
  const versions = page.getByRole("list", { name: "Versions of Mole-end cake" });
  assert.equal(await versions.getByRole("listitem").count(), 2);
  await sees(versions, /with oil/);
  await sees(versions, /Version 2 Version of a version/);
  await reachable();
  await versions.getByRole("link", { name: /^with oil/ }).click();
  assert.equal(await (await textBox(page)).inputValue(), WITH_OIL);
  // Its name can be mended.
  await differs(page).getByLabel("Name of this version").fill("with sunflower oil");
  await sees(differs(page), /Mole-end cake, with sunflower oil: /);
  await paste(WITH_OIL.replace("80 g", "85 g"));
  await go(page, "Shelf");
  await sees(versions, /with sunflower oil/);
});

inBrowser("a version of a demo keeps both", { screen: "phone" }, async ({ page }) => {
  await keepVersion(page, "mended");
  await remedy(page).click();
  await sees(differs(page), /baking soda added/);
  await sees(differs(page), /Findings that went .*Short of soda/);
  await sees(change(page, "Crumb pH"), /Short of soda .*Acid and soda agree/);
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Harbour pear cake, passion-fruit version", exact: true }).waitFor();
  await page.getByRole("button", { name: "Remove Harbour pear cake, passion-fruit version, mended", exact: true }).waitFor();
});

inBrowser("a version outlives its original, which can be put back from it", { screen: "phone" }, async (hands) => {
  const { page, reload } = hands;
  await oilVersion(hands);
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Mole-end cake", exact: true }).click();
  await sees(onShelf(page, "with oil"), /Mole-end cake, with oil A version of Mole-end cake, which is no longer here/);
  await reload();
  await onShelf(page, "with oil").getByRole("link").click();
  await sees(differs(page), /no longer on the shelf/);
  await sees(change(page, "butter, unsalted"), /100 g .*left out/);
  await differs(page).getByRole("button", { name: "Put the original back on the shelf" }).click();
  await differs(page).getByRole("link", { name: "Open the original" }).click();
  assert.equal(await (await textBox(page)).inputValue(), CAKE);
});

inBrowser("an original that was changed since is held against as it is, or as it was", { screen: "desk" }, async (hands) => {
  const { page, paste } = hands;
  await oilVersion(hands);
  await differs(page).getByRole("link", { name: "Open the original" }).click();
  await paste(CAKE.replace("100 g granulated", "120 g granulated"));
  await go(page, "Shelf");
  await onShelf(page, "Mole-end cake").getByRole("link", { name: /^with oil/ }).click();
  await sees(change(page, "granulated sugar"), /120 g .*150 g .*\+30 g/);
  await differs(page).getByLabel("Held against").selectOption({ label: "The original as it was when this version was made" });
  await sees(change(page, "granulated sugar"), /100 g .*150 g .*\+50 g/);
});

inBrowser("versions need no network", { screen: "phone", offline: true }, async (hands) => {
  const { page, cutNetwork, reload, mendNetwork } = hands;
  await cutNetwork();
  await oilVersion(hands);
  await sees(change(page, "sunflower oil"), /80 g/);
  await reload();
  await sees(change(page, "sunflower oil"), /80 g/);
  await mendNetwork();
});

inBrowser("a version that cannot be kept says so, and the recipe stays", { screen: "phone" }, async ({ page, paste }) => {
  await paste(CAKE);
  await sees(part(page, "Weights"), /sugar/);
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
    };
  });
  await page.getByRole("button", { name: "Keep as a new version" }).click();
  const form = page.getByRole("form", { name: "New version" });
  await form.getByRole("button", { name: "Keep it" }).click();
  await sees(form, /could not be kept: .* is full/);
  await form.getByRole("button", { name: "Cancel" }).click();
  assert.equal(await differs(page).count(), 0);
  assert.equal(await weightOf(page, 3), 200);
});

inBrowser("nothing is compared while the part is shut", { screen: "desk" }, async (hands) => {
  const { page, paste } = hands;
  await oilVersion(hands);
  await sees(differs(page), /80 g sunflower oil/);
  await differs(page).getByText("Changes, old and new").click();
  await paste(WITH_OIL.replace("80 g", "90 g"));
  await sees(part(page, "Weights"), /90 g/);
  await new Promise((later) => setTimeout(later, 600));
  assert.doesNotMatch(await differs(page).innerText(), /90 g sunflower oil/);
  await differs(page).getByText("Changes, old and new").click();
  await sees(differs(page), /90 g sunflower oil/);
});

everywhere("no barrier, no sideways scrolling and fingers' room on a version", async (hands) => {
  const { page, reachable, picture } = hands;
  await oilVersion(hands);
  // While the focus is in the text, parts out of sight rest, and a screen this low shows next to nothing of them.
  await page.evaluate(() => document.activeElement.blur());
  await sees(change(page, "sunflower oil"), /80 g/);
  await page.getByRole("button", { name: "Keep as a new version" }).click();
  await everything(page);
  await reachable();
  await picture("version");
  const small = await differs(page).evaluate((part) =>
    [...part.querySelectorAll("button, a, summary, input, select")]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }) && element.getBoundingClientRect().height < 47.9)
      .map((element) => element.textContent || element.id),
  );
  assert.deepEqual(small, []);
  if (page.viewportSize().width < 600) {
    await page.setViewportSize({ width: 320, height: 640 });
    assert.ok((await page.evaluate(() => document.scrollingElement.scrollWidth)) <= 320);
  }
  await go(page, "Shelf");
  await reachable();
  await picture("versions-shelf");
});

inBrowser("paper has what differs, in words", { screen: "desk" }, async (hands) => {
  const { page, picture } = hands;
  await oilVersion(hands);
  await sees(change(page, "sunflower oil"), /80 g/);
  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
  await sees(page.locator(".paper__sheet"), /50 g more granulated sugar/);
  await picture("version-paper");
});

inBrowser("the keyboard alone keeps a version, and the focus is never lost", { screen: "desk" }, async ({ page, paste }) => {
  await paste(CAKE);
  const button = page.getByRole("button", { name: "Keep as a new version" });
  await button.focus();
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement?.id === "version-name");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  // Cancelled: back on the button.
  await page.waitForFunction(() => document.activeElement?.id === "keep-version");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement?.id === "version-name");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement?.id === "version-kept");
  await line(page, 3).focus();
  await sees(page.getByText(/made from Mole-end cake/).first(), /Version 2/);
});

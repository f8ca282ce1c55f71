// Storage that fails in every way that it can: each is said at its place, and nothing that is kept is written over.

import assert from "node:assert/strict";
import { inBrowser, ready, textBox } from "./harness.mjs";
import { go, row, sees } from "./hands.mjs";
import { fillShelf } from "./many.mjs";

const BISCUITS = "Signal-hut biscuits\n\n1 cup all-purpose flour\n1/2 tsp baking soda";
const SCONES = "Pump-house scones\n\n250 g flour\n100 g butter";

const everything = (page) => page.evaluate(() => ({ ...localStorage }));
const recipe = (text, changed = 1, more = {}) =>
  JSON.stringify({ format: "batterwright recipe", version: 2, body: { changed, inputs: { text }, ...more } });

/** Has a call of the store throw from now on, or no longer. */
const fault = (page, name, isOn = true) =>
  page.evaluate(
    ([name, isOn]) => {
      window.whole ??= {};
      if (name === "length") {
        window.whole.length ??= Object.getOwnPropertyDescriptor(Storage.prototype, "length");
        const broken = { get: () => { throw new DOMException("No.", "InvalidStateError"); }, configurable: true };
        Object.defineProperty(Storage.prototype, "length", isOn ? broken : window.whole.length);
        return;
      }
      window.whole[name] ??= Storage.prototype[name];
      Storage.prototype[name] = isOn
        ? () => {
            throw new DOMException("No.", "InvalidStateError");
          }
        : window.whole[name];
    },
    [name, isOn],
  );

/** Fills the real store with letters of another page until not one more fits. */
const fill = (page) =>
  page.evaluate(() => {
    let step = 4_194_304;
    let filler = localStorage.getItem("another page") ?? "";
    while (step >= 1) {
      try {
        localStorage.setItem("another page", filler + "x".repeat(step));
        filler += "x".repeat(step);
      } catch {
        step = Math.floor(step / 2);
      }
    }
  });

inBrowser("a full store keeps the old record and the last letters, and says what helps", { screen: "phone" }, async ({ page, paste, reload, reachable }) => {
  await paste(SCONES);
  await go(page, "Shelf");
  await page.waitForFunction(() => localStorage.getItem("batterwright/reserve") !== null);
  await go(page, "Ticket");
  await fill(page);
  // The last letters are kept: what the list of the shelf gives back is not enough for these, so from the reserve.
  const LAST = `${SCONES}\n2 eggs\n${"Whisk. ".repeat(100)}`;
  await paste(LAST);
  await sees(page.getByRole("alert").filter({ hasText: "from a reserve" }), /is full.*Empty the bin/);
  assert.equal(await page.getByText("This recipe is not being kept").count(), 0);
  await reachable();
  // What is too much for that too is refused, and what was kept before stays whole.
  await paste(`${SCONES}\n2 eggs\n${"Whisk. ".repeat(4000)}`);
  await sees(page.getByRole("alert").filter({ hasText: "This recipe is not being kept" }), /is full\. What was kept before stays/);
  await reload();
  assert.equal(await (await textBox(page)).inputValue(), LAST);
  // Once there is room, the reserve is held again.
  await page.evaluate(() => localStorage.removeItem("another page"));
  await go(page, "Shelf");
  await page.waitForFunction(() => localStorage.getItem("batterwright/reserve") !== null);
});

inBrowser("in a full store the oldest of the bin goes first, and that is said", { screen: "phone" }, async ({ page, paste }) => {
  await page.evaluate(() => {
    for (const [name, days] of [["newest", 1], ["oldest", 20], ["middle", 10]]) {
      const body = { id: name, title: `Cake ${name}`, removed: Date.now() - days * 86_400_000, text: "y".repeat(3000) };
      localStorage.setItem(`batterwright/bin/${name}`, JSON.stringify({ format: "batterwright bin", version: 1, body }));
    }
  });
  await fill(page);
  await paste(SCONES);
  await sees(page.getByRole("alert").filter({ hasText: "went for good" }), /longest went for good: Cake oldest\./);
  const left = Object.keys(await everything(page)).filter((key) => key.startsWith("batterwright/bin/"));
  assert.deepEqual(left.sort(), ["batterwright/bin/middle", "batterwright/bin/newest"]);
  assert.equal(await page.getByText("This recipe is not being kept").count(), 0);
});

inBrowser("in a full store a recipe can be removed, put back, and removed for good", { screen: "phone" }, async ({ page, paste }) => {
  await paste(`${SCONES}\n${"\"Whisk\". ".repeat(200)}`);
  await page.waitForFunction(() => localStorage.getItem("batterwright/reserve") !== null);
  await fill(page);
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Pump-house scones" }).click();
  await page.getByText("Removed: Pump-house scones").waitFor();
  await fill(page);
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByRole("link", { name: /^Pump-house scones/ }).waitFor();
  await page.getByRole("button", { name: "Remove Pump-house scones" }).click();
  await page.locator("summary").filter({ hasText: "Bin: 1 recipe" }).click();
  await page.getByRole("button", { name: "Remove for good: Pump-house scones" }).click();
  await page.getByText("Removed for good: Pump-house scones").waitFor();
});

inBrowser("where even the bin has no room, a recipe goes for good only when that is said", { screen: "phone" }, async ({ page, paste, reachable }) => {
  const text = `${SCONES}\n${"\"Whisk\". ".repeat(500)}`;
  await paste(text);
  await go(page, "Shelf");
  await page.waitForFunction(() => localStorage.getItem("batterwright/reserve") !== null);
  await page.evaluate(() => localStorage.removeItem("batterwright/reserve"));
  await fill(page);
  await page.getByRole("button", { name: "Remove Pump-house scones" }).click();
  await page.getByText("the bin has no room for Pump-house scones").waitFor();
  assert.ok(Object.values(await everything(page)).some((kept) => kept.includes("Whisk")));
  await reachable();
  await page.getByRole("button", { name: "Remove it for good" }).click();
  await page.getByText("Removed for good: Pump-house scones").waitFor();
  assert.ok(!Object.values(await everything(page)).some((kept) => kept.includes("Whisk")));
  await page.getByRole("button", { name: "Put it back" }).click();
  await page.getByRole("link", { name: /^Pump-house scones/ }).click();
  assert.equal(await (await textBox(page)).inputValue(), text);
});

inBrowser("a store that refuses whatever it is given keeps its bin and its recipes", { screen: "phone" }, async ({ page, paste }) => {
  await paste(SCONES);
  await page.evaluate((kept) => {
    localStorage.setItem("batterwright/recipe/kept", kept);
    const body = { id: "old", title: "Old cake", removed: Date.now(), text: kept };
    localStorage.setItem("batterwright/bin/old", JSON.stringify({ format: "batterwright bin", version: 1, body }));
    Storage.prototype.setItem = () => {
      throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
    };
  }, recipe(BISCUITS));
  const records = async () => Object.entries(await everything(page)).filter(([key]) => /recipe\/|bin\//.test(key)).sort();
  const before = await records();
  await paste(`${SCONES}\n2 eggs`);
  await page.getByRole("alert").filter({ hasText: "This recipe is not being kept" }).waitFor();
  await go(page, "Shelf");
  await page.getByRole("button", { name: "Remove Signal-hut biscuits" }).click();
  await page.getByText("the bin has no room for Signal-hut biscuits").waitFor();
  await page.locator("summary").filter({ hasText: "Bin: 1 recipe" }).click();
  await page.getByRole("button", { name: "Put back Old cake" }).click();
  await sees(page.getByRole("alert").filter({ hasText: "could not be put back" }), /Nothing was changed/);
  assert.deepEqual(await records(), before);
});

inBrowser("a store that does not let itself be read is said, and not written over", { screen: "phone" }, async ({ page, paste, reload, context, site }) => {
  await paste(SCONES);
  await go(page, "Settings");
  await page.getByRole("radio", { name: "Centimetres" }).check();
  await go(page, "Ticket");
  const before = await everything(page);
  await fault(page, "getItem");
  await paste(`${SCONES}\n2 eggs`);
  await sees(page.getByRole("alert").filter({ hasText: "This recipe is not being kept" }), /does not let the page read/);
  await go(page, "Settings");
  await page.getByRole("radio", { name: "Inches" }).check();
  await page.getByRole("alert").filter({ hasText: "Your settings are not being kept" }).waitFor();
  await go(page, "Shelf");
  await sees(page.getByRole("alert").filter({ hasText: "cannot be listed" }), /does not let the page read.*left as they are/);
  await fault(page, "getItem", false);
  assert.deepEqual(await everything(page), before);
  await go(page, "Ticket");
  await paste(`${SCONES}\n3 eggs`);
  await page.getByRole("alert").filter({ hasText: "This recipe is not being kept" }).waitFor({ state: "detached" });

  // A page that begins so says it, and keeps what it makes apart.
  await context.addInitScript(() => {
    Storage.prototype.getItem = () => {
      throw new DOMException("No.", "InvalidStateError");
    };
  });
  await reload();
  await sees(page.getByRole("alert").filter({ hasText: "cannot be reached" }), /left as it is/);
});

for (const name of ["key", "length"]) {
  inBrowser(`a store whose ${name} throws is said on the shelf`, { screen: "phone" }, async ({ page, paste, reachable }) => {
    await paste(SCONES);
    const before = await everything(page);
    await fault(page, name);
    await go(page, "Shelf");
    await sees(page.getByRole("alert").filter({ hasText: "cannot be listed" }), /left as they are/);
    await reachable();
    // The open recipe is kept all the same.
    await go(page, "Ticket");
    await paste(`${SCONES}\n2 eggs`);
    await sees(row(page, 5), /egg/);
    await fault(page, name, false);
    const after = await everything(page);
    assert.deepEqual(Object.keys(before).filter((key) => !(key in after)), []);
    assert.ok(Object.values(after).some((text) => text.includes("2 eggs")));
  });
}

inBrowser("a store that lets nothing be removed says so, and the recipe stands once", { screen: "phone" }, async ({ page, paste }) => {
  await paste(SCONES);
  await go(page, "Shelf");
  await fault(page, "removeItem");
  await page.getByRole("button", { name: "Remove Pump-house scones" }).click();
  await sees(page.getByRole("alert").filter({ hasText: "could not be removed" }), /Nothing was changed/);
  await page.getByRole("link", { name: /^Pump-house scones/ }).waitFor();
});

inBrowser("what is cleared under an open recipe is said, and the recipe is kept again with the next letter", { screen: "phone" }, async ({ page, paste, reload }) => {
  await go(page, "Settings");
  await page.getByRole("radio", { name: "Centimetres" }).check();
  await go(page, "Ticket");
  await paste(SCONES);
  await page.evaluate(() => {
    localStorage.clear();
    // What the page keeps for itself may be back before the baker types.
    localStorage.setItem("batterwright/reserve", "");
  });
  await paste(`${SCONES}\n2 eggs`);
  await sees(page.getByRole("alert").filter({ hasText: "has been cleared" }), /kept again: this recipe, your settings/);
  await reload();
  assert.equal(await (await textBox(page)).inputValue(), `${SCONES}\n2 eggs`);
  await go(page, "Settings");
  assert.ok(await page.getByRole("radio", { name: "Centimetres" }).isChecked());
});

inBrowser("what another window clears is said at once", { screen: "phone" }, async ({ page, paste, context, site, reachable }) => {
  await paste(SCONES);
  const other = await context.newPage();
  await other.goto(site.address);
  await ready(other);
  await other.evaluate(() => localStorage.clear());
  await sees(page.getByRole("alert").filter({ hasText: "taken away" }), /still stands in this window/);
  await reachable();
  await paste(`${SCONES}\n2 eggs`);
  await page.getByRole("alert").filter({ hasText: "has been cleared" }).waitFor();
  assert.ok(Object.values(await everything(page)).some((text) => text.includes("2 eggs")));
});

const DAMAGED = {
  "batterwright/recipe/cut": recipe(SCONES).slice(0, 80),
  "batterwright/recipe/number": "7",
  "batterwright/recipe/list": JSON.stringify({ format: "batterwright recipe", version: 2, body: [] }),
  "batterwright/recipe/types": JSON.stringify({ format: "batterwright recipe", version: 2, body: { changed: "today", inputs: { text: 7 } } }),
  "batterwright/recipe/choices": recipe("Cake", 1).replace('"inputs":{', '"inputs":{"choices":{"shelf":"round"},'),
  "batterwright/recipe/version": recipe("Cake", 1, { version: 7 }),
  "batterwright/recipe/empty": "",
  "batterwright/settings": JSON.stringify({ format: "batterwright settings", version: 1, body: { region: "Atlantis" } }),
  "batterwright/larder": JSON.stringify({ format: "batterwright larder", version: 1, body: { entries: [{ name: 7 }] } }),
  "batterwright/weigh-in/some": JSON.stringify({ format: "batterwright weigh-in", version: "one", body: {} }),
  "batterwright/timers": "[]",
  "batterwright/bin/types": JSON.stringify({ format: "batterwright bin", version: 1, body: { removed: "long ago" } }),
  "batterwright/bin/cut": '{"format":"batterwright bin","ver',
  "batterwright/open": "o".repeat(100_000),
  "batterwright/limit": "as much as you like",
  "batterwright/reserve": "",
};

inBrowser("records that are damaged, half written or of wrong types are set aside, each with its reason", { screen: "phone" }, async ({ page, paste, reload, reachable }) => {
  await page.evaluate((damaged) => {
    for (const [key, text] of Object.entries(damaged)) localStorage.setItem(key, text);
  }, DAMAGED);
  await reload();
  await paste(SCONES);
  await go(page, "Shelf");
  const aside = Object.keys(DAMAGED).filter((key) => !/(open|limit|reserve)$/.test(key));
  await page.locator("summary").filter({ hasText: "Bin: 2 recipes" }).click();
  for (const key of aside) {
    await sees(page.getByRole("listitem").filter({ has: page.getByText(key, { exact: true }) }), /cannot be read: .{10}/);
  }
  assert.equal(await page.getByRole("button", { name: "Download it" }).count(), aside.length);
  await reachable();
  await page.getByText(/^Less than 1 % used/).waitFor();
  const after = await everything(page);
  for (const key of aside) assert.equal(after[key], DAMAGED[key], key);

  // One goes into the bin, to the letter, and comes back.
  await page.locator("summary").filter({ hasText: "Bin: 2 recipes" }).click();
  const cut = page.getByRole("listitem").filter({ has: page.getByText("batterwright/recipe/cut", { exact: true }) });
  await cut.getByRole("button", { name: "Put it into the bin" }).click();
  await cut.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Put it back" }).click();
  await cut.waitFor();
  assert.equal((await everything(page))["batterwright/recipe/cut"], DAMAGED["batterwright/recipe/cut"]);
});

inBrowser("names of a hundred thousand letters and thousands of keys of other pages are no harm", { screen: "phone" }, async ({ page, paste, reload, reachable }) => {
  await page.evaluate(([title, name]) => {
    for (let number = 0; number < 5000; number += 1) localStorage.setItem(`other/${number}`, "x");
    localStorage.setItem("batterwright/recipe/title", title);
    localStorage.setItem("batterwright/recipe/name", name);
    localStorage.setItem(`batterwright/recipe/${"k".repeat(50_000)}`, "7");
  }, [recipe(`${"Cake ".repeat(20_000)}\n1 egg`, 5), recipe("Plain\n1 egg", 4, { version: { name: "n".repeat(19_000), of: "gone", original: { text: "t".repeat(100_000) } } })]);
  await reload();
  await go(page, "Shelf");
  await page.getByRole("link", { name: /^(Cake ){16}/ }).waitFor();
  await page.getByRole("link", { name: /^Plain, n{40}/ }).waitFor();
  await page.getByRole("button", { name: "Download it" }).waitFor();
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), "The page runs off to the side.");
  await reachable();
  await page.getByRole("link", { name: /^(Cake ){16}/ }).click();
  await sees(row(page, 2), /1 egg|egg/);
  await paste(SCONES);
  await sees(row(page, 3), /^250 g/);
  assert.equal((await everything(page))["other/4999"], "x");
});

inBrowser("two hundred damaged recipes do not keep the shelf from opening", { screen: "desk" }, async ({ page }) => {
  await fillShelf(page, 200);
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage)) {
      if (key.startsWith("batterwright/recipe/")) localStorage.setItem(key, localStorage.getItem(key).slice(0, -1));
    }
  });
  await go(page, "Shelf");
  await page.getByRole("heading", { level: 2, name: "Set aside" }).waitFor();
  assert.equal(await page.getByRole("button", { name: "Download it" }).count(), 200);
});

// Safe by construction: no text becomes markup or script wherever it comes from, the browser holds the page to its
// policy, and what is too large is refused.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { DIST, inBrowser, textBox } from "./harness.mjs";
import { details, everything, go, line, part, sees } from "./hands.mjs";

test("nothing in the page's file runs or is styled in place, and its policy comes before all that it loads", () => {
  const html = readFileSync(join(DIST, "index.html"), "utf8");
  for (const [script] of html.matchAll(/<script\b[^>]*>[^<]*/g)) assert.match(script, /\bsrc="?\.\/[^>]*>\s*$/, script);
  assert.doesNotMatch(html, /<style|\sstyle=|\son[a-z]+=|javascript:/i);
  const first = (pattern) => html.search(pattern);
  assert.ok(first(/Content-Security-Policy/) < first(/<link|<script/));
  for (const [, address] of html.matchAll(/(?:href|src)="?([^"\s>]+)/g)) assert.match(address, /^\.\//, "It asks for something from elsewhere.");
});

inBrowser("the browser refuses what the policy forbids", { allow: /policy|Trusted|Refused|violates|asked elsewhere|ERR_|Failed to/ }, async ({ page }) => {
  const done = await page.evaluate(async () => {
    const tried = async (attempt) => {
      try {
        await attempt();
        return "done";
      } catch (error) {
        return error.name;
      }
    };
    const script = document.createElement("script");
    script.append("window.ran = true;");
    document.body.append(script);
    document.body.setAttribute("style", "color: red");
    return {
      handler: await tried(() => document.body.setAttribute("onclick", "window.ran = true;")),
      markup: await tried(() => (document.body.innerHTML = "<b>bold</b>")),
      text: await tried(() => setTimeout("window.ran = true")),
      elsewhere: await tried(() => fetch("https://example.org/")),
      secondPolicy: await tried(() => window.trustedTypes.createPolicy("batterwright", { createScriptURL: (address) => address })),
      anotherPolicy: await tried(() => window.trustedTypes.createPolicy("another", {})),
      ran: window.ran ?? false,
      style: document.body.style.color,
    };
  });
  assert.deepEqual(done, {
    handler: "TypeError",
    markup: "TypeError",
    text: "TypeError",
    elsewhere: "TypeError",
    secondPolicy: "TypeError",
    anotherPolicy: "TypeError",
    ran: false,
    style: "",
  });
});

/** Text that would be markup, script or another direction of writing, were it let. */
const HOSTILE = [
  "<img src=x onerror=alert(1)>",
  "</script><script>alert(2)</script>",
  "</textarea><svg onload=alert(3)>",
  "\"><a href='javascript:alert(4)'>",
  "{{7*7}} ${7*7} &lt;b&gt;",
  "\u202e\u2066over\u202c",
  "\u0000null",
];

/** Fails where anything on the page was made of text: elements or addresses that we never draw, or a call that they made. */
async function stayedText(page, where) {
  const found = await page.evaluate(() =>
    [...document.querySelectorAll("img, script:not([src]), b, iframe, object, embed, style, [onerror], [onload], [onclick]")]
      .concat([...document.querySelectorAll("[href], [src], [action], [formaction]")].filter((element) => /^\s*(javascript|data):/i.test(element.getAttribute("href") ?? element.getAttribute("src") ?? "")))
      .map((element) => element.outerHTML.slice(0, 200)),
  );
  assert.deepEqual(found, [], where);
}

inBrowser("hostile text stays text in every place that shows it", { screen: "desk" }, async ({ page, paste, reload }) => {
  page.on("dialog", (dialog) => {
    dialog.dismiss();
    assert.fail(`The page ran what was written: ${dialog.message()}`);
  });
  const recipe = [HOSTILE[0] + " cake", "", ...HOSTILE.map((words) => `2 cups ${words}`), `1 cup flour ${HOSTILE[0]}`, "", "Method", ...HOSTILE, `Bake in a 9 inch ${HOSTILE[0]} pan.`].join("\n");
  await paste(recipe);
  const seen = await everything(page);
  for (const words of ["<img src=x onerror=alert(1)>", "<svg onload=alert(3)>", "{{7*7}} ${7*7}"]) assert.ok(seen.includes(words), words);
  await stayedText(page, "the ticket");
  await line(page, 3).click();
  await details(page, 3).getByLabel("It is another ingredient").fill(HOSTILE[0]);
  await details(page, 3).getByLabel("Your own weight in the recipe, in grams").fill(HOSTILE[1]);
  await stayedText(page, "an open row");
  await page.getByRole("button", { name: "Keep as a new version" }).click();
  await page.getByLabel("Name of the new version").fill(HOSTILE[0]);
  await page.getByRole("button", { name: "Keep it" }).click();
  await sees(part(page, "What differs"), /<img src=x onerror=alert\(1\)>/);
  await stayedText(page, "a version");
  await go(page, "Shelf");
  await sees(page.getByRole("main"), /<img src=x onerror=alert\(1\)> cake/);
  await stayedText(page, "the shelf");
  await go(page, "Larder");
  await page.getByRole("searchbox", { name: "Look an ingredient up" }).fill(HOSTILE[0]);
  await page.getByRole("button", { name: "Add an ingredient of your own" }).click();
  for (const field of await page.getByRole("main").getByRole("textbox").all()) await field.fill(HOSTILE[0]);
  await page.getByRole("heading", { level: 1, name: HOSTILE[0] }).waitFor();
  await stayedText(page, "an own ingredient");
  await go(page, "Settings");
  for (const field of await page.getByRole("main").getByRole("textbox").all()) await field.fill(HOSTILE[1]);
  await stayedText(page, "the settings");
  await reload();
  await go(page, "Larder");
  await stayedText(page, "the larder, opened again");
  await go(page, "Ticket");
  await stayedText(page, "the ticket, opened again");
});

inBrowser("a hostile file, a hostile record and a hostile address stay text", { screen: "phone" }, async ({ page, reload }) => {
  await textBox(page);
  const html = `<html><body><h1>${HOSTILE[0]}</h1><script>alert(5)</script><ul><li>2 cups flour</li><li>1 cup ${HOSTILE[0]}</li></ul></body></html>`;
  await page.getByLabel(/open a file/i).setInputFiles({ name: "<img src=x>.html", mimeType: "text/html", buffer: Buffer.from(html) });
  await sees(part(page, "Weights"), /flour/);
  await stayedText(page, "a file");
  await page.evaluate((words) => {
    localStorage.setItem(`batterwright/recipe/${words}`, words);
    localStorage.setItem("batterwright/open", words);
  }, HOSTILE[0]);
  await reload();
  await stayedText(page, "a damaged record");
  await go(page, "Shelf");
  await sees(page.getByRole("main"), /<img src=x onerror=alert\(1\)>/);
  await stayedText(page, "the shelf");
  for (const address of HOSTILE.flatMap((words) => [`#/larder/${words}`, `#/larder/own/${words}`, `#/line/${words}`, `#${words}`, `#/${encodeURIComponent(words)}`])) {
    await page.evaluate((address) => {
      location.hash = address;
    }, address);
    await stayedText(page, address);
  }
});

inBrowser("writing from right to left turns nothing but its own line", { screen: "phone" }, async ({ page, paste }) => {
  await paste("Turned\n\n2 cups flour \u202e\u2067 gnirts\n1 cup milk");
  for (const number of [3, 4]) {
    const order = await line(page, number).evaluate((button) => {
      const place = (of) => button.closest("tr").querySelector(of).getBoundingClientRect();
      return [place(".row__grams").right <= place(".row__ingredient").left + 1, getComputedStyle(button.querySelector(".row__name")).unicodeBidi];
    });
    assert.deepEqual(order, [true, "isolate"], `line ${number}`);
  }
});

inBrowser("a file larger than any recipe is not opened", { screen: "phone" }, async ({ page }) => {
  await textBox(page);
  const before = await (await textBox(page)).inputValue();
  // A file of that size as the browser tells of it, without its bytes.
  await page.evaluate(() => Object.defineProperty(Blob.prototype, "size", { get: () => 32_000_001 }));
  await page.getByLabel(/open a file/i).setInputFiles({ name: "large.txt", mimeType: "text/plain", buffer: Buffer.from("2 cups flour") });
  await page.getByText("This file is larger than 32 MB, so it was not opened.").waitFor();
  assert.equal(await (await textBox(page)).inputValue(), before);
});

inBrowser("a page that breaks says so, and that the recipe is kept", { screen: "phone", opened: false, allow: /panicked|unreachable|broken/ }, async ({ page, site }) => {
  // The browser refuses to make drawings, which no browser does.
  await page.addInitScript(() => {
    document.createElementNS = () => {
      throw new DOMException("No drawing today.", "NotSupportedError");
    };
  });
  await page.goto(site.address);
  const alert = page.getByRole("alert").filter({ hasText: "This page has broken." });
  await sees(alert, /Your recipe is kept on this device/);
  await alert.getByRole("link", { name: "Load again" }).waitFor();
});

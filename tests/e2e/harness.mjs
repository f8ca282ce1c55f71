// What every browser test stands on: a server for the built page, a real Chromium, and a watch for errors.
//
//   import { inBrowser, everywhere } from "./harness.mjs";
//
//   inBrowser("the page says what it is", { screen: "phone" }, async ({ page }) => { ... });
//   everywhere("no barrier", async ({ page, reachable }) => { await reachable(); });
//
// A test gets a fresh server, a fresh browser context and the page, loaded and ready. It fails when the page writes an
// error to the console, throws, does what its policy forbids or has none, or asks for anything from elsewhere, whatever
// else it checks.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";
import { launch } from "../../.make/browser.mjs";
import { serve } from "../../.make/serve.mjs";
import { COLOURS, LOOKS, PATIENCE, SCREENS, ready, textBox } from "./screens.mjs";

export { ready, textBox };

/** The built page. */
export const DIST = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "dist");
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let browser = null;
after(async () => {
  await browser?.close();
});

/** Makes local storage refuse to keep anything (`full`), or to be touched at all (`forbidden`). Runs in the page. */
function breakStorage(how) {
  if (how === "full") {
    Storage.prototype.setItem = () => {
      throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
    };
  } else {
    Object.defineProperty(window, "localStorage", {
      get() {
        throw new DOMException("Access is denied for this document.", "SecurityError");
      },
    });
  }
}

/** A copy of the built page on a server of its own, which can be stopped, started again and given a new version. */
async function site(under) {
  assert.ok(existsSync(join(DIST, "index.html")), "There is no built page: run make dist first.");
  const folder = mkdtempSync(join(tmpdir(), "batterwright-"));
  cpSync(DIST, folder, { recursive: true });
  const asked = [];
  let breaksOff = null;
  /** Writes each request down, and sends half of what is to break off. */
  const first = (request, response) => {
    asked.push(request.url);
    const broken = breaksOff && request.url.endsWith(breaksOff);
    if (!broken) return false;
    const content = readFileSync(join(folder, breaksOff));
    response.writeHead(200, { "content-length": content.length });
    response.write(content.subarray(0, content.length / 2), () => response.destroy());
    return true;
  };
  let server = await serve({ folder, under, first });
  const { address, port } = server;
  return {
    address,
    /** Every address that was asked for, without the origin. */
    asked,
    /** From now on this file breaks off half way. */
    breakOff(file) {
      breaksOff = file;
    },
    /** Where the served files lie; a test may change them. */
    folder,
    /** Stops the server: from now on the network has nothing to give. */
    stop: () => server.close(),
    /** Starts it again at the same address. */
    start: async () => {
      server = await serve({ folder, under, port, first });
    },
    /** Publishes a next version: the same page with data-version on its html element, and a worker that knows it. */
    publish(version) {
      const index = join(folder, "index.html");
      writeFileSync(index, readFileSync(index, "utf8").replace(/<html( data-version="[^"]*")?/, `<html data-version="${version}"`));
      const sum = createHash("sha256").update(readFileSync(index)).digest("hex").slice(0, 16);
      const worker = join(folder, "worker.js");
      const next = readFileSync(worker, "utf8").replace(/VERSION = "[^"]*"/, `VERSION = "${version}"`);
      writeFileSync(worker, next.replace(/"index.html": "[^"]*"/, `"index.html": "${sum}"`));
    },
    /** Publishes the first version again. */
    publishFirst: () => cpSync(DIST, folder, { recursive: true }),
    close: async () => {
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Runs in the page: what its policy forbids becomes an error, as every other. */
function watchPolicy() {
  document.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI, sample }) => {
    console.error(`against the policy: ${effectiveDirective}, ${blockedURI} ${sample}`);
  });
}

/** Fails unless the page has its policy, which lets no script or style stand in the page and no text become either. */
async function hasPolicy(page) {
  const policy = await page.locator("meta[http-equiv=Content-Security-Policy]").getAttribute("content");
  for (const needed of ["default-src 'none'", "script-src 'self' 'wasm-unsafe-eval';", "style-src 'self';", "connect-src 'self';", "require-trusted-types-for 'script'"]) {
    assert.ok(policy.includes(needed), `The policy has no ${needed}`);
  }
  assert.doesNotMatch(policy, /unsafe-inline|'unsafe-eval'|https?:|\*/);
}

/** Every error that the pages of `context` report, and every request that leaves `address`. */
function watch(context, address, errors) {
  const origin = new URL(address).origin;
  context.on("console", (message) => {
    if (message.type() === "error") errors.push(`console: ${message.text()} (${message.location().url})`);
  });
  context.on("weberror", (error) => errors.push(`thrown: ${error.error().message}`));
  context.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(origin) && !/^(data|blob|about):/.test(url)) errors.push(`asked elsewhere: ${url}`);
  });
}

/**
 * What axe-core finds against the page as it stands, as one readable text; empty when it finds nothing. Every rule that
 * it has looks, those of WCAG's level AAA, of good practice and on trial too, and a finding of any weight counts. One is
 * left out: "hidden-content", which only says that something is folded, and tests unfold it.
 */
async function barriers(page) {
  // Colours in the middle of a change would be measured wrongly.
  await page.evaluate(() => Promise.all(document.getAnimations().map((animation) => animation.finished.catch(() => {}))));
  await page.evaluate(AXE);
  const violations = await page.evaluate(async () => {
    const rules = Object.fromEntries(window.axe.getRules().map(({ ruleId }) => [ruleId, { enabled: ruleId !== "hidden-content" }]));
    return (await window.axe.run(document, { rules, resultTypes: ["violations"] })).violations;
  });
  return violations
    .flatMap(({ id, help, nodes }) => nodes.map((node) => `${id}: ${help}\n  ${node.html}\n  ${node.failureSummary?.replaceAll("\n", "\n  ")}`))
    .join("\n");
}

/**
 * Registers one test in a real browser.
 *
 * Options: `screen` ("phone", "desk" or "zoomed"), `colours` ("light", "dark" or "forced"), `under` (the sub-path that the page is
 * served from), `storage` ("full" or "forbidden"), `offline` (true waits until the page is kept on the device
 * before the test begins), `allow` (a pattern of errors that are part of the test), `before`, a function run in the
 * page before its own scripts, `opened` (false leaves it to the test to open the page), and `todo` (what is still to
 * be mended before this test can pass).
 *
 * The test is called with `page`, `context`, `site` and these helpers:
 * - `reachable()` fails on any finding of axe-core;
 * - `cutNetwork()` takes the browser offline and stops the server, `mendNetwork()` undoes both;
 * - `keptOffline()` waits until the worker has kept the whole page;
 * - `reload()` loads the page again and waits until it is ready;
 * - `paste(text)` puts the text into the recipe's box as a paste does, in one input, in place of what is there;
 * - `picture(name)` keeps a screenshot when PICTURES=folder is set.
 */
export function inBrowser(name, options, body) {
  const { screen = "phone", colours = "light", under = "/", storage, offline = false, allow, before, opened = true, todo } = options;
  test(`${name} (${screen}, ${colours})`, { timeout: 120_000, todo }, async () => {
    browser ??= await launch();
    const here = await site(under);
    // Without motion a page stands still at once, and a test need not wait for it.
    const reader = { ...COLOURS[colours], reducedMotion: "reduce", acceptDownloads: true, locale: "en-GB" };
    const context = await browser.newContext({ ...SCREENS[screen], ...reader });
    const errors = [];
    try {
      context.setDefaultTimeout(PATIENCE);
      watch(context, here.address, errors);
      await context.addInitScript(watchPolicy);
      if (storage) await context.addInitScript(breakStorage, storage);
      if (before) await context.addInitScript(before);
      const page = await context.newPage();
      const helpers = {
        page,
        context,
        site: here,
        reachable: async () => assert.equal(await barriers(page), ""),
        cutNetwork: async () => {
          // The browser fetches the tab's icon by itself, after the page and past the worker: first it may finish.
          await page.waitForLoadState("networkidle");
          await context.setOffline(true);
          await here.stop();
        },
        mendNetwork: async () => {
          await here.start();
          await context.setOffline(false);
        },
        keptOffline: () => page.waitForSelector("html[data-offline=ready]", { state: "attached" }),
        reload: async () => {
          await page.reload();
          await ready(page);
        },
        paste: async (text) =>
          (await textBox(page)).evaluate((field, pasted) => {
            field.focus();
            field.value = pasted;
            field.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertFromPaste" }));
          }, text),
        picture: async (file) => {
          if (process.env.PICTURES) await page.screenshot({ path: join(process.env.PICTURES, `${file}-${screen}-${colours}.png`), fullPage: true });
        },
      };
      if (opened) {
        await page.goto(here.address);
        await ready(page);
        await hasPolicy(page);
      }
      if (offline) await helpers.keptOffline();
      await body(helpers);
      const unwanted = errors.filter((error) => !allow?.test(error));
      assert.deepEqual(unwanted, [], "The page reported errors.");
    } catch (error) {
      if (errors.length > 0) error.message += `\nThe page reported:\n${errors.join("\n")}`;
      throw error;
    } finally {
      await context.close();
      await here.close();
    }
  });
}

/** Registers the same test for every way to look at the page: screens, colour schemes, the reader's own colours, zoom. */
export function everywhere(name, body, options = {}) {
  for (const [screen, colours] of LOOKS) inBrowser(name, { ...options, screen, colours }, body);
}

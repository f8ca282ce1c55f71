// What Lighthouse says of a page on its slow phone. Only `make bench` has it: .make/setup.sh puts it under target/tools.

import { createServer } from "node:net";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { FLAGS, chromiumPath } from "../../.make/browser.mjs";

const TOOL = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "target", "tools", "lighthouse", "node_modules", "lighthouse", "core", "index.js");

/** A port that nobody listens at. */
const freePort = () =>
  new Promise((found) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => found(port));
    });
  });

/**
 * Looks at each address on a slow phone, on a first visit of its own, and gives the scores from 0 to 1 by category, the times in
 * milliseconds, the bytes that came, and what is short of full marks, in words.
 */
export async function look(addresses) {
  const { default: lighthouse } = await import(pathToFileURL(TOOL).href);
  const port = await freePort();
  const root = process.getuid?.() === 0;
  const browser = await chromium.launch({
    executablePath: chromiumPath(),
    headless: true,
    args: [...FLAGS, `--remote-debugging-port=${port}`, ...(root ? ["--no-sandbox"] : [])],
  });
  const looks = [];
  try {
    for (const address of addresses) {
      const { lhr } = await lighthouse(address, { port, output: "json", logLevel: "error", onlyCategories: ["performance", "accessibility", "best-practices"] });
      if (lhr.runtimeError) throw new Error(`Lighthouse: ${lhr.runtimeError.message}`);
      const scores = Object.fromEntries(Object.entries(lhr.categories).map(([name, { score }]) => [name, score]));
      const time = (name) => lhr.audits[name].numericValue;
      const short = Object.values(lhr.categories)
        .flatMap(({ id, auditRefs }) => auditRefs.map((ref) => ({ id, ...ref, ...lhr.audits[ref.id] })))
        .filter(({ weight, score }) => weight > 0 && score !== null && score < 1)
        .map(({ category, id, score, displayValue }) => `${id} ${score} ${displayValue ?? ""}`.trim());
      looks.push({
        address,
        scores,
        painted: time("first-contentful-paint"),
        largest: time("largest-contentful-paint"),
        blocked: time("total-blocking-time"),
        usable: time("interactive"),
        shift: time("cumulative-layout-shift"),
        bytes: time("total-byte-weight"),
        short,
        largestIs: lhr.audits["largest-contentful-paint-element"]?.details?.items?.[0]?.items?.[0]?.node?.snippet,
      });
    }
  } finally {
    await browser.close();
  }
  return looks;
}

// Finds the Chromium of this machine and starts it with the flags it needs there.
// Used by the browser tests, the bench and the icon drawing, so that all three drive the same browser.

import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { chromium } from "playwright-core";

/** Names under which a Chromium is installed, Debian's first. */
const NAMES = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome"];

/** No calls home during a test. */
export const FLAGS = [
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** The path of the first Chromium on PATH; `CHROMIUM=/path` decides otherwise. */
export function chromiumPath() {
  if (process.env.CHROMIUM) return process.env.CHROMIUM;
  for (const name of NAMES) {
    for (const folder of (process.env.PATH ?? "").split(delimiter)) {
      const path = join(folder, name);
      try {
        accessSync(path, constants.X_OK);
        return path;
      } catch {
        // Not in this folder.
      }
    }
  }
  throw new Error("No Chromium found. Install it (Debian: apt-get install chromium) or set CHROMIUM=/path/to/chromium.");
}

/** Starts a headless Chromium. Root cannot use its sandbox, so root goes without. */
export function launch() {
  const root = process.getuid?.() === 0;
  return chromium.launch({
    executablePath: chromiumPath(),
    headless: true,
    args: root ? [...FLAGS, "--no-sandbox"] : FLAGS,
  });
}

// The screens that the page is looked at on, when it counts as ready, and the way to its text box. Used by the browser tests and the bench.

/** The screens, as options of a browser context. */
export const SCREENS = {
  phone: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
  desk: { viewport: { width: 1280, height: 800 } },
  // A desk's screen of 1280 by 1024 at a zoom of 400 %.
  zoomed: { viewport: { width: 320, height: 256 }, deviceScaleFactor: 4 },
};

/** The colour schemes, as options of a browser context; "forced" is the reader's own in place of ours. */
export const COLOURS = {
  light: { colorScheme: "light" },
  dark: { colorScheme: "dark" },
  forced: { colorScheme: "dark", forcedColors: "active" },
};

/** Every way to look at the page that may keep somebody from it. */
export const LOOKS = [
  ["phone", "light"],
  ["phone", "dark"],
  ["phone", "forced"],
  ["desk", "light"],
  ["desk", "dark"],
  ["zoomed", "light"],
];

/** How long anything on the page may take before a test gives up, in milliseconds. */
export const PATIENCE = 20_000;

/** Resolves when the page has mounted and answers to the baker. */
export const ready = (page) => page.waitForSelector("html[data-ready=true]", { state: "attached", timeout: PATIENCE });

/** The recipe's text box, opened first where a small screen keeps it closed. */
export async function textBox(page) {
  const toggle = page.locator("[aria-controls=recipe-text-box][aria-expanded=false]");
  if (await toggle.isVisible()) await toggle.click();
  return page.locator("#recipe-text");
}

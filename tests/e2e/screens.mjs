// The screens that the page is looked at on, and when it counts as ready. Used by the browser tests and the bench.

/** The screens, as options of a browser context. */
export const SCREENS = {
  phone: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
  desk: { viewport: { width: 1280, height: 800 } },
};

/** The colour schemes. */
export const COLOURS = ["light", "dark"];

/** How long anything on the page may take before a test gives up, in milliseconds. */
export const PATIENCE = 10_000;

/** Resolves when the page has mounted and answers to the baker. */
export const ready = (page) => page.waitForSelector("html[data-ready=true]", { state: "attached", timeout: PATIENCE });

// The page by the keyboard alone: what has the focus, whether that can be seen, and the way to it.

import assert from "node:assert/strict";

/** What has the focus: its words, its own or its label's, and whether it can be seen that it has it. */
export const focused = (page) =>
  page.evaluate(() => {
    const element = document.activeElement;
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
    const box = element.getBoundingClientRect();
    const [x, y] = [box.left + box.width / 2, box.top + Math.min(box.height, innerHeight) / 2];
    const top = document.elementFromPoint(x, y);
    const bar = document.querySelector(".pages");
    const covered = getComputedStyle(bar).position === "fixed" && !bar.contains(element) && box.height < innerHeight / 2 && box.bottom > bar.getBoundingClientRect().top + 1;
    const words = element.labels?.[0]?.textContent ?? element.textContent;
    return {
      name: element === document.body ? "" : (element.getAttribute("aria-label") ?? words).trim().replace(/\s+/g, " ").slice(0, 200),
      id: element.id,
      tag: element.tagName,
      ringed: (outlineStyle !== "none" && parseFloat(outlineWidth) >= 2) || boxShadow !== "none",
      inSight: element === top || element.contains(top) || Boolean(top?.contains(element) && top.closest("label")),
      covered,
      where: `${Math.round(box.left)},${Math.round(box.top)} to ${Math.round(box.right)},${Math.round(box.bottom)} of ${innerWidth},${innerHeight}, there: ${top?.outerHTML.slice(0, 100)}`,
    };
  });

/** Fails unless it can be seen where the focus is, and that it is there. */
export function clear(on) {
  const what = `"${on.name}" (${on.tag} ${on.id})`;
  assert.ok(on.ringed, `no ring around ${what}`);
  assert.ok(on.inSight, `${what} has the focus out of sight, at ${on.where}`);
  assert.ok(!on.covered, `${what} has the focus below the bar of pages, at ${on.where}`);
}

/** Presses Tab, or the key given, until the focus is on what has that name, words or a pattern; it can be seen all the way. */
export async function tabTo(page, name, key = "Tab") {
  const is = (on) => (name instanceof RegExp ? name.test(on.name) : on.name === name);
  for (let step = 0; step < 250; step += 1) {
    await page.keyboard.press(key);
    const on = await focused(page);
    // Past the end the browser has the focus itself, and then begins anew.
    if (on.tag === "BODY") continue;
    clear(on);
    if (is(on)) return on;
  }
  return assert.fail(`${key} does not lead to ${name}`);
}

// What a baker sees and touches on the ticket, found by role and name as a person or a screen reader finds it.

import assert from "node:assert/strict";
import { PATIENCE } from "./screens.mjs";

const tidy = (text) => text.replace(/\s+/g, " ").trim();

/** Waits until what the place shows matches the pattern, and gives it. */
export async function sees(place, pattern) {
  const end = Date.now() + PATIENCE;
  for (;;) {
    await place.waitFor();
    // Parts out of sight rest while somebody types. Scrolled at once: waiting until a part stands still would fail on one
    // that is drawn anew meanwhile.
    await place.evaluate((part) => part.scrollIntoView({ block: "nearest" }));
    const text = tidy(await place.innerText());
    if (pattern.test(text)) return text;
    if (Date.now() > end) assert.match(text, pattern);
    await new Promise((later) => setTimeout(later, 30));
  }
}

/** A verdict in the strip at the head of the ticket: "Acid and soda", "Gas", "Weights", "Pan" or "Findings". */
export const verdict = (page, of) =>
  page.getByRole("navigation", { name: "Verdicts" }).getByRole("link", { name: new RegExp(`^${of}\\b`) });

/** A part of the ticket by its heading. */
export const part = (page, name) => page.getByRole("region", { name, exact: true });

/** The table of weights. */
export const table = (page) => page.getByRole("table", { name: /^What to weigh/ });

const named = (number) => new RegExp(`line ${number}\\b`);

/** The button that opens the row of a line of the text, counted from 1. */
export const line = (page, number) => table(page).getByRole("button", { name: named(number) });

/** The row of that line: weight, ingredient, and what stands beside. */
export const row = (page, number) => table(page).getByRole("row").filter({ has: page.getByRole("button", { name: named(number) }) });

/** What is known of an open line, and the form to mend it. */
export const details = (page, number) => page.getByRole("group", { name: `Line ${number}`, exact: true });

/** The first figure of a text, in grams; null where it holds none. */
export function grams(text) {
  const figure = /([\d.,]+)\s*(kg|g)\b/.exec(text);
  return figure ? Number(figure[1].replace(",", "")) * (figure[2] === "kg" ? 1000 : 1) : null;
}

/** Every line of the table of weights: its number, what to weigh, the name with its notes, and what stands beside. */
export async function weights(page) {
  await table(page).scrollIntoViewIfNeeded();
  const rows = await table(page)
    .getByRole("row")
    .evaluateAll((rows) => rows.map((row) => [...row.cells].map((cell) => cell.innerText)));
  return rows
    .filter((cells) => cells.length === 3 && /line \d+/.test(cells[1]))
    .map(([weight, name, beside]) => ({
      line: Number(/line (\d+)/.exec(name)[1]),
      weight: tidy(weight),
      name: tidy(name),
      beside: tidy(beside),
    }));
}

/** The mean of one line as it stands in the table, in grams; null where it has no weight. */
export async function weightOf(page, number) {
  const cell = row(page, number).getByRole("cell").first();
  // Out of sight, while the focus is by the text, it is not laid out and has no text that could be seen.
  await cell.scrollIntoViewIfNeeded();
  return grams(await cell.innerText());
}

/** Asserts that a figure lies within a share of the figure expected. */
export function near(figure, expected, share, what) {
  assert.ok(Math.abs(figure - expected) <= expected * share, `${what}: ${figure}, expected ${expected} within ${share * 100} %`);
}

/** All the words of the page below its head, once nobody types any more. */
export async function everything(page) {
  await page.evaluate(async () => {
    document.activeElement?.blur();
    for (let frame = 0; frame < 3; frame += 1) await new Promise(requestAnimationFrame);
  });
  return page.getByRole("main").innerText();
}

/** The button that mends the acid, in the part on acid and gas. */
export const remedy = (page) => part(page, "Acid and gas").getByRole("button", { name: /baking soda/ }).first();

/** Goes to another page by the bar of pages: "Ticket", "Bench", "Trials", "Shelf", "Larder", "Settings"; "About" by the foot. */
export async function go(page, name) {
  const bar = page.getByRole("navigation", { name: "Pages" });
  const place = name === "About" ? page.getByRole("contentinfo") : bar;
  await place.getByRole("link", { name, exact: true }).click();
  if (name !== "Ticket") await page.getByRole("heading", { level: 1, name: new RegExp(`^${name}`) }).waitFor();
  else await page.getByRole("navigation", { name: "Verdicts" }).waitFor();
}

/** Fills the fields of the pan on the shelf, which has been asked for. */
export async function choosePan(page, { shape, unit, length, width, depth }) {
  const form = page.getByRole("group", { name: "The pan on the shelf" });
  if (unit) await form.getByLabel("Lengths in").selectOption({ label: unit });
  if (shape) await form.getByLabel("Shape").selectOption({ label: shape });
  const fields = form.getByRole("textbox");
  // How many, length or diameter, width where the shape has one, depth.
  const labels = await fields.evaluateAll((fields) => fields.map((field) => field.labels[0].textContent));
  const field = (pattern) => fields.nth(labels.findIndex((label) => pattern.test(label)));
  if (length) await field(/^(Length|Side|Diameter|Across)/).fill(length);
  if (width) await field(/^Width/).fill(width);
  if (depth) await field(/^Depth/).fill(depth);
}

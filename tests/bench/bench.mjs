// Prints the figures of the page, each as a ratio to its floor: `make bench`.
//
// The floor in size and in loading is the one-button page of tests/floor, built by the same recipe. The floor of
// everything that happens while a baker types is one frame of a 60 Hz screen. Browser times are taken with the
// processor slowed four times, for a phone of some years; they vary by a tenth or so from run to run.

import { execFileSync } from "node:child_process";
import { existsSync, readFileSync, readdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { launch } from "../../.make/browser.mjs";
import { serve } from "../../.make/serve.mjs";
import { SCREENS, ready, textBox } from "../e2e/screens.mjs";
import { look } from "./lighthouse.mjs";
import { manyTrials } from "./many_trials.mjs";
import { parts, sent } from "./parts.mjs";
import { firstVisit, laterVisit, longShelf } from "./slow_phone.mjs";

const HERE = dirname(fileURLToPath(import.meta.url));
const ROOT = join(HERE, "..", "..");
const PAGE = join(ROOT, "dist");
const FLOOR = join(ROOT, "target", "floor");
/** Made by `make reference`; without it nothing here needs Python. */
const PYTHON = join(ROOT, "target", "tools", "reference", "bin", "python");
const RECIPE = readFileSync(join(HERE, "forty_lines.txt"), "utf8");
const BUILT = process.env.CARGO_TARGET_DIR ?? join(ROOT, "target");

const FRAME = 1000 / 60;
const SLOWED = 4;
const LOADS = 5;
/** After the last change this long nothing may change any more, in milliseconds; only then a key counts as done. */
const QUIET = 300;
/** How many different lines are read, and what a baker who pastes them may wait for their reading, in milliseconds. */
const MANY = 2000;
const MANY_MAY_TAKE = 50;
const READINGS = 7;
/** What a plan of several swaps may take, in milliseconds. */
const SEVERAL_MAY_TAKE = 100;
/** What a first visit may bring, in bytes; when a later one is to be usable, in milliseconds; what Lighthouse's score is to be at least. */
const FIRST_MAY_BRING = 400_000;
const LATER_MAY_TAKE = 500;
const SCORE = { performance: 0.95, accessibility: 1, "best-practices": 1 };
const PAGES = { Ticket: "", Bench: "#/bench", Shelf: "#/shelf", Larder: "#/larder", Settings: "#/settings", About: "#/about" };

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const high = (values) => [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * 0.95))];

// Sizes.

/** What the tables come to, as the build packed them last. */
function tables() {
  const builds = join(BUILT, "wasm32-unknown-unknown", "release", "build");
  const packed = readdirSync(builds).map((name) => join(builds, name, "out", "larder.txt")).filter((path) => existsSync(path));
  const newest = packed.sort((one, two) => statSync(two).mtimeMs - statSync(one).mtimeMs)[0];
  return newest ? sent(newest) : Number.NaN;
}

const total = (folder, wanted = () => true) =>
  readdirSync(folder, { recursive: true })
    .filter((name) => statSync(join(folder, name)).isFile() && wanted(name))
    .reduce((sum, name) => sum + sent(join(folder, name)), 0);

// Loading.

/** A fresh visit to `folder`, slowed; gives the page, its session and what it took, in milliseconds. */
async function visit(browser, folder, before = () => {}, screen = SCREENS.phone) {
  const server = await serve({ folder });
  const context = await browser.newContext(screen);
  await context.addInitScript(before);
  await context.addInitScript(() => {
    const look = () => {
      if (document.documentElement?.dataset.ready === "true" && !window.usable) window.usable = performance.now();
    };
    new MutationObserver(look).observe(document, { attributes: true, childList: true, subtree: true });
  });
  const page = await context.newPage();
  const asked = [];
  page.on("request", (request) => asked.push(new URL(request.url()).pathname.slice(1) || "index.html"));
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  await page.goto(server.address);
  await ready(page);
  await page.waitForFunction(() => performance.getEntriesByName("first-contentful-paint").length > 0);
  const [painted, usable] = await page.evaluate(() => [performance.getEntriesByName("first-contentful-paint")[0].startTime, window.usable]);
  const close = async () => {
    await context.close();
    await server.close();
  };
  return { page, session, asked, painted, usable, close };
}

async function loading(browser, folder) {
  const visits = [];
  for (let round = 0; round < LOADS; round += 1) {
    const { asked, painted, usable, close } = await visit(browser, folder);
    await close();
    visits.push({ asked, painted, usable });
  }
  return {
    asked: new Set(visits[0].asked.filter((name) => !/icons\/|favicon|worker\.js/.test(name))),
    painted: median(visits.map((one) => one.painted)),
    usable: median(visits.map((one) => one.usable)),
  };
}

// Reading.

/** So many different lines of recipes: those of the tables of readings, then the same with other amounts. */
function realLines(count) {
  const tables = ["lines", "own", "public_domain"].map((name) => readFileSync(join(ROOT, "tests", "read", `${name}.tsv`), "utf8"));
  const rows = tables.flatMap((table) => table.split("\n")).filter((row) => row && !row.startsWith("#"));
  const lines = rows.map((row) => row.split("\t")[2].replaceAll("\\t", "\t"));
  const others = lines.map((line) => line.replace(/[1-8]/, (figure) => String(Number(figure) + 1)));
  return [...new Set([...lines, ...others])].slice(0, count);
}

/**
 * Runs in the page before anything else: from now on `window.busy` is how long the module itself has worked, in
 * milliseconds, without what it calls in the browser. Nothing of the page has to be changed for that.
 */
function watchModule() {
  window.busy = 0;
  let inside = false;
  let since = 0;
  const cross = (into) => {
    const now = performance.now();
    if (inside) window.busy += now - since;
    since = now;
    inside = into;
  };
  const timed = (call, into) =>
    function timedCall(...args) {
      const before = inside;
      cross(into);
      try {
        return call.apply(this, args);
      } finally {
        cross(before);
      }
    };
  const wrapped = (named, into) => Object.fromEntries(Object.entries(named).map(([name, it]) => [name, typeof it === "function" ? timed(it, into) : it]));
  const instantiate = WebAssembly.instantiateStreaming;
  WebAssembly.instantiateStreaming = async (source, imports) => {
    const outside = Object.fromEntries(Object.entries(imports).map(([name, module]) => [name, wrapped(module, false)]));
    const { instance, module } = await instantiate(source, outside);
    return { instance: { exports: wrapped(instance.exports, true) }, module };
  };
}

/**
 * Many different lines read in the page, not slowed, in milliseconds: the first time, and the median of the times after.
 * Under a heading of notes every line is read and none is shown, and one more letter does all the rest again but reads
 * its own line alone; so the difference of the two is the reading. A blank behind each line makes it a new one.
 */
async function reading(browser, lines) {
  const { page, session, close } = await visit(browser, PAGE, watchModule);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  const box = await textBox(page);
  await page.evaluate(watchChanges);
  const busy = async (text) => {
    const before = await page.evaluate(() => window.busy);
    await paste(box, text);
    await page.evaluate(settle, QUIET);
    return (await page.evaluate(() => window.busy)) - before;
  };
  // The demo that is open goes first, so that its rows are not counted.
  await busy("Notes");
  const times = [];
  for (let round = 0; round < READINGS; round += 1) {
    const text = ["Notes", ...lines.map((line) => line + " ".repeat(round))].join("\n");
    const all = await busy(text);
    times.push(all - (await busy(`${text}x`)));
  }
  await close();
  return { first: times[0], again: median(times.slice(1)) };
}

// Typing.

/**
 * Runs in the page: from now on `window.answered` is when all that is in sight had answered the last key,
 * `window.lastChange` when the page last changed, out of sight too, both with their layout done, and
 * `window.lastFrame` when the frame with that was painted. Spoken summaries are not counted: they come after a
 * pause, on purpose.
 */
function watchChanges() {
  window.started = 0;
  window.answered = 0;
  window.lastChange = 0;
  window.lastFrame = 0;
  const painted = new MessageChannel();
  painted.port1.onmessage = () => {
    window.lastFrame = performance.now();
  };
  const spoken = "[aria-live], [role=status], [role=alert], output";
  const outside = (node) => !(node.nodeType === Node.ELEMENT_NODE ? node : node.parentElement)?.closest(spoken);
  new MutationObserver((changes) => {
    if (!changes.some((change) => document.body.contains(change.target) && outside(change.target))) return;
    document.body.getBoundingClientRect();
    window.lastChange = performance.now();
    // A message sent from the last step before painting arrives right after it.
    requestAnimationFrame(() => painted.port2.postMessage(null));
  }).observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
  for (const kind of ["keydown", "click", "input"]) {
    window.addEventListener(
      kind,
      (event) => {
        // The key began when the browser got it, not when the page was told.
        if (kind !== "input" || !window.started) window.started = event.timeStamp;
      },
      { capture: true },
    );
  }
  // Called once the box's own listener and all that it set off at once are through.
  window.addEventListener("input", () => {
    document.body.getBoundingClientRect();
    window.answered = performance.now();
  });
}

/**
 * Runs in the page: waits until nothing changes any more and gives how long the last input took to its answer in
 * sight, to its last change and to the frame that shows that, in milliseconds; null when nothing changed.
 */
async function settle(quiet) {
  const begun = performance.now();
  while (performance.now() - Math.max(window.lastChange, begun) < quiet) await new Promise((later) => setTimeout(later, 25));
  const changed = window.lastChange > window.started;
  const since = (moment) => moment - window.started;
  const took = { answer: since(window.answered), update: since(window.lastChange), frame: since(window.lastFrame) };
  window.started = 0;
  return changed ? took : null;
}

/** Puts the caret behind the first place where the text box says `words`. */
const caretBehind = (box, words) =>
  box.evaluate((field, found) => {
    const at = field.value.indexOf(found) + found.length;
    field.focus();
    field.setSelectionRange(at, at);
  }, words);

const paste = (box, text) =>
  box.evaluate((field, pasted) => {
    field.value = pasted;
    field.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertFromPaste" }));
  }, text);

/** Presses the keys one by one and gives what each took, without those that changed nothing. */
async function press(page, keys) {
  const times = [];
  for (const key of keys) {
    await page.keyboard.press(key);
    times.push(await page.evaluate(settle, QUIET));
  }
  return times.filter(Boolean);
}

/** Thirty keys that change an amount, and with it every figure on the page. */
async function typed(page) {
  const box = await textBox(page);
  await page.evaluate(watchChanges);
  await paste(box, RECIPE);
  await page.evaluate(settle, QUIET);
  const keys = [];
  for (const amount of ["1 3/4", "1/4 cup honey\n1/2"]) {
    await caretBehind(box, amount);
    keys.push(...(await press(page, Array.from({ length: 15 }, (_, at) => (at % 2 ? "Backspace" : "8")))));
  }
  return { box, keys };
}

/** What keys take at a desk, where more is in sight. */
async function typingAtDesk(browser) {
  const { page, close } = await visit(browser, PAGE, undefined, SCREENS.desk);
  const { keys } = await typed(page);
  await close();
  return keys;
}

/** What keys take in the text box of the floor: a letter typed into a page that does next to nothing about it. */
async function typingOnFloor(browser) {
  const { page, close } = await visit(browser, FLOOR);
  await page.evaluate(() => {
    const box = document.createElement("textarea");
    box.id = "recipe-text";
    box.rows = 12;
    const said = document.body.appendChild(document.createElement("p"));
    document.body.append(box);
    box.addEventListener("input", () => {
      said.textContent = String(box.value.length);
    });
  });
  const { keys } = await typed(page);
  await close();
  return keys;
}

async function typing(browser, many) {
  const { page, session, close } = await visit(browser, PAGE);
  const { box, keys } = await typed(page);
  // A long text, without the slowing: ten thousand lines pasted at once, and then one more key.
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  await paste(box, RECIPE.repeat(250));
  const pasted = await page.evaluate(settle, QUIET);
  await caretBehind(box, "1/2 cup raisins");
  const [longKey] = await press(page, ["x"]);
  await paste(box, "");
  await page.evaluate(settle, QUIET);
  await paste(box, many.join("\n"));
  const different = await page.evaluate(settle, QUIET);
  await close();
  return { keys, pasted, longKey, different };
}

// Swapping.

/** What a touch takes until the plan that it asks for is shown: of one swap, and of a cake that is to be plant-based. */
async function swapping(browser) {
  const { page, close } = await visit(browser, PAGE);
  const box = await textBox(page);
  await page.evaluate(watchChanges);
  await paste(box, RECIPE);
  await page.evaluate(settle, QUIET);
  const panel = page.getByRole("region", { name: "Use something else" });
  await panel.getByText("Swap an ingredient, or bake it plant-based").click();
  const which = panel.getByLabel("Which ingredient?");
  const words = await which.evaluate((field) => [...field.options].map((option) => option.textContent));
  await which.selectOption({ label: words.find((said) => /buttermilk/.test(said)) });
  const offers = panel.getByRole("list", { name: "What may come in its place" }).getByRole("button");
  const touched = async (button) => {
    await button.scrollIntoViewIfNeeded();
    await page.evaluate(settle, QUIET);
    await button.click();
    return page.evaluate(settle, QUIET);
  };
  const [one, several] = [[], []];
  for (let round = 0; round < 10; round += 1) one.push(await touched(offers.nth(round % 2)));
  const gone = panel.getByRole("button", { name: "Take it back" }).first();
  await touched(gone);
  const plants = panel.getByLabel("Plant-based", { exact: true });
  for (let round = 0; round < 5; round += 1) {
    several.push(await touched(plants));
    await touched(plants);
  }
  await close();
  return { one: one.filter(Boolean), several: several.filter(Boolean) };
}

// The water of a batter.

/** Runs one of the timing examples and gives its figures. */
const example = (name, input = "") =>
  JSON.parse(execFileSync("cargo", ["run", "--quiet", "--locked", "--release", "--no-default-features", "--example", name], { cwd: ROOT, input }));

/** Says how long one bowl and one programme take to solve, beside other solvers of the same bowls if they are here. */
function solving() {
  const ours = example("solution_time");
  console.log(`\nOne bowl of water, median of ${ours.bowls}: ${ours.median} us, the slowest ${ours.most} us (budget 20 us).`);
  const programme = example("programme_time");
  const bowls = (microseconds) => `${microseconds} us, ${Math.round(microseconds / ours.median)} bowls`;
  console.log(`One programme of a substitution, median of ${programme.programmes}: ${bowls(programme.median)}, the slowest ${bowls(programme.most)}.`);
  if (!existsSync(PYTHON)) {
    console.log("make reference brings PHREEQC and numpy to set beside that.");
    return;
  }
  const others = JSON.parse(execFileSync(PYTHON, [join(ROOT, "tests", "reference", "reference.py"), "--time"]));
  const times = (microseconds) => `${microseconds} us, ${Math.round(microseconds / ours.median)} x`;
  console.log(`PHREEQC, its input read: ${times(others.phreeqc)}. The plain solver in numpy: ${times(others.numpy)}.`);
}

/** Says how long five hundred bakes of a recipe take to be held against one another. */
function comparing() {
  const ours = example("comparison_time");
  console.log(
    `\n500 bakes, native: what may be compared ${ours.choices} ms, two side by side ${ours.beside} ms, one curve ${ours.answer} ms, the next bake ${ours.next} ms (budget two frames, 33 ms, in the page).`,
  );
}

/** Says how long a bake takes to solve, and a cup that only conducts beside scipy's solution of it on the same grid. */
function baking() {
  const ours = example("heat_time");
  console.log(`\nOne bake, native: ${ours.bake} ms (budget 16 ms in the page); all that a page asks for two pans: ${ours.asked} ms.`);
  if (!existsSync(PYTHON)) return;
  const other = JSON.parse(execFileSync(PYTHON, [join(ROOT, "tests", "reference", "heat.py"), "--time"]));
  console.log(
    `A cup that only conducts, 16 by 24 cells to 95 C: ${ours.conducts} ms; scipy's BDF, its matrix sparse: ${other.scipy} ms, ${(other.scipy / ours.conducts).toFixed(1)} x (it says ${other.seconds} s).`,
  );
}

// Lighthouse.

/** Says how Lighthouse scores each page, and what it finds short of full marks. */
async function scores() {
  const server = await serve({ folder: PAGE, packs: true });
  const looks = await look(Object.values(PAGES).map((hash) => server.address + hash));
  await server.close();
  console.log(`\nLighthouse, slow phone (wanted: ${Object.entries(SCORE).map(([name, least]) => `${name} ${least}`).join(", ")})`);
  for (const [index, name] of Object.keys(PAGES).entries()) {
    const { scores, largest, blocked, short } = looks[index];
    const said = Object.entries(scores).map(([name, score]) => `${name} ${score.toFixed(2)}${score < SCORE[name] ? " (short)" : ""}`);
    console.log(`  ${name.padEnd(9)}${said.join(", ")}; largest paint ${Math.round(largest)} ms, blocked ${Math.round(blocked)} ms. ${short.join("; ")}`);
  }
}

// The table.

const rows = [];
const line = (what, value, floor, unit, budget = "") => {
  const shown = (number) => {
    if (unit === "") return Math.round(number).toLocaleString("en");
    return `${unit === "kB" ? (number / 1000).toFixed(1) : number.toFixed(number < 10 ? 2 : 1)} ${unit}`;
  };
  const missing = !Number.isFinite(value);
  rows.push([what, missing ? "not measured" : shown(value), shown(floor), missing ? "" : `${(value / floor).toFixed(2)} x`, budget]);
};

const browser = await launch();
try {
  const page = await loading(browser, PAGE);
  const floor = await loading(browser, FLOOR);
  const first = await firstVisit(browser, PAGE);
  const floorFirst = await firstVisit(browser, FLOOR);
  const later = await laterVisit(browser, PAGE);
  const shelf = await longShelf(browser, PAGE);
  const trials = { 1: await manyTrials(browser, PAGE, 1), [SLOWED]: await manyTrials(browser, PAGE, SLOWED) };
  const many = realLines(MANY);
  const bare = await typingOnFloor(browser);
  const desk = await typingAtDesk(browser);
  const swaps = await swapping(browser);
  const keys = await typing(browser, many);
  const inPage = await reading(browser, many);
  const native = example("worksheet_time", RECIPE);
  const nativeSwaps = example("swap_time", RECIPE);
  const nativeReading = example("reading_time", many.join("\n"));

  const button = "one-button page";
  const frame = "one frame";
  rows.push(["Figure", "Page", `Floor`, "Ratio", "Budget"]);
  line("All that a first visit loads, with brotli", total(PAGE), total(FLOOR), "kB", "4 x");
  line("  against what it may bring", total(PAGE), FIRST_MAY_BRING, "kB", "1 x");
  line("  needed before it can be used", total(PAGE, (name) => page.asked.has(name)), total(FLOOR, (name) => floor.asked.has(name)), "kB");
  line("  the module", total(PAGE, (name) => name.endsWith(".wasm")), total(FLOOR, (name) => name.endsWith(".wasm")), "kB");
  line("    the tables in it, by themselves", tables(), total(FLOOR), "kB");
  line("First paint, slowed 4 times", page.painted, floor.painted, "ms");
  line("Usable, slowed 4 times", page.usable, floor.usable, "ms");
  line("First visit on a slow phone and network: first paint", first.painted, floorFirst.painted, "ms");
  line("  largest paint", first.largest, floorFirst.largest, "ms", "1 x");
  line("  first screen takes touches", first.standing, floorFirst.standing, "ms");
  line("  usable", first.usable, floorFirst.usable, "ms");
  line("Second visit without a network, slowed 4 times: first screen takes touches", later.standing, LATER_MAY_TAKE, "ms", "1 x");
  line("Second visit without a network, slowed 4 times: usable", later.usable, LATER_MAY_TAKE, "ms", "1 x");
  line("  largest paint", later.largest, LATER_MAY_TAKE, "ms");
  line("A shelf of 2,000 recipes opened, slowed 4 times", shelf, FRAME, "ms");
  for (const [slowed, took] of Object.entries(trials)) {
    line(`500 bakes of one recipe opened, slowed ${slowed} times: the first in sight`, took.first, 2 * FRAME, "ms", "1 x");
    line("  all of them in the page", took.whole, 2 * FRAME, "ms");
    line("  again: the first in sight", took.again, 2 * FRAME, "ms", "1 x");
    line("  one of them opened", took.trial, 2 * FRAME, "ms");
    line("  a letter in its notes or its name", took.key, FRAME, "ms");
    line("  the shelf with them", took.shelf, 2 * FRAME, "ms");
  }
  const each = (keys, what) => keys.map((key) => key[what]);
  const updates = each(keys.keys, "answer");
  line(`Key to all in sight answered, 40 lines, slowed 4 times, median of ${updates.length}`, median(updates), FRAME, "ms", "1 x");
  line("  95 of 100 keys", high(updates), FRAME, "ms");
  line("  of that, a key in a bare text box", median(each(bare, "answer")), FRAME, "ms");
  line("  at a desk, where more is in sight", median(each(desk, "answer")), FRAME, "ms");
  line("  to the last change out of sight, after the frame", median(each(keys.keys, "update")), FRAME, "ms");
  line("  and to the frame that has that, median", median(each(keys.keys, "frame")), FRAME, "ms");
  line(`Touch to the plan of one swap, slowed 4 times, median of ${swaps.one.length}`, median(each(swaps.one, "update")), FRAME, "ms", "1 x");
  line(`  of several, plant-based, median of ${swaps.several.length}`, median(each(swaps.several, "update")), SEVERAL_MAY_TAKE, "ms", "1 x");
  line("  native, one", nativeSwaps.one / 1000, FRAME, "ms");
  line("  native, several", nativeSwaps.several / 1000, SEVERAL_MAY_TAKE, "ms");
  line("10,000 lines pasted, not slowed", keys.pasted?.update, FRAME, "ms");
  line("  one key after that", keys.longKey?.update, FRAME, "ms");
  line(`${many.length} different lines pasted, not slowed, with a pause of 150 ms`, keys.different?.update, FRAME, "ms");
  line("  their reading alone, the first time", inPage.first, MANY_MAY_TAKE, "ms", "1 x");
  line(`  again, median of ${READINGS - 1}`, inPage.again, MANY_MAY_TAKE, "ms", "1 x");
  line("  native, median of 40", nativeReading.median / 1000, MANY_MAY_TAKE, "ms");
  const perSecond = (milliseconds) => (many.length / milliseconds) * 1000;
  line("Lines read in a second", perSecond(inPage.again), perSecond(MANY_MAY_TAKE), "", "at least 1 x");
  line("  native", perSecond(nativeReading.median / 1000), perSecond(MANY_MAY_TAKE), "");
  line("One worksheet of 40 lines, native, median of 200", native.median / 1000, FRAME, "ms");
  line("  95 of 100", native.p95 / 1000, FRAME, "ms");

  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  for (const row of rows) {
    console.log(row.map((cell, column) => (column === 0 ? cell.padEnd(widths[column]) : cell.padStart(widths[column]))).join("  ").trimEnd());
  }
  if (updates.length === 0) {
    console.log("\nTyping could not be timed: the page did not change after a key.");
    process.exitCode = 1;
  }
  console.log(`\nSizes and loading are against the ${button} of tests/floor, reading against ${MANY_MAY_TAKE} ms for ${MANY.toLocaleString("en")} lines, several swaps against ${SEVERAL_MAY_TAKE} ms, the rest against ${frame} of 16.7 ms. One kB is 1000 bytes.`);
  console.log("\nSize by part, with brotli:");
  for (const [what, bytes] of parts(PAGE)) console.log(`  ${what.padEnd(38)}${(bytes / 1000).toFixed(1).padStart(7)} kB`);
  await scores();
  solving();
  comparing();
  baking();
} finally {
  await browser.close();
}

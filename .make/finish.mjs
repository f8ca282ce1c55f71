// The last step of a build. Trunk runs it on the staged folder (TRUNK_STAGING_DIR):
//
//   1. the style sheets become one file, in their order;
//   2. the module, scripts and styles are made smaller, and named again after their new content;
//   3. the scripts inside index.html become files, so that the page can forbid inline scripts, and does;
//   4. the worker gets its list, exactly the files in the folder with a sum of each, and its version, a hash of them.

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, extname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { transformSync } from "esbuild";

const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..");
const BINARYEN = join(ROOT, "node_modules", "binaryen");

/** Named one by one: `--all-features` emits a module that browsers refuse. */
const FEATURES = [
  "--enable-bulk-memory",
  "--enable-nontrapping-float-to-int",
  "--enable-sign-ext",
  "--enable-mutable-globals",
  "--enable-reference-types",
  "--enable-multivalue",
];
/** Rust has optimised already for size. One more round for speed makes the module a little smaller too, compressed; one for size (-Oz) makes it larger. */
const SHRINK = [...FEATURES, "-O2", "--strip-debug", "--strip-producers"];

/** Nothing is loaded from elsewhere and nothing is sent anywhere. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'self'",
  "form-action 'none'",
  // No text becomes markup or script, whatever a later change may try: the browser refuses it. The one address that a
  // script may be fetched from by hand is the worker's, by the policy that public/offline.js makes.
  "require-trusted-types-for 'script'",
  "trusted-types batterwright",
].join("; ");

const hash = (...parts) => {
  const sum = createHash("sha256");
  for (const part of parts) sum.update(part);
  return sum.digest("hex").slice(0, 16);
};

/** Every file below `folder`, as sorted paths with forward slashes. */
const filesIn = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath ?? entry.path, entry.name)).split(sep).join("/"))
    .sort();

/** Puts all style sheets that index.html links with Trunk's mark into the place of the first. */
function joinStyles(folder) {
  const path = join(folder, "index.html");
  const joined = [];
  const html = readFileSync(path, "utf8").replace(/[ \t]*<link\b[^>]*>\n?/g, (link) => {
    const file = /rel="?stylesheet/.test(link) && !/\bmedia=/.test(link) && link.match(/href="?\.\/([^"\s>]+-[0-9a-f]{8,16}\.css)/)?.[1];
    if (!file) return link;
    joined.push(readFileSync(join(folder, file), "utf8"));
    rmSync(join(folder, file));
    return joined.length === 1 ? "<!-- styles -->" : "";
  });
  if (joined.length === 0) return;
  const css = joined.join("\n");
  const file = `style-${hash(css)}.css`;
  writeFileSync(join(folder, file), css);
  writeFileSync(path, html.replace("<!-- styles -->", `<link rel="stylesheet" href="./${file}">`));
}

/** Makes a script or a style sheet smaller, without changing what it means to any browser that understood it. */
function minify(path) {
  const loader = extname(path).slice(1);
  writeFileSync(path, transformSync(readFileSync(path, "utf8"), { loader, minify: true, target: "esnext", legalComments: "none" }).code);
}

/** Shrinks the module at `path` in place; the result is kept under target/, since it takes a while. */
function shrink(path) {
  const version = JSON.parse(readFileSync(join(BINARYEN, "package.json"), "utf8")).version;
  const kept = join(ROOT, "target", "wasm-opt", `${hash(readFileSync(path), version, ...SHRINK)}.wasm`);
  if (!existsSync(kept)) {
    mkdirSync(dirname(kept), { recursive: true });
    const half = `${kept}.${process.pid}`;
    execFileSync(process.execPath, [join(BINARYEN, "bin", "wasm-opt"), ...SHRINK, path, "-o", half], { stdio: "inherit" });
    renameSync(half, kept);
  }
  copyFileSync(kept, path);
}

/** Names `file` after its content again, and follows the new name wherever `folder` mentions the old one. */
function rename(folder, file) {
  const named = file.replace(/-[0-9a-f]{8,16}(?=(_bg)?\.[a-z]+$)/, `-${hash(readFileSync(join(folder, file)))}`);
  if (named === file) return;
  renameSync(join(folder, file), join(folder, named));
  for (const other of filesIn(folder).filter((name) => /\.(html|js|css)$/.test(name))) {
    const path = join(folder, other);
    const text = readFileSync(path, "utf8");
    const followed = text.replaceAll(basename(file), basename(named));
    if (followed !== text) writeFileSync(path, followed);
  }
}

/** Moves each inline script of index.html into a file of its own and adds the policy that forbids them. */
function withoutInlineScripts(folder) {
  const path = join(folder, "index.html");
  const html = readFileSync(path, "utf8").replace(/<script([^>]*)>([\s\S]*?)<\/script>/g, (whole, attributes, code) => {
    if (!code.trim() || /\bsrc=|application\/(ld\+)?json/.test(attributes)) return whole;
    const file = `start-${hash(code)}.js`;
    writeFileSync(join(folder, file), `${code.trim()}\n`);
    return `<script${attributes} src="./${file}"></script>`;
  });
  if (!/<meta charset/.test(html)) throw new Error("index.html has no <meta charset>: the policy is put after it.");
  writeFileSync(path, html.replace(/<meta charset[^>]*>/, (charset) => `${charset}<meta http-equiv="Content-Security-Policy" content="${POLICY}">`));
}

/** Fills in the list and the version of the worker. The worker itself is not on its list. */
function fillWorker(folder) {
  const path = join(folder, "worker.js");
  const names = filesIn(folder).filter((file) => file !== "worker.js");
  const files = Object.fromEntries(names.map((file) => [file, hash(readFileSync(join(folder, file)))]));
  const template = readFileSync(path, "utf8");
  const version = hash(template, JSON.stringify(files));
  const filled = template
    .replace('const VERSION = "unbuilt";', `const VERSION = "${version}";`)
    .replace("const FILES = {};", `const FILES = ${JSON.stringify(files, null, 2)};`);
  if (!filled.includes(version) || !filled.includes('"index.html"')) {
    throw new Error("public/worker.js has lost its VERSION or FILES line.");
  }
  writeFileSync(path, filled);
  console.log(`worker: ${names.length} files, version ${version}`);
}

const folder = process.env.TRUNK_STAGING_DIR ?? process.argv[2];
if (!folder || !existsSync(join(folder, "index.html"))) {
  console.error("Give the folder of a build: this script is run by `trunk build`, see Trunk.toml.");
  process.exit(1);
}
joinStyles(folder);
withoutInlineScripts(folder);
// The worker stays as it is written, for anyone to read.
for (const file of filesIn(folder).filter((name) => /\.(css|js)$/.test(name) && name !== "worker.js")) minify(join(folder, file));
// Modules first, then the scripts that name them, and those that name the scripts.
for (const kind of [/\.wasm$/, /\.css$/, /(?<!^start-[0-9a-f]{8,16})\.js$/, /^start-.*\.js$/]) {
  for (const file of filesIn(folder).filter((name) => kind.test(name))) {
    if (file.endsWith(".wasm")) shrink(join(folder, file));
    rename(folder, file);
  }
}
if (existsSync(join(folder, "worker.js"))) fillWorker(folder);

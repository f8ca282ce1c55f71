// What the page's bytes are for, as a server sends them: brotli at its best, or the file itself where that is smaller.

import { readFileSync, readdirSync, statSync } from "node:fs";
import { extname, join } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";

/** What brotli at its best makes of the content, in bytes. */
const packed = (content) =>
  brotliCompressSync(content, { params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: content.length } }).length;

/** What a server sends of a file, in bytes. */
export function sent(path) {
  const content = readFileSync(path);
  return Math.min(packed(content), content.length);
}

const CODE = 10;
const DATA = 11;

/** The content of a module's sections by their number (WebAssembly core specification, 5.5.2). */
function sections(module) {
  const found = new Map();
  let at = 8;
  while (at < module.length) {
    const kind = module[at];
    let [size, shift] = [0, 0];
    do {
      at += 1;
      size += (module[at] & 127) * 2 ** shift;
      shift += 7;
    } while (module[at] & 128);
    at += 1;
    found.set(kind, module.subarray(at, at + size));
    at += size;
  }
  return found;
}

const KINDS = { ".js": "the scripts", ".css": "the style", ".html": "the page's own file", ".png": "the icons", ".svg": "the icons", ".webmanifest": "the manifest" };

/** What each part of a built page comes to, in bytes, the largest first. Code and data of the module are packed apart here, so they only nearly add up to it. */
export function parts(folder) {
  const sizes = new Map();
  const add = (what, bytes) => sizes.set(what, (sizes.get(what) ?? 0) + bytes);
  for (const name of readdirSync(folder, { recursive: true })) {
    const path = join(folder, name);
    if (!statSync(path).isFile()) continue;
    if (extname(name) === ".wasm") {
      const found = sections(readFileSync(path));
      add("the module's code", packed(found.get(CODE)));
      add("the module's data: tables and words", packed(found.get(DATA)));
    } else {
      add(KINDS[extname(name)] ?? "the rest", sent(path));
    }
  }
  return [...sizes].sort(([, one], [, other]) => other - one);
}

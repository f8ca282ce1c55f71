// A small static server for the built page.
//
//   node .make/serve.mjs [--folder dist] [--port 8080] [--under /] [--check]
//
// --under serves the folder below a sub-path, --check only says whether the port is free.

import { createHash } from "node:crypto";
import { readFile, readdir, realpath } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { brotliCompressSync, constants } from "node:zlib";

const HOST = "127.0.0.1";

const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json; charset=utf-8",
};

/** Content-hashed names never change their content; everything else is asked for again each time. */
const HASHED = /-[0-9a-f]{8,16}(_bg)?\.[a-z]+$/;

/** The file in `folder` that a request means, or null when there is none or it lies outside. */
async function find(folder, path) {
  const wanted = resolve(folder, `.${sep}${path}`, path.endsWith("/") ? "index.html" : "");
  try {
    const real = await realpath(wanted);
    if (!real.startsWith(folder + sep)) return null;
    return { name: real, content: await readFile(real) };
  } catch {
    return null;
  }
}

/** Pictures are packed already. */
const PACKS = /\.(css|html|js|json|svg|txt|wasm|webmanifest)$/;

/** What was packed, by its etag: brotli at its best takes a while. */
const packed = new Map();

/** The content with brotli at its best, as a usual host keeps it ready. */
function pack(etag, content) {
  if (!packed.has(etag)) {
    const params = { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY, [constants.BROTLI_PARAM_SIZE_HINT]: content.length };
    packed.set(etag, brotliCompressSync(content, { params }));
  }
  return packed.get(etag);
}

/** Packs every file, so that nobody who asks has to wait for it. */
async function packAll(folder) {
  for (const name of await readdir(folder, { recursive: true })) {
    if (!PACKS.test(name)) continue;
    const content = await readFile(join(folder, name));
    pack(etagOf(content), content);
  }
}

const etagOf = (content) => `"${createHash("sha256").update(content).digest("hex").slice(0, 32)}"`;

/** Answers one request from `folder`, which appears on the web at `under`. */
async function answer(request, response, { root: folder, under, packs }) {
  const plain = { "content-type": "text/plain; charset=utf-8" };
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.writeHead(405, { ...plain, allow: "GET, HEAD" }).end("Only GET and HEAD are answered here.\n");
    return;
  }
  let path;
  try {
    path = decodeURIComponent(request.url.split(/[?#]/)[0]);
  } catch {
    path = "";
  }
  if (path === under.slice(0, -1)) {
    response.writeHead(301, { location: under }).end();
    return;
  }
  const file = path.startsWith(under) && !path.includes("\0") ? await find(folder, path.slice(under.length) || "/") : null;
  if (!file) {
    response.writeHead(404, plain).end("There is no such page.\n");
    return;
  }
  const etag = etagOf(file.content);
  const headers = {
    "content-type": TYPES[extname(file.name)] ?? "application/octet-stream",
    "cache-control": HASHED.test(file.name) ? "public, max-age=31536000, immutable" : "no-cache",
    "x-content-type-options": "nosniff",
    etag,
  };
  if (request.headers["if-none-match"] === etag) {
    response.writeHead(304, headers).end();
    return;
  }
  let { content } = file;
  if (packs && PACKS.test(file.name) && /\bbr\b/.test(request.headers["accept-encoding"])) {
    content = pack(etag, content);
    Object.assign(headers, { "content-encoding": "br", vary: "accept-encoding" });
  }
  headers["content-length"] = content.length;
  response.writeHead(200, headers).end(request.method === "HEAD" ? undefined : content);
}

/**
 * Serves `folder` and resolves once it answers, with its address and a way to close it.
 * Port 0 takes any free port; `packs` sends files packed, as hosts do and a machine's own page need not. `first` is called with each request and its response, and may answer it, which it says by
 * true. Rejects when the port is taken or the folder does not exist.
 */
export async function serve({ folder, port = 0, under = "/", packs = false, first = () => false }) {
  const root = await realpath(folder);
  if (packs) await packAll(root);
  const server = createServer((request, response) => {
    if (first(request, response)) return;
    answer(request, response, { root, under, packs }).catch((error) => {
      console.error(error);
      response.destroy();
    });
  });
  await new Promise((started, failed) => {
    server.once("error", failed);
    server.listen(port, HOST, started);
  });
  return {
    address: `http://${HOST}:${server.address().port}${under}`,
    port: server.address().port,
    /** Stops at once: open connections are cut too. */
    close: () =>
      new Promise((closed) => {
        server.close(closed);
        server.closeAllConnections();
      }),
  };
}

async function main() {
  const { values } = parseArgs({
    options: {
      folder: { type: "string", default: "dist" },
      port: { type: "string", default: "8080" },
      under: { type: "string", default: "/" },
      check: { type: "boolean", default: false },
    },
  });
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 1 || port > 65535) {
    throw new Error(`"${values.port}" is not a port number: choose one from 1024 to 65535, as in \`make run PORT=8081\`.`);
  }
  try {
    const server = await serve({ folder: values.check ? "." : values.folder, port, under: values.under });
    if (values.check) {
      await server.close();
      return;
    }
    console.log(`Batterwright is at ${server.address} (stop it with Ctrl+C)`);
    for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => process.exit(0));
  } catch (error) {
    if (error.code === "EADDRINUSE") {
      throw new Error(`Port ${port} is taken: stop the program that uses it, or choose another port, as in \`make run PORT=${port + 1}\`.`);
    }
    if (error.code === "EACCES") {
      throw new Error(`Port ${port} may not be used by this account: choose one above 1023, as in \`make run PORT=8080\`.`);
    }
    if (error.code === "ENOENT") {
      throw new Error(`There is no folder ${join(process.cwd(), values.folder)}: run \`make dist\` first.`);
    }
    throw error;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  main().catch((error) => {
    console.error(error.message);
    process.exit(1);
  });
}

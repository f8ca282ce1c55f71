// Keeps the whole page on this device, so that it opens without a network.
//
// One list, one version: the build fills both in (.make/finish.mjs), and beside each file the sum of its content. A new
// version is fetched whole beside the old one, held against its sums, and then waits until the page says
// { type: "take-over" }. Asked { type: "keep" }, the worker sees to it that everything is here, fetches it again where
// the browser has cleared it, and answers once it is. Nothing from elsewhere is ever kept, and no query is ever sent.

const VERSION = "unbuilt";
const FILES = {};

const SCOPE = self.registration.scope;
// Another copy of the page, under another sub-path, shares this storage: the scope tells the caches apart.
const OURS = `batterwright ${SCOPE} `;
const CACHE = OURS + VERSION;

// What is shown where nothing is kept any more and there is no network. It stands by itself: there is nothing else.
const CLEARED = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <title>Batterwright cannot open just now</title>
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <meta name="color-scheme" content="light dark">
  </head>
  <body>
    <main>
      <h1>Batterwright cannot open just now</h1>
      <p>The browser has cleared the copy of this page that was kept on the device, and there is no network to fetch it again.</p>
      <p>Your recipes are kept in a place of their own, and this has not touched them. Open the page once with a network, and it is here again with them, network or not.</p>
      <p><a href="">Try again</a></p>
    </main>
  </body>
</html>
`;

// The address without query and fragment; the folder itself stands for its index.html.
function plain(address) {
  const url = new URL(address);
  const path = url.origin + url.pathname;
  return path === SCOPE ? `${SCOPE}index.html` : path;
}

const KEPT = new Map(Object.entries(FILES).map(([file, sum]) => [plain(SCOPE + file), sum]));

// The first half of a SHA-256, as the build writes it.
async function sumOf(content) {
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", content)).subarray(0, 8);
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

// A response of our own with that content: a page cannot be opened with one that was redirected on its way.
function responseOf(content, { status, headers }) {
  const kept = new Headers(headers);
  // Said of how it travelled, which is over.
  for (const name of ["content-encoding", "content-length", "vary"]) kept.delete(name);
  return new Response(content, { status, headers: kept });
}

// "no-cache" asks the server about the file, yet does not load again what the page has just loaded.
const ask = (address) => fetch(address, { cache: "no-cache" });

async function fetchOne(cache, address, sum) {
  const response = await ask(address);
  if (!response.ok) throw new Error(`${address} answers with ${response.status}.`);
  const content = await response.arrayBuffer();
  if ((await sumOf(content)) !== sum) throw new Error(`${address} is of another version.`);
  await cache.put(address, responseOf(content, response));
}

async function isWhole() {
  if (!(await caches.has(CACHE))) return false;
  const kept = await (await caches.open(CACHE)).keys();
  return kept.filter((request) => KEPT.has(request.url)).length === KEPT.size;
}

// All or nothing: if one file fails, this version is not kept, and the one before stays whole.
async function fetchAll() {
  // What is there already under this name may be what an older worker still answers from.
  const isNew = !(await caches.has(CACHE));
  try {
    const cache = await caches.open(CACHE);
    await Promise.all(Array.from(KEPT, ([address, sum]) => fetchOne(cache, address, sum)));
    // A worker that took over in the meantime may have cleared it away as not its own.
    if (!(await isWhole())) throw new Error("What was fetched has not stayed.");
  } catch (error) {
    if (isNew) await caches.delete(CACHE);
    throw error;
  }
}

const keepAll = async () => (await isWhole()) || fetchAll();

async function deleteOlder() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)));
}

async function answer(request) {
  const address = plain(request.url);
  const kept = await caches.match(address, { cacheName: CACHE });
  if (kept) return kept;
  try {
    const response = await ask(address);
    return responseOf(response.body, response);
  } catch (error) {
    if (request.mode !== "navigate") throw error;
    const headers = { "content-type": "text/html; charset=utf-8", "content-security-policy": "default-src 'none'" };
    return new Response(CLEARED, { status: 503, headers });
  }
}

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => event.waitUntil(deleteOlder()));
self.addEventListener("fetch", (event) => {
  if (event.request.method === "GET" && KEPT.has(plain(event.request.url))) {
    event.respondWith(answer(event.request));
  }
});
self.addEventListener("message", (event) => {
  if (event.data?.type === "take-over") self.skipWaiting();
  if (event.data?.type === "keep") {
    // Without a network there is no answer: the page is then not ready to do without one.
    event.waitUntil(keepAll().then(() => event.ports[0].postMessage("kept"), (error) => console.info("Not kept:", error.message)));
  }
});

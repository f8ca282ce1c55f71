// Keeps the whole page on this device, so that it opens without a network.
//
// One list, one version: the build fills both in (.make/finish.mjs). A new version is fetched whole beside
// the old one and then waits until the page says { type: "take-over" }. Nothing from elsewhere is ever kept.

const VERSION = "unbuilt";
const FILES = [];

const SCOPE = self.registration.scope;
// Another copy of the page, under another sub-path, shares this storage: the scope tells the caches apart.
const OURS = `batterwright ${SCOPE} `;
const CACHE = OURS + VERSION;

// The address without query and fragment; the folder itself stands for its index.html.
function plain(address) {
  const url = new URL(address);
  const path = url.origin + url.pathname;
  return path === SCOPE ? `${SCOPE}index.html` : path;
}

const KEPT = new Set(FILES.map((file) => plain(SCOPE + file)));

// All or nothing: if one file fails, the install fails and the version before stays whole.
async function fetchAll() {
  const cache = await caches.open(CACHE);
  try {
    // "no-cache" asks the server about every file, yet does not load again what the page has just loaded.
    await cache.addAll([...KEPT].map((file) => new Request(file, { cache: "no-cache" })));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function deleteOlder() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)));
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(plain(request.url))) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(fetchAll()));
self.addEventListener("activate", (event) => event.waitUntil(deleteOlder()));
self.addEventListener("fetch", (event) => {
  if (event.request.method === "GET" && KEPT.has(plain(event.request.url))) {
    event.respondWith(answer(event.request));
  }
});
self.addEventListener("message", (event) => {
  if (event.data?.type === "take-over") self.skipWaiting();
});

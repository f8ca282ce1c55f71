// Pictures of bakes, kept in a database of the browser beside the records in local storage, which has no room for them.
// The page calls window.batterwrightPictures; each call answers by a promise that never fails:
//
//   take(file)      shrinks a chosen picture and keeps it: { id }, or { trouble } with a sentence that says why not
//   address(id)     an address that shows it, to be let go of once it is not shown; null where it is not here
//   pack(ids)       those that are here, as JSON: { id: base64 of a JPEG }
//   unpack(json)    keeps what was packed: { came: how many were new }, or { trouble }
//   count()         how many are here; null where the browser does not tell
//   sweep()         lets go of those that no record names: how many went
//
// A picture's name comes of its content, so that the same one is there once, however often it is chosen or brought in.
// Records only name pictures. What none of them names any more stays for a day, for the way back, and then goes.

(() => {
  const PICTURES = "pictures";
  // Since when no record names a picture.
  const UNNAMED = "unnamed";
  const MOST_BYTES = 40_000;
  const LARGEST_FILE = 32e6;
  // So much is left to the recipes and to the page itself.
  const SPARE = 4e6;
  const DAY = 86_400_000;
  const PATIENCE = 8_000;
  // Longest side in pixels and quality, the best first.
  const TRIES = [[1024, 0.75], [1024, 0.6], [800, 0.65], [640, 0.6], [480, 0.55], [320, 0.5], [240, 0.4], [160, 0.3]];
  const NAME = /picture-[0-9a-f]{24}/g;
  // Where a record stands that may name one, and may be damaged.
  const NAMES_SOME = /^batterwright\/(trial|bin)\//;

  const NO_PICTURE = "This browser cannot read that file as a picture. Try it as JPEG or PNG.";
  const TOO_LARGE = "That file is larger than 32 MB, so it was not opened.";
  const NOT_SMALL = "That picture could not be made small enough to be kept.";
  const FULL = "There is no room left on this device for another picture. Everything else is kept.";
  const CLOSED = "This browser keeps no pictures for this page. Everything else is kept.";

  class Refused extends Error {}

  const done = (request) =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });

  // Some browsers leave a database that they do not let the page have without any answer.
  const inTime = (promise) =>
    Promise.race([promise, new Promise((_, reject) => setTimeout(() => reject(new Error("no answer")), PATIENCE))]);

  let opened = null;

  const open = () => {
    opened ??= inTime(
      (async () => {
        const request = indexedDB.open("batterwright", 1);
        request.onupgradeneeded = () => [PICTURES, UNNAMED].forEach((store) => request.result.createObjectStore(store));
        const base = await done(request);
        // Cleared under the page, or wanted by a newer one in another window: the next call opens it again.
        const close = () => {
          base.close();
          opened = null;
        };
        base.onclose = close;
        base.onversionchange = close;
        return base;
      })(),
    ).catch((error) => {
      opened = null;
      throw error;
    });
    return opened;
  };

  // Does something with the two stores. What is written counts once the whole transaction is through.
  const within = async (mode, work, isSecond = false) => {
    let transaction;
    try {
      transaction = (await open()).transaction([PICTURES, UNNAMED], mode);
    } catch (error) {
      // Closed since it was opened.
      opened = null;
      if (isSecond) throw error;
      return within(mode, work, true);
    }
    const through = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error ?? new Error("aborted"));
    });
    through.catch(() => {});
    const result = await inTime(work(transaction.objectStore(PICTURES), transaction.objectStore(UNNAMED)));
    await inTime(through);
    return result;
  };

  const reason = (error) => {
    if (error instanceof Refused) return error.message;
    return error?.name === "QuotaExceededError" ? FULL : CLOSED;
  };

  const saying = async (work) => {
    try {
      return await work();
    } catch (error) {
      return { trouble: reason(error) };
    }
  };

  // The first half of a SHA-256; by chance where a browser has none, as away from a secure address.
  const nameOf = async (bytes) => {
    const sum = crypto.subtle ? await crypto.subtle.digest("SHA-256", bytes) : crypto.getRandomValues(new Uint8Array(12));
    return `picture-${Array.from(new Uint8Array(sum).subarray(0, 12), (byte) => byte.toString(16).padStart(2, "0")).join("")}`;
  };

  // Turned upright as the camera says. Drawn anew, a picture has nothing of what the camera wrote beside it, such as the place.
  const shrink = async (file) => {
    const picture = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => {
      throw new Refused(NO_PICTURE);
    });
    try {
      for (const [side, quality] of TRIES) {
        const share = Math.min(1, side / Math.max(picture.width, picture.height));
        const canvas = document.createElement("canvas");
        canvas.width = Math.max(1, Math.round(picture.width * share));
        canvas.height = Math.max(1, Math.round(picture.height * share));
        const pen = canvas.getContext("2d");
        if (!pen) break;
        // What can be seen through would come out black.
        pen.fillStyle = "white";
        pen.fillRect(0, 0, canvas.width, canvas.height);
        pen.imageSmoothingQuality = "high";
        pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
        const small = await new Promise((drawn) => canvas.toBlob(drawn, "image/jpeg", quality));
        if (small && small.type === "image/jpeg" && small.size <= MOST_BYTES) return small.arrayBuffer();
      }
    } finally {
      picture.close();
    }
    throw new Refused(NOT_SMALL);
  };

  const isShort = async (bytes) => {
    const { quota, usage } = (await navigator.storage?.estimate?.().catch(() => null)) ?? {};
    return quota > 0 && quota - usage < SPARE + bytes;
  };

  // Keeps pictures by their names; how many were new. One that is there already is never written over.
  const keep = async (pictures) => {
    if (await isShort(pictures.reduce((sum, [, bytes]) => sum + bytes.byteLength, 0))) throw new Refused(FULL);
    return within("readwrite", async (store, unnamed) => {
      let came = 0;
      for (const [id, bytes] of pictures) {
        // Taken anew, it has its day again.
        unnamed.delete(id);
        if (await done(store.getKey(id))) continue;
        await done(store.put(bytes, id));
        came += 1;
      }
      return came;
    });
  };

  const take = (file) =>
    saying(async () => {
      if (!(file.size <= LARGEST_FILE)) throw new Refused(TOO_LARGE);
      const bytes = await shrink(file);
      const id = await nameOf(bytes);
      await keep([[id, bytes]]);
      return { id };
    });

  const find = (id) => within("readonly", (store) => done(store.get(id)));

  const address = async (id) => {
    const found = await find(id).catch(() => null);
    return found ? URL.createObjectURL(new Blob([found], { type: "image/jpeg" })) : null;
  };

  const pack = async (ids) => {
    const packed = {};
    for (const id of ids) {
      const found = await find(id).catch(() => null);
      if (found) packed[id] = btoa(Array.from(new Uint8Array(found), (byte) => String.fromCharCode(byte)).join(""));
    }
    return JSON.stringify(packed);
  };

  const unpack = (json) =>
    saying(async () => {
      const bytesOf = (base64) => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)).buffer;
      const pictures = Object.entries(JSON.parse(json)).map(([id, base64]) => [id, bytesOf(base64)]);
      return { came: await keep(pictures) };
    });

  const count = () => within("readonly", (store) => done(store.count())).catch(() => null);

  // Every name of a picture in what is kept, the bin and records of other versions included. Nothing is known of it where
  // a record that may name some is damaged.
  const named = () => {
    const names = new Set();
    for (let at = 0; at < localStorage.length; at += 1) {
      const key = localStorage.key(at);
      if (!key?.startsWith("batterwright/")) continue;
      const text = localStorage.getItem(key) ?? "";
      if (NAMES_SOME.test(key)) JSON.parse(text);
      for (const [name] of text.matchAll(NAME)) names.add(name);
    }
    return names;
  };

  const sweep = async () => {
    try {
      const names = named();
      const now = Date.now();
      return await within("readwrite", async (store, unnamed) => {
        let gone = 0;
        for (const id of await done(store.getAllKeys())) {
          const since = await done(unnamed.get(id));
          if (names.has(id)) {
            if (since) unnamed.delete(id);
          } else if (!since) {
            unnamed.put(now, id);
          } else if (now - since > DAY) {
            store.delete(id);
            unnamed.delete(id);
            gone += 1;
          }
        }
        return gone;
      });
    } catch {
      // Another day.
      return 0;
    }
  };

  window.batterwrightPictures = { take, address, pack, unpack, count, sweep };

  const quietly = window.requestIdleCallback ?? ((call) => setTimeout(call, 1000));
  window.addEventListener("load", () => setTimeout(() => quietly(sweep), 30_000));
})();

// Pictures of bakes: shrunk, turned upright, without what the camera wrote beside them; kept, named, and let go of.

import assert from "node:assert/strict";
import { inBrowser, ready } from "./harness.mjs";
import { go } from "./hands.mjs";

const MOST_BYTES = 40_000;
const DAY = 86_400_000;

/** Runs in the page before its scripts: makes real files of pictures. */
function makeFiles() {
  window.drawn = async (width, height, type, draw) => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [width, height];
    draw(canvas.getContext("2d"), width, height);
    return new Promise((done) => canvas.toBlob(done, type, 0.95));
  };
  /** Left half red, right half blue. */
  window.halves = (pen, width, height) => {
    pen.fillStyle = "red";
    pen.fillRect(0, 0, width / 2, height);
    pen.fillStyle = "blue";
    pen.fillRect(width / 2, 0, width / 2, height);
  };
  /** What packs worst: chance in every dot. */
  window.noise = (pen, width, height) => {
    const dots = pen.createImageData(width, height);
    let seed = 1;
    for (let at = 0; at < dots.data.length; at += 1) {
      seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
      dots.data[at] = at % 4 === 3 ? 255 : seed >> 16;
    }
    pen.putImageData(dots, 0, 0);
  };
  /** A JPEG with what a camera writes beside a picture: that it lies on its side, and words. */
  window.asFromCamera = async (jpeg, orientation, words) => {
    const text = [...new TextEncoder().encode(`${words}\0`)];
    // TIFF, little-endian: two entries (orientation, image description), then the words.
    const short = (value) => [value & 255, value >> 8];
    const long = (value) => [...short(value & 65_535), ...short(value >>> 16)];
    const description = [...short(0x010e), ...short(2), ...long(text.length), ...long(38)];
    const turned = [...short(0x0112), ...short(3), ...long(1), ...short(orientation), 0, 0];
    const tiff = [0x49, 0x49, ...short(42), ...long(8), ...short(2), ...description, ...turned, ...long(0), ...text];
    const body = [0x45, 0x78, 0x69, 0x66, 0, 0, ...tiff];
    const length = body.length + 2;
    const bytes = new Uint8Array(await jpeg.arrayBuffer());
    return new Blob([bytes.subarray(0, 2), new Uint8Array([0xff, 0xe1, length >> 8, length & 255, ...body]), bytes.subarray(2)], { type: "image/jpeg" });
  };
  /** The kept picture: its bytes as text of Latin letters, its size in dots, and the colours left, right, above, below. */
  window.keptAs = async (id) => {
    const address = await window.batterwrightPictures.address(id);
    const shown = new Image();
    shown.src = address;
    await shown.decode();
    const bytes = await (await new Promise((done) => indexedDB.open("batterwright").onsuccess = (event) => {
      event.target.result.transaction("pictures").objectStore("pictures").get(id).onsuccess = (got) => {
        done(got.target.result);
        event.target.result.close();
      };
    }));
    const { naturalWidth: width, naturalHeight: height } = shown;
    const canvas = Object.assign(document.createElement("canvas"), { width, height });
    const pen = canvas.getContext("2d");
    pen.drawImage(shown, 0, 0);
    const colour = (x, y) => {
      const [red, green, blue] = pen.getImageData(Math.floor(x * (width - 1)), Math.floor(y * (height - 1)), 1, 1).data;
      return red > 200 && green > 200 && blue > 200 ? "white" : red > blue ? "red" : "blue";
    };
    const letters = Array.from(new Uint8Array(bytes), (byte) => String.fromCharCode(byte)).join("");
    return { size: [width, height], bytes: letters.length, letters, left: colour(0.1, 0.5), right: colour(0.9, 0.5), above: colour(0.5, 0.1), below: colour(0.5, 0.9) };
  };
}

const picturesTest = (name, options, body) => inBrowser(name, { screen: "phone", before: makeFiles, ...options }, body);
const names = (page, ids, key = "batterwright/trial/a/b") =>
  page.evaluate(([key, ids]) => localStorage.setItem(key, JSON.stringify({ pictures: ids })), [key, ids]);
const count = (page) => page.evaluate(() => window.batterwrightPictures.count());
/** Sweeps as if so many days had gone by. */
const sweepAfter = (page, days) =>
  page.evaluate(async (later) => {
    const now = Date.now;
    Date.now = () => now() + later;
    try {
      return await window.batterwrightPictures.sweep();
    } finally {
      Date.now = now;
    }
  }, days * DAY);
const takeOne = (page, side = 40) =>
  page.evaluate(async (side) => (await window.batterwrightPictures.take(await window.drawn(side, side, "image/png", window.halves))).id, side);

picturesTest("a photograph comes out small, as large as it may be, and upright as it was", {}, async ({ page }) => {
  const kept = await page.evaluate(async () => {
    const { id } = await window.batterwrightPictures.take(await window.drawn(3000, 2000, "image/jpeg", window.halves));
    return { id, ...(await window.keptAs(id)) };
  });
  assert.match(kept.id, /^picture-[0-9a-f]{24}$/);
  assert.deepEqual(kept.size, [1024, 683]);
  assert.deepEqual([kept.left, kept.right], ["red", "blue"]);
  assert.ok(kept.bytes <= MOST_BYTES, `${kept.bytes} bytes`);
});

picturesTest("what packs badly is made smaller until it fits", {}, async ({ page }) => {
  const kept = await page.evaluate(async () => {
    const { id } = await window.batterwrightPictures.take(await window.drawn(1600, 1600, "image/png", window.noise));
    return window.keptAs(id);
  });
  assert.ok(kept.bytes <= MOST_BYTES, `${kept.bytes} bytes`);
  assert.ok(kept.size[0] >= 160 && kept.size[0] < 1024, `${kept.size} dots`);
});

picturesTest("a picture that lies on its side is turned, and what the camera wrote beside it is gone", {}, async ({ page }) => {
  const kept = await page.evaluate(async () => {
    const flat = await window.drawn(300, 200, "image/jpeg", window.halves);
    // Orientation 6: the camera was held so that the first row of dots is the right side.
    const file = await window.asFromCamera(flat, 6, "taken at 52.5 north");
    const has = new TextDecoder("latin1").decode(await file.arrayBuffer());
    const { id } = await window.batterwrightPictures.take(file);
    return { had: has.includes("52.5 north") && has.includes("Exif"), ...(await window.keptAs(id)) };
  });
  assert.ok(kept.had, "the file of this test says where it was taken");
  assert.deepEqual(kept.size, [200, 300]);
  // Turned a quarter to the right, what was left is above.
  assert.deepEqual([kept.above, kept.below], ["red", "blue"]);
  assert.doesNotMatch(kept.letters, /52\.5 north|Exif/);
});

picturesTest("what can be seen through comes out white, and a tiny picture stays as it is", {}, async ({ page }) => {
  const kept = await page.evaluate(async () => {
    const { id } = await window.batterwrightPictures.take(await window.drawn(8, 6, "image/png", () => {}));
    return window.keptAs(id);
  });
  assert.deepEqual(kept.size, [8, 6]);
  assert.deepEqual([kept.left, kept.right], ["white", "white"]);
});

picturesTest("the same picture is there once, and is there after the page was closed", {}, async ({ page, reload }) => {
  const first = await takeOne(page);
  assert.equal(await takeOne(page), first);
  assert.equal(await count(page), 1);
  assert.notEqual(await takeOne(page, 41), first);
  await reload();
  assert.equal(await count(page), 2);
  assert.deepEqual((await page.evaluate((id) => window.keptAs(id), first)).size, [40, 40]);
  assert.equal(await page.evaluate(() => window.batterwrightPictures.address("picture-000000000000000000000000")), null);
});

picturesTest("a file that is no picture, and one that is too large, are told apart and change nothing", {}, async ({ page }) => {
  const told = await page.evaluate(async () => {
    const jpeg = await window.drawn(300, 200, "image/jpeg", window.halves);
    const take = async (file) => (await window.batterwrightPictures.take(file)).trouble;
    return {
      words: await take(new Blob(["2 cups flour"], { type: "image/jpeg" })),
      empty: await take(new Blob([])),
      cut: await take(jpeg.slice(0, 60)),
      large: await take({ size: 32_000_001 }),
      sizeless: await take({}),
    };
  });
  const NO_PICTURE = "This browser cannot read that file as a picture. Try it as JPEG or PNG.";
  const TOO_LARGE = "That file is larger than 32 MB, so it was not opened.";
  assert.deepEqual(told, { words: NO_PICTURE, empty: NO_PICTURE, cut: NO_PICTURE, large: TOO_LARGE, sizeless: TOO_LARGE });
  assert.equal(await count(page), 0);
});

picturesTest("pictures travel as text, and one that is here already stays as it is", {}, async ({ page, context, site }) => {
  const id = await takeOne(page);
  const packed = await page.evaluate((id) => window.batterwrightPictures.pack([id, "picture-000000000000000000000000"]), id);
  assert.deepEqual(Object.keys(JSON.parse(packed)), [id]);
  // A JPEG begins with ff d8 ff.
  assert.match(JSON.parse(packed)[id], /^\/9j\//);
  assert.deepEqual(await page.evaluate((packed) => window.batterwrightPictures.unpack(packed), packed), { came: 0 });
  const gone = await page.evaluate(async (packed) => {
    await new Promise((done) => (indexedDB.deleteDatabase("batterwright").onsuccess = done));
    return [await window.batterwrightPictures.count(), await window.batterwrightPictures.unpack(packed)];
  }, packed);
  // Cleared under the page, the database is made anew.
  assert.deepEqual(gone, [0, { came: 1 }]);
  assert.deepEqual((await page.evaluate((id) => window.keptAs(id), id)).size, [40, 40]);
  assert.ok((await page.evaluate(() => window.batterwrightPictures.unpack("no JSON"))).trouble);
  const other = await context.newPage();
  await other.goto(site.address);
  await ready(other);
  assert.equal(await count(other), 1);
});

picturesTest("what no record names goes after a day, and not before", {}, async ({ page }) => {
  const [named, binned, newer, loose] = [await takeOne(page, 20), await takeOne(page, 21), await takeOne(page, 22), await takeOne(page, 23)];
  await names(page, [named]);
  const inner = JSON.stringify({ pictures: [{ picture: binned }] });
  await page.evaluate(([key, text]) => localStorage.setItem(key, text), ["batterwright/bin/x", JSON.stringify({ text: inner })]);
  await names(page, { anything: [[newer]] }, "batterwright/a-later-kind/of/record");
  assert.equal(await sweepAfter(page, 0), 0);
  assert.equal(await sweepAfter(page, 0.9), 0);
  // Named again, and then no longer: its day begins anew.
  await names(page, [named, loose]);
  assert.equal(await sweepAfter(page, 2), 0);
  await names(page, [named]);
  assert.equal(await sweepAfter(page, 3), 0);
  assert.equal(await sweepAfter(page, 3.9), 0);
  assert.equal(await sweepAfter(page, 4.1), 1);
  assert.equal(await count(page), 3);
  assert.equal(await page.evaluate((id) => window.batterwrightPictures.address(id), loose), null);
});

picturesTest("a damaged record may name any picture: nothing goes until it is gone", {}, async ({ page }) => {
  await takeOne(page);
  await page.evaluate(() => localStorage.setItem("batterwright/trial/a/b", '{"format":"batterwright trial","body":{"pictures":[{"pic'));
  assert.equal(await sweepAfter(page, 0), 0);
  assert.equal(await sweepAfter(page, 9), 0);
  await page.evaluate(() => localStorage.removeItem("batterwright/trial/a/b"));
  assert.equal(await sweepAfter(page, 10), 0);
  assert.equal(await sweepAfter(page, 12), 1);
});

const CLOSED = "This browser keeps no pictures for this page. Everything else is kept.";
const FULL = "There is no room left on this device for another picture. Everything else is kept.";
const troubleOfTaking = (page) =>
  page.evaluate(async () => (await window.batterwrightPictures.take(await window.drawn(40, 40, "image/png", window.halves))).trouble);

picturesTest("without a database it is said, and nothing else breaks", {}, async ({ page }) => {
  await page.evaluate(() => Object.defineProperty(window, "indexedDB", { value: undefined, configurable: true }));
  assert.equal(await troubleOfTaking(page), CLOSED);
  assert.equal(await count(page), null);
  assert.equal(await page.evaluate(() => window.batterwrightPictures.pack(["picture-000000000000000000000000"])), "{}");
  assert.equal(await sweepAfter(page, 0), 0);
});

picturesTest("a database that is refused, that never answers, that is full or short of room is said", {}, async ({ page }) => {
  const open = (how) =>
    page.evaluate((how) => {
      window.whole ??= IDBFactory.prototype.open;
      IDBFactory.prototype.open = {
        refused() {
          throw new DOMException("No.", "SecurityError");
        },
        fails() {
          const request = { error: new DOMException("No.", "UnknownError") };
          setTimeout(() => request.onerror());
          return request;
        },
        silent: () => ({}),
        whole: window.whole,
      }[how];
    }, how);
  for (const how of ["refused", "fails", "silent"]) {
    await open(how);
    assert.equal(await troubleOfTaking(page), CLOSED, how);
  }
  // Each is tried anew.
  await open("whole");
  assert.match(await takeOne(page), /^picture-/);
  await page.evaluate(() => {
    window.put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("Full.", "QuotaExceededError");
    };
  });
  assert.equal(await page.evaluate(async () => (await window.batterwrightPictures.take(await window.drawn(50, 50, "image/png", window.halves))).trouble), FULL);
  await page.evaluate(() => (IDBObjectStore.prototype.put = window.put));
  await page.evaluate(() => (StorageManager.prototype.estimate = async () => ({ quota: 9e6, usage: 6e6 })));
  assert.equal(await page.evaluate(async () => (await window.batterwrightPictures.take(await window.drawn(50, 50, "image/png", window.halves))).trouble), FULL);
  assert.equal(await count(page), 1);
});

const SCONES = "Pump-house scones\n\n250 g flour\n100 g butter";

/** Writes a bake of a recipe down, and stands on its page. */
async function writeDown(page, paste) {
  await paste(SCONES);
  await go(page, "Trials");
  await page.getByRole("button", { name: "Write a bake down" }).click();
  await page.getByLabel("Add pictures").waitFor();
}

/** Files of real pictures, drawn in the page: one for each width. */
const files = async (page, widths, type = "image/jpeg") => {
  const made = await page.evaluate(
    async ([widths, type]) => {
      const all = [];
      for (const width of widths) all.push(Array.from(new Uint8Array(await (await window.drawn(width, 300, type, window.halves)).arrayBuffer())));
      return all;
    },
    [widths, type],
  );
  return made.map((bytes, at) => ({ name: `bake-${at}.jpg`, mimeType: type, buffer: Buffer.from(bytes) }));
};

const keptPictures = (page) =>
  page.evaluate(() => {
    const key = Object.keys(localStorage).find((key) => key.startsWith("batterwright/trial/"));
    return JSON.parse(localStorage.getItem(key)).body.pictures ?? [];
  });

const shownWidths = (page) =>
  page.getByRole("list", { name: "Pictures" }).getByRole("img").evaluateAll(async (images) => {
    await Promise.all(images.map((image) => image.decode()));
    return images.map((image) => image.naturalWidth);
  });

picturesTest("pictures are added to a bake, told in words, removed and put back", { allow: /ERR_FILE_NOT_FOUND/ }, async ({ page, paste, reload, reachable, picture }) => {
  await writeDown(page, paste);
  await page.getByLabel("Add pictures").setInputFiles(await files(page, [400, 500]));
  const list = page.getByRole("list", { name: "Pictures" });
  await list.getByRole("img", { name: "Picture 2 of this bake" }).waitFor();
  await page.getByLabel("What picture 1 shows").fill("The cut face, dense below");
  await list.getByRole("img", { name: "The cut face, dense below" }).waitFor();
  assert.deepEqual((await shownWidths(page)).sort(), [400, 500]);
  await reachable();
  await picture("pictures");
  const before = await keptPictures(page);
  assert.equal(before[0].words, "The cut face, dense below");
  await list.getByRole("button", { name: "Remove Picture 1 of this bake" }).click();
  await list.getByRole("img", { name: "Picture 1 of this bake" }).waitFor();
  assert.equal((await keptPictures(page)).length, 1);
  await reachable();
  const back = page.getByRole("button", { name: "Put it back" });
  await back.and(page.locator(":focus")).click();
  await list.getByRole("img", { name: "The cut face, dense below" }).waitFor();
  assert.deepEqual(await keptPictures(page), before);
  await reload();
  await list.getByRole("img", { name: "The cut face, dense below" }).waitFor();
  await list.getByRole("img", { name: "Picture 2 of this bake" }).waitFor();
  assert.deepEqual((await shownWidths(page)).sort(), [400, 500]);
  // An address that is no longer needed is let go of.
  const address = await list.getByRole("img").first().getAttribute("src");
  assert.match(address, /^blob:/);
  const isThere = (address) => {
    const image = new Image();
    image.src = address;
    return image.decode().then(() => "there", () => "gone");
  };
  assert.equal(await page.evaluate(isThere, address), "there");
  await go(page, "Shelf");
  assert.equal(await page.evaluate(isThere, address), "gone");
});

picturesTest("what is no picture is said at the field, the same one is not listed twice, twelve are the most", {}, async ({ page, paste, reachable }) => {
  await writeDown(page, paste);
  const field = page.getByLabel("Add pictures");
  await field.setInputFiles({ name: "cake.jpg", mimeType: "image/jpeg", buffer: Buffer.from("2 cups flour") });
  await page.getByRole("alert").filter({ hasText: "cannot read that file as a picture" }).waitFor();
  await reachable();
  const widths = Array.from({ length: 13 }, (_, at) => 40 + at);
  await field.setInputFiles(await files(page, [40]));
  await page.getByRole("img", { name: "Picture 1 of this bake" }).waitFor();
  await field.setInputFiles(await files(page, [40]));
  await page.getByRole("alert").filter({ hasText: "here already" }).waitFor();
  await field.setInputFiles(await files(page, widths.slice(1)));
  await page.getByRole("alert").filter({ hasText: "12 pictures at most" }).waitFor();
  assert.equal((await keptPictures(page)).length, 12);
});

picturesTest("a bake is kept without pictures where the browser keeps none, and a picture that is gone keeps its place", {}, async ({ page, paste, reload, reachable }) => {
  await writeDown(page, paste);
  await page.getByLabel("Add pictures").setInputFiles(await files(page, [60]));
  await page.getByRole("img", { name: "Picture 1 of this bake" }).waitFor();
  await page.evaluate(() => new Promise((done) => (indexedDB.deleteDatabase("batterwright").onsuccess = done)));
  await reload();
  await page.getByText("This picture is not on this device.").waitFor();
  await reachable();
  assert.equal((await keptPictures(page)).length, 1);
  await page.evaluate(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("No.", "SecurityError");
    };
    window.batterwrightPictures.count();
  });
  await page.evaluate(() => new Promise((done) => (indexedDB.deleteDatabase("batterwright").onsuccess = done)));
  await page.getByLabel("Add pictures").setInputFiles(await files(page, [61]));
  await page.getByRole("alert").filter({ hasText: CLOSED }).waitFor();
  await page.getByLabel("Name of this trial").fill("Kept all the same");
  await reload();
  await page.getByRole("heading", { level: 1, name: "Kept all the same" }).waitFor();
});

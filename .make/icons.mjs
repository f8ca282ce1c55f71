// Draws the PNG icons from public/icons/icon.svg. Run by hand after changing the drawing: node .make/icons.mjs
//
// The drawing has three flat colours, so the pictures are written with a palette of sixteen: those three, their
// mixtures and the see-through edge. That makes them a fraction of the size, and every phone keeps them offline.

import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { deflateSync } from "node:zlib";
import { launch } from "./browser.mjs";

const FOLDER = join(dirname(fileURLToPath(import.meta.url)), "..", "public", "icons");
const drawing = readFileSync(join(FOLDER, "icon.svg"), "utf8");

// Where the system cuts its own shape (maskable, Apple), the ground fills the square and the mark keeps to the middle.
const full = drawing.replace(/ rx="\d+"/, "").replace(/scale\([\d.]+\)/, "scale(.76)");

const ICONS = [
  ["icon-192.png", 192, drawing],
  ["icon-512.png", 512, drawing],
  ["icon-maskable-512.png", 512, full],
  ["apple-touch-icon.png", 180, full],
];

const [GROUND, CAKE, TIN] = ["#1f3b3a", "#e5a93d", "#f6f1e7"].map((hex) => [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16)));
const mix = (one, other, share) => one.map((value, at) => Math.round(value + (other[at] - value) * share));
const QUARTERS = [0.25, 0.5, 0.75];
const PALETTE = [
  ...[0, 0.25, 0.5, 0.75, 1].map((alpha) => [...GROUND, Math.round(alpha * 255)]),
  ...[CAKE, TIN].map((colour) => [...colour, 255]),
  ...[[GROUND, CAKE], [GROUND, TIN], [CAKE, TIN]].flatMap(([one, other]) => QUARTERS.map((share) => [...mix(one, other, share), 255])),
];

/** The place in the palette that is nearest to a pixel. */
function nearest(red, green, blue, alpha) {
  const distance = (colour) =>
    ((colour[0] - red) ** 2 + (colour[1] - green) ** 2 + (colour[2] - blue) ** 2) * (alpha / 255) + (colour[3] - alpha) ** 2;
  let best = 0;
  for (let at = 1; at < PALETTE.length; at += 1) if (distance(PALETTE[at]) < distance(PALETTE[best])) best = at;
  return best;
}

/** The checksum of PNG and zip (ISO 3309). */
function crc(bytes) {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

function chunk(name, content) {
  const body = Buffer.concat([Buffer.from(name, "latin1"), content]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(content.length, 0);
  body.copy(framed, 4);
  framed.writeUInt32BE(crc(body), body.length + 4);
  return framed;
}

/** A PNG of `size` x `size` pixels with the palette, four bits a pixel. */
function png(size, pixels) {
  const head = Buffer.from([0, 0, 0, 0, 0, 0, 0, 0, 4, 3, 0, 0, 0]);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  const row = Math.ceil(size / 2) + 1;
  const rows = Buffer.alloc(row * size);
  for (let y = 0; y < size; y += 1) {
    for (let x = 0; x < size; x += 1) {
      const at = (y * size + x) * 4;
      const place = nearest(pixels[at], pixels[at + 1], pixels[at + 2], pixels[at + 3]);
      rows[y * row + 1 + (x >> 1)] |= x % 2 ? place : place << 4;
    }
  }
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", head),
    chunk("PLTE", Buffer.from(PALETTE.flatMap((colour) => colour.slice(0, 3)))),
    chunk("tRNS", Buffer.from(PALETTE.slice(0, 5).map((colour) => colour[3]))),
    chunk("IDAT", deflateSync(rows, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

/** Runs in the browser: the drawing as red, green, blue, alpha, row by row. */
async function draw([svg, size]) {
  const image = new Image(size, size);
  image.src = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  await image.decode();
  const canvas = new OffscreenCanvas(size, size);
  const context = canvas.getContext("2d");
  context.drawImage(image, 0, 0, size, size);
  return [...context.getImageData(0, 0, size, size).data];
}

const browser = await launch();
const page = await browser.newPage();
for (const [name, size, svg] of ICONS) {
  const picture = png(size, await page.evaluate(draw, [svg, size]));
  writeFileSync(join(FOLDER, name), picture);
  console.log(`${name}: ${picture.length} bytes`);
}
await browser.close();

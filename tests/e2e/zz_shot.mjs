import { launch } from "../../.make/browser.mjs";
import { serve } from "../../.make/serve.mjs";
const out = process.argv[2] ?? "/tmp/shots"; import { mkdirSync } from "node:fs"; mkdirSync(out, { recursive: true });
const server = await serve({ folder: "dist", port: 0 });
const browser = await launch();
for (const [name, view] of Object.entries({ phone: { width: 360, height: 740 }, narrow: { width: 320, height: 640 }, desk: { width: 1280, height: 800 } })) {
  for (const dark of [false, true]) {
    if (dark && name !== "phone") continue;
    const context = await browser.newContext({ viewport: view, colorScheme: dark ? "dark" : "light" });
    const page = await context.newPage();
    page.on("pageerror", (e) => console.log("ERR", e.message)); page.on("console", (m) => m.type() === "error" && console.log("CON", m.text()));
    await page.goto(server.address + "#/bench");
    await page.locator("html[data-ready]").waitFor();
    await page.getByRole("button", { name: "Write this bake down" }).click();
    await page.getByLabel("Name of this trial").fill("control");
    await page.getByLabel("Baked, minutes").fill("34");
    await page.getByLabel("Core when it came out").fill("97 C");
    await page.getByLabel("Height in the middle").fill("62 cm");
    await page.getByLabel("Height at the edge").fill("5 cm");
    await page.getByLabel("pH of the crumb").fill("15");
    await page.getByRole("button", { name: "Volume: 3, good" }).click();
    const suffix = `${name}${dark ? "-dark" : ""}`;
    await page.screenshot({ path: `${out}/trial-${suffix}.png`, fullPage: true });
    await page.getByLabel("Height in the middle").fill("6.2 cm");
    await page.getByLabel("pH of the crumb").fill("6.1");
    await page.getByRole("button", { name: "Go by it: The pH of the crumb" }).click();
    await page.getByRole("button", { name: "Go by it: The time in the oven" }).click();
    await page.getByRole("link", { name: "All trials" }).click();
    await page.getByRole("button", { name: "Write a bake down" }).click();
    await page.getByText("Say what really went in").click();
    const first = page.locator("[id^=went-in]").first(); await first.fill("300");
    await page.getByLabel("Oven set to").fill("170 C");
    await page.screenshot({ path: `${out}/trial2-${suffix}.png`, fullPage: true }); if (name === "phone") for (let k = 0; k < 4; k++) await page.screenshot({ path: `${out}/part${k}-${suffix}.png`, fullPage: true, clip: { x: 0, y: k * 1400, width: 360, height: 1400 } });
    await page.getByRole("link", { name: "All trials" }).click();
    await page.screenshot({ path: `${out}/trials-${suffix}.png`, fullPage: true });
    await context.close();
  }
}
await browser.close(); server.close?.(); process.exit(0);

import { launch } from "../../.make/browser.mjs";
import { serve } from "../../.make/serve.mjs";
import { SCREENS, ready, textBox } from "./screens.mjs";
const s = await serve({ folder: "dist" });
const b = await launch();
for (const [screen, colours] of [["phone","light"],["phone","dark"],["desk","light"]]) {
  const c = await b.newContext({ ...SCREENS[screen], colorScheme: colours, reducedMotion: "reduce" });
  const p = await c.newPage();
  p.on("console", m => m.type()==="error" && console.log("ERR", m.text()));
  p.on("pageerror", e => console.log("PAGEERR", e.message));
  await p.goto(s.address); await ready(p);
  await p.evaluate(() => location.hash = "#/bench");
  await p.waitForTimeout(1500);
  await p.screenshot({ path: `/tmp/s-${screen}-${colours}-1.png` });
  const rows = p.locator(".weight__button");
  console.log(screen, "rows", await rows.count());
  await rows.nth(0).click(); await rows.nth(1).click();
  await p.getByRole("button", { name: /^Another weight/ }).nth(2).click();
  await p.getByLabel(/scale shows now/).fill("430");
  await p.getByRole("button", { name: "That is in" }).click();
  await p.getByRole("button", { name: /^Start a timer: Bake/ }).click();
  await p.getByLabel("Another timer: what for").fill("Cream"); await p.getByLabel("How long, in minutes").fill("1");
  await p.getByRole("button", { name: "Start it" }).click();
  await p.waitForTimeout(800);
  await p.screenshot({ path: `/tmp/s-${screen}-${colours}-2.png`, fullPage: true });
  await c.close();
}
await b.close(); await s.close();

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { CDPSession, Page } from "playwright-core";
import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { draftOf, openScenario, settled, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

interface Source {
  readonly parts: Readonly<Record<string, { readonly place?: Readonly<Record<string, number>> }>>;
  readonly wires: readonly unknown[];
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

const source = async (page: Page) => (await draftOf(page)).source as Source;
const said = (page: Page) => page.locator(".hand-said").textContent();
const card = (page: Page) => page.locator(".hand-card");

/** Runs in the browser. */
function centreOf(element: Element): Spot {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
}

/** Runs in the browser: the middle of the first element found, which is brought into view first. */
function middleOf(selector: string): Spot {
  const element = document.querySelector(selector)!;
  element.scrollIntoView({ block: "center", inline: "center" });
  const { left, top, width, height } = element.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
}

const lugAt = (page: Page, lug: string) => page.evaluate(middleOf, `[data-lug="${lug}"] circle`);

/** Runs in the browser: where a wire can be pointed at, clear of lugs and names. */
function openSpotOf(index: number): Spot {
  const path = document.querySelector<SVGPathElement>(`[data-wire="${index}"]`)!;
  path.scrollIntoView({ block: "center", inline: "center" });
  const matrix = path.getScreenCTM()!;
  const lugs = [...document.querySelectorAll(".lug circle")].map((each) => each.getBoundingClientRect());
  const spots = Array.from({ length: 39 }, (_, step) => {
    const at = path.getPointAtLength(((step + 1) / 40) * path.getTotalLength());
    const { x, y } = new DOMPoint(at.x, at.y).matrixTransform(matrix);
    return { x, y };
  });
  const open = spots.find(
    ({ x, y }) =>
      lugs.every(({ left, right, top, bottom }) => Math.hypot((left + right) / 2 - x, (top + bottom) / 2 - y) > 30) &&
      document.elementFromPoint(x, y) === path,
  );
  if (!open) throw new Error(`wire ${index} lies under others everywhere`);
  return open;
}

async function drag(page: Page, from: Spot, to: Spot): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 3 });
  await page.mouse.move(to.x, to.y, { steps: 3 });
  await page.mouse.up();
}

async function touch(client: CDPSession, { x, y }: Spot): Promise<void> {
  await client.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x, y }] });
  await client.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
}

async function touchDrag(client: CDPSession, from: Spot, to: Spot): Promise<void> {
  await client.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [from] });
  for (const share of [0.3, 0.6, 1]) {
    const at = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
    await client.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [at] });
  }
  await client.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
}

async function chooseWire(page: Page, index: number): Promise<void> {
  const { x, y } = await page.evaluate(openSpotOf, index);
  await page.mouse.click(x, y);
  await card(page)
    .getByText(/^Wire: /)
    .waitFor();
}

async function stepBack(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Step back" }).click();
  await settled(page);
}

const lastWire = async (page: Page) => (await source(page)).wires.at(-1);
const placeOf = async (page: Page, part: string) => (await source(page)).parts[part]?.place;

describeWith("chromium", "wiring by hand in the drawing", () => {
  const site = usePage();

  async function openGuard(width = 1440) {
    const visit = await site.stay({ width, height: 1000 });
    await whenReady(visit.page);
    await openScenario(visit.page, /HSS/);
    return { ...visit, before: JSON.stringify(await source(visit.page)) };
  }

  it("lays a wire that is dragged from lug to lug, and a step back takes it away byte for byte", async () => {
    const visit = await openGuard();
    const { page, before } = visit;
    await drag(page, await lugAt(page, "neck.shield"), await lugAt(page, "middle.shield"));
    await expect.poll(() => lastWire(page)).toEqual(["neck.shield", "middle.shield"]);
    expect(await said(page)).toBe(
      "Laid: neck single coil, shield neck.shield — middle single coil, shield middle.shield.",
    );
    await stepBack(page);
    expect(JSON.stringify(await source(page))).toBe(before);
    // Where there is no lug, nothing is laid.
    const { x, y } = await lugAt(page, "neck.shield");
    await drag(page, { x, y }, { x: x + 60, y: y + 60 });
    expect(await said(page)).toMatch(/^Let go: there is no lug/);
    expect(JSON.stringify(await source(page))).toBe(before);
    expectQuiet(visit);
  });

  it("lays a wire between two lugs that a finger taps within 22 px, on a narrow page", async () => {
    const { page, context, before } = await openGuard(390);
    const client = await context.newCDPSession(page);
    await client.send("Emulation.setTouchEmulationEnabled", { enabled: true });
    // Off the lug to the side where no other is nearer.
    const beside = async (lug: string) => {
      const { x, y } = await lugAt(page, lug);
      return { x: x + 8, y: y - 18 };
    };
    await touch(client, await beside("neck.shield"));
    await expect.poll(() => said(page)).toMatch(/^A wire from .*neck\.shield is in hand/);
    await touch(client, await beside("middle.shield"));
    await expect.poll(() => lastWire(page)).toEqual(["neck.shield", "middle.shield"]);
    await stepBack(page);
    expect(JSON.stringify(await source(page))).toBe(before);
    // A finger that begins at a lug drags a wire, and scrolls nothing.
    const scrolled = () => page.locator(".guard-frame").evaluate((frame) => frame.scrollLeft);
    const from = await lugAt(page, "middle.shield");
    const to = await page.locator('[data-lug="middle.ground"] circle').evaluate(centreOf);
    const there = await scrolled();
    await touchDrag(client, from, to);
    await expect.poll(() => lastWire(page)).toEqual(["middle.shield", "middle.ground"]);
    expect(await scrolled()).toBe(there);
    await stepBack(page);
    await client.send("Emulation.setTouchEmulationEnabled", { enabled: false });
    await client.detach();
  });

  thoroughly("walks from lug to lug by arrow keys, takes up and lays by Enter, and lets go by Escape", async () => {
    const { page } = await openGuard();
    const focused = () => page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.lug);
    await page.locator('[data-lug="middle.hot"]').focus();
    expect(await page.locator('.lug[tabindex="0"]').count()).toBe(1);
    await page.keyboard.press("ArrowRight");
    expect(await focused()).toBe("middle.ground");
    await page.keyboard.press("ArrowRight");
    expect(await focused()).toBe("middle.shield");
    await page.keyboard.press("Enter");
    await expect.poll(() => said(page)).toMatch(/^A wire from middle single coil, shield middle\.shield is in hand/);
    await page.keyboard.press("Escape");
    expect(await said(page)).toMatch(/^Let go/);
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Enter");
    await expect.poll(() => lastWire(page)).toEqual(["middle.shield", "middle.ground"]);
    await settled(page);
    // The drawing has been drawn anew, and the keyboard goes on where it was.
    await expect.poll(focused).toBe("middle.ground");
    await page.getByRole("button", { name: "Wire to middle single coil, shield" }).press("Enter");
    await page.getByRole("button", { name: "Take it out" }).press("Enter");
    expect(await lastWire(page)).not.toEqual(["middle.shield", "middle.ground"]);
  });

  thoroughly("tells what a wire joins, and changes what it is, its colour and an end, or takes it out", async () => {
    const visit = await openGuard();
    const { page, before } = visit;
    const { wires } = await source(page);
    const index = wires.findIndex((wire) => JSON.stringify(wire).includes("jack.tip"));
    const { from, to } = wires[index] as { from: string; to: string };
    const wire = async () => (await source(page)).wires[index];
    await chooseWire(page, index);
    const codes = card(page).locator("h3 .lug-code");
    expect(await codes.allTextContents()).toEqual([from, to]);
    expect(await card(page).locator("h3").textContent()).toContain("jack, tip");
    await card(page).getByLabel("Made of").selectOption("braid");
    expect(await wire()).toEqual({ from, to, how: "braid" });
    await card(page).getByLabel("Colour").fill("white");
    await card(page).getByLabel("Colour").press("Tab");
    await expect.poll(wire).toEqual({ from, to, how: "braid", colour: "white" });
    await settled(page);
    await card(page).getByLabel("Kind").selectOption("screened");
    await expect.poll(wire).toEqual({ from, to, how: "braid", colour: "white", kind: "screened", length: "0.25m" });
    await settled(page);
    await card(page).getByLabel("Capacitance a metre").fill("150pF");
    await card(page).getByLabel("Capacitance a metre").press("Tab");
    await expect.poll(wire).toMatchObject({ kind: "screened", length: "0.25m", capacitance: "150pF" });
    await settled(page);
    const [held, other] = to === "jack.tip" ? (["to", from] as const) : (["from", to] as const);
    await card(page).getByRole("button", { name: "Move the end at jack, tip" }).click();
    const { x, y } = await lugAt(page, "jack.sleeve");
    await page.mouse.click(x, y);
    await expect.poll(wire).toMatchObject({ [held]: "jack.sleeve", colour: "white" });
    await settled(page);
    // And back by drag of the end, which is the chosen wire's still.
    const sleeve = await lugAt(page, "jack.sleeve");
    await drag(page, sleeve, await page.locator('[data-lug="jack.tip"] circle').evaluate(centreOf));
    await expect.poll(wire).toMatchObject({ [held]: "jack.tip", colour: "white" });
    expect((await source(page)).wires).toHaveLength(wires.length);
    await card(page).getByRole("button", { name: "Take it out" }).click();
    await expect.poll(async () => (await source(page)).wires.length).toBe(wires.length - 1);
    expect(await said(page)).toContain(other);
    for (let step = 0; step < 7; step++) await stepBack(page);
    expect(JSON.stringify(await source(page))).toBe(before);
    expectQuiet(visit);
  });

  thoroughly(
    "moves a part by drag and by keys, turns it by buttons with its lugs, and adds one in a free place",
    async () => {
      const { page, before } = await openGuard();
      const body = await page.evaluate(middleOf, '[data-part="volume"] .body');
      // Between its case lug above and its track's lugs below.
      const start = { x: body.x - 14, y: body.y + 14 };
      await drag(page, start, { x: start.x + 40, y: start.y + 30 });
      await expect.poll(async () => (await placeOf(page, "volume"))?.turn).toBe(0);
      const moved = (await placeOf(page, "volume"))!;
      await settled(page);
      expect(moved.x! * 1e4).toBeCloseTo(Math.round(moved.x! * 1e4), 6);
      await page.locator('[data-part="volume"]').focus();
      await page.keyboard.press("ArrowRight");
      await page.keyboard.press("ArrowUp");
      await expect
        .poll(() => placeOf(page, "volume"))
        .toEqual({ x: expect.closeTo(moved.x! + 0.001, 4), y: expect.closeTo(moved.y! + 0.001, 4), turn: 0 });
      const lug = async () => (await page.locator('[data-lug="volume.2"] circle').evaluate(centreOf)).x;
      const middle = async () => (await page.locator('[data-part="volume"] .body').evaluate(centreOf)).x;
      expect(Math.abs((await lug()) - (await middle()))).toBeLessThan(0.5);
      const left = card(page).getByRole("button", { name: "Turn left 15°" });
      for (let step = 0; step < 6; step++) await left.press("Enter");
      await expect.poll(async () => (await placeOf(page, "volume"))?.turn).toBe(90);
      // Its lugs pointed down; a quarter turn to the left points them right.
      await expect.poll(async () => (await lug()) - (await middle())).toBeGreaterThan(40);
      await page.getByLabel("From the tray").selectOption("pot");
      await page.getByRole("button", { name: "Lay it in" }).click();
      await expect.poll(() => card(page).locator("h3").textContent()).toBe("Pot");
      const boxes = await page
        .locator(".part .body")
        .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().toJSON() as DOMRect));
      const added = await page.locator('[data-part="pot"] .body').evaluate((each) => each.getBoundingClientRect());
      const onIt = boxes.filter(
        ({ left, right, top, bottom }) =>
          left < added.right && right > added.left && top < added.bottom && bottom > added.top,
      );
      expect(onIt).toHaveLength(1);
      for (let step = 0; step < 10; step++) await page.keyboard.press("Control+z");
      await settled(page);
      expect(JSON.stringify(await source(page))).toBe(before);
    },
  );

  thoroughly("marks the lugs where a wire would make a fault, says why, and lays it all the same", async () => {
    const { page } = await openGuard();
    const tip = await lugAt(page, "jack.tip");
    await page.mouse.click(tip.x, tip.y);
    await page.locator('[data-lug="jack.sleeve"].lug-would-fault').waitFor();
    expect(await page.locator(".would-fault").count()).toBeGreaterThan(1);
    // Its own net is no fault.
    expect(await page.locator('[data-lug="volume.2"].lug-would-fault').count()).toBe(0);
    const sleeve = await lugAt(page, "jack.sleeve");
    await page.mouse.move(sleeve.x, sleeve.y);
    await expect
      .poll(() => said(page))
      .toMatch(/^To jack, sleeve jack\.sleeve it would make a fault\. The hot is shorted to ground/);
    await page.mouse.click(sleeve.x, sleeve.y);
    await expect.poll(() => lastWire(page)).toEqual(["jack.tip", "jack.sleeve"]);
    await page.locator(".finding-fault", { hasText: "shorted" }).waitFor();
    expect(await page.locator(".would-fault").count()).toBe(0);
  });

  thoroughly("is sized by buttons, wheel and pinch, and scrolls nothing but itself", async () => {
    const { page, context } = await openGuard(390);
    const width = () => page.locator("svg.guard").evaluate((each) => Math.round(each.getBoundingClientRect().width));
    expect(await width()).toBe(780);
    await page.getByRole("button", { name: "Whole guard" }).click();
    const whole = await page.locator(".guard-frame").evaluate((each) => each.clientWidth);
    expect(Math.abs((await width()) - whole)).toBeLessThanOrEqual(1);
    for (let step = 0; step < 3; step++) await page.getByRole("button", { name: "Closer" }).click();
    expect(await width()).toBeGreaterThan(2.5 * whole);
    const before = await width();
    const { x, y } = await lugAt(page, "volume.2");
    await page.mouse.move(x, y);
    await page.keyboard.down("Control");
    await page.mouse.wheel(0, -300);
    await page.keyboard.up("Control");
    await expect.poll(width).toBeGreaterThan(1.3 * before);
    // What was under the pointer is there still.
    const now = await page.locator('[data-lug="volume.2"] circle').boundingBox();
    expect(Math.hypot(now!.x + now!.width / 2 - x, now!.y + now!.height / 2 - y)).toBeLessThan(4);
    const client = await context.newCDPSession(page);
    const wide = await width();
    const fingers = (apart: number) => [
      { x: x - apart, y },
      { x: x + apart, y },
    ];
    await client.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: fingers(60) });
    for (const apart of [50, 40, 30])
      await client.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: fingers(apart) });
    await client.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    await client.detach();
    await expect.poll(width).toBeLessThan(0.8 * wide);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  });

  thoroughly(
    "has no serious finding of axe with a lug, a wire or a part chosen, and keeps to the page's width",
    async () => {
      const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
      const { page } = await openGuard();
      await page.evaluate(axe);
      const serious = () =>
        page.evaluate(`axe.run(".guard-panel", { resultTypes: ["violations"] }).then(({ violations }) => violations
        .filter(({ impact }) => impact === "serious" || impact === "critical")
        .map(({ id, nodes }) => id + ": " + nodes[0].html))`);
      const choices = [
        async () => page.locator('[data-lug="volume.2"]').press("Enter"),
        async () =>
          card(page)
            .getByRole("button", { name: /^Wire to/ })
            .first()
            .press("Enter"),
        async () => page.locator('[data-part="volume"]').press("Enter"),
      ];
      for (const [index, choose] of choices.entries()) {
        await page.setViewportSize({ width: [1440, 768, 360][index]!, height: 900 });
        await choose();
        expect(await serious()).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      }
    },
  );
});

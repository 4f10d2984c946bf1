import { buffer } from "node:stream/consumers";
import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

async function openRoom(page: Page): Promise<Locator> {
  await whenReady(page);
  await openScenario(page, /22 nF or 47/);
  await showTab(page, "Will it fit?");
  return page.locator("#panel-room");
}

const CONTROLS = "-60, 65\n145, 55\n145, 105\n75, 105\n-20, 130\n-60, 130";

async function choosePot(panel: Locator, part: string, outline: string): Promise<void> {
  const card = panel.locator(`[data-room-part="${part}"]`);
  await card.evaluate((details) => details.setAttribute("open", ""));
  await card.getByLabel("What lies under the guard").selectOption(outline);
}

const line = (panel: Locator) => panel.getByLabel("Its line: x, y in mm, a point a line").first();
const firstRow = (panel: Locator) => panel.locator(".room-answer tbody tr").first();

/** A photograph of 800 x 600: dark where the cavity is, from 200, 300 to 600, 500. Drawn by the page itself. */
async function photograph(page: Page): Promise<Buffer> {
  const bytes = await page.evaluate(async () => {
    const canvas = document.createElement("canvas");
    Object.assign(canvas, { width: 800, height: 600 });
    const paint = canvas.getContext("2d")!;
    paint.fillStyle = "#b98a55";
    paint.fillRect(0, 0, 800, 600);
    paint.fillStyle = "#2b1d10";
    paint.fillRect(200, 300, 400, 200);
    const blob = await new Promise<Blob>((done) => canvas.toBlob((made) => done(made!), "image/png"));
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  return Buffer.from(bytes);
}

/** Presses on a place of the photograph, given in its own pixels. */
async function clickAt(board: Locator, places: readonly (readonly [number, number])[]): Promise<void> {
  for (const [x, y] of places) {
    const { width } = (await board.boundingBox())!;
    await board.click({ position: { x: (x * width) / 800, y: (y * width) / 800 } });
  }
}

describeWith("chromium", "whether the guard fits", () => {
  const site = usePage();

  it("tells the least room first, where it is, and what is to be measured yet, and keeps what was typed", async () => {
    const visit = await site.stay();
    const { page } = visit;
    const panel = await openRoom(page);
    await line(panel).fill(CONTROLS);
    await choosePot(panel, "volume", "pot-24");
    await panel.locator('[data-room-part="volume"]').getByLabel("Depth under the guard, mm").fill("43");
    await panel.getByLabel("Depth, mm").first().fill("40");
    await expect
      .poll(() => firstRow(panel).textContent())
      .toMatch(/^Volumedepthcontrol cavity−3\.0 mm ± 1\.0does not go in/);
    expect(await panel.locator(".room-told").textContent()).toMatch(
      /^The guard does not go in\. Volume, depth: It reaches 3 mm/,
    );
    expect(await panel.locator(".room-shape.stuck").count()).toBe(1);
    expect(await panel.locator("line.room-tightest").count()).toBe(1);
    expect(await panel.locator(".room-answer details").first().textContent()).toContain(
      "Lever, depth: from the guard's underside",
    );

    await page.reload();
    await whenReady(page);
    await showTab(page, "Will it fit?");
    await expect.poll(() => firstRow(panel).textContent()).toContain("does not go in");
    await panel.locator('[data-room-part="volume"]').evaluate((details) => details.setAttribute("open", ""));
    await panel.locator('[data-room-part="volume"]').getByLabel("Depth under the guard, mm").fill("27");
    await expect
      .poll(() => panel.locator(".room-told").textContent())
      .toMatch(/^As far as it was measured, the guard goes in\./);
    expectQuiet(visit);
  });

  it("tells beside its field what cannot be read and where a line crosses itself", async () => {
    const visit = await site.stay();
    const panel = await openRoom(visit.page);
    const fault = panel.locator(".room-cavity .fault-text:visible");
    await line(panel).fill("0, 0\n40, 40\n40, 0\n0, 40");
    await expect.poll(() => fault.allTextContents()).toEqual([expect.stringContaining("meet at x 20 mm, y 20 mm")]);
    await line(panel).fill("0, 0\n40, 40 mm, 3\n40, 0");
    await expect.poll(() => fault.allTextContents()).toEqual(['line 2, "40, 40 mm, 3": expected x, y in millimetres']);
    expect(await line(panel).getAttribute("aria-invalid")).toBe("true");
    await line(panel).fill(CONTROLS);
    await expect.poll(() => fault.count()).toBe(0);
    expectQuiet(visit);
  });

  it("traces a cavity in a photograph that never leaves the browser, by pointer and by keys", async () => {
    const visit = await site.stay();
    const { page } = visit;
    const panel = await openRoom(page);
    const sent: string[] = [];
    page.on("request", (request) => request.method() === "POST" && sent.push(request.url()));
    await panel.getByRole("button", { name: "Trace it in a photograph" }).first().click();
    const trace = panel.locator(".trace");
    await trace
      .locator('input[type="file"]')
      .setInputFiles({ name: "body.png", mimeType: "image/png", buffer: await photograph(page) });
    const board = trace.locator(".trace-board");
    await board.waitFor();
    // 600 pixels are 300 mm, so that a pixel is half a millimetre.
    await clickAt(board, [
      [100, 150],
      [700, 150],
    ]);
    expect(await trace.getByRole("status").textContent()).toContain("Say how far");
    await trace.getByLabel("Between the two marks, mm").fill("300");
    await clickAt(board, [
      [200, 300],
      [600, 300],
      [600, 500],
      [200, 480],
    ]);
    const traced = async () => (await line(panel).inputValue()).split("\n").map((each) => each.split(", ").map(Number));
    const off = async () => Number(await panel.getByLabel("Its line may be off by, mm").first().inputValue());
    const expectAt = async (corners: readonly (readonly [number, number])[]) => {
      const told = await off();
      expect(told).toBeGreaterThan(0.5);
      expect(told).toBeLessThan(4);
      const points = await traced();
      expect(points).toHaveLength(corners.length);
      for (const [index, [x, y]] of corners.entries())
        expect(Math.hypot(points[index]![0]! - x, points[index]![1]! - y)).toBeLessThanOrEqual(told);
    };
    const square = [
      [50, 75],
      [250, 75],
      [250, 175],
    ] as const;
    await expectAt([...square, [50, 165]]);
    expect(await trace.getByRole("status").textContent()).toMatch(/^A pixel is 0\.5 mm\. The line may be off by \d/);

    const narrow = (await board.boundingBox())!.width;
    await trace.getByLabel("The photograph is shown").selectOption("2");
    expect((await board.boundingBox())!.width / narrow).toBeCloseTo(2, 1);
    await trace.getByLabel("The photograph is shown").selectOption("1");

    // The last corner is dragged to where it belongs; the third goes one screen's pixel up and down again by keys.
    const last = board.locator('[data-place="5"]');
    const touched = (await last.boundingBox())!;
    expect(Math.min(touched.width, touched.height)).toBeGreaterThanOrEqual(24);
    const { width } = (await board.boundingBox())!;
    await last.hover();
    await page.mouse.down();
    const box = (await board.boundingBox())!;
    await page.mouse.move(box.x + (200 * width) / 800, box.y + (500 * width) / 800, { steps: 3 });
    await page.mouse.up();
    await expectAt([...square, [50, 175]]);
    const [, , before] = await traced();
    await board.locator('[data-place="4"]').focus();
    await page.keyboard.press("Shift+ArrowUp");
    const [, , raised] = await traced();
    expect(raised![1]).toBeLessThan(before![1]! - 2);
    await page.keyboard.press("Shift+ArrowDown");
    await expectAt([...square, [50, 175]]);
    await page.keyboard.press("Delete");
    expect(await traced()).toHaveLength(3);
    expect(sent).toEqual([]);
    expectQuiet(visit);
  });

  it("saves the template as PDF and as SVG", async () => {
    const visit = await site.stay();
    const panel = await openRoom(visit.page);
    await line(panel).fill(CONTROLS);
    for (const [format, head] of [
      ["PDF", "%PDF-1."],
      ["SVG", "<svg "],
    ] as const) {
      const [download] = await Promise.all([
        visit.page.waitForEvent("download"),
        panel.getByRole("button", { name: `Save template (${format})` }).click(),
      ]);
      expect(download.suggestedFilename()).toMatch(new RegExp(`^[a-z0-9-]+-template\\.${format.toLowerCase()}$`));
      expect((await buffer(await download.createReadStream())).toString("latin1", 0, 40)).toContain(head);
    }
    expectQuiet(visit);
  });

  for (const [width, colorScheme] of [
    [390, "light"],
    [1280, "dark"],
  ] as const)
    it(`has no serious finding of axe and keeps to the page, ${width} px wide, ${colorScheme}`, async () => {
      const visit = await site.stay({ width, colorScheme });
      const { page } = visit;
      const panel = await openRoom(page);
      await line(panel).fill(CONTROLS);
      await choosePot(panel, "volume", "pot-24");
      await choosePot(panel, "tone1", "box");
      await panel
        .locator('[data-room-part="tone1"]')
        .getByLabel("Its diameter, or along x across, mm")
        .fill("30 x 120");
      await expect.poll(() => panel.locator(".room-shape.stuck").count()).toBeGreaterThan(0);
      await panel.getByRole("button", { name: "Trace it in a photograph" }).first().click();
      await panel.evaluate((element) => {
        for (const details of element.querySelectorAll("details")) details.open = true;
      });
      await bringAxe(page);
      expect(await seriousFindings(page, "#panel-room")).toEqual([]);
      const { scrollWidth, clientWidth } = await page.evaluate(() => {
        const { scrollWidth, clientWidth } = document.documentElement;
        return { scrollWidth, clientWidth };
      });
      expect(scrollWidth).toBeLessThanOrEqual(clientWidth);
      expectQuiet(visit);
    });
});

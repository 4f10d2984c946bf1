import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { openScenario, settled, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage, type VisitOptions } from "./browser.ts";

const heading = (page: Page) => page.locator("dialog[open] h2");
const tick = (page: Page) => page.getByRole("checkbox", { name: "Soldered", exact: true });

async function openBench(page: Page): Promise<void> {
  await showTab(page, "Solder");
  await page.locator("#panel-solder .stage-sheet").first().waitFor();
  await page.getByRole("button", { name: "Solder joint by joint" }).click();
  await heading(page).waitFor();
}

/** On by the arrow key until the page's heading is the one. */
async function goTo(page: Page, wanted: RegExp): Promise<void> {
  for (let step = 0; step < 200; step++) {
    if (wanted.test((await heading(page).textContent())!)) return;
    await page.keyboard.press("ArrowRight");
  }
  throw new Error(`no page ${wanted}`);
}

/** Runs in the page: a finger across it. */
function swipe(target: Element, [from, to]: readonly [number, number]): void {
  const at = (clientX: number) => new Touch({ identifier: 1, target, clientX, clientY: 300 });
  target.dispatchEvent(new TouchEvent("touchstart", { touches: [at(from)], changedTouches: [at(from)] }));
  target.dispatchEvent(new TouchEvent("touchend", { touches: [], changedTouches: [at(to)] }));
}

/** Runs before the page's scripts: a screen lock that counts, and that the browser takes back when it is hidden. */
function countLocks(): void {
  const counts = { asked: 0, released: 0 };
  let current: EventTarget & { released: boolean };
  const wakeLock = {
    request: async () => {
      counts.asked += 1;
      current = Object.assign(new EventTarget(), {
        released: false,
        release: async () => {
          counts.released += 1;
          current.released = true;
          current.dispatchEvent(new Event("release"));
        },
      });
      return current;
    },
  };
  Object.defineProperty(navigator, "wakeLock", { value: wakeLock, configurable: true });
  Object.assign(globalThis, { counts, takeBack: () => Object.assign(current, { released: true }) });
}

const countsOf = (page: Page) => page.evaluate("counts") as Promise<{ asked: number; released: number }>;

describeWith("chromium", "soldering joint by joint", () => {
  const site = usePage();

  async function enter(options: VisitOptions = {}) {
    const visit = await site.visit(options);
    await whenReady(visit.page);
    await openScenario(visit.page, /HSS/);
    return visit;
  }

  /** On the page as the test before left it; ticks of that are kept. */
  async function again() {
    const visit = await site.stay({ width: 1280, height: 900, colorScheme: "light" });
    const { page } = visit;
    await whenReady(page);
    if ((await page.locator("dialog[open]").count()) > 0) await page.keyboard.press("Escape");
    await openScenario(page, /HSS/);
    await page.evaluate(() => localStorage.clear());
    return visit;
  }

  it("shows cautions first, goes on by key and thumb, and keeps its ticks through a reload and in the sheet", async () => {
    const visit = await enter({ width: 390, height: 844 });
    const { page } = visit;
    await openBench(page);
    expect(await heading(page).textContent()).toBe("First of all");
    expect(await page.locator("dialog .caution").textContent()).toMatch(/Never open an amplifier/);
    await page.getByRole("button", { name: "Next" }).click();
    expect(await heading(page).textContent()).toBe("Before the iron is hot");
    await page.keyboard.press("ArrowRight");
    expect(await heading(page).textContent()).toMatch(/^Joint 1: /);
    await page.keyboard.press(" ");
    expect(await tick(page).isChecked()).toBe(true);
    await page.getByRole("button", { name: "Next" }).click();
    expect(await tick(page).isChecked()).toBe(false);
    await page.getByRole("button", { name: "Next" }).click();
    await tick(page).check();
    expect(await page.locator(".bench-told").textContent()).toMatch(/^2 of \d+ soldered, about \d+ min left$/);
    await page.keyboard.press("ArrowLeft");
    expect(await heading(page).textContent()).toMatch(/^Joint 2: /);
    for (const [from, to, joint] of [
      [300, 80, 3],
      [80, 300, 2],
      [200, 180, 2],
    ] as const) {
      await page.locator(".bench-content").evaluate(swipe, [from, to] as const);
      expect(await heading(page).textContent()).toMatch(new RegExp(`^Joint ${joint}: `));
    }
    await page.keyboard.press("Escape");
    await page.locator("dialog").waitFor({ state: "detached" });
    const list = page.locator("#panel-solder");
    const ticked = () => Promise.all([1, 2, 3].map((joint) => list.getByLabel(`Joint ${joint}.`).isChecked()));
    expect(await ticked()).toEqual([true, false, true]);
    await page.reload();
    await whenReady(page);
    await openBench(page);
    await page.getByRole("button", { name: "On to joint 2" }).click();
    expect(await heading(page).textContent()).toMatch(/^Joint 2: /);
    expect(await tick(page).isChecked()).toBe(false);
    await page.keyboard.press("ArrowLeft");
    expect(await tick(page).isChecked()).toBe(true);
    expectQuiet(visit);
  });

  it("draws each joint with its ends lettered as its words are, and follows each stage with its checks", async () => {
    const { page } = await again();
    await openBench(page);
    await goTo(page, /^Joint 4: /);
    const letters = await page.locator("dialog .letter").allTextContents();
    expect(letters).toEqual(["A", "B", "C", "D"]);
    expect(await page.locator("dialog .end-sign text").allTextContents()).toEqual(letters);
    expect(await page.locator("dialog [data-heated]").getAttribute("data-heated")).toBe("tone2.case");
    await page.keyboard.press("ArrowRight");
    expect(await heading(page).textContent()).toBe("Check before going on: Tone: bridge");
    await page
      .locator("dialog")
      .getByLabel(/^Tug every end/)
      .check();
    await goTo(page, /^Check before going on: Tone: neck and middle/);
    expect(
      await page
        .locator("dialog")
        .getByLabel(/^Tug every end/)
        .isChecked(),
    ).toBe(false);
    await goTo(page, /^Measure: /);
    expect(await page.locator("dialog tbody tr").count()).toBeGreaterThan(5);
  });

  it("goes on with the changed guard, and keeps the ticks of joints that are the same", async () => {
    const { page } = await again();
    await showTab(page, "Plan");
    await page.locator('[data-plan="trebleBleed"]').selectOption("none");
    await settled(page);
    await openBench(page);
    await goTo(page, /^Joint 1: /);
    await page.keyboard.press(" ");
    // The volume's wiper has no treble bleed on it now.
    await goTo(page, /^Joint \d+: volume, lug 2/);
    await page.keyboard.press(" ");
    await page.keyboard.press("Control+z");
    await expect.poll(() => page.locator(".bench-notice").textContent()).toMatch(/^The guard has changed: this is its/);
    // The first that is not ticked: the joint that was shown is there no more.
    expect(await heading(page).textContent()).toMatch(/^Joint 2: /);
    expect(await page.locator(".bench-told").textContent()).toMatch(/^1 of /);
    await goTo(page, /^Joint \d+: volume, lug 2/);
    expect(await tick(page).isChecked()).toBe(false);
    await page.keyboard.press("Control+Shift+z");
    await expect.poll(() => page.locator(".bench-told").textContent()).toMatch(/^2 of /);
  });

  it("keeps the screen on while it is open, asks again when the page is back, lets go when it is left, and says where it cannot", async () => {
    const { page } = await enter({ before: (fresh) => fresh.addInitScript(countLocks).then(() => {}) });
    await openBench(page);
    await expect.poll(() => page.locator(".awake").textContent()).toBe("The screen stays on while this is open.");
    expect(await countsOf(page)).toEqual({ asked: 1, released: 0 });
    await page.evaluate("takeBack(), document.dispatchEvent(new Event('visibilitychange'))");
    await expect.poll(() => countsOf(page)).toEqual({ asked: 2, released: 0 });
    await page.getByRole("button", { name: "Leave" }).click();
    await expect.poll(() => countsOf(page)).toEqual({ asked: 2, released: 1 });
    await page.evaluate(() => Object.defineProperty(navigator, "wakeLock", { value: undefined }));
    await page.getByRole("button", { name: "Solder joint by joint" }).click();
    await heading(page).waitFor();
    expect(await page.locator(".awake").textContent()).toMatch(/^This browser cannot keep the screen on/);
  });

  for (const [width, height, colorScheme] of [
    [360, 740, "light"],
    [1280, 900, "dark"],
  ] as const)
    it(`keeps to the screen, stands still and has no serious finding of axe, ${width} px wide, ${colorScheme}`, async () => {
      const { page } = await enter({ width, height, colorScheme });
      await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
      await openBench(page);
      await bringAxe(page);
      const kinds = new Set<string>();
      for (let isLast = false; !isLast; ) {
        const wide = await page.evaluate(() =>
          [...document.querySelectorAll(".joint-by-joint, .bench-scroll, .bench-foot > *")]
            .filter((each) => each.scrollWidth > each.clientWidth + 1)
            .map((each) => each.className),
        );
        expect(wide, (await heading(page).textContent())!).toEqual([]);
        expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
        const kind = (await page.locator(".bench-content").getAttribute("data-page"))!;
        if (!kinds.has(kind)) expect(await seriousFindings(page, "dialog[open]")).toEqual([]);
        kinds.add(kind);
        isLast = (await page.getByRole("button", { name: "Done" }).count()) > 0;
        if (!isLast) await page.keyboard.press("ArrowRight");
      }
      expect([...kinds].sort()).toEqual(["cautions", "checks", "joint", "preparations", "readings"]);
      await page.keyboard.press("ArrowRight");
      await page.locator("dialog").waitFor({ state: "detached" });
    });

  it("prints a picture a stage, with ground, hot, now and before told apart by their strokes", async () => {
    const { page } = await again();
    await showTab(page, "Solder");
    await page.locator(".stage-legend .legend").waitFor();
    await page.emulateMedia({ media: "print" });
    const stages = await page.locator(".stage-sheet").count();
    expect(stages).toBeGreaterThan(5);
    await expect.poll(() => page.locator(".stage-picture svg").count()).toBe(stages);
    const strokes = await page.locator(".stage-picture .way").evaluateAll((lines) => {
      const told = lines.map((line) => {
        const { strokeDasharray, strokeWidth } = getComputedStyle(line);
        return [[...line.classList].slice(1).sort().join(" "), `${strokeWidth} ${strokeDasharray}`] as const;
      });
      return Object.fromEntries(told);
    });
    expect(Object.keys(strokes)).toHaveLength(4);
    expect(new Set(Object.values(strokes)).size).toBe(4);
    for (const picture of await page.locator(".stage-picture svg").all()) {
      const { width, height } = (await picture.boundingBox())!;
      expect(width).toBeGreaterThan(200);
      expect(height).toBeGreaterThan(100);
    }
    expect((await page.pdf()).subarray(0, 4).toString()).toBe("%PDF");
    await page.emulateMedia({ media: null });
  });
});

import { loadavg } from "node:os";
import { expect, it } from "vitest";
import { openScenario, whenReady } from "../page/actions.ts";
import { usePage } from "../page/browser.ts";
import { describeWith } from "../tools.ts";
import { CONDITIONS, PLAIN } from "./page/condition.ts";
import { figuresTable, ROWS } from "./page/figures-table.ts";
import { DIAL_TURNS, LEVER_TURNS } from "./page/knob-turns.ts";
import { watchLoading, whenQuiet } from "./page/load-watch.ts";
import { type Memory, MemoryMeter, turnDials } from "./page/memory.ts";
import { measureVisit, type VisitFigures } from "./page/visit-figures.ts";
import { report } from "./stopwatch.ts";

const VISITS = Number(process.env.PAGE_VISITS ?? 5);
const MINUTES = Number(process.env.PAGE_MINUTES ?? 10);

function expectWhole(figures: VisitFigures): void {
  for (const { title, of } of ROWS) expect(of(figures), title).toSatisfy(Number.isFinite);
  expect(figures.turns.dials).toHaveLength(DIAL_TURNS);
  expect(figures.turns.lever).toHaveLength(LEVER_TURNS);
  expect(figures.sound.changeMs).toHaveLength(4);
  expect(figures.sound.playMs).toBeGreaterThan(0);
  expect(figures.traffic.codeBytes).toBeGreaterThan(0);
}

describeWith("chromium", "the page in the browser", () => {
  const site = usePage();

  it("loads, plays, and follows its knobs", { timeout: VISITS * 300_000 }, async () => {
    const load = () => loadavg()[0]!.toFixed(1);
    const loadBefore = load();
    const columns = CONDITIONS.map((condition) => ({ condition, visits: [] as VisitFigures[] }));
    // By turns, so that whatever else the machine does falls on both.
    for (let visit = 0; visit < VISITS; visit++)
      for (const { condition, visits } of columns) visits.push(await measureVisit(site, condition));
    const title = `the page, medians of ${VISITS} fresh visits; the machine's load before ${loadBefore}, after ${load()}`;
    console.log(`${title}\n${figuresTable(columns)}`);
    for (const { visits } of columns) visits.forEach(expectWhole);
  });

  it("holds its memory while knobs are turned", { timeout: (MINUTES + 3) * 60_000 }, async () => {
    const { width, height } = PLAIN;
    let meter: MemoryMeter | undefined;
    const { page } = await site.visit({
      width,
      height,
      before: async (blank) => {
        await blank.addInitScript(watchLoading);
        meter = await MemoryMeter.attach(blank);
      },
    });
    await whenReady(page);
    await openScenario(page, /HSS/);
    await whenQuiet(page, 3000);
    const first = Math.min(1, MINUTES / 2);
    const readings: [minutes: number, Memory][] = [[0, await meter!.read()]];
    await turnDials(page, first, 1);
    readings.push([first, await meter!.read()]);
    await turnDials(page, MINUTES - first, 2);
    readings.push([MINUTES, await meter!.read()]);
    const shown = readings.map(([minutes, { heapBytes, workerHeapBytes, nodes }]) => [
      `after ${minutes} min`,
      `heap ${(heapBytes / 1e6).toFixed(2)} MB, of workers ${(workerHeapBytes / 1e6).toFixed(2)} MB, ${nodes} nodes`,
    ]);
    report("the page's memory while a dial is turned every 100 ms", Object.fromEntries(shown));
    for (const [, { heapBytes, nodes }] of readings) {
      expect(heapBytes).toBeGreaterThan(0);
      expect(nodes).toBeGreaterThan(0);
    }
  });
});

import { expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { hssWithBleed } from "../fixtures/circuits.ts";
import { netlistOf } from "../ngspice.ts";
import { withBundle } from "./bundle.ts";
import { LineProcess } from "./line-process.ts";
import { ngspiceMilliseconds } from "./ngspice-time.ts";
import { report } from "./stopwatch.ts";
import type { VariantsTiming } from "./variants-process.ts";

const VARIANTS = 10_000;
const POINTS = 64;
/** ngspice does a share of them, and its time is told for as many as ours. */
const NGSPICE_SHARE = 0.05;
const POINTS_PER_DECADE = 21;

/** One position's circuit, one part altered before every analysis. */
function looped(analysis: string, extraCards: readonly string[]): readonly string[] {
  const build = readBuild(hssWithBleed());
  const maker = new CircuitMaker(build);
  const [setting] = expandSweep(new Controls(build), undefined, { lever: 2, tone: 6 });
  const { network, outputNode } = maker.circuitIn(setting!);
  const cards = netlistOf(
    network,
    outputNode,
    maker.sources.map((source) => source.emf),
  );
  const capacitor = cards.map((card) => card.split(" ")[0]!).find((name) => name.startsWith("C"))!;
  const body = [`alter ${capacitor} = 5e-10`, analysis, "destroy"];
  const control = [`repeat ${VARIANTS * NGSPICE_SHARE}`, ...body, "end"];
  return ["loop", ...cards, ...extraCards, ".control", ...control, ".endc"];
}

test("ten thousand variants of HSS with a coupled humbucker and a treble bleed, against ngspice", async () => {
  const ours = await withBundle("variants-process.ts", async (script) => {
    const process_ = new LineProcess(process.execPath, ["--single-threaded-gc", script]);
    try {
      return await process_.ask<VariantsTiming>({ build: hssWithBleed(), variants: VARIANTS, points: POINTS });
    } finally {
      process_.stop();
    }
  });
  const curves = ngspiceMilliseconds(() => looped(`ac dec ${POINTS_PER_DECADE} 20 20k`, [])) / NGSPICE_SHARE;
  const reading = ngspiceMilliseconds(() => looped("op", ["I1 0 out 1"])) / NGSPICE_SHARE;
  report(`${VARIANTS} variants`, {
    [`curves at ${POINTS} points (ms)`]: ours.curves,
    "the same by ngspice in one process (ms)": curves,
    "ngspice / ours, curves": curves / ours.curves,
    [`${ours.readingsEach} readings at the jack each (ms)`]: ours.readings,
    "one reading each by ngspice in one process (ms)": reading,
    "ngspice / ours, a reading": reading / (ours.readings / ours.readingsEach),
  });
  expect(curves / ours.curves).toBeGreaterThan(1);
  expect(reading / (ours.readings / ours.readingsEach)).toBeGreaterThan(1);
});

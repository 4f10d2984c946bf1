import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, type Settings } from "../../src/build-file/settings.ts";
import { expandSweep, type RawSweep } from "../../src/build-file/sweep.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { hssWithBleed, threeSingles } from "../fixtures/circuits.ts";
import { blendedChannels, selectedChannels } from "../fixtures/many-parts.ts";
import { netlistOf } from "../ngspice.ts";
import { withBundle } from "./bundle.ts";
import type { CurvesJob, CurvesTiming } from "./curves-process.ts";
import { LineProcess } from "./line-process.ts";
import { ngspiceMilliseconds } from "./ngspice-time.ts";
import { report } from "./stopwatch.ts";

/** ngspice takes points a decade; 171 a decade over three decades are 514. */
const POINTS_PER_DECADE = 171;

/** One deck a switch position, and one process that loops over them, altering the pots' resistors. */
function ngspiceScript(maker: CircuitMaker, settings: readonly Settings[], directory: string): string[] {
  const byPosition = new Map<string, Settings[]>();
  for (const state of settings) {
    const key = Object.values(state.switches).join();
    byPosition.set(key, [...(byPosition.get(key) ?? []), state]);
  }
  const control = [...byPosition.values()].flatMap((states, index) => {
    const { network, outputNode } = maker.templateIn(states[0]!);
    const cards = netlistOf(
      network,
      outputNode,
      maker.sources.map((source) => source.emf),
    );
    const deck = join(directory, `position${index}.cir`);
    writeFileSync(deck, ["position", ...cards, ".end", ""].join("\n"));
    const named = new Map(
      network.elements.flatMap((element, number) =>
        element.kind === "resistor" && element.parameter !== undefined ? [[element.parameter, `R${number}`]] : [],
      ),
    );
    const present = new Set(cards.map((card) => card.split(" ")[0]));
    return [
      `source ${deck}`,
      ...states.flatMap((state) => [
        ...[...maker.trackOhms(state)].flatMap((ohms, parameter) => {
          const name = named.get(parameter);
          return name && present.has(name) ? [`alter ${name} = ${Math.max(ohms, 1e-3)}`] : [];
        }),
        `ac dec ${POINTS_PER_DECADE} 20 20k`,
        "let level = vdb(out)",
        "let phase = cph(v(out))",
        "destroy",
      ]),
    ];
  });
  return ["loop", "R1 1 0 1", ".control", ...control, ".endc"];
}

interface Ratios {
  readonly settings: number;
  readonly peer: number;
  readonly ours: CurvesTiming;
}

async function against(job: CurvesJob, ours: LineProcess): Promise<Ratios> {
  const build = readBuild(job.build);
  const settings = expandSweep(new Controls(build), job.sweep);
  const peer = ngspiceMilliseconds((directory) => ngspiceScript(new CircuitMaker(build), settings, directory));
  return { settings: settings.length, peer, ours: await ours.ask<CurvesTiming>(job) };
}

/** ngspice has one thread, and so has our collector of garbage. */
async function withOurs<T>(use: (ours: LineProcess) => Promise<T>): Promise<T> {
  return withBundle("curves-process.ts", async (script) => {
    const ours = new LineProcess(process.execPath, ["--single-threaded-gc", script]);
    try {
      return await use(ours);
    } finally {
      ours.stop();
    }
  });
}

test.each([
  ["three single coils", threeSingles()],
  ["HSS, coupled humbucker, treble bleed", hssWithBleed()],
])("55 settings × 512 points, %s, against ngspice in one process", async (title, input) => {
  const { settings, peer, ours } = await withOurs((process) => against({ build: input }, process));
  report(`curves: ${title}`, {
    "ngspice, its start left out (ms)": peer,
    "level and phase (ms)": ours.levelAndPhase,
    "with peak and cutoff (ms)": ours.everything,
    "ratio, level and phase": peer / ours.levelAndPhase,
    "ratio, with peak and cutoff": peer / ours.everything,
  });
  expect(settings).toBe(55);
  expect(peer / ours.levelAndPhase).toBeGreaterThan(1);
});

const MIB = 2 ** 20;
const summary = ({ settings, peer, ours: { solved, levelAndPhase, peakBytes } }: Ratios) =>
  [
    `${settings} settings${solved > 0 ? `, ${solved} of them solved` : ""}: ngspice ${peer.toPrecision(3)} ms`,
    `level and phase ${levelAndPhase.toPrecision(3)} ms, ${((1000 * levelAndPhase) / settings).toFixed(0)} µs a curve`,
    `${(peer / levelAndPhase).toFixed(1)} ×`,
    `${(peakBytes / MIB).toFixed(0)} MiB at most`,
  ].join("; ");

test("every scenario, one process for all, against ngspice", { timeout: 120_000 }, async () => {
  const rows: Record<string, string> = {};
  await withOurs(async (process) => {
    for (const file of readdirSync("scenarios")) {
      const { build } = JSON.parse(readFileSync(join("scenarios", file), "utf8")) as { build: object };
      const ratios = await against({ build, sweep: about55(build) }, process);
      rows[file] = summary(ratios);
      expect(ratios.peer / ratios.ours.levelAndPhase).toBeGreaterThan(1);
    }
  });
  report("curves: every scenario", rows);
});

/** Every position of the main switch by as many tone settings as make 55 curves or more. */
function about55(input: object): RawSweep {
  const controls = new Controls(readBuild(input));
  const { main } = controls;
  const positions = main ? main.table.positions.map((_, index) => index + 1) : [1];
  const tones = Math.ceil(55 / positions.length);
  const tone = Array.from({ length: tones }, (_, index) => (10 * index) / (tones - 1));
  return { ...(main ? { [main.name]: positions } : {}), tone };
}

test.each([
  ["that all sound at once", [1, 2, 3, 5, 7, 10].map(blendedChannels)],
  ["of which a switch picks one", [2, 3, 5, 7, 10].map(selectedChannels)],
])("curves as parts grow, channels %s", { timeout: 120_000 }, async (title, builds) => {
  const rows: Record<string, string> = {};
  for (const build of builds) {
    const parts = Object.keys(readBuild(build).parts).length;
    rows[`${parts} parts`] = summary(await withOurs((process) => against({ build, sweep: about55(build) }, process)));
  }
  report(`curves: channels ${title}`, rows);
  expect(Object.keys(rows)).toHaveLength(builds.length);
});

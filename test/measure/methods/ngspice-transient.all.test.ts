import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { coilImpedance } from "../../../src/choice/fit/coil-model.ts";
import { peakHz } from "../../../src/choice/fit/resonance-peak.ts";
import { measureRequestSchema } from "../../../src/contract/measure/measure.ts";
import { measuringSignal } from "../../../src/measure/signal/measuring-signal.ts";
import type { CoilValues } from "../../../src/response/coil-ladder.ts";
import { measureJob } from "../../../src/server/jobs/measure/measure.ts";
import { describeWith } from "../../tools.ts";
import { COIL, LOAD } from "../simulated-pickup.ts";

const RATE_HZ = 48_000;
const SECONDS = 16;
const INPUT = { resistance: 1e6, capacitance: 160e-12 };
const SECTION = COIL.loss[0]!;

/** A coil with its EMF, what it is recorded with, and what else hangs at its leads. */
const coilCards = (end: string, load: readonly string[]) => [
  `R${end} emf a${end} ${COIL.resistance}`,
  `L${end} a${end} b${end} ${COIL.inductance}`,
  `Ls${end} b${end} ${end} ${SECTION.inductance}`,
  `Rs${end} b${end} ${end} ${SECTION.resistance}`,
  `Cw${end} ${end} 0 ${COIL.capacitance}`,
  `Ri${end} ${end} 0 ${INPUT.resistance}`,
  `Ci${end} ${end} 0 ${INPUT.capacitance}`,
  ...load,
];

/** Steps a quarter of a sample long: the trapezoidal rule then moves 3 kHz by a thousandth, and 7 kHz by half a hundredth. */
const DECK = [
  "two coils in time",
  "aplay %v([drive]) source",
  `.model source filesource (file="signal.txt" amploffset=[0 0] amplscale=[1 1] timeoffset=0 timescale=1 timerelative=false amplstep=false)`,
  "Eemf emf 0 drive 0 0.3",
  ...coilCards("u", []),
  ...coilCards("l", [`Rload l 0 ${LOAD.resistance}`, `Cload l 0 ${LOAD.capacitance}`]),
  ".options method=trap",
  ".control",
  "set wr_singlescale",
  `tran ${1 / RATE_HZ} ${SECONDS} 0 ${1 / (4 * RATE_HZ)}`,
  "linearize v(u) v(l)",
  "wrdata out.txt v(u) v(l)",
  "quit",
  ".endc",
  ".end",
  "",
].join("\n");

/** What stands at both coils' leads while the measuring signal is their EMF. */
function inTime(): readonly [Float32Array, Float32Array] {
  const directory = mkdtempSync(join(tmpdir(), "presolder-transient-"));
  const file = (name: string) => join(directory, name);
  try {
    const lines = Array.from(measuringSignal("sweep", RATE_HZ), (value, n) => `${(n / RATE_HZ).toFixed(9)} ${value}`);
    writeFileSync(file("signal.txt"), `${lines.join("\n")}\n`);
    writeFileSync(file("coils.cir"), DECK);
    // It tells its progress at length.
    spawnSync("ngspice", ["-b", file("coils.cir")], { stdio: "ignore", cwd: directory });
    const rows = readFileSync(file("out.txt"), "utf8").trim().split("\n");
    if (rows.length < SECONDS * RATE_HZ) throw new Error(`ngspice gave ${rows.length} samples`);
    const column = (index: number) => Float32Array.from(rows, (row) => Number(row.trim().split(/\s+/)[index]));
    return [column(1), column(2)];
  } finally {
    rmSync(directory, { recursive: true, force: true });
  }
}

const peakOf = (coil: CoilValues) => {
  const hz = peakHz(coil, { resistance: Number.POSITIVE_INFINITY, capacitance: 0 }, "impedance");
  const { re, im } = coilImpedance(coil, hz);
  return { hz, ohms: Math.hypot(re, im) };
};

describeWith("ngspice", "two recordings that ngspice made in time", () => {
  it("give the coil back: L and resonance within 1 %, its height within 5 %", { timeout: 120_000 }, async () => {
    const wav = (samples: Float32Array) => encodeWav({ sampleRateHz: RATE_HZ, channels: [samples] }, "pcm24");
    const [unloaded, loaded] = inTime().map(wav);
    const body = measureRequestSchema.parse({
      method: "two-loads",
      load: LOAD,
      across: INPUT,
      resistance: COIL.resistance,
    });
    const job = measureJob.read(body, { unloaded: unloaded!, loaded: loaded! });
    const answer = measureJob.run(job, { checkpoint: () => {} });
    if (answer.method !== "two-loads") throw new Error(answer.method);
    const { coil, lowFrequencyInductance } = answer.fit;
    console.log(
      answer.fit.values,
      answer.fit.lossModel,
      answer.fit.notes,
      answer.recordings,
      peakOf(coil as CoilValues),
      peakOf(COIL),
    );
    const [found, truth] = [peakOf(coil as CoilValues), peakOf(COIL)];
    expect(Math.abs(lowFrequencyInductance.value / (COIL.inductance + SECTION.inductance) - 1)).toBeLessThan(0.01);
    expect(Math.abs(found.hz / truth.hz - 1)).toBeLessThan(0.01);
    expect(Math.abs(found.ohms / truth.ohms - 1)).toBeLessThan(0.05);
  });
});

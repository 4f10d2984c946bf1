import { execFileSync } from "node:child_process";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { solveTransfers } from "../../../src/network/nodal-analysis.ts";
import { assemblePencil } from "../../../src/network/pencil.ts";
import { CircuitMaker } from "../../../src/response/circuit.ts";
import { Random } from "../../random.ts";
import { anySettings } from "./any-guard.ts";

/** Below −200 dB nothing is promised. */
const FLOOR = 1e-10;

function jobOf(input: object, seed: number) {
  const random = new Random(seed ^ 0x5eed);
  const build = readBuild(input);
  const [raw] = anySettings(random, input, 1);
  const { network, outputNode } = new CircuitMaker(build).circuitIn(parseSettings(new Controls(build), raw!));
  return { network, output: outputNode, frequencies: [20 * 4800 ** random.next(), 96_000 * random.next()] };
}

/** The largest share of itself by which the plain solution of any source's transfer is off one of 50 digits. */
export function furthestFromFiftyDigits(guards: readonly object[], firstSeed: number): number {
  const jobs = guards.map((input, index) => jobOf(input, firstSeed + index));
  const answers = execFileSync("/usr/bin/python3", ["test/network/stiff/solve_networks.py"], {
    input: jobs.map((job) => JSON.stringify(job)).join("\n"),
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  let furthest = 0;
  for (const [index, line] of answers.trim().split("\n").entries()) {
    const { network, output, frequencies } = jobs[index]!;
    const spectra = solveTransfers(assemblePencil(network), output, Float64Array.from(frequencies));
    for (const [i, values] of (JSON.parse(line) as number[][]).entries())
      for (const [source, { re, im }] of spectra.entries()) {
        const [wantedRe, wantedIm] = [values[2 * source]!, values[2 * source + 1]!];
        const size = Math.hypot(wantedRe, wantedIm);
        if (size > FLOOR) furthest = Math.max(furthest, Math.hypot(re[i]! - wantedRe, im[i]! - wantedIm) / size);
      }
  }
  return furthest;
}

import { partsOfKind } from "../../src/build-file/parts-of-kind.ts";
import type { Build } from "../../src/build-file/schema.ts";
import type { Settings } from "../../src/build-file/settings.ts";
import type { Placement } from "../../src/examine/takes/take.ts";
import { NetworkBuilder } from "../../src/network/elements.ts";
import { solveTransfers } from "../../src/network/nodal-analysis.ts";
import { assemblePencil } from "../../src/network/pencil.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { type Bench, handSet, normal, type Random } from "./simulated-guard.ts";

/** How strongly a coil laid over one coil drives that, its pickup's other one, and every coil far away. */
const REACH = { beside: 0.12, far: 0.004 };

export interface Exciter {
  /** Of what is played, at 1 kHz. */
  readonly strength: number;
  /** Where its own inductance begins to hold its current back. */
  readonly cornerHz: number;
  readonly delaySeconds: number;
  /** RMS of how it reaches every coil of another pickup, a share; a good small one hardly does. */
  readonly far?: number;
}

/** What reaches the jack of a played signal, through an exciter's field in every coil, with a reader's errors. */
export function heardOf(
  guard: Build,
  settings: Settings,
  { pickup, coil }: Placement,
  exciter: Exciter,
  frequenciesHz: Float64Array,
  { inputOhms, inputFarads, noise }: Bench,
  random: Random,
) {
  const maker = new CircuitMaker(guard);
  const { network, outputNode } = maker.circuitIn(handSet(settings, random), { withCableAndLoad: false });
  const load = new NetworkBuilder(network.nodeCount);
  load.resistor(outputNode, 0, inputOhms);
  load.capacitor(outputNode, 0, inputFarads);
  const whole = { ...network, elements: [...network.elements, ...load.build().elements] };
  const transfers = solveTransfers(assemblePencil(whole), outputNode, frequenciesHz);
  const windings = new Map(
    partsOfKind(guard, "pickup").flatMap(([name, part]) =>
      Object.entries(part.coils).map(([of, { winding }]) => [`${name}.${of}`, winding === "forward" ? 1 : -1] as const),
    ),
  );
  const weights = maker.sources.map((source) => {
    const sense = windings.get(`${source.pickup}.${source.coil}`)!;
    if (source.pickup !== pickup) return sense * (exciter.far ?? REACH.far) * normal(random);
    return source.coil === coil ? sense : sense * REACH.beside;
  });
  const [re, im] = [new Float64Array(frequenciesHz.length), new Float64Array(frequenciesHz.length)];
  for (const [i, hz] of frequenciesHz.entries()) {
    const [x, fall] = [hz / exciter.cornerHz, (exciter.strength * hz) / 1000];
    // EMF = jω·M·i, the current held back by the exciter's own inductance, and all of it late.
    const [kRe, kIm] = [(fall * x) / (1 + x * x), fall / (1 + x * x)];
    const turn = -2 * Math.PI * hz * exciter.delaySeconds;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const [dRe, dIm] = [kRe * cos - kIm * sin, kRe * sin + kIm * cos];
    const sum = (part: "re" | "im") => transfers.reduce((all, each, k) => all + weights[k]! * each[part][i]!, 0);
    const [tRe, tIm] = [sum("re"), sum("im")];
    re[i] = dRe * tRe - dIm * tIm + noise * normal(random);
    im[i] = dRe * tIm + dIm * tRe + noise * normal(random);
  }
  return { re, im, sd: new Float64Array(frequenciesHz.length).fill(noise) };
}

import type { Settings } from "../../build-file/settings.ts";
import { relevantPart } from "../../network/blocks.ts";
import { idealJoints, type Network } from "../../network/elements.ts";
import { Port } from "../../network/port.ts";
import { slotValues } from "../../network/slots.ts";
import type { CircuitMaker } from "../../response/circuit.ts";
import { type AmplifierNoise, BOLTZMANN } from "./amplifier.ts";

/** Power densities at the input, V²/Hz, at each frequency. */
export interface HissDensity {
  /** Of the guitar's circuit with cable and load. */
  readonly circuit: Float64Array;
  readonly amplifier: Float64Array;
}

interface JackImpedance {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

function impedanceOf(network: Network, output: number, frequenciesHz: Float64Array): JackImpedance {
  const re = new Float64Array(frequenciesHz.length);
  const im = new Float64Array(frequenciesHz.length);
  const joints = idealJoints(network);
  if (joints.find(output) === joints.find(0)) return { re, im };
  const kept = relevantPart(network, output);
  const port = new Port(kept, output);
  const values = slotValues(kept);
  for (const [index, hz] of frequenciesHz.entries()) {
    port.solveAt(hz, values);
    // Of a passive circuit it is never below 0, but for rounding where next to nothing of it is resistance.
    re[index] = Math.max(0, port.impedanceRe);
    im[index] = port.impedanceIm;
  }
  return { re, im };
}

/**
 * Hiss at the amplifier's input: 4kT·Re Z of all that hangs on it, itself included, at one temperature (J. B. Johnson, H. Nyquist,
 * 1928: a passive network at one temperature has the noise of its impedance, whatever is inside); and beside it the amplifier's
 * own e² + i²·|Z|².
 * @param frequenciesHz above 0
 */
export function hissDensity(
  maker: CircuitMaker,
  settings: Settings,
  frequenciesHz: Float64Array,
  kelvin: number,
  { voltage, current }: AmplifierNoise,
): HissDensity {
  const { network, outputNode } = maker.circuitIn(settings);
  const { re, im } = impedanceOf(network, outputNode, frequenciesHz);
  return {
    circuit: re.map((ohms) => 4 * BOLTZMANN * kelvin * ohms),
    amplifier: re.map((ohms, index) => voltage ** 2 + current ** 2 * (ohms ** 2 + im[index]! ** 2)),
  };
}

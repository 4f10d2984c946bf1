import type { Settings } from "../../build-file/settings.ts";
import { Port } from "../../network/port.ts";
import { slotValues } from "../../network/slots.ts";
import type { CircuitMaker } from "../../response/circuit.ts";
import { emfLaw } from "../../response/emf-law.ts";
import type { RoomLine } from "./room.ts";
import type { Routes } from "./routes.ts";
import { COULOMBS_PER_METRE } from "./runs.ts";
import { turnsArea } from "./turns-area.ts";
import { wireNetworkOf } from "./wire-network.ts";

export type Phasor = readonly [re: number, im: number];

/** Hum at the jack at one frequency, volts RMS, as phasors. */
export interface HumLine {
  readonly hz: number;
  /** What the coils' turns take up of the magnetic field. */
  readonly coils: Phasor;
  /** What loops of wire take up of the same field; it adds to the coils' with its sign. */
  readonly loops: Phasor;
  /** What the electric field drives into open wires. Its phase to the magnetic field is the room's: they add by power. */
  readonly runs: Phasor;
}

const times = ([a, b]: Phasor, re: number, im: number): Phasor => [a * re - b * im, a * im + b * re];
const plus = ([a, b]: Phasor, [c, d]: Phasor): Phasor => [a + c, b + d];

/** What of the field reaches a place: the coils' and the wires', complex. */
export interface Reaching {
  /** Metres of each wire that the electric field reaches. */
  readonly openRuns: readonly number[];
  /** What is left of the magnetic field about the wires. */
  readonly wireField: (hz: number) => Phasor;
}

/**
 * The room's hum at the jack in a setting. One field across the guard's face serves coils and loops (Faraday: −jωB·N·A and
 * −jωB·area). A coil wound `forward` is taken to run counter-clockwise as seen from the back, like a positive area: a convention,
 * so that coils and loops may as well subtract where they are said to add.
 */
export function humAtJack(
  maker: CircuitMaker,
  routes: Routes,
  settings: Settings,
  lines: readonly RoomLine[],
  { openRuns, wireField }: Reaching,
): HumLine[] {
  const { network, outputNode, sweptAreas, wireNodes } = wireNetworkOf(maker, routes, settings);
  if (outputNode === 0) return lines.map(({ hz }) => ({ hz, coils: [0, 0], loops: [0, 0], runs: [0, 0] }));
  const port = new Port(network, outputNode);
  const values = slotValues(network);
  const { sources } = maker;
  return lines.map(({ hz, fluxDensity, electricField }) => {
    port.solveAt(hz, values);
    const omega = 2 * Math.PI * hz;
    const coils = sources.reduce<Phasor>(
      (sum, { humSign, spec }, index) => {
        const one = sources.map((_, other) => (other === index ? humSign * turnsArea(spec) : 0));
        const law = spec.shielding ? emfLaw(spec.shielding)(Float64Array.of(hz)) : null;
        const reached = port.transfer(one);
        return plus(sum, law ? times(reached, law.re[0]!, law.im[0]!) : reached);
      },
      [0, 0],
    );
    const driven = wireNodes.reduce<Phasor>(
      (sum, [a, b], wire) => {
        const metres = openRuns[wire]!;
        if (metres === 0) return sum;
        const middle = plus(port.transferFromNode(a), port.transferFromNode(b));
        return plus(sum, times(middle, metres / 2, 0));
      },
      [0, 0],
    );
    const perTurn = -omega * fluxDensity;
    return {
      hz,
      coils: times(coils, 0, perTurn),
      loops: times(times(port.transferOfEmfs(sweptAreas), ...wireField(hz)), 0, perTurn),
      runs: times(driven, 0, omega * COULOMBS_PER_METRE * electricField),
    };
  });
}

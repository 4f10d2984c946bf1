import type { Coil } from "../build-file/schema.ts";

/** The electrical values of a coil, as the build file has them. */
export type CoilValues = Pick<Coil, "resistance" | "inductance" | "capacitance" | "loss">;

/** An inductance bridged by a resistance: what the core and eddy currents lose. */
export interface BridgedSection {
  readonly inductance: number;
  readonly resistance: number;
}

/** The branch that carries a coil's EMF: all in series, the winding capacitance across it. */
export interface CoilLadder {
  /** DC resistance. */
  readonly resistance: number;
  /** What no resistance bridges; 0 where the loss is one resistor across the whole inductance. */
  readonly inductance: number;
  readonly sections: readonly BridgedSection[];
}

export function coilLadder({ resistance, inductance, loss }: CoilValues): CoilLadder {
  if (typeof loss === "number") return { resistance, inductance: 0, sections: [{ inductance, resistance: loss }] };
  return { resistance, inductance, sections: loss ?? [] };
}

import type { Coil } from "../build-file/schema.ts";

/** The electrical values of a coil, as the build file has them. */
export type CoilValues = Pick<Coil, "resistance" | "inductance" | "capacitance" | "loss">;

/** An inductance bridged by a resistance: what the core and eddy currents lose. */
export interface BridgedSection {
  readonly inductance: number;
  readonly resistance: number;
}

type LossPart = Exclude<NonNullable<CoilValues["loss"]>, number>[number];

/** The branch that carries a coil's EMF: all in series, the winding capacitance across it. */
export interface CoilLadder {
  /** DC resistance. */
  readonly resistance: number;
  /** What no section bridges; 0 where the loss is one resistor across the whole inductance. */
  readonly inductance: number;
  readonly sections: readonly BridgedSection[];
  /** Bridges inductance and sections together. */
  readonly across?: number;
}

export function coilLadder({ resistance, inductance, loss = [] }: CoilValues): CoilLadder {
  const parts: readonly LossPart[] = typeof loss === "number" ? [{ resistance: loss }] : loss;
  const sections = parts.flatMap((part) =>
    part.inductance === undefined ? [] : [{ inductance: part.inductance, resistance: part.resistance }],
  );
  if (sections.length === parts.length) return { resistance, inductance, sections };
  const siemens = parts.reduce((sum, part) => sum + (part.inductance === undefined ? 1 / part.resistance : 0), 0);
  const across = 1 / siemens;
  if (sections.length === 0) return { resistance, inductance: 0, sections: [{ inductance, resistance: across }] };
  return { resistance, inductance, sections, across };
}

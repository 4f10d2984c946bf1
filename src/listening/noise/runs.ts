import { connectionsOf, detailsOf } from "../../build-file/connections.ts";
import type { Build } from "../../build-file/schema.ts";
import { lengthOf } from "./path.ts";
import type { Routes } from "./routes.ts";

/** What is about the wires. */
export interface Surroundings {
  /** Whether grounded foil or paint closes the cavity about the wires. */
  readonly isCavityScreened: boolean;
}

const VACUUM_PERMITTIVITY = 8.8541878128e-12;
/** Of hook-up wire: AWG 22. */
const WIRE_RADIUS = 0.32e-3;
/** From a wire under the guard to the grounded metal about it and the player's hand; our assumption, no source. */
export const HEIGHT_OVER_GROUND = 0.02;
/** From a wire to the foil of its cavity; our assumption, no source. */
export const HEIGHT_OVER_FOIL = 0.01;

/** Farads a metre of a round wire along a grounded plane: 2πε₀ / arcosh(h/a) (textbook). */
export function faradsPerMetreOver(height: number, radius = WIRE_RADIUS): number {
  return (2 * Math.PI * VACUUM_PERMITTIVITY) / Math.acosh(height / radius);
}

/**
 * Amperes a metre that a field of 1 V/m drives into a wire at ground's potential: the field would bring the wire's place to E·h
 * over ground, against which the wire has its capacitance; × jω.
 */
export const COULOMBS_PER_METRE = faradsPerMetreOver(HEIGHT_OVER_GROUND) * HEIGHT_OVER_GROUND;

/** Of every wire of the build, metres that a field reaches: none of what is screened or inside a part, or leaves it as a screened cable. */
export function openRuns(build: Build, routes: Routes, { isCavityScreened }: Surroundings): number[] {
  if (isCavityScreened) return build.wires.map(() => 0);
  const inBraid = (lug: string) => {
    const part = build.parts[lug.split(".")[0]!];
    return part?.kind === "pickup" && part.metal === "braid";
  };
  return connectionsOf(build).map(({ from, to, means }, index) => {
    const { kind } = detailsOf(build.wires[index]!);
    if (kind === "screened" || means === "inside" || inBraid(from) || inBraid(to)) return 0;
    return lengthOf(routes.wires[index]!);
  });
}

import type { Phasor } from "./hum-at-jack.ts";

/** Copper tape; common practice, no source. */
const FOIL_METRES = 35e-6;
/** From the middle of a control cavity to its walls; our assumption. */
const CAVITY_RADIUS = 0.04;
const COPPER_SIEMENS_PER_METRE = 5.8e7;
const VACUUM_PERMEABILITY = 4e-7 * Math.PI;

/**
 * What a closed foil leaves of a magnetic field inside it: 1 / (1 + jωμ₀σ·a·t/3), a thin conducting shell's (textbook: H. Kaden,
 * Wirbelströme und Schirmung, for a sphere). At mains frequencies nearly all: foil is against electric fields.
 */
export function foilLeaves(hz: number): Phasor {
  const x = (2 * Math.PI * hz * VACUUM_PERMEABILITY * COPPER_SIEMENS_PER_METRE * CAVITY_RADIUS * FOIL_METRES) / 3;
  const norm = 1 + x * x;
  return [1 / norm, -x / norm];
}

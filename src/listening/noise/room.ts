/** The mains' frequency in Hz. */
export type MainsHz = 50 | 60;

/** What a room has of the mains about a guitar. */
export interface RoomField {
  /** Flux density of the fundamental across the guard's face, tesla RMS. */
  readonly fluxDensity: number;
  /** Strength of the electric field of the fundamental, V/m RMS. */
  readonly electricField: number;
  /** How strong the harmonics are beside those of customary rectified mains, 1; 0 leaves the fundamental alone. */
  readonly harmonics: number;
}

/**
 * Homes have 0.025 to 0.11 µT and up to some 20 V/m far from appliances, and microtesla 30 cm from a mains transformer (World
 * Health Organization, fact sheet 322 and typical exposure levels at home; from memory). Guitars are played beside mains-powered
 * gear: twice the average and half the most is our choice between them.
 */
export const USUAL_MICROTESLA = 0.2;
export const USUAL_ROOM: RoomField = { fluxDensity: 1e-6 * USUAL_MICROTESLA, electricField: 10, harmonics: 1 };

/**
 * EMF in any loop at harmonics 1, 2, 3, … re the fundamental: current drawn in pulses favours odd ones, as from rectifiers and
 * dimmers, a supply that charges twice a cycle even ones; common practice, no source.
 */
const EMF_HARMONICS = [1, 0.3, 0.5, 0.15, 0.3, 0.08, 0.2, 0.05, 0.12, 0.04, 0.08, 0.03, 0.06, 0.02, 0.04];

/** The mains voltage's harmonics re the fundamental: half of what EN 50160 allows a public supply (from memory). */
const VOLTAGE_HARMONICS = [1, 0.01, 0.025, 0.005, 0.03, 0.0025, 0.025, 0.0025, 0.0075, 0.0025, 0.0175, 0.0025, 0.015];

/** One line of the room's spectrum, RMS. */
export interface RoomLine {
  readonly hz: number;
  /** Tesla. */
  readonly fluxDensity: number;
  /** V/m. */
  readonly electricField: number;
}

/** The lines of a room, fundamental first. */
export function roomLines(mainsHz: MainsHz, { fluxDensity, electricField, harmonics }: RoomField): RoomLine[] {
  return EMF_HARMONICS.map((emf, index) => {
    const number = index + 1;
    const strength = number === 1 ? 1 : harmonics;
    return {
      hz: number * mainsHz,
      // An EMF goes with flux density times frequency.
      fluxDensity: (strength * fluxDensity * emf) / number,
      electricField: strength * electricField * (VOLTAGE_HARMONICS[index] ?? 0),
    };
  });
}

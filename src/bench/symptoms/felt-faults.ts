import type { Fault } from "../faults/fault.ts";
import type { FaultKind } from "../faults/priors/fault-shares.ts";
import type { SymptomCode } from "./symptom-codes.ts";

type Chances = Readonly<Partial<Record<SymptomCode, number>>>;

/**
 * How likely somebody with this fault tells of this, where that comes of what moves and not of the circuit (common practice,
 * no source). A joint that is open today crackled yesterday.
 */
const CHANCES: Readonly<Partial<Record<FaultKind, Chances>>> = {
  "pot-scratchy": { "pot-scratchy": 0.95, crackle: 0.4 },
  "pot-loose": { "pot-turns": 0.95, crackle: 0.3, "pot-scratchy": 0.1 },
  "switch-worn": { "crackle-on-lever": 0.9, crackle: 0.4, "no-sound": 0.1, weak: 0.1 },
  "contact-open": { "crackle-on-lever": 0.4, crackle: 0.2 },
  "wire-loose": { crackle: 0.8, "crackle-on-lever": 0.15, "crackle-on-lead": 0.15, "no-sound": 0.1, hum: 0.1 },
  "jack-spring": { "crackle-on-lead": 0.85, crackle: 0.4, "no-sound": 0.3, hum: 0.2 },
  "cable-bad": { "crackle-on-lead": 0.9, crackle: 0.4, "no-sound": 0.4, hum: 0.3, dark: 0.1 },
  "pickup-microphonic": { howl: 0.9 },
  "wire-open": { crackle: 0.15, "crackle-on-lead": 0.05 },
  "joint-open": { crackle: 0.2, "crackle-on-lead": 0.05 },
  "joint-resistive": { crackle: 0.4, "crackle-on-lead": 0.1 },
  "pot-wiper-worn": { "pot-scratchy": 0.7, crackle: 0.3 },
  "pot-end-leaks": { "pot-scratchy": 0.2 },
  "shorted-to-shield": { crackle: 0.2 },
  "lugs-shorted": { crackle: 0.1 },
};

/** Whether the pot that somebody named is the one at fault; a fault of no pot in particular is none of theirs. */
function concerns({ control }: Fault, pots: readonly string[] | undefined): boolean {
  return pots === undefined || (control !== undefined && pots.includes(control));
}

/**
 * The probability that somebody with these faults tells of this for what they do when something moves.
 * @param pots the pots that the person named; undefined for any
 */
export function feltChance(code: SymptomCode, pots: readonly string[] | undefined, faults: readonly Fault[]): number {
  return faults.reduce(
    (most, fault) => Math.max(most, concerns(fault, pots) ? (CHANCES[fault.kind]?.[code] ?? 0) : 0),
    0,
  );
}

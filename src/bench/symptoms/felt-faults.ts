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

/** What is outside the guard, or anywhere in it, does not keep to one position of a switch. */
const EVERYWHERE: readonly FaultKind[] = ["cable-bad", "jack-spring", "wire-loose"];
/** How much less likely it is told of one position alone (common practice, no source). */
const IN_ONE_POSITION = 0.05;

export interface Told {
  readonly code: SymptomCode;
  /** The pots that the person named; undefined for any. */
  readonly pots: readonly string[] | undefined;
  /** Whether the person said in which setting. */
  readonly isLocal: boolean;
}

function chanceFor({ code, isLocal }: Told, { kind }: Fault): number {
  const chance = CHANCES[kind]?.[code] ?? 0;
  const isOdd = isLocal && EVERYWHERE.includes(kind) && !code.startsWith("crackle");
  return isOdd ? chance * IN_ONE_POSITION : chance;
}

/** The probability that somebody with these faults tells of this for what they do when something moves. */
export function feltChance(told: Told, faults: readonly Fault[]): number {
  return faults.reduce((most, fault) => Math.max(most, concerns(fault, told.pots) ? chanceFor(told, fault) : 0), 0);
}

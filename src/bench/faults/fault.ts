import type { Build } from "../../build-file/schema.ts";
import type { Edit } from "./edits/edit.ts";

/**
 * Every kind of fault, with how common it is beside the others. Weights are common practice, no source: cold joints and
 * forgotten wires lead, parts that fail of themselves are rare, and a wire on one particular wrong lug is rarer still.
 */
export const FAULT_WEIGHTS = {
  "wire-open": 6,
  "joint-open": 3,
  "lugs-shorted": 2,
  "shorted-to-case": 2,
  "shorted-to-shield": 2,
  "leads-swapped": 3,
  "coil-leads-swapped": 1,
  "outer-lugs-swapped": 2,
  "pot-lugs-swapped": 1,
  "jack-swapped": 3,
  "coil-open": 2,
  "coil-shorted": 1,
  "cap-open": 1,
  "cap-shorted": 0.5,
  "cap-ten-times": 1,
  "cap-tenth": 1,
  "wrong-pot-value": 1,
  "wrong-switch-lug": 0.5,
  "switch-wires-swapped": 0.5,
  "pickups-swapped": 1,
  "coil-value": 1,
  "pot-value": 0.5,
  "resistor-value": 1,
  "contact-open": 1.5,
} as const;

export type FaultKind = keyof typeof FAULT_WEIGHTS;

/** One thing that can be wrong with a guard. */
export interface Fault {
  readonly kind: FaultKind;
  readonly lugs: readonly string[];
  readonly message: string;
  readonly edits: readonly Edit[];
  /** The value in ohms that the readings say a part has, where the fault is another value than the build's. */
  readonly ohms?: number;
}

export function fault(kind: FaultKind, lugs: readonly string[], message: string, edits: readonly Edit[]): Fault {
  return { kind, lugs, message, edits };
}

/** How a part is called in messages. */
export function called(build: Build, part: string): string {
  return build.parts[part]?.label ?? part;
}

/** How a pickup's coil is called in messages: by the pickup's own name where it is the only one. */
export function coilCalled(build: Build, part: string, coil: string): string {
  const pickup = build.parts[part];
  const isOnly = pickup?.kind === "pickup" && Object.keys(pickup.coils).length === 1;
  return isOnly ? called(build, part) : `the ${coil} coil of ${called(build, part)}`;
}

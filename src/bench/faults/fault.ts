import type { Build } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import type { Edit } from "./edits/edit.ts";
import type { FaultKind } from "./priors/fault-shares.ts";

export type { FaultKind } from "./priors/fault-shares.ts";

/** One thing that can be wrong with a guard. */
export interface Fault {
  readonly kind: FaultKind;
  readonly lugs: readonly string[];
  readonly message: string;
  readonly edits: readonly Edit[];
  /** The value in ohms that the readings say a part or joint has, where the fault is another value than the build's. */
  readonly ohms?: number;
  /** The pot or switch that it is about, where that alone shows it. */
  readonly control?: string;
}

export function fault(kind: FaultKind, lugs: readonly string[], message: string, edits: readonly Edit[]): Fault {
  return { kind, lugs, message, edits };
}

/** How a part is called in messages: "the bridge humbucker". */
export function called({ parts }: Build, part: string): string {
  return `the ${partWords(parts).get(part) ?? part}`;
}

/** How a pickup's coil is called in messages: by the pickup's own name where it is the only one. */
export function coilCalled(build: Build, part: string, coil: string): string {
  const pickup = build.parts[part];
  const isOnly = pickup?.kind === "pickup" && Object.keys(pickup.coils).length === 1;
  return isOnly ? called(build, part) : `the ${coil} coil of ${called(build, part)}`;
}

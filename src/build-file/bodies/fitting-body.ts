import type { Part } from "../schema.ts";
import { bodyFaults } from "./body-faults.ts";

/** A part as it is written, quantities still text: bodies go by its kind and type alone. */
type Written = Readonly<{ kind: string; body?: unknown }> & object;

/** A part that has become one of another type, without the body that it had and cannot have any more. */
export function withFittingBody<P extends Written>(part: P): P {
  if (part.body === undefined || bodyFaults("", part as unknown as Part).length === 0) return part;
  const { body: _, ...rest } = part;
  return rest as P;
}

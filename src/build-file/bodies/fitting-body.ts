import type { Part } from "../schema.ts";
import { bodyFaults } from "./body-faults.ts";

/** A part as it is written, quantities still text: bodies go by its kind and type alone. */
type Written = Readonly<{ kind: string; body?: unknown; lugRows?: unknown }> & object;

/** A part that has become one of another type, without the body or the rows of lugs that it had and cannot have any more. */
export function withFittingBody<P extends Written>(part: P): P {
  return (["lugRows", "body"] as const).reduce((fitting, field) => {
    const isAtFault = () => bodyFaults("", fitting as unknown as Part).some(({ path }) => path === `.${field}`);
    if (fitting[field] === undefined || !isAtFault()) return fitting;
    const { [field]: _, ...rest } = fitting;
    return rest as P;
  }, part);
}

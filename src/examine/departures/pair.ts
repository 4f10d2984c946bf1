import type { Edit } from "../../bench/faults/edits/edit.ts";
import type { Fault } from "../../bench/faults/fault.ts";
import type { Build } from "../../build-file/schema.ts";
import { addedBy } from "./added.ts";
import type { Departure } from "./departure.ts";

/** What an edit leaves nothing of for another one. */
function claimOf(edit: Edit): string[] {
  if ("wire" in edit) return [`wire ${edit.wire}`];
  if ("coil" in edit) return [`${edit.part} coils.${edit.coil}`];
  if ("part" in edit) return [edit.part];
  if (edit.edit === "lift" || edit.edit === "resist-lug") return [`lug ${edit.lug}`];
  return [];
}

function claimsOf({ edits, freed }: Departure): Set<string> {
  const values = freed.map(({ part, field }) => {
    const [head, coil] = field.split(".");
    return head === "coils" ? `${part} coils.${coil}` : part;
  });
  return new Set([...edits.flatMap(claimOf), ...values]);
}

/** Both names of two departures, each with each. */
const crossed = (ones: readonly Fault[], others: readonly Fault[]) =>
  ones.flatMap((one) => others.map((other) => [one, other] as const));

/**
 * Two departures at once; undefined where they cannot both be, or one of them undoes the other.
 * @param ones departures that nothing tells apart, of which the first stands for all; and so `others`
 */
export function pairOf(build: Build, ones: readonly Departure[], others: readonly Departure[]): Departure | undefined {
  const [one, other] = [ones[0]!, others[0]!];
  const claims = claimsOf(one);
  if ([...claimsOf(other)].some((each) => claims.has(each))) return undefined;
  const edits = [...one.edits, ...other.edits];
  const isAdding = one.added.length + other.added.length > 0;
  const added = isAdding ? addedBy(build, edits) : [];
  if (added.length !== one.added.length + other.added.length) return undefined;
  const [a, b, c] = [one.freed.length, other.freed.length, one.added.length];
  return {
    edits,
    freed: [...one.freed, ...other.freed],
    added,
    // Of the second's own; the first's are where it was found.
    starts: other.starts,
    faults: () => [],
    both: (factors) => {
      const first = [...factors.slice(0, a), ...factors.slice(a + b, a + b + c)];
      const second = [...factors.slice(a, a + b), ...factors.slice(a + b + c)];
      return crossed(
        ones.flatMap(({ faults }) => faults(first)),
        others.flatMap(({ faults }) => faults(second)),
      );
    },
  };
}

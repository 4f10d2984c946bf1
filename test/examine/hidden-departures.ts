import type { Edit } from "../../src/bench/faults/edits/edit.ts";
import type { Fault } from "../../src/bench/faults/fault.ts";
import { FAULT_SHARES, type FaultKind } from "../../src/bench/faults/priors/fault-shares.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { valueAt, withPatches } from "../../src/choice/variant.ts";
import type { Departure } from "../../src/examine/departures/departure.ts";
import { departuresOf } from "../../src/examine/departures/departures.ts";
import { pairOf } from "../../src/examine/departures/pair.ts";
import { RIG } from "../../src/examine/model/rig-unknowns.ts";
import { USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { anyName } from "../../src/examine/weigh/classes.ts";
import type { Random } from "./simulated-guard.ts";

/** Poor joints from a hundred ohms to a hundred kilohms, as multiples of what the list has. */
const JOINT_FACTORS = [0.1, 100] as const;

/** A hidden departure and what it is called. */
export interface Truth {
  readonly departure: Departure;
  readonly edits: readonly Edit[];
  /** Values that are so many times the drawn ones. */
  readonly patches?: readonly { readonly part: string; readonly field: string; readonly factor: number }[];
  readonly names: readonly string[];
  /** How many times what was told the known resistor is. */
  readonly resistorFactor?: number;
}

/** A name that no other fault has. */
export const nameOf = ({ kind, lugs, message }: Fault) =>
  `${kind} ${lugs.length > 0 || kind === "known-resistor" ? lugs.join() : message}`;

/** How many times what is drawn another part is, either way: clear of any tolerance. */
const OTHER_FACTORS = [1.6, 4] as const;

const VALUE_KINDS: readonly FaultKind[] = [
  "wrong-pot-value",
  "pot-value",
  "resistor-value",
  "cap-ten-times",
  "cap-tenth",
  "wrong-cap-value",
  "cap-value",
  "coil-value",
];

/** A part of another value, which the search finds by a value of its own: a pot, a capacitor, a resistor or a coil. */
function otherValue(departure: Departure, random: Random): Truth | undefined {
  const [least, most] = OTHER_FACTORS;
  const size = least * (most / least) ** random();
  const factor = random() < 0.5 ? size : 1 / size;
  const { freed } = departure;
  const named = departure.faults(freed.map(() => factor));
  if (freed[0]!.part === RIG) return { departure, edits: [], resistorFactor: factor, names: named.map(nameOf) };
  const patches = freed.map(({ part, field }) => ({ part, field, factor }));
  // Near a usual value it may be told as that one.
  const names = named.flatMap((each) => VALUE_KINDS.map((kind) => nameOf({ ...each, kind })));
  return named.length === 0 ? undefined : { departure, edits: [], patches, names };
}

/** One departure, each kind as often as it is common. */
export function hiddenIn(build: Build, random: Random): Truth {
  const listed = departuresOf(build, NO_CHECKPOINT, USUAL_RIG);
  const kindOf = (each: Departure) => anyName(each)[0]!.kind;
  const kinds = [...new Set(listed.map(kindOf))];
  let left = random() * kinds.reduce((sum, kind) => sum + FAULT_SHARES[kind].share, 0);
  const kind =
    kinds.find((each) => {
      left -= FAULT_SHARES[each].share;
      return left < 0;
    }) ?? kinds.at(-1)!;
  const options = listed.filter((each) => kindOf(each) === kind);
  const departure = options[Math.floor(random() * options.length)]!;
  const other = departure.freed.length > 0 ? otherValue(departure, random) : undefined;
  if (other) return other;
  const [low, high] = JOINT_FACTORS;
  const factor = low * (high / low) ** random();
  const edits = departure.edits.map((edit) => ("ohms" in edit ? { ...edit, ohms: edit.ohms * factor } : edit));
  return { departure, edits, names: departure.faults([factor]).map(nameOf) };
}

/** The drawing with the parts of the truth in it, of which a guard is then soldered. */
export function withPatched(build: Build, truth: Truth | undefined): Build {
  const patches = (truth?.patches ?? []).map(({ part, field, factor }) => ({
    part,
    field,
    value: factor * valueAt(build, part, field)!,
  }));
  return withPatches(build, patches);
}

/** Two departures at once that can both be; neither of them the other's. */
export function pairIn(build: Build, random: Random): readonly [Truth, Truth] {
  for (;;) {
    const [one, other] = [hiddenIn(build, random), hiddenIn(build, random)];
    if (one.names.some((name) => other.names.includes(name))) continue;
    if (pairOf(build, [one.departure], [other.departure])) return [one, other];
  }
}

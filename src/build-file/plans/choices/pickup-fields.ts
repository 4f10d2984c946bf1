import { capitalised } from "../../../english.ts";
import { PICKUP_TYPES, pickupType } from "../../catalogue/pickup-types.ts";
import { layoutOf } from "../layouts.ts";
import type { Plan } from "../plan-schema.ts";
import { withPickups } from "./adapt.ts";
import type { PlanChoice, PlanControl } from "./field.ts";
import { typeOf } from "./four-leads.ts";

type Sort = "single" | "humbucker" | "wide";

/** What stands for each sort where nothing of it is in the guard yet. */
const USUAL: Readonly<Record<Sort, Readonly<Record<string, string>>>> = {
  single: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "single-medium" },
  humbucker: { neck: "humbucker-medium", middle: "humbucker-medium", bridge: "humbucker-medium" },
  wide: { neck: "p90", middle: "p90-rwrp", bridge: "p90-rwrp" },
};

/** From the bridge to the neck. */
const SETS: Readonly<Record<number, readonly (readonly [string, readonly Sort[]])[]>> = {
  3: [
    ["three single coils", ["single", "single", "single"]],
    ["HSS: humbucker at the bridge", ["humbucker", "single", "single"]],
    ["HSH: humbuckers at bridge and neck", ["humbucker", "single", "humbucker"]],
    ["three humbuckers", ["humbucker", "humbucker", "humbucker"]],
    ["three wide single coils", ["wide", "wide", "wide"]],
  ],
  2: [
    ["two single coils", ["single", "single"]],
    ["two humbuckers", ["humbucker", "humbucker"]],
    ["two wide single coils", ["wide", "wide"]],
    ["humbucker at the bridge, single coil at the neck", ["humbucker", "single"]],
  ],
  1: [
    ["one single coil", ["single"]],
    ["one humbucker", ["humbucker"]],
    ["one wide single coil", ["wide"]],
  ],
};

function sortOf(type: string | undefined): Sort | undefined {
  if (type?.startsWith("p90")) return "wide";
  const found = type === undefined ? undefined : pickupType(type);
  return found && (Object.keys(found.coils).length === 1 ? "single" : "humbucker");
}

function placesOf(plan: Plan): readonly string[] {
  const { selector, pickups } = layoutOf(plan.layout);
  return selector === "none" ? Object.keys(plan.pickups) : pickups;
}

const OWN: PlanChoice = { value: "own", label: "another mix", reason: "set by the pickups one by one" };

function setField(plan: Plan): PlanControl {
  const places = placesOf(plan);
  const sets = SETS[places.length] ?? [];
  const sorts = places.map((place) => sortOf(typeOf(plan.pickups[place]!)));
  const key = (list: readonly (string | undefined)[]) => list.join();
  const isKnown = sets.some(([, set]) => key(set) === key(sorts));
  return {
    id: "pickups",
    option: "pickups",
    title: "Pickups",
    kind: "choice",
    value: isKnown ? key(sorts) : OWN.value,
    choices: [...sets.map(([label, set]) => ({ value: key(set), label })), ...(isKnown ? [] : [OWN])],
    made: (value) => {
      const wanted = value.split(",") as Sort[];
      const changes = places.flatMap((place, index) =>
        sorts[index] === wanted[index] ? [] : [[place, USUAL[wanted[index]!][place] ?? USUAL[wanted[index]!].bridge!]],
      );
      return withPickups(plan, Object.fromEntries(changes));
    },
  };
}

function typeField(plan: Plan, place: string): PlanControl {
  const own = typeOf(plan.pickups[place]!);
  const isPlain = typeof plan.pickups[place] === "string";
  const changed: PlanChoice[] = isPlain ? [] : [{ value: "own", label: "values of its own", reason: "as it stands" }];
  return {
    id: `pickups.${place}`,
    option: "pickups",
    title: `${capitalised(place)} pickup`,
    kind: "choice",
    value: isPlain ? own! : "own",
    choices: [...changed, ...PICKUP_TYPES.map(({ name, title }) => ({ value: name, label: title }))],
    made: (type) => withPickups(plan, { [place]: type }),
  };
}

/** All pickups at once by their sorts, and each by its kind. */
export function pickupFields(plan: Plan): PlanControl[] {
  return [setField(plan), ...placesOf(plan).map((place) => typeField(plan, place))];
}

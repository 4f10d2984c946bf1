import type { Build } from "../build-file/schema.ts";
import type { DrawerEntry, OwnedPart } from "./drawer-schema.ts";
import { type KnownGuard, matchGuards } from "./match.ts";
import type { Need } from "./needs.ts";

/** What of a guard the drawer's count has, and what it has not. */
export interface GuardCount {
  readonly counted: readonly Need[];
  readonly uncounted: readonly Need[];
}

/** Parts alike of a guard, as the drawer takes them. */
export interface PartsAlike {
  readonly part: OwnedPart;
  readonly count: number;
  /** Ohms or farads, of those that were measured. */
  readonly measured: readonly number[];
  /** The drawer's item that is of the same part; undefined where none is. */
  readonly item: number | undefined;
}

/**
 * Which parts of a guard are in the drawer's count already. A drawer counts what is owned, soldered in or not: what serves as a part
 * of the guard, and is soldered into no other, may be that very part.
 */
export function countGuard(
  drawer: { readonly items: readonly DrawerEntry[] },
  guards: readonly KnownGuard[],
  index: number,
): GuardCount {
  const known = guards.map((guard, at) => (at === index ? { ...guard, isSoldered: true } : guard));
  const own = matchGuards({ items: [...drawer.items], kits: [] }, known).guards[index]!;
  const needsWhere = (isThere: boolean) => own.filter(({ piece }) => !piece === !isThere).map(({ need }) => need);
  return { counted: needsWhere(true), uncounted: needsWhere(false) };
}

/** A part without what it was to its guard: its name there, where it sat, what it was for. */
function loose(part: OwnedPart): OwnedPart {
  const {
    label: _label,
    place: _place,
    leads: _leads,
    role: _role,
    ...rest
  } = part as OwnedPart & Record<string, unknown>;
  return rest as OwnedPart;
}

const measuredPot = (part: OwnedPart) => (part.kind === "pot" ? part.measured : undefined);

function withoutMeasured(part: OwnedPart): OwnedPart {
  if (part.kind !== "pot") return part;
  const { measured: _, ...rest } = part;
  return rest;
}

const inOrder = (_key: string, value: unknown) =>
  typeof value === "object" && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : value;

const keyOf = (part: OwnedPart) => JSON.stringify(loose(part), inOrder);

/**
 * Parts of a guard as items of a drawer, each with what it was measured as.
 * @param measured ohms or farads by the part's name in the build; else what the build itself says
 */
export function asItems(
  needs: readonly Need[],
  measured: ReadonlyMap<string, number>,
  items: readonly DrawerEntry[],
): PartsAlike[] {
  const known = new Map(items.map(({ part }, index) => [keyOf(part), index]));
  const alike = new Map<string, { part: OwnedPart; count: number; measured: number[] }>();
  for (const { name, part } of needs) {
    const bare = withoutMeasured(loose(part));
    const key = keyOf(bare);
    const value = measured.get(name) ?? measuredPot(part);
    const entry = alike.get(key) ?? { part: bare, count: 0, measured: [] };
    entry.count += 1;
    if (value !== undefined) entry.measured.push(value);
    alike.set(key, entry);
  }
  return [...alike].map(([key, entry]) => ({ ...entry, item: known.get(key) }));
}

const MEASURED_IN: Readonly<Record<string, "capacitance" | "resistance">> = {
  cap: "capacitance",
  pot: "resistance",
  resistor: "resistance",
};

/** Of a build's parts, those that have one value that a meter reads, by name. */
export function measurable(parts: Build["parts"]): Map<string, "capacitance" | "resistance"> {
  return new Map(
    Object.entries(parts).flatMap(([name, { kind }]) => {
      const dimension = MEASURED_IN[kind];
      return dimension ? [[name, dimension] as const] : [];
    }),
  );
}

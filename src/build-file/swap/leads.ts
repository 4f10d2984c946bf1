import { hasCoilLeads } from "../lug-names.ts";
import { lugsOfPart } from "../lugs.ts";
import { type PickupInput, tapOf } from "../plans/plan-pickups.ts";
import type { Part } from "../schema.ts";
import type { WiredTogether } from "./wired-together.ts";

/** What a lead of a pickup is for; with four leads, the inner ones join the coil at the hot end to the one at the ground end. */
export type LeadRole = "hot" | "ground" | "inner, hot coil" | "inner, ground coil" | "shield";

/** A pickup's lugs by what they are for. */
export type Leads = ReadonlyMap<LeadRole, string>;

/** How a pickup is wired: the coil at the hot end, and whether hot and ground have traded places. */
export interface Orientation {
  /** Of a pickup with four leads; absent: the first. */
  readonly hotCoil?: string | undefined;
  readonly isTurned: boolean;
}

/** The leads of a pickup, by what they are for in this orientation. */
export function leadsOf(name: string, pickup: PickupInput, { hotCoil, isTurned }: Orientation): Leads {
  const shield: [LeadRole, string] = ["shield", `${name}.shield`];
  const { hot, ground, link } = tapOf(name, pickup, hotCoil);
  if (!link) {
    const [first, last] = isTurned ? [ground, hot] : [hot, ground];
    return new Map<LeadRole, string>([["hot", first], ["ground", last], shield]);
  }
  const straight = [hot, link[0], link[1], ground];
  const [first, afterFirst, beforeLast, last] = isTurned ? [link[0], hot, ground, link[1]] : straight;
  return new Map<LeadRole, string>([
    ["hot", first!],
    ["inner, hot coil", afterFirst!],
    ["inner, ground coil", beforeLast!],
    ["ground", last!],
    shield,
  ]);
}

/**
 * How a guard has a pickup's leads wired, read from what is joined and what is grounded for good; where switches decide, the
 * first coil is at the hot end.
 */
export function orientationOf(name: string, pickup: PickupInput, together: WiredTogether, sleeve: string): Orientation {
  if (!hasCoilLeads(pickup))
    return { isTurned: together.has(`${name}.hot`, sleeve) && !together.has(`${name}.ground`, sleeve) };
  const orientations = [false, true].flatMap((isTurned) =>
    Object.keys(pickup.coils).map((hotCoil) => ({ hotCoil, isTurned })),
  );
  const likeness = orientations.map((orientation) => {
    const leads = leadsOf(name, pickup, orientation);
    const isGrounded = (role: LeadRole) => Number(together.has(leads.get(role)!, sleeve));
    const isSpliced = together.has(leads.get("inner, hot coil")!, leads.get("inner, ground coil")!);
    return 2 * Number(isSpliced) + isGrounded("ground") + isGrounded("inner, ground coil") - isGrounded("hot");
  });
  return orientations[likeness.indexOf(Math.max(...likeness))]!;
}

/** Every name of every lug of a pickup, with the lug's own. */
export function lugNamesOf(name: string, pickup: PickupInput): ReadonlyMap<string, string> {
  const lugs = lugsOfPart(name, pickup as Part);
  return new Map(lugs.flatMap((lug) => [lug.name, ...lug.aliases].map((each) => [each, lug.name] as const)));
}

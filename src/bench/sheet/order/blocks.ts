import { layoutOf } from "../../../build-file/bodies/layout.ts";
import type { Build, Part } from "../../../build-file/schema.ts";
import { partOf } from "../pieces/loose-ends.ts";
import type { Joint } from "./joints.ts";

/** Joints that are made one after another without laying the guard down differently, in the order to make them. */
export interface Block {
  readonly title: string;
  readonly parts: readonly string[];
  readonly joints: readonly Joint[];
}

/** Within a pot: outer lugs before the wiper, then a shaft's switch, and the case last with everything gathered on it. */
const POT_ORDER = ["1", "3", "2", "b1", "b3", "b2"];

function rankInPart(at: string): number {
  const local = at.slice(at.indexOf(".") + 1);
  if (local === "case") return 1000;
  const rank = POT_ORDER.indexOf(local);
  return rank >= 0 ? rank : 100;
}

const GROUPS = ["pots", "switches", "leaving"] as const;
type Group = (typeof GROUPS)[number];

function groupOf(kind: Part["kind"]): Group | undefined {
  switch (kind) {
    case "pot":
      return "pots";
    case "switch":
      return "switches";
    case "jack":
    case "terminal":
      return "leaving";
    case "pickup":
    case "cap":
    case "resistor":
      return undefined;
  }
}

/** Parts in the trade's order: the bottom control first and up towards the neck, then switches, then what leaves the guard. */
export function tradeOrder(build: Build): string[] {
  const places = layoutOf(build);
  const named = Object.entries(build.parts).map(([name, { kind }]) => ({
    name,
    group: groupOf(kind),
    place: places.get(name)!,
  }));
  return GROUPS.flatMap((group) => {
    const own = named.filter((each) => each.group === group);
    if (group !== "leaving") own.sort((a, b) => a.place.x - b.place.x || b.place.y - a.place.y);
    return own.map(({ name }) => name);
  });
}

const SPLICES = "Splices";
const LEAVING = "Jack, strings and shielding: the wires that leave the guard";

/** The harness's blocks in the trade's order: splices of legs, each pot and switch, then all that leaves the guard. */
export function harnessBlocks(build: Build, joints: readonly Joint[]): Block[] {
  const first = joints.filter(({ sitting }) => sitting === 1);
  const splices = first.filter(({ kind }) => kind === "splice");
  const ofPart = (name: string) =>
    first
      .filter(({ at, kind }) => kind !== "splice" && partOf(at) === name)
      .sort((a, b) => rankInPart(a.at) - rankInPart(b.at));
  const order = tradeOrder(build);
  const leaves = (name: string) => groupOf(build.parts[name]!.kind) === "leaving";
  const leaving = order.filter(leaves);
  const blocks: Block[] = [
    { title: SPLICES, parts: [...new Set(splices.map(({ at }) => partOf(at)))], joints: splices },
    ...order
      .filter((name) => !leaves(name))
      .map((name) => ({ title: build.parts[name]!.label ?? name, parts: [name], joints: ofPart(name) })),
    { title: LEAVING, parts: leaving, joints: leaving.flatMap(ofPart) },
  ];
  return blocks.filter(({ joints: own }) => own.length > 0);
}

/** The pickups' blocks: splices, then the lugs, and the cases last, each heated once more for all the leads on it. */
export function pickupBlocks(build: Build, joints: readonly Joint[]): Block[] {
  const order = tradeOrder(build);
  const rank = ({ at }: Joint) => order.indexOf(partOf(at)) * 2000 + rankInPart(at);
  const second = joints.filter(({ sitting }) => sitting === 2).sort((a, b) => rank(a) - rank(b));
  const partsOf = (own: readonly Joint[]) => [...new Set(own.map(({ at }) => partOf(at)))];
  const block = (title: string, kind: Joint["kind"]): Block => {
    const own = second.filter((joint) => joint.kind === kind);
    return { title, parts: partsOf(own), joints: own };
  };
  return [
    block("Splices of leads", "splice"),
    block("Leads to the lugs", "lug"),
    block("Leads to the cases", "case"),
  ].filter(({ joints: own }) => own.length > 0);
}

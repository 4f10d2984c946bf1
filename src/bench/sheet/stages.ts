import type { Connection } from "../../build-file/connections.ts";
import type { Build, Part } from "../../build-file/schema.ts";
import type { Joint } from "./joints.ts";
import { carrierOf, layoutOf } from "./layout.ts";

/** Joints of one part of the work, in the order to make them. */
export interface Stage {
  readonly title: string;
  readonly parts: readonly string[];
  readonly joints: readonly Joint[];
}

/** Within a part: outer lugs before the wiper, then a shaft's switch, and the case last with everything gathered on it. */
const POT_ORDER = ["1", "3", "2", "b1", "b3", "b2"];

function rankInPart(lug: string, kind: Part["kind"]): number {
  const local = lug.slice(lug.indexOf(".") + 1);
  if (kind !== "pot") return 0;
  if (local === "case") return 1000;
  const rank = POT_ORDER.indexOf(local);
  return rank >= 0 ? rank : 100;
}

const PHASES = ["pots", "switches", "leaving", "pickups"] as const;
type Phase = (typeof PHASES)[number];

/** When a part is wired; a cap or resistor comes with whatever carries it. */
function phaseOf(kind: Part["kind"]): Phase | undefined {
  switch (kind) {
    case "pot":
      return "pots";
    case "switch":
      return "switches";
    case "jack":
    case "terminal":
      return "leaving";
    case "pickup":
      return "pickups";
    case "cap":
    case "resistor":
      return undefined;
  }
}

/** Parts in the order to wire them: the bottom control first and up towards the neck, switches, what leaves the guard, pickups. */
function workOrder(build: Build): { name: string; phase: Phase }[] {
  const places = layoutOf(build);
  const named = Object.entries(build.parts).map(([name, { kind }]) => ({ name, kind, place: places.get(name)! }));
  const fromBottom = (phase: Phase) => phase === "pots" || phase === "switches";
  return PHASES.flatMap((phase) => {
    const ofPhase = named.filter(({ kind }) => phaseOf(kind) === phase);
    if (fromBottom(phase)) ofPhase.sort((a, b) => a.place.x - b.place.x || b.place.y - a.place.y);
    return ofPhase.map(({ name }) => ({ name, phase }));
  });
}

function titleOf(build: Build, phase: Phase, parts: readonly string[]): string {
  if (phase === "leaving") return "Jack, strings and shielding: the wires that leave the guard";
  if (phase === "pickups") return "Pickups, and every case that their ground leads meet";
  return build.parts[parts[0]!]!.label ?? parts[0]!;
}

/** Stands for the pickups' stage, as no part is called. */
const PICKUPS = "";

/** The part whose stage a joint belongs to: a leg's joint goes with what carries the cap. */
function homeOf(build: Build, joint: Joint, connections: readonly Connection[]): string {
  const waitsForLead = joint.arrivals.some((number) => {
    const { means, grownFrom } = connections[number - 1]!;
    return means === "lead" && grownFrom.length > 0;
  });
  if (waitsForLead) return PICKUPS;
  const own = joint.lugs[0]!.split(".")[0]!;
  const { kind } = build.parts[own]!;
  if (kind !== "cap" && kind !== "resistor") return own;
  return carrierOf(build, own) ?? own;
}

/** A stage for every pot and switch, one for all that leaves the guard, and one for the pickups. */
function partGroups(order: ReturnType<typeof workOrder>): { phase: Phase; parts: string[] }[] {
  const groups: { phase: Phase; parts: string[] }[] = [];
  for (const { name, phase } of order) {
    const last = groups.at(-1);
    if (last?.phase === phase && (phase === "leaving" || phase === "pickups")) last.parts.push(name);
    else groups.push({ phase, parts: [name] });
  }
  return groups;
}

/**
 * Joints by stage. A joint waits for the pickups where one of their leads meets it, so that it is heated once, with all that
 * belongs on it gathered; a wire whose other end is not due yet hangs free until then.
 */
export function stagesOf(build: Build, connections: readonly Connection[], joints: readonly Joint[]): Stage[] {
  const order = workOrder(build);
  const names = order.map(({ name }) => name);
  const homes = new Map(joints.map((joint) => [joint, homeOf(build, joint, connections)]));
  const rank = (joint: Joint) => {
    const part = joint.lugs[0]!.split(".")[0]!;
    const { kind } = build.parts[part]!;
    // Splices first among the pickups, then the lugs of each part, cases last of all.
    const place = joint.kind === "splice" ? -1 : kind === "pickup" ? 0 : names.indexOf(part) + 1;
    const late = joint.kind === "case" ? 1e6 : 0;
    return late + place * 2000 + rankInPart(joint.lugs[0]!, kind);
  };
  return partGroups(order)
    .map(({ phase, parts }): Stage => {
      const here = joints.filter((joint) => {
        const home = homes.get(joint)!;
        return parts.includes(home) || (phase === "pickups" && (home === PICKUPS || !names.includes(home)));
      });
      return { title: titleOf(build, phase, parts), parts, joints: here.sort((a, b) => rank(a) - rank(b)) };
    })
    .filter(({ joints: here }) => here.length > 0);
}

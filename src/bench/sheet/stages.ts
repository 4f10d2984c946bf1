import type { Build, Part } from "../../build-file/schema.ts";
import type { Connection } from "./connections.ts";
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

type Phase = "pots" | "switches" | "leaving" | "pickups";

function phaseOf(kind: Part["kind"]): Phase {
  if (kind === "pot") return "pots";
  if (kind === "switch") return "switches";
  return kind === "pickup" ? "pickups" : "leaving";
}

/** Parts in the order to wire them: the bottom control first and up towards the neck, switches, what leaves the guard, pickups. */
function workOrder(build: Build): string[] {
  const places = layoutOf(build);
  const phases: readonly Phase[] = ["pots", "switches", "leaving", "pickups"];
  const names = Object.entries(build.parts).flatMap(([name, { kind }]) =>
    kind === "cap" || kind === "resistor" ? [] : [{ name, kind, place: places.get(name)! }],
  );
  const fromBottom = (phase: Phase) => phase === "pots" || phase === "switches";
  return phases.flatMap((phase) => {
    const ofPhase = names.filter(({ kind }) => phaseOf(kind) === phase);
    if (fromBottom(phase)) ofPhase.sort((a, b) => a.place.x - b.place.x || b.place.y - a.place.y);
    return ofPhase.map(({ name }) => name);
  });
}

function titleOf(build: Build, phase: Phase, parts: readonly string[]): string {
  if (phase === "leaving") return "Jack, strings and shielding: the wires that leave the guard";
  if (phase === "pickups") return "Pickups, and every case that their ground leads meet";
  return build.parts[parts[0]!]!.label ?? parts[0]!;
}

/** The part whose stage a joint belongs to: a leg's joint goes with what carries the cap. */
function homeOf(build: Build, joint: Joint, connections: readonly Connection[]): string {
  const waitsForLead = joint.arrivals.some((number) => {
    const { means, grownFrom } = connections[number - 1]!;
    return means === "lead" && grownFrom.length > 0;
  });
  const own = joint.lugs[0]!.split(".")[0]!;
  if (waitsForLead) return PICKUPS;
  const { kind } = build.parts[own]!;
  if (kind !== "cap" && kind !== "resistor") return own;
  return carrierOf(build, own) ?? own;
}

const PICKUPS = "";

/**
 * Joints by stage. A joint waits for the pickups where one of their leads meets it, so that it is heated once, with all that
 * belongs on it gathered; a wire whose other end is not due yet hangs free until then.
 */
export function stagesOf(build: Build, connections: readonly Connection[], joints: readonly Joint[]): Stage[] {
  const order = workOrder(build);
  const phaseOfPart = (name: string) => phaseOf(build.parts[name]!.kind);
  const groups: { phase: Phase; parts: string[] }[] = [];
  for (const name of order) {
    const phase = phaseOfPart(name);
    const last = groups.at(-1);
    if (last?.phase === phase && (phase === "leaving" || phase === "pickups")) last.parts.push(name);
    else groups.push({ phase, parts: [name] });
  }
  const homes = joints.map((joint) => homeOf(build, joint, connections));
  return groups
    .map(({ phase, parts }): Stage => {
      const here = joints.filter((_, index) => {
        const home = homes[index]!;
        const unplaced = home !== PICKUPS && !order.includes(home);
        return parts.includes(home) || (phase === "pickups" && (home === PICKUPS || unplaced));
      });
      const rank = (joint: Joint) => {
        const part = joint.lugs[0]!.split(".")[0]!;
        const { kind } = build.parts[part]!;
        // Splices first among the pickups, then the lugs of each part, cases last of all.
        const place = joint.kind === "splice" ? -1 : kind === "pickup" ? 0 : order.indexOf(part) + 1;
        const late = joint.kind === "case" ? 1e6 : 0;
        return late + place * 2000 + rankInPart(joint.lugs[0]!, kind);
      };
      return { title: titleOf(build, phase, parts), parts, joints: [...here].sort((a, b) => rank(a) - rank(b)) };
    })
    .filter(({ joints: here }) => here.length > 0);
}

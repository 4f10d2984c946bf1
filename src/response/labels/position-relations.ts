import type { Settings } from "../../build-file/settings.ts";
import { magnitudeOf, type PositionProbe } from "./position-probe.ts";

export type Joined = "series" | "parallel";

/** How a set of members is joined, innermost first. */
export type Arrangement<Member> =
  | { readonly member: Member }
  | { readonly joined: Joined; readonly groups: readonly Arrangement<Member>[] };

/**
 * Lifting a coil lets the coils in parallel with it sound louder, and can only weaken those in series with it; shorting it
 * does the reverse. In any series-parallel network the two are told apart by which leaves the other coil louder; where
 * neither matters (two parallel pairs in series) the pairs are in series. The margin allows for the load.
 */
const PARALLEL_MARGIN = 1.1;

/** How each pair of the given coils (indexes of sources) is joined in a setting; `joinedIn(...)(a, b)`. */
export function pairRelations(
  probe: PositionProbe,
  settings: Settings,
  coils: readonly number[],
): (a: number, b: number) => Joined {
  const known = new Map<string, Joined>();
  const key = (a: number, b: number) => `${Math.min(a, b)} ${Math.max(a, b)}`;
  for (const [index, a] of coils.entries()) {
    const lifted = probe.transfersWithout(settings, a, "lifted");
    const shorted = probe.transfersWithout(settings, a, "shorted");
    for (const b of coils.slice(index + 1)) {
      const isParallel = magnitudeOf(lifted[b]!) > PARALLEL_MARGIN * magnitudeOf(shorted[b]!);
      known.set(key(a, b), isParallel ? "parallel" : "series");
    }
  }
  return (a, b) => known.get(key(a, b))!;
}

function components<Member extends object>(
  members: readonly Member[],
  linked: (a: Member, b: Member) => boolean,
): Member[][] {
  const left = [...members];
  const found: Member[][] = [];
  while (left.length > 0) {
    const component = [left.shift()!];
    for (const member of component) {
      for (const other of left.filter((candidate) => linked(member, candidate))) {
        component.push(other);
        left.splice(left.indexOf(other), 1);
      }
    }
    found.push(members.filter((member) => component.includes(member)));
  }
  return found;
}

/**
 * The series-parallel tree of members whose pairs are joined as told: groups between which every pair is joined one way,
 * and so on inward. A bridge, which is neither, comes out as one group in parallel.
 */
export function arrange<Member extends object>(
  members: readonly Member[],
  joined: (a: Member, b: Member) => Joined,
): Arrangement<Member> {
  const [first] = members;
  if (members.length === 1) return { member: first! };
  for (const outer of ["parallel", "series"] as const) {
    const groups = components(members, (a, b) => joined(a, b) !== outer);
    if (groups.length > 1) return { joined: outer, groups: groups.map((group) => arrange(group, joined)) };
  }
  return { joined: "parallel", groups: members.map((member) => ({ member })) };
}

import type { Build } from "../../../build-file/schema.ts";
import type { Reach } from "../wire/reach.ts";
import { isCase, loosenessOf } from "./loose-ends.ts";
import type { Draft } from "./piece.ts";

/** Of one bared end, beside its own lug: more would be a bare harness. */
const MAX_FURTHER_LUGS = 2;

/** Whether a draft's bared end or leg can go on from its last stop. A pickup's lead is too thin for it, and so is a braid. */
function canRunOn({ means, stops }: Draft): boolean {
  return (means === "wire" || means === "bus wire" || means === "leg") && stops.length - 2 < MAX_FURTHER_LUGS;
}

/** A joint from lug to lug that another's end might make on its way. */
function isFromLugToLug(build: Build, { means, stops, grown }: Draft): boolean {
  if (grown || stops.length !== 2 || means === "braid" || means === "bent lug") return false;
  return stops.every((lug) => !isCase(build, lug) && loosenessOf(build, lug) === undefined);
}

/** The carrier with the short joint added at its end, turned round first where its other end is the one; undefined where neither is. */
function extended(carrier: Draft, [a, b]: readonly string[]): string[] | undefined {
  const last = carrier.stops.at(-1)!;
  if (last === a || last === b) return [...carrier.stops, last === a ? b! : a!];
  const first = carrier.stops[0]!;
  if (carrier.grown || carrier.stops.length > 2 || (first !== a && first !== b)) return undefined;
  return [...carrier.stops].reverse().concat(first === a ? b! : a!);
}

/**
 * Lets bared ends and legs go on to a neighbouring lug where the build has a jumper of its own between the two: one joint less
 * to cut for, and none more to solder.
 */
export function runOn(build: Build, drafts: readonly Draft[], reach: Reach): Draft[] {
  const left = [...drafts];
  for (const short of drafts) {
    if (!left.includes(short) || !isFromLugToLug(build, short)) continue;
    const [a, b] = short.stops as [string, string];
    const isNear = ({ means }: Draft) => reach.isNextTo(a, b, means === "leg" ? "leg" : "end");
    const carriers = left.filter((each) => each !== short && canRunOn(each) && isNear(each));
    // A leg is bare already, and a wire has to be bared: legs first.
    carriers.sort((a, b) => Number(b.means === "leg") - Number(a.means === "leg"));
    for (const carrier of carriers) {
      const stops = extended(carrier, short.stops);
      if (!stops) continue;
      const whole: Draft = { ...carrier, stops, wires: [...new Set([...carrier.wires, ...short.wires])] };
      left.splice(left.indexOf(carrier), 1, whole);
      left.splice(left.indexOf(short), 1);
      break;
    }
  }
  return left;
}

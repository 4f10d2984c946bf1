import { type Fault, fault } from "../fault.ts";
import type { GuardWiring } from "./guard-wiring.ts";

/** Each wire open or missing. A joint that is open at one wire's end alone is the same thing. */
export function wireFaults({ wires, nameAt }: GuardWiring): Fault[] {
  return wires.map(({ from, to }, wire) => {
    const lugs = [nameAt(from), nameAt(to)];
    const message = `The connection from ${lugs[0]} to ${lugs[1]} is open: a cold joint at either end, a broken strand, or it was never made.`;
    return fault("wire-open", lugs, message, [{ edit: "cut", wire }]);
  });
}

/** Each joint where several wires meet, open between all of them and the lug. */
export function jointFaults({ wires, nameAt, wiresAt }: GuardWiring): Fault[] {
  const lugs = [...new Set(wires.flatMap(({ from, to }) => [from, to]))];
  return lugs
    .filter((lug) => wiresAt(lug) > 1)
    .map((lug) => {
      const name = nameAt(lug);
      const message = `The joint at ${name} is cold: its wires hold together but do not meet the lug. Heat it again until the solder flows.`;
      return fault("joint-open", [name], message, [{ edit: "lift", lug }]);
    });
}

import { contactLug } from "../../../build-file/lug-names.ts";
import { switchControls } from "../../../build-file/lugs.ts";
import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import { called, type Fault, fault } from "../fault.ts";
import type { GuardWiring } from "./guard-wiring.ts";

/** The lug that stands for each of the guard's nets: the first that a wire goes to and that is no pickup's own. */
function netLugs({ wires, nameAt, joined }: GuardWiring, pickups: ReadonlySet<string>): number[] {
  const found: number[] = [];
  for (const lug of wires.flatMap(({ from, to }) => [from, to])) {
    if (pickups.has(nameAt(lug).split(".")[0]!)) continue;
    if (!found.some((other) => joined(other, lug))) found.push(lug);
  }
  return found;
}

/** "ground lead"; "screw coil's start". */
function leadWords(lead: string): string {
  const [coil, end] = lead.split(".");
  return end === undefined ? `${lead} lead` : `${end} of the ${coil} coil`;
}

/** Each lead of a pickup that went to another net altogether: a ground lead on a hot lug, a hot one on ground. */
export function strayLeads(guard: GuardWiring): Fault[] {
  const { build, nameAt, wires, joined } = guard;
  const pickups = new Set(partsOfKind(build, "pickup").map(([name]) => name));
  const nets = netLugs(guard, pickups);
  const switchOf = new Map(
    switchControls(build.parts).flatMap(({ name, table }) =>
      table.lugs.map((local) => [contactLug(name, local), name] as const),
    ),
  );
  return wires.flatMap(({ from, to }, wire) =>
    (["from", "to"] as const).flatMap((end): Fault[] => {
      const [right, own] = end === "from" ? [from, to] : [to, from];
      const [part, ...lead] = nameAt(own).split(".");
      const ofPickup = pickups.has(part!) && lead.join(".") !== "shield";
      if (!ofPickup || nameAt(right).startsWith(`${part}.`)) return [];
      const there = switchOf.get(nameAt(right));
      // Another lug of the same switch is a fault of its own kind.
      const others = nets.filter(
        (lug) => !joined(lug, right) && (there === undefined || switchOf.get(nameAt(lug)) !== there),
      );
      const who = called(build, part!);
      return others.map((lug) => {
        const lugs = [nameAt(own), nameAt(right), nameAt(lug)];
        const message = `The ${leadWords(lead.join("."))} of ${who} is on ${lugs[2]} instead of ${lugs[1]}.`;
        return fault("lead-on-wrong-net", lugs, message, [{ edit: "move", wire, end, lug }]);
      });
    }),
  );
}

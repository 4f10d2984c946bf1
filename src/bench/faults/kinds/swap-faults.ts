import { hasCoilLeads, leadsOfCoil } from "../../../build-file/lug-names.ts";
import { lugsOfPart } from "../../../build-file/lugs.ts";
import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import { capitalised } from "../../../english.ts";
import type { Edit } from "../edits/edit.ts";
import { called, coilCalled, type Fault, fault } from "../fault.ts";
import type { GuardWiring } from "./guard-wiring.ts";

/**
 * Exchanges what hangs on two lugs. A jumper between lugs of the same part stays where it is, as it does on the guard when
 * the two outgoing leads change places.
 */
function exchange(guard: GuardWiring, nameA: string, nameB: string, keepsJumpers: boolean): Edit[] {
  const [a, b] = [guard.lug(nameA).index, guard.lug(nameB).index];
  const part = nameA.split(".")[0]!;
  const ofPart = (lug: number) => guard.nameAt(lug).split(".")[0] === part;
  return guard.wires.flatMap(({ from, to }, wire) => {
    if (keepsJumpers && ofPart(from) && ofPart(to)) return [];
    return (["from", "to"] as const).flatMap((end): Edit[] => {
      const at = end === "from" ? from : to;
      if (at === a) return [{ edit: "move", wire, end, lug: b }];
      if (at === b) return [{ edit: "move", wire, end, lug: a }];
      return [];
    });
  });
}

function swap(
  guard: GuardWiring,
  kind: Fault["kind"],
  lugs: readonly [string, string],
  message: string,
  keepsJumpers = false,
): Fault[] {
  if (guard.joined(guard.lug(lugs[0]).index, guard.lug(lugs[1]).index)) return [];
  const edits = exchange(guard, lugs[0], lugs[1], keepsJumpers);
  return edits.length === 0 ? [] : [fault(kind, lugs, message, edits)];
}

export function pickupSwaps(guard: GuardWiring): Fault[] {
  const { build } = guard;
  return partsOfKind(build, "pickup").flatMap(([name, pickup]) => {
    const coils = Object.keys(pickup.coils);
    if (!hasCoilLeads(pickup)) {
      const message = `The two leads of ${called(build, name)} have changed places: hot is on ground and ground on hot.`;
      return swap(guard, "leads-swapped", leadsOfCoil(name, pickup, coils[0]!), message, true);
    }
    return coils.flatMap((coil) => {
      const message = `Start and finish of ${coilCalled(build, name, coil)} have changed places.`;
      return swap(guard, "coil-leads-swapped", leadsOfCoil(name, pickup, coil), message);
    });
  });
}

/** Each two pickups with the same leads, one where the other belongs. */
export function pickupExchanges(guard: GuardWiring): Fault[] {
  const { build } = guard;
  const pickups = partsOfKind(build, "pickup").map(([name, part]) => ({
    name,
    leads: lugsOfPart(name, part)
      .map((lug) => lug.name.slice(name.length + 1))
      .filter((lead) => lead !== "shield"),
  }));
  return pickups.flatMap((one, index) =>
    pickups.slice(index + 1).flatMap((other): Fault[] => {
      if (one.leads.join() !== other.leads.join()) return [];
      const edits = one.leads.flatMap((lead) => exchange(guard, `${one.name}.${lead}`, `${other.name}.${lead}`, false));
      const lugs = [one, other].map(
        ({ name, leads }) => `${name}.${leads.find((lead) => lead === "hot") ?? leads[0]!}`,
      );
      const message = `${capitalised(called(build, one.name))} and ${called(build, other.name)} have changed places: each is wired as the other should be.`;
      return edits.length === 0 ? [] : [fault("pickups-swapped", lugs, message, edits)];
    }),
  );
}

export function potSwaps(guard: GuardWiring): Fault[] {
  const { build } = guard;
  return partsOfKind(build, "pot").flatMap(([name]) => {
    const who = called(build, name);
    const lugs = (a: string, b: string): [string, string] => [`${name}.${a}`, `${name}.${b}`];
    return [
      ...swap(
        guard,
        "outer-lugs-swapped",
        lugs("1", "3"),
        `The outer lugs of ${who} have changed places: it works backwards.`,
      ),
      ...swap(guard, "pot-lugs-swapped", lugs("2", "3"), `What belongs on lugs 2 and 3 of ${who} has changed places.`),
      ...swap(guard, "pot-lugs-swapped", lugs("1", "2"), `What belongs on lugs 1 and 2 of ${who} has changed places.`),
    ];
  });
}

export function jackSwaps(guard: GuardWiring): Fault[] {
  return partsOfKind(guard.build, "jack").flatMap(([name]) =>
    swap(
      guard,
      "jack-swapped",
      [`${name}.tip`, `${name}.sleeve`],
      "Tip and sleeve have changed places at the jack: all metal is on the hot side.",
    ),
  );
}

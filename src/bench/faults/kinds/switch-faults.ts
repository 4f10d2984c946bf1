import { contactLug } from "../../../build-file/lug-names.ts";
import { switchControls } from "../../../build-file/lugs.ts";
import { FRAME_LUG } from "../../../build-file/switch-types.ts";
import { type Fault, fault } from "../fault.ts";
import type { GuardWiring } from "./guard-wiring.ts";

/** Each contact that never closes: dirt, a bent blade. Lugs with nothing on them cannot show it. */
export function contactFaults(guard: GuardWiring): Fault[] {
  return switchControls(guard.build.parts).flatMap(({ name, table }, control) =>
    table.lugs.flatMap((local) => {
      const lug = contactLug(name, local);
      const { index } = guard.lug(lug);
      const inContact = table.positions.some((groups) => groups.some((g) => g.length > 1 && g.includes(local)));
      if (!inContact || guard.wiresAt(index) === 0) return [];
      const message = `The contact at ${lug} does not close: dirty, or its blade is bent. Work the switch, then clean it.`;
      return [fault("contact-open", [lug], message, [{ edit: "dead-contact", control, lug: index }])];
    }),
  );
}

/** Each wire end on a switch, on every other lug of that switch. */
export function wrongLugFaults(guard: GuardWiring): Fault[] {
  return switchControls(guard.build.parts).flatMap(({ name, table }) => {
    // Nobody takes the frame's lug for a contact's: it stands apart from them.
    const contacts = table.lugs.filter((local) => local !== FRAME_LUG);
    const lugs = contacts.map((local) => guard.lug(contactLug(name, local)));
    return guard.wires.flatMap(({ from, to }, wire) =>
      (["from", "to"] as const).flatMap((end): Fault[] => {
        const right = lugs.find((lug) => lug.index === (end === "from" ? from : to));
        if (!right) return [];
        const far = guard.nameAt(end === "from" ? to : from);
        return lugs
          .filter((wrong) => !guard.joined(wrong.index, right.index))
          .map((wrong) => {
            const message = `The wire from ${far} is on ${wrong.name} instead of ${right.name}.`;
            return fault("wrong-switch-lug", [right.name, wrong.name], message, [
              { edit: "move", wire, end, lug: wrong.index },
            ]);
          });
      }),
    );
  });
}

interface WireEnd {
  readonly wire: number;
  readonly end: "from" | "to";
  readonly lug: number;
  readonly far: number;
}

/** Each two wires of a switch, one on the other's lug. */
export function exchangedWireFaults(guard: GuardWiring): Fault[] {
  return switchControls(guard.build.parts).flatMap(({ name, table }) => {
    const lugs = new Set(table.lugs.map((local) => guard.lug(contactLug(name, local)).index));
    const ends = guard.wires.flatMap(({ from, to }, wire): WireEnd[] => [
      ...(lugs.has(from) ? [{ wire, end: "from", lug: from, far: to } as const] : []),
      ...(lugs.has(to) ? [{ wire, end: "to", lug: to, far: from } as const] : []),
    ]);
    return ends.flatMap((one, index) =>
      ends
        .slice(index + 1)
        .filter((other) => other.wire !== one.wire && !guard.joined(one.lug, other.lug))
        .map((other) => exchanged(guard, one, other)),
    );
  });
}

function exchanged({ nameAt }: GuardWiring, one: WireEnd, other: WireEnd): Fault {
  const lugs = [nameAt(one.lug), nameAt(other.lug)];
  const message = `Two wires have changed places: the one from ${nameAt(one.far)} is on ${lugs[1]}, the one from ${nameAt(other.far)} on ${lugs[0]}.`;
  return fault("switch-wires-swapped", lugs, message, [
    { edit: "move", wire: one.wire, end: one.end, lug: other.lug },
    { edit: "move", wire: other.wire, end: other.end, lug: one.lug },
  ]);
}

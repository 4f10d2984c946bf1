import { switchControls } from "../../build/lugs.ts";
import { type Bench, type Fault, fault } from "./fault.ts";

/** Each contact that never closes: dirt, a bent blade. Lugs with nothing on them cannot show it. */
export function contactFaults(bench: Bench): Fault[] {
  return switchControls(bench.build.parts).flatMap(({ part, table, onShaft }, control) =>
    table.lugs.flatMap((local) => {
      const name = `${part}.${onShaft ? "s." : ""}${local}`;
      const { index } = bench.lug(name);
      const inContact = table.positions.some((groups) => groups.some((g) => g.length > 1 && g.includes(local)));
      if (!inContact || bench.wiresAt(index) === 0) return [];
      const message = `The contact at ${name} does not close: dirty, or its blade is bent. Work the switch, then clean it.`;
      return [fault("contact-open", [name], message, [{ edit: "dead-contact", control, lug: index }])];
    }),
  );
}

/** Each wire end on a switch, on every other lug of that switch. */
export function wrongLugFaults(bench: Bench): Fault[] {
  return switchControls(bench.build.parts).flatMap(({ part, table, onShaft }) => {
    const lugs = table.lugs.map((local) => bench.lug(`${part}.${onShaft ? "s." : ""}${local}`));
    return bench.wires.flatMap(({ from, to }, wire) =>
      (["from", "to"] as const).flatMap((end): Fault[] => {
        const right = lugs.find((lug) => lug.index === (end === "from" ? from : to));
        if (!right) return [];
        const far = bench.nameAt(end === "from" ? to : from);
        return lugs
          .filter((wrong) => !bench.joined(wrong.index, right.index))
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

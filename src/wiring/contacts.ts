import { contactLug } from "../build-file/lug-names.ts";
import type { LugTable, SwitchControl } from "../build-file/lugs.ts";

/** For every position of a switch, pairs of lug indexes that its contacts join: each group's first with every other. */
export type ContactPairs = readonly (readonly (readonly [number, number])[])[];

export function contactPairs(control: SwitchControl, lugs: LugTable): ContactPairs {
  return control.table.positions.map((groups) =>
    groups.flatMap((group) => {
      const [first, ...others] = group.map((local) => lugs.indexOf(contactLug(control.name, local)));
      return others.map((other): [number, number] => [first!, other]);
    }),
  );
}

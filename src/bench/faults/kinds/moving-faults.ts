import { leadsOfCoil } from "../../../build-file/lug-names.ts";
import { switchControls } from "../../../build-file/lugs.ts";
import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import { capitalised } from "../../../english.ts";
import { called, type Fault, type FaultKind } from "../fault.ts";
import type { GuardWiring } from "./guard-wiring.ts";

/** A fault that no meter sees while the guard lies still. */
function felt(kind: FaultKind, lugs: readonly string[], message: string, control?: string): Fault {
  return { kind, lugs, message, edits: [], ...(control === undefined ? {} : { control }) };
}

export function potWear({ build }: GuardWiring): Fault[] {
  return partsOfKind(build, "pot").flatMap(([name]) => {
    const who = called(build, name);
    return [
      felt(
        "pot-scratchy",
        [`${name}.2`],
        `${capitalised(who)} is scratchy: dirt or wear between its wiper and track.`,
        name,
      ),
      felt(
        "pot-loose",
        [`${name}.case`],
        `${capitalised(who)} turns in its hole: its nut is loose, and its wires are being twisted.`,
        name,
      ),
    ];
  });
}

export function switchWear({ build }: GuardWiring): Fault[] {
  return switchControls(build.parts).map(({ name, part, table }) =>
    felt(
      "switch-worn",
      [`${name}.${table.lugs[0]}`],
      `The contacts of ${called(build, part)} are worn or oxidised: they come and go.`,
      name,
    ),
  );
}

export function looseWires(): Fault[] {
  return [felt("wire-loose", [], "A joint or a strand somewhere in the guard comes and goes when it is moved.")];
}

export function jackAndCable({ build }: GuardWiring): Fault[] {
  return partsOfKind(build, "jack").flatMap(([name]) => [
    felt(
      "jack-spring",
      [`${name}.tip`, `${name}.sleeve`],
      "The spring of the jack is weak or dirty: the plug sits loose in it.",
    ),
    felt("cable-bad", [`${name}.tip`, `${name}.sleeve`], "The instrument lead is bad, and not the guitar."),
  ]);
}

export function howlingPickups({ build }: GuardWiring): Fault[] {
  return partsOfKind(build, "pickup").map(([name, pickup]) => {
    const leads = leadsOfCoil(name, pickup, Object.keys(pickup.coils)[0]!);
    return felt(
      "pickup-microphonic",
      leads,
      `${capitalised(called(build, name))} is microphonic: its windings or its cover move, for want of wax.`,
    );
  });
}

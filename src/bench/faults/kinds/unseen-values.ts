import { trackLugs } from "../../../build-file/lug-names.ts";
import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import { capitalised } from "../../../english.ts";
import { called, type Fault, fault } from "../fault.ts";
import type { GuardWiring } from "./guard-wiring.ts";

/** What a drawer holds beside the right one: tone caps, and the small ones of a bypass (common practice, no source), in farads. */
const USUAL_CAPS = [
  [10e-9, 15e-9, 22e-9, 33e-9, 47e-9, 68e-9, 100e-9],
  [180e-12, 330e-12, 470e-12, 680e-12, 1e-9, 1.5e-9, 2.2e-9],
];
/** A nearer value is tolerance, not a mistake. */
const MIN_LOG_RATIO = Math.log(1.25);

const shown = (farads: number) => showQuantity(farads, "capacitance", 2);

/** Each capacitor as another of its drawer, which no meter for ohms shows. */
export function wrongCapFaults({ build, lug, joined }: GuardWiring): Fault[] {
  return partsOfKind(build, "cap").flatMap(([part, { capacitance }]) => {
    const lugs = [`${part}.a`, `${part}.b`] as const;
    if (joined(lug(lugs[0]).index, lug(lugs[1]).index)) return [];
    const drawer = USUAL_CAPS.find((each) => capacitance >= each[0]! / 2 && capacitance <= each.at(-1)! * 2) ?? [];
    return drawer
      .filter((usual) => Math.abs(Math.log(usual / capacitance)) > MIN_LOG_RATIO)
      .map((usual) => {
        const message = `${capitalised(called(build, part))} has ${shown(usual)}, not ${shown(capacitance)}: another one of the drawer.`;
        return fault("wrong-cap-value", lugs, message, [{ edit: "capacitance", part, factor: usual / capacitance }]);
      });
  });
}

/** Each pot as one of the other common taper, which shows between its ends alone. */
export function wrongTaperFaults({ build }: GuardWiring): Fault[] {
  return partsOfKind(build, "pot").flatMap(([part, pot]) => {
    if (pot.taper !== "linear" && pot.taper !== "audio") return [];
    const other = pot.taper === "linear" ? "audio" : "linear";
    const [bottom, , top] = trackLugs(part, 0);
    const message = `${capitalised(called(build, part))} is ${other === "audio" ? "an audio" : "a linear"} pot, not ${pot.taper === "audio" ? "an audio" : "a linear"} one.`;
    return [fault("wrong-taper", [bottom, top], message, [{ edit: "taper", part, taper: other }])];
  });
}

/** The fault of a capacitor that has so many times its value. */
export function capValueFault({ build }: Pick<GuardWiring, "build">, part: string, factor: number): Fault | undefined {
  const cap = build.parts[part];
  if (cap?.kind !== "cap") return undefined;
  const message = `${capitalised(called(build, part))} has about ${shown(cap.capacitance * factor)} in place of ${shown(cap.capacitance)}: another value than the drawing's, or a leg that hardly holds.`;
  return fault("cap-value", [`${part}.a`, `${part}.b`], message, [{ edit: "capacitance", part, factor }]);
}

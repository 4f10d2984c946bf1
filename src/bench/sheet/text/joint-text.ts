import { listed } from "../../../english.ts";
import type { Heat } from "../heat/heat.ts";
import type { JointKind } from "../order/joints.ts";

interface Words {
  readonly kind: JointKind;
  readonly at: string;
  readonly isAgain: boolean;
  readonly ends: readonly string[];
}

/** As many ends as this slip out of place while a case is heated, unless they are one bundle (common practice, no source). */
const BUNDLE_FROM = 3;

/** What to do at a joint, in a sentence. */
export function jointText({ kind, at, isAgain, ends }: Words): string {
  const list = listed(ends);
  switch (kind) {
    case "case": {
      const bundle =
        ends.length >= BUNDLE_FROM ? "; twist the wires into one bundle, tin it and lay it on the tinned spot" : "";
      const heat = isAgain ? "heat the case a second time, beside the first joint" : "heat the case";
      return `${at}: ${list}${bundle}; ${heat}${ends.length > 1 ? ", once for all of them" : ""}.`;
    }
    case "splice":
      return `Splice: slip a sleeve over one end, twist ${list} together, solder, and draw the sleeve over the joint.`;
    case "lug": {
      const held = ends.length > 1 ? "; all through the eye before heating" : "";
      return `${at}: ${list}${held}${isAgain ? "; what is on the lug already melts with it: hold it still" : ""}.`;
    }
  }
}

/** A track is told to be warm from here on. */
const WARM_CELSIUS = 60;

const OF_WHAT = { case: "the case", lug: "the lug", splice: "the splice", claw: "the claw" } as const;

/** How long to hold the iron there, and when to give up. */
export function heatText({ heated, seconds, stopAfter, lugCelsius }: Heat): string {
  const what = OF_WHAT[heated];
  if (seconds === null || seconds > stopAfter)
    return `This iron is hardly enough for ${what}: take a bigger one or a broader tip, and stop after ${stopAfter} s.`;
  const track =
    lugCelsius === null || lugCelsius < WARM_CELSIUS ? "" : ` The track is at about ${lugCelsius} °C by then.`;
  return `Solder flows after about ${seconds} s; if it has not after ${stopAfter} s, stop and let ${what} cool.${track}`;
}

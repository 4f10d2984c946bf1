import type { Fault } from "../../bench/faults/fault.ts";
import type { FaultKind } from "../../bench/faults/priors/fault-shares.ts";
import { listed } from "../../english.ts";

const HEAT = (at: string) => `Heat the joints at ${at} again until the solder flows, and pull softly at each wire.`;
const PART_AT = (at: string) => `Clean off the old solder at ${at}`;

const NUMBERS =
  "See which way the positions are counted and which take was made in which; where the takes are right, compare the switch's wires with the drawing.";

/** What to do about a departure whose own message does not say it all. Common practice, no source. */
const ADVICE: Readonly<Partial<Record<FaultKind, (at: string) => string>>> = {
  "wire-open": HEAT,
  "joint-open": HEAT,
  "joint-resistive": HEAT,
  "lugs-shorted": (at) =>
    `Look between ${at} with a lamp: wick off what bridges them, clip whiskers, bend bare leads apart.`,
  "shorted-to-case": (at) => `Bend ${at} apart, and lay tape between them.`,
  "shorted-to-shield": (at) => `Lay tape over the shielding near ${at}, and shorten what sticks out.`,
  "contact-open": (at) =>
    `Work the switch thirty times; if ${at} still does not close, bend its blade back softly or change the switch.`,
  "pot-wiper-worn": () => "Turn the pot from end to end twenty times; if it stays, change it.",
  "pot-end-leaks": () => "Turn the pot from end to end twenty times; if it stays, change it.",
  "coil-open": (at) =>
    `Unsolder the pickup's leads and measure between ${at} with a meter: a broken winding is work for a winder.`,
  "coil-shorted": (at) =>
    `Unsolder the pickup's leads and measure between ${at} with a meter before anything is changed.`,
  "coil-value": (at) =>
    `Unsolder the pickup's leads and measure between ${at} with a meter; compare it with what was bought.`,
  "known-resistor": () => "Measure the known resistor with a meter, say what it reads, and send the same takes again.",
  "positions-reversed": () => NUMBERS,
  "positions-swapped": () => NUMBERS,
  "cap-open": (at) => `${PART_AT(at)} and fit a new capacitor.`,
  "cap-shorted": (at) =>
    `See that no leg touches anything; else: ${PART_AT(at).toLowerCase()} and fit a new capacitor.`,
};

const VALUE_KINDS: ReadonlySet<FaultKind> = new Set([
  "wrong-pot-value",
  "pot-value",
  "resistor-value",
  "cap-ten-times",
  "cap-tenth",
  "wrong-cap-value",
  "cap-value",
  "wrong-taper",
]);

export function adviceFor({ kind, lugs }: Fault): string {
  const at = listed(lugs);
  const known = ADVICE[kind];
  if (known) return known(at);
  if (VALUE_KINDS.has(kind))
    return "Read what is printed on the part; change it, or change the drawing if it is meant to be so.";
  return `Compare the wires at ${at} with the drawing one by one, and solder them to where it shows them.`;
}

import { faultAt } from "../../errors.ts";
import type { Point } from "./behind-resistor.ts";

/** What a part behind the resistor is said to be. */
export type MeasuredPart = "coil" | "capacitor" | "resistor" | "lead";

const DEGREES = 180 / Math.PI;
const angleOf = ({ re, im }: Point) => DEGREES * Math.atan2(im, re);

function middle(values: readonly number[]): number | undefined {
  return values.length > 0 ? values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] : undefined;
}

/** A coil's angle passes it between where its resistance and where its resonance rules; a wirewound resistor's never does. */
const INDUCTIVE_DEGREES = 40;
/** Of all points: an octave of a sweep's nine. */
const INDUCTIVE_SHARE = 0.1;
/** tan δ of 0.36, twice what any capacitor in a guitar has. */
const CAPACITIVE_DEGREES = -70;
/** Above, an input's capacitance turns a megohm; below, a coil is not yet told from its resistance, but by then it is told. */
const RESISTIVE_TO_HZ = 200;
const RESISTIVE_DEGREES = 30;
const MIXED_DEGREES = -45;
/** No lead has as much, and few capacitors in a guitar less; a judgement, no source. */
const LONGEST_LEAD_FARADS = 5e-9;

type Kind = "coil" | "capacitor" | "resistor";

/** What its angle over frequency says a part is; undefined where it is none of them clearly. */
export function kindOf(points: readonly Point[]): Kind | undefined {
  const angles = points.map(angleOf);
  if (angles.filter((angle) => angle > INDUCTIVE_DEGREES).length > INDUCTIVE_SHARE * angles.length) return "coil";
  const low = middle(points.filter(({ hz }) => hz <= RESISTIVE_TO_HZ).map(angleOf));
  const whole = middle(angles);
  if (whole === undefined) return undefined;
  if (whole < CAPACITIVE_DEGREES && (low ?? whole) < CAPACITIVE_DEGREES) return "capacitor";
  // A lead with an input's megohm across it is neither, clearly.
  return low !== undefined && Math.abs(low) < RESISTIVE_DEGREES && whole > MIXED_DEGREES ? "resistor" : undefined;
}

const SAY = {
  coil: "coil",
  capacitor: "capacitor or lead",
  resistor: "resistor",
  mixed: "lead, capacitor or resistor",
};

const SIGNS: Readonly<Record<Kind | "mixed", string>> = {
  coil: "a coil, or a guard with one in circuit: its current lags the voltage",
  capacitor: "a capacitor or a lead: its current leads the voltage by nearly a quarter of a turn",
  resistor: "a resistor or a pot's track: below 200 Hz its current is in step with the voltage",
  mixed: "a resistance and a capacitance together: its current nowhere lags the voltage",
};

/** About 1 kHz. */
export const faradsOf = (points: readonly Point[]) =>
  middle(
    points
      .filter(({ hz }) => hz > 500 && hz < 2000)
      .map(({ re, im, hz }) => -im / ((re * re + im * im) * 2 * Math.PI * hz)),
  );

const wants = (part: MeasuredPart): Kind => (part === "lead" ? "capacitor" : part);

/** @throws DATA_INSUFFICIENT where what was measured looks like another part than was said */
export function requirePart(part: MeasuredPart, points: readonly Point[]): void {
  const found = kindOf(points);
  const isOther = found === undefined ? part === "coil" : found !== wants(part);
  if (isOther) {
    const say = SAY[found ?? "mixed"];
    const message = `what was measured is no ${part}; it looks like ${SIGNS[found ?? "mixed"]}. Say part: ${say}, or clip on the ${part}`;
    throw faultAt("DATA_INSUFFICIENT", "part", message);
  }
  const farads = part === "lead" && found === "capacitor" ? faradsOf(points) : undefined;
  if (farads === undefined || farads < LONGEST_LEAD_FARADS) return;
  const message = `what was measured has ${(1e9 * farads).toPrecision(3)} nF, as no lead has; it looks like a capacitor. Say part: capacitor, or clip on the lead`;
  throw faultAt("DATA_INSUFFICIENT", "part", message);
}

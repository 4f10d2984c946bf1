import { leadsOfCoil, trackLugs } from "../../../build-file/lug-names.ts";
import type { Build } from "../../../build-file/schema.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import { capitalised } from "../../../english.ts";
import type { Parameter } from "../../meter/resistors.ts";
import { called, coilCalled, type Fault } from "../fault.ts";

/** What can carry another value than the build says: three figures are more than a meter of 1 % can vouch for. */
const FIGURES = 3;

const shown = (ohms: number) => showQuantity(ohms, "resistance", FIGURES);

function coilValue(build: Build, part: string, coil: string, factor: number): Fault | undefined {
  const pickup = build.parts[part];
  if (pickup?.kind !== "pickup") return undefined;
  const right = pickup.coils[coil]!.resistance;
  const cause =
    factor < 1
      ? "shorted turns, or another pickup than the build file says"
      : "another pickup than the build file says, or a poor joint in its leads";
  return {
    kind: "coil-value",
    lugs: leadsOfCoil(part, pickup, coil),
    message: `The winding of ${coilCalled(build, part, coil)} has about ${shown(right * factor)} in place of ${shown(right)}: ${cause}.`,
    edits: [{ edit: "coil-resistance", part, coil, factor }],
    ohms: right * factor,
  };
}

function potValue(build: Build, part: string, gang: number, factor: number): Fault | undefined {
  const pot = build.parts[part];
  if (pot?.kind !== "pot") return undefined;
  const track = gang === 0 ? pot : pot.gangs![gang - 1]!;
  const right = track.measured ?? track.resistance;
  const [bottom, , top] = trackLugs(part, gang);
  return {
    kind: "pot-value",
    lugs: [bottom, top],
    message: `The track of ${called(build, part)} has about ${shown(right * factor)} in place of ${shown(right)}: another pot than the build file says, or a worn track.`,
    edits: [{ edit: "resistance", part, gang, factor }],
    ohms: right * factor,
  };
}

function resistorValue(build: Build, part: string, factor: number): Fault | undefined {
  const resistor = build.parts[part];
  if (resistor?.kind !== "resistor") return undefined;
  const right = resistor.resistance;
  return {
    kind: "resistor-value",
    lugs: [`${part}.a`, `${part}.b`],
    message: `${capitalised(called(build, part))} has about ${shown(right * factor)} in place of ${shown(right)}: a misread code, or it was overheated.`,
    edits: [{ edit: "resistance", part, gang: 0, factor }],
    ohms: right * factor,
  };
}

/** The fault of a part whose value is so many times what the build says: a coil, a track, a resistor. */
export function valueFault(build: Build, { part, coil, gang }: Parameter, factor: number): Fault | undefined {
  if (coil !== undefined) return coilValue(build, part, coil, factor);
  return gang !== undefined ? potValue(build, part, gang, factor) : resistorValue(build, part, factor);
}

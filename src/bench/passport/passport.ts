import { QuantityError } from "../../build-file/quantity.ts";
import type { Build } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { capitalised } from "../../english.ts";
import { faultAt, type InputFault, refused } from "../../errors.ts";
import { isLoneOne } from "../meter/own/display.ts";
import type { OwnMeter } from "../meter/own/own-meter.ts";
import { meterReadings } from "../meter/readings.ts";
import { fits, NO_GRANT, rangeText, readShown, type Shown } from "../meter/shown.ts";
import { acceptanceReadings } from "../mounting/closing.ts";
import type { DrawerItem } from "../parts/drawer.ts";
import { partsList } from "../parts/parts-list.ts";
import { expectedOf } from "./expected-of.ts";
import { type PassportPart, passportParts } from "./passport-parts.ts";
import { type PassportPosition, passportPositions } from "./positions.ts";

export interface PassportRequest {
  /** °C, of the coils. */
  readonly temperature: number;
  /** The person's own, where they said which. */
  readonly meter?: OwnMeter | undefined;
  readonly guitar?: string | undefined;
  /** ISO 8601, a day. */
  readonly date?: string | undefined;
  readonly notes?: string | undefined;
  /** What a meter showed, as it was written, by the label of an acceptance reading. */
  readonly noted: Readonly<Record<string, string>>;
  /** From string to pole with the string pressed at the last fret, metres, by pickup. */
  readonly heights: Readonly<Record<string, PickupHeight>>;
  readonly drawer: readonly DrawerItem[];
}

export interface PickupHeight {
  readonly bass: number;
  readonly treble: number;
}

export interface PassportReading {
  /** As it is noted under. */
  readonly label: string;
  /** "Position 2"; "At the jack" of a guard without a switch. */
  readonly where: string;
  readonly should: string;
  /** What stands on the person's own meter; null where they did not say which. */
  readonly shows: string | null;
  readonly noted: string | null;
  /** Whether what was noted fits; null where nothing was. */
  readonly fits: boolean | null;
}

export interface Passport {
  readonly title: string;
  readonly guitar: string | null;
  readonly date: string | null;
  readonly temperature: number;
  readonly notes: string | null;
  readonly positions: readonly PassportPosition[];
  readonly parts: readonly PassportPart[];
  readonly readings: readonly PassportReading[];
  readonly heights: readonly ({ readonly pickup: string; readonly name: string } & PickupHeight)[];
  readonly staysOver: readonly { readonly what: string; readonly quantity: number }[];
}

/** @throws PresolderError REQUEST_INVALID where the text is no reading */
function shownUnder(label: string, text: string, meter: OwnMeter | undefined): Shown | undefined {
  try {
    const shown = readShown(text, meter?.range);
    const isOver = meter && shown && "ohms" in shown && isLoneOne(meter, meter.range, shown.ohms);
    return isOver ? { above: meter.range! } : shown;
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    throw faultAt("REQUEST_INVALID", `noted.${label}`, error.message);
  }
}

function readingsOf(build: Build, { temperature, noted, meter }: PassportRequest): PassportReading[] {
  const { readings } = meterReadings(build, { celsius: temperature, meter });
  const wanted = acceptanceReadings(build, readings);
  const labels = wanted.map(({ label }) => label);
  const stray = Object.keys(noted).find((label) => !labels.includes(label));
  if (stray !== undefined) {
    const expected = labels.map((label) => `"${label}"`).join(", ");
    throw faultAt("REQUEST_INVALID", `noted.${stray}`, `is no acceptance reading of this guard; expected ${expected}`);
  }
  return wanted.map(({ label, shows, ...range }, index) => {
    const text = Object.hasOwn(noted, label) ? noted[label]!.trim() : "";
    const shown = shownUnder(label, text, meter);
    return {
      label,
      where: wanted.length === 1 ? "At the jack" : `Position ${index + 1}`,
      should: rangeText(range),
      shows: shows ?? null,
      noted: text || null,
      fits: shown === undefined ? null : fits(range, shown, meter ? NO_GRANT : undefined),
    };
  });
}

function heightsOf({ parts }: Build, heights: PassportRequest["heights"]): Passport["heights"] {
  const words = partWords(parts);
  const there = Object.keys(parts).filter((name) => parts[name]!.kind === "pickup");
  const faults: InputFault[] = Object.keys(heights)
    .filter((name) => !there.includes(name))
    .map((name) => ({
      path: `heights.${name}`,
      message: `"${name}" is no pickup of this guard${expectedOf(there)}`,
    }));
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
  return Object.entries(heights).map(([pickup, height]) => ({
    pickup,
    name: capitalised(words.get(pickup) ?? pickup),
    ...height,
  }));
}

/**
 * What is worth knowing of a guard years later, on one page.
 * @throws PresolderError REQUEST_INVALID naming the label or pickup that the guard does not have
 */
export function passportOf(build: Build, request: PassportRequest): Passport {
  const { guitar, date, notes, temperature, drawer } = request;
  return {
    title: build.title ?? "",
    guitar: guitar || null,
    date: date ?? null,
    temperature,
    notes: notes || null,
    positions: passportPositions(build),
    parts: passportParts(build),
    readings: readingsOf(build, request),
    heights: heightsOf(build, request.heights),
    staysOver: partsList(build, [], drawer).staysOver.map(({ what, quantity }) => ({ what, quantity })),
  };
}

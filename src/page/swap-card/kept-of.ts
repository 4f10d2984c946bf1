import { QuantityError } from "../../build-file/quantity.ts";
import { allNoted } from "../bench/fitting/noted.ts";
import { heightOf } from "../passport/details.ts";
import type { ChosenGuard } from "./guard-choice.ts";

interface Height {
  readonly bass: number;
  readonly treble: number;
}

function metres(text: string | undefined): number | undefined {
  try {
    return text ? heightOf(text) : undefined;
  } catch (error) {
    // What cannot be read is told where it was written, on the passport.
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

/** Heights of pickups that were noted on the passport, on this device. @param pickups of the guard, by name */
export function keptHeights({ title }: ChosenGuard, pickups: readonly string[]): Record<string, Height> {
  const notes = allNoted(`${title}|`);
  return Object.fromEntries(
    pickups.flatMap((name) => {
      const [bass, treble] = [metres(notes.get(`${name} bass`)), metres(notes.get(`${name} treble`))];
      return bass === undefined || treble === undefined ? [] : [[name, { bass, treble }]];
    }),
  );
}

/** What a meter showed: kept on the shelf, else noted on the passport. @param labels of the guard's acceptance readings */
export function keptReadings({ title, readings }: ChosenGuard, labels: readonly string[]): Record<string, string> {
  const notes = allNoted(`${title}|`);
  return Object.fromEntries(
    labels.flatMap((label) => {
      const text = readings.get(label) ?? notes.get(label) ?? "";
      return text === "" ? [] : [[label, text]];
    }),
  );
}

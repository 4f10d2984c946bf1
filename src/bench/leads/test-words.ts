import { rangeWords } from "../meter/own/display.ts";
import type { OwnMeter } from "../meter/own/own-meter.ts";
import { rangeFor } from "../meter/own/range-for.ts";
import { METAL, type Question, type Test } from "./question.ts";

interface TestWords {
  readonly label: string;
  readonly instruction: string;
}

/** A coil of two thirds of the pickups there are: what the range is set for. */
const USUAL_COIL_OHMS = 8000;

function rangeToSet(meter: OwnMeter | undefined): string {
  if (meter === undefined) return ", on the 20 kΩ range";
  return meter.ranging === "auto" ? "" : `, on ${rangeWords(meter, meter.range ?? rangeFor(meter, USUAL_COIL_OHMS))}`;
}

/** How a person at the bench does a test. */
export function testWords({ leads, rows, meter }: Question, test: Test): TestWords {
  if (test.kind === "compass") {
    const row = rows[test.row]!;
    return {
      label: `Compass over the ${row}`,
      instruction: `Hold a compass over the ${row}, from above, and come near slowly: which end of its needle is drawn to them? A strong magnet can turn a compass round for good; see afterwards that it still points north.`,
    };
  }
  if (test.kind === "ohms") {
    const a = leads[test.a]!;
    if (test.b === METAL)
      return {
        label: `${a} to the metal`,
        instruction: `Read ohms from ${a} to the pickup's metal: cover, base plate or braid.`,
      };
    const b = leads[test.b]!;
    return { label: `${a} to ${b}`, instruction: `Read ohms between ${a} and ${b}${rangeToSet(meter)}.` };
  }
  const [plus, minus, row] = [leads[test.plus]!, leads[test.minus]!, rows[test.row]!];
  return {
    label: `Tap the ${row}, + on ${plus}, − on ${minus}`,
    instruction: `Set the meter to its lowest DC millivolt range, + on ${plus} and − on ${minus}. Lay a screwdriver's tip on the ${row} and pull it off sharply: which way does the needle, or the sign, go first? What stays far under the other row's kick is none.`,
  };
}

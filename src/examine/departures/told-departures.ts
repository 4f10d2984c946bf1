import { type Fault, fault } from "../../bench/faults/fault.ts";
import { switchControls } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { RIG, type Rig } from "../model/rig-unknowns.ts";
import type { Departure } from "./departure.ts";

/** A decade and more either way: resistors are misread by decades, and taken from the wrong drawer. */
const RESISTOR_DEVIATION = 1.6;
/** Multiples of what was told to begin at: usual resistors of a bench beside each other, and a decade. */
const RESISTOR_STARTS = [0.1, 0.21, 0.47, 1, 2.1, 4.7, 10].map(Math.log);
/** Beyond its tolerance by so much, in ln, it is another resistor. */
const RESISTOR_SLACK = 0.02;

/** The resistor that everything is measured by is not what it was said to be. */
export function knownResistor({ resistorOhms, tolerance }: Rig): Departure {
  return {
    edits: [],
    freed: [{ part: RIG, field: "resistor", deviation: RESISTOR_DEVIATION }],
    added: [],
    starts: RESISTOR_STARTS.map((start) => [start]),
    faults: ([factor]) => {
      if (Math.abs(Math.log(factor!)) < Math.log(1 + tolerance) + RESISTOR_SLACK) return [];
      const ohms = factor! * resistorOhms;
      const [is, told] = [showQuantity(ohms, "resistance", 2), showQuantity(resistorOhms, "resistance", 3)];
      const message = `The known resistor has about ${is}, not ${told}: everything at the jack is measured by it.`;
      return [{ kind: "known-resistor", lugs: [], message, edits: [], ohms }];
    },
  };
}

function fixed(named: Fault): Departure {
  return { edits: named.edits, freed: [], added: [], starts: [[]], faults: () => [named] };
}

/** Positions of the main switch that are called by other numbers than the drawing's: all of them from the other end, or two of them. */
export function otherPositions(build: Build): Departure[] {
  const { main } = new Controls(build);
  const count = main?.table.positions.length ?? 0;
  if (!main || count < 2) return [];
  const who = `the ${partWords(build.parts).get(main.part) ?? main.part}`;
  const control = switchControls(build.parts).findIndex(({ name }) => name === main.name);
  const numbers = Array.from({ length: count }, (_, index) => index + 1);
  const reversed = fault(
    "positions-reversed",
    [],
    `Position 1 of ${who} is the drawing's position ${count}, and so on: counted from the other end, or ${who} sits or is wired the other way round.`,
    [{ edit: "positions", control, order: [...numbers].reverse() }],
  );
  const swapped = numbers.flatMap((a) =>
    numbers.slice(a).flatMap((b) => {
      // Of three, the outer two exchanged are all of them reversed.
      if (a + b === count + 1 && count <= 3) return [];
      const order = numbers.map((each) => (each === a ? b : each === b ? a : each));
      const message = `Positions ${a} and ${b} of ${who} have changed places: in what the takes are called, or in its wires.`;
      return [fault("positions-swapped", [], message, [{ edit: "positions", control, order }])];
    }),
  );
  return [reversed, ...swapped].map(fixed);
}

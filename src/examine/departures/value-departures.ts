import type { Fault } from "../../bench/faults/fault.ts";
import { coilCalled } from "../../bench/faults/fault.ts";
import { capValueFault } from "../../bench/faults/kinds/unseen-values.ts";
import { valueFault } from "../../bench/faults/kinds/value-faults.ts";
import { FREE_PART_DEVIATION } from "../../bench/faults/likelihood/joint-normal.ts";
import { leadsOfCoil } from "../../build-file/lug-names.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, Pickup } from "../../build-file/schema.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import { coilTolerance, type Tolerance, trackTolerance, valueTolerance } from "../../build-file/tolerances.ts";
import type { Departure, Freed } from "./departure.ts";

/** Capacitors are misread by decades. */
const FREE_CAP_DEVIATION = 1.2;
const LN3 = Math.log(3);
const STARTS = [[-LN3], [0], [LN3]];
/** Further from what is drawn than its tolerance by this much, in ln, a part is another one. */
const SLACK = 0.02;

type Limits = Pick<Tolerance, "fraction" | "under">;

function isOff(factor: number, { fraction, under = -fraction }: Limits): boolean {
  const off = Math.log(factor);
  return off > Math.log(1 + fraction) + SLACK || off < Math.log(1 + under) - SLACK;
}

function single(freed: Freed, tolerance: Limits, name: (factor: number) => Fault | undefined): Departure {
  return {
    edits: [],
    freed: [freed],
    added: [],
    starts: STARTS,
    faults: ([factor]) => {
      const fault = isOff(factor!, tolerance) ? name(factor!) : undefined;
      return fault ? [fault] : [];
    },
  };
}

const byDefault = (fraction: number) => ({ fraction, byDefault: true });

function ofPots(build: Build): Departure[] {
  return partsOfKind(build, "pot").flatMap(([part, pot]) =>
    [pot, ...(pot.gangs ?? [])].map((track, gang) => {
      const field = `${gang === 0 ? "" : `gangs.${gang - 1}.`}${track.measured === undefined ? "resistance" : "measured"}`;
      const tolerance = trackTolerance(pot, track.measured);
      return single({ part, field, deviation: FREE_PART_DEVIATION }, tolerance, (factor) =>
        valueFault(build, { part, gang, tolerance: byDefault(tolerance.fraction) }, factor),
      );
    }),
  );
}

function ofResistors(build: Build): Departure[] {
  return partsOfKind(build, "resistor").map(([part, resistor]) => {
    const tolerance = valueTolerance(resistor);
    return single({ part, field: "resistance", deviation: FREE_CAP_DEVIATION }, tolerance, (factor) =>
      valueFault(build, { part, tolerance }, factor),
    );
  });
}

function ofCaps(build: Build): Departure[] {
  return partsOfKind(build, "cap").map(([part, cap]) =>
    single({ part, field: "capacitance", deviation: FREE_CAP_DEVIATION }, valueTolerance(cap), (factor) =>
      capValueFault({ build }, part, factor),
    ),
  );
}

/** What a coil of another inductance than the drawing's is called: its resistance alone would not tell. */
function otherCoil(build: Build, part: string, coil: string, [ohms, henries]: readonly number[]): Fault | undefined {
  const pickup = build.parts[part] as Pickup;
  const { resistance, inductance } = pickup.coils[coil]!;
  const told = valueFault(build, { part, coil, tolerance: byDefault(0) }, ohms!);
  const [has, drawn] = [henries! * inductance, inductance].map((each) => showQuantity(each, "inductance", 2));
  const cause = henries! < 1 ? "shorted turns, or another pickup than drawn" : "another pickup than drawn";
  return (
    told && {
      ...told,
      lugs: leadsOfCoil(part, pickup, coil),
      message: `The winding of ${coilCalled(build, part, coil)} has about ${has} and ${showQuantity(ohms! * resistance, "resistance", 3)} in place of ${drawn} and ${showQuantity(resistance, "resistance", 3)}: ${cause}.`,
    }
  );
}

function ofCoils(build: Build): Departure[] {
  return partsOfKind(build, "pickup").flatMap(([part, pickup]) =>
    Object.entries(pickup.coils).map(([coil, spec]): Departure => {
      const tolerance = coilTolerance(pickup, spec);
      const fields = ["resistance", "inductance", ...(spec.capacitance > 0 ? ["capacitance"] : [])];
      const loss = !spec.loss
        ? []
        : typeof spec.loss === "number"
          ? ["loss"]
          : spec.loss.flatMap((section, index) => [
              `loss.${index}.resistance`,
              ...(section.inductance === undefined ? [] : [`loss.${index}.inductance`]),
            ]);
      const freed = [...fields, ...loss].map((field) => ({
        part,
        field: `coils.${coil}.${field}`,
        deviation: FREE_PART_DEVIATION,
      }));
      return {
        edits: [],
        freed,
        added: [],
        starts: [-0.5, 0, 0.5].map((start) => freed.map(() => start)),
        faults: (factors) => {
          if (!isOff(factors[0]!, tolerance) && !isOff(factors[1]!, tolerance)) return [];
          const fault = otherCoil(build, part, coil, factors);
          return fault ? [fault] : [];
        },
      };
    }),
  );
}

/** Every part of a value that no tolerance binds. */
export function valueDepartures(build: Build): Departure[] {
  return [ofCoils, ofPots, ofResistors, ofCaps].flatMap((departuresOf) => departuresOf(build));
}

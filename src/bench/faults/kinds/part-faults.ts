import { leadsOfCoil, trackLugs } from "../../../build-file/lug-names.ts";
import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import { shortQuantity } from "../../../build-file/show-quantity.ts";
import { capitalised } from "../../../english.ts";
import { called, coilCalled, type Fault, fault } from "../fault.ts";
import type { GuardWiring } from "./guard-wiring.ts";

/** Tracks that a drawer holds beside the right one (common practice, no source), in ohms. */
const USUAL_TRACKS = [25e3, 100e3, 250e3, 500e3, 1e6];
/** A nearer value is tolerance, not a mistake: two 20 % parts may differ by half. */
const MIN_LOG_RATIO = Math.log(1.6);

export function coilFaults({ build }: GuardWiring): Fault[] {
  return partsOfKind(build, "pickup").flatMap(([part, pickup]) => {
    const coils = Object.keys(pickup.coils);
    return coils.flatMap((coil) => {
      const leads = leadsOfCoil(part, pickup, coil);
      const who = coilCalled(build, part, coil);
      return [
        fault("coil-open", leads, `The winding of ${who} is broken, inside or where its leads leave it.`, [
          { edit: "coil-open", part, coil },
        ]),
        fault("coil-shorted", leads, `The winding of ${who} is shorted inside.`, [
          { edit: "coil-shorted", part, coil },
        ]),
      ];
    });
  });
}

export function capFaults({ build, lug, joined }: GuardWiring): Fault[] {
  return partsOfKind(build, "cap").flatMap(([part]) => {
    const who = capitalised(called(build, part));
    const lugs = [`${part}.a`, `${part}.b`] as const;
    const [a, b] = [lug(lugs[0]).index, lug(lugs[1]).index];
    if (joined(a, b)) return [];
    const valued = (factor: number) => [{ edit: "capacitance", part, factor } as const];
    return [
      fault("cap-open", lugs, `${who} is open inside.`, valued(0)),
      fault("cap-shorted", lugs, `${who} is shorted, inside or by its legs.`, [{ edit: "bridge", lugs: [a, b] }]),
      fault("cap-ten-times", lugs, `${who} has ten times its value: a misread code.`, valued(10)),
      fault("cap-tenth", lugs, `${who} has a tenth of its value: a misread code.`, valued(0.1)),
    ];
  });
}

export function potValueFaults({ build }: GuardWiring): Fault[] {
  return partsOfKind(build, "pot").flatMap(([part, pot]) =>
    [pot, ...(pot.gangs ?? [])].flatMap((track, gang) => {
      const ohms = track.measured ?? track.resistance;
      const [bottom, , top] = trackLugs(part, gang);
      return USUAL_TRACKS.filter((usual) => Math.abs(Math.log(usual / ohms)) > MIN_LOG_RATIO).map((usual) =>
        fault(
          "wrong-pot-value",
          [bottom, top],
          `${capitalised(called(build, part))} is a ${shortQuantity(usual)} pot, not ${shortQuantity(ohms)}.`,
          [{ edit: "resistance", part, gang, factor: usual / ohms }],
        ),
      );
    }),
  );
}

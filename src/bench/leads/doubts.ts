import { type CoilBetween, expectedOhms } from "./coil-ohms.ts";
import { kickExpected, shownAcross, shownBy } from "./likelihood.ts";
import type { Question, Test } from "./question.ts";
import { testKey } from "./tests.ts";
import { type Labelling, pathOf } from "./weigh.ts";

/** What was measured that the best labelling does not explain. */
export interface Doubt {
  readonly test: Test;
  /** Where it stands in the request. */
  readonly path: string;
}

/** Whether a test was made over and over: it is asked for no more. */
export function isRepeated({ evidence: { ohms, kicks, compass } }: Question, test: Test): boolean {
  const key = testKey(test);
  return [...ohms, ...kicks, ...compass].filter((made) => testKey(made) === key).length > 1;
}

/** As in the coils' own weighing. */
const SLIP_DEVIATIONS = 5;

/** Results that a labelling takes for misread. */
export function doubtsAbout({ evidence }: Question, labelling: Labelling): Doubt[] {
  const { structure, paths, places, magnets, ohms } = labelling;
  const readings = evidence.ohms.filter((reading) => {
    const path = pathOf(labelling, reading);
    const [shown, expected] = [shownBy(reading.ohms), shownAcross(path)];
    if (shown !== expected) return true;
    if (shown !== "ohms") return false;
    const { lnOhms, deviation } = expectedOhms(ohms, path.between as CoilBetween, structure.coils);
    const off = Math.abs(Math.log(reading.ohms!) - lnOhms);
    return off > SLIP_DEVIATIONS * Math.hypot(reading.deviation, deviation);
  });
  const kicks = evidence.kicks.filter(({ row, plus, minus, kick }) => {
    const { sort, sign } = kickExpected(structure, paths.of(places[minus]!, places[plus]!), row, magnets);
    if (sort === "other") return false;
    if (sort === "nothing") return kick !== "none";
    return kick !== (sign > 0 ? "up" : "down");
  });
  const compass = evidence.compass.filter(
    ({ row, magnet }) => row < structure.coils && (magnet === "south") !== (((magnets >> row) & 1) === 1),
  );
  return [...readings, ...kicks, ...compass].map(({ path, ...test }) => ({ test, path }));
}

import { emfSign, humSign } from "../../response/pickup-elements.ts";
import type { Question } from "./question.ts";
import type { End } from "./structure.ts";
import type { Labelling } from "./weigh.ts";
import { leadsAt, poleOf } from "./words.ts";

/** A way to wire a pickup's leads; every list holds leads by name. */
export interface Hookup {
  readonly name: "single coil" | "series" | "parallel" | "joined inside" | "one coil of two";
  /** Of `one coil of two`: which. */
  readonly coil: number | null;
  readonly hot: readonly string[];
  readonly ground: readonly string[];
  /** Soldered together and to nothing else. */
  readonly link: readonly string[];
  readonly insulate: readonly string[];
  /** Whether the two coils cancel each other's hum; null of one coil alone. */
  readonly cancelsHum: boolean | null;
  /** Whether the two coils' signals aid each other. */
  readonly aids: boolean;
  /** What a needle does with + on hot and − on ground as the row of the first coil on the way is tapped. */
  readonly kick: "up" | "down";
}

/** How it is to be wired: which coil next to hot, and whether everything is to kick down at the hot lead. */
export interface Wanted {
  readonly upper: 0 | 1;
  readonly isTurned: boolean;
}

const coilSpec = (magnets: number, coil: number) => ({ winding: "forward", magnet: poleOf(magnets, coil) }) as const;

interface Way {
  readonly coil: number;
  /** +1 where hot is at the finish. */
  readonly direction: number;
}

function togetherOf(magnets: number, ways: readonly Way[]): Pick<Hookup, "cancelsHum" | "aids" | "kick"> {
  const emfs = ways.map(({ coil, direction }) => emfSign(coilSpec(magnets, coil)) * direction);
  const hums = ways.map(({ coil, direction }) => humSign(coilSpec(magnets, coil)) * direction);
  const [first, second] = emfs;
  return {
    cancelsHum: ways.length < 2 ? null : hums[0] !== hums[1],
    aids: second === undefined || first === second,
    kick: first! > 0 ? "up" : "down",
  };
}

type Leads = Pick<Question, "leads">;

function placeOfEnd({ structure }: Labelling, end: End): number {
  return structure.places.findIndex(({ ends }) => ends.includes(end));
}

/** The metal's own leads go to ground with whatever else does; spare ones are insulated. */
function rest({ leads }: Leads, { structure, places }: Labelling, used: readonly string[]) {
  const drain = leads.filter((_, lead) => places[lead]! >= 0 && structure.places[places[lead]!]!.ends.length === 0);
  return { drain, insulate: leads.filter((lead) => !used.includes(lead) && !drain.includes(lead)) };
}

function assembled(
  question: Leads,
  labelling: Labelling,
  parts: Pick<Hookup, "name" | "coil" | "hot" | "ground" | "link">,
  ways: readonly Way[],
): Hookup[] {
  if (parts.hot.length === 0 || parts.ground.length === 0) return [];
  const { drain, insulate } = rest(question, labelling, [...parts.hot, ...parts.ground, ...parts.link]);
  return [{ ...parts, ground: [...parts.ground, ...drain], insulate, ...togetherOf(labelling.magnets, ways) }];
}

/** The direction in which a coil kicks up, or down where it is turned: +1 where hot is at its finish. */
function directionOf({ magnets }: Labelling, coil: number, isTurned: boolean): number {
  return emfSign(coilSpec(magnets, coil)) * (isTurned ? -1 : 1);
}

interface Ends {
  readonly hot: string[];
  readonly ground: string[];
}

function endsOfCoil(question: Leads, labelling: Labelling, coil: number, direction: number): Ends {
  const [start, finish] = [2 * coil, 2 * coil + 1].map((end) =>
    leadsAt(question, labelling.places, placeOfEnd(labelling, end as End)),
  );
  return direction > 0 ? { hot: finish!, ground: start! } : { hot: start!, ground: finish! };
}

function oneCoil(question: Leads, labelling: Labelling, coil: number, isTurned: boolean): Hookup[] {
  if (labelling.structure.broken[coil]) return [];
  const direction = directionOf(labelling, coil, isTurned);
  const name = labelling.structure.coils === 1 ? "single coil" : "one coil of two";
  const parts = { name, coil: name === "single coil" ? null : coil, link: [] } as const;
  return assembled(question, labelling, { ...parts, ...endsOfCoil(question, labelling, coil, direction) }, [
    { coil, direction },
  ]);
}

function apart(question: Leads, labelling: Labelling, { upper, isTurned }: Wanted): Hookup[] {
  if (labelling.structure.broken.some(Boolean)) return [];
  const ways = [upper, 1 - upper].map((coil) => ({ coil, direction: directionOf(labelling, coil, isTurned) }));
  const [first, second] = ways.map(({ coil, direction }) => endsOfCoil(question, labelling, coil, direction));
  if ([first!.hot, first!.ground, second!.hot, second!.ground].some((ends) => ends.length === 0)) return [];
  const link = [...first!.ground, ...second!.hot];
  return [
    ...assembled(
      question,
      labelling,
      { name: "series", coil: null, hot: first!.hot, link, ground: second!.ground },
      ways,
    ),
    ...assembled(
      question,
      labelling,
      {
        name: "parallel",
        coil: null,
        hot: [...first!.hot, ...second!.hot],
        link: [],
        ground: [...first!.ground, ...second!.ground],
      },
      ways,
    ),
  ];
}

/** Coils that the maker joined: hot at the end that makes the first of them kick up, or down where it is turned. */
function joinedInside(question: Leads, labelling: Labelling, isTurned: boolean): Hookup[] {
  const { structure, paths, places, magnets } = labelling;
  if (structure.broken.some(Boolean)) return [];
  const outer = structure.places.flatMap(({ ends }, index) =>
    ends.length > 0 && !(structure.arrangement === "series" && ends.length === 2) ? [index] : [],
  );
  const { signs } = paths.of(outer[0]!, outer[1]!);
  const rises = signs[0] * emfSign(coilSpec(magnets, 0)) > 0;
  const [ground, hot] = rises === isTurned ? [outer[1]!, outer[0]!] : [outer[0]!, outer[1]!];
  const along = paths.of(ground, hot).signs;
  const at = (place: number) => leadsAt(question, places, place);
  const ways = [0, 1].map((coil) => ({ coil, direction: along[coil]! }));
  return assembled(
    question,
    labelling,
    { name: "joined inside", coil: null, hot: at(hot), ground: at(ground), link: [] },
    ways,
  );
}

/** Every way to wire a pickup, the usual one first; none where a coil is open or an end has no lead. */
export function hookupsOf(question: Leads, labelling: Labelling, wanted: Wanted): Hookup[] {
  const { arrangement } = labelling.structure;
  if (arrangement === "one") return oneCoil(question, labelling, 0, wanted.isTurned);
  const whole =
    arrangement === "apart" ? apart(question, labelling, wanted) : joinedInside(question, labelling, wanted.isTurned);
  const halves =
    arrangement === "parallel" ? [] : [0, 1].flatMap((coil) => oneCoil(question, labelling, coil, wanted.isTurned));
  return [...whole, ...halves];
}

/** Whether metal that is tied to a lead inside would be hot. */
export function metalIsHot(question: Leads, { structure, places }: Labelling, hookup: Hookup): boolean {
  const at = structure.metalAt;
  if (at < 0 || structure.places[at]!.ends.length === 0) return false;
  return !leadsAt(question, places, at).some((lead) => hookup.ground.includes(lead));
}

const WAYS: readonly Wanted[] = [0, 1].flatMap((upper) =>
  [false, true].map((isTurned) => ({ upper: upper as 0 | 1, isTurned })),
);

/** The usual way to wire it: so that metal which is tied to a lead inside is grounded, and it kicks up where that leaves it free. */
export function usualWay(question: Leads, labelling: Labelling, isTurned?: boolean): Wanted {
  const ways = isTurned === undefined ? WAYS : WAYS.filter((way) => way.isTurned === isTurned);
  const isSound = (way: Wanted) => {
    const [main] = hookupsOf(question, labelling, way);
    return main !== undefined && !metalIsHot(question, labelling, main);
  };
  const byTurn = [...ways].sort((a, b) => Number(a.isTurned) - Number(b.isTurned));
  return byTurn.find(isSound) ?? byTurn[0]!;
}

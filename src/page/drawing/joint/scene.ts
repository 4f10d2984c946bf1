import { boxOf, type LaidGuard } from "../laid-guard.ts";
import type { Point } from "../point.ts";
import type { SeenLug } from "../view.ts";
import { type Frame, frameOf } from "./frame.ts";
import { type LetteredLine, letterOf, letterSpots } from "./letter-spots.ts";
import { type Made, type Picture, pictureOf } from "./picture.ts";
import { type Drawn, linesOf, type SceneInput, type SceneLine } from "./scene-lines.ts";
import type { SheetJoint } from "./schedule.ts";
import { takenSpot } from "./taken-spot.ts";
import { waysOf } from "./ways.ts";

/** A letter keeps to this share of an end that hangs, clear of what stands at its tip. */
const LETTER_SHARE = 0.78;
/** A letter on a long wire stands in the picture. */
const LETTER_FARTHEST = 130;
/** Half the width and height of the text at the tip of an end that hangs. */
const TAKEN = { x: 22, y: 8 };
const SAMPLES = 12;
/** So near the joint, the other end of what comes now is worth showing. */
const NEAR = 190;

/** A place to heat. */
export interface SceneHeat {
  readonly joint: SheetJoint;
  readonly at: SeenLug;
}

/** A letter, or a joint's number, on a line or beside a lug. */
export interface SceneSign {
  readonly text: string;
  readonly at: Point;
}

export interface JointScene {
  readonly of: "joint" | "stage";
  readonly picture: Picture;
  readonly lines: readonly SceneLine[];
  readonly heats: readonly SceneHeat[];
  readonly signs: readonly SceneSign[];
  /** "→ 12", beside what hangs until joint 12. */
  readonly taken: readonly SceneSign[];
  readonly frame: Frame;
}

/** Whether a guard's part is there by then: what comes loose hangs on by its first joint. */
export function isThere({ hangingOn }: Picture, name: string, kind: string): boolean {
  return !["pickup", "cap", "resistor"].includes(kind) || hangingOn.has(name);
}

const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** The line of a joint's end that a letter is best put on: the one that it came by, and else the one that goes on. */
function lineOfEnd(lines: readonly Drawn[], piece: number, { number }: SheetJoint): Drawn {
  const own = lines.filter((line) => line.piece === piece && line.ends.some(({ joint }) => joint === number));
  return own.find(({ ends }) => ends[1].joint === number) ?? own[0]!;
}

/** A line as seen from the joint, no farther than a letter may stand from it. */
function fromJoint({ at, ends, tail, from, to }: Drawn, { number }: SheetJoint): LetteredLine {
  const isStart = ends[0].joint === number;
  const share = tail ? LETTER_SHARE : Math.min(0.5, LETTER_FARTHEST / Math.max(1, distance(from, to)));
  return { at: (t) => at(isStart ? t * share : 1 - t * share) };
}

function lettersOf(joint: SheetJoint, lines: readonly Drawn[], { schedule, laid }: SceneInput): SceneSign[] {
  const { ends } = joint;
  if (ends.length < 2) return [];
  const own = ends.map((end) => fromJoint(lineOfEnd(lines, schedule.pieceOf(end).number, joint), joint));
  const spots = letterSpots(own, [...laid.lugs.values()]);
  return spots.map((at, index) => ({ text: letterOf(index, ends.length), at }));
}

function cornersOf(laid: LaidGuard, names: ReadonlySet<string>): Point[] {
  return laid.placed
    .filter(({ name }) => names.has(name))
    .map((part) => boxOf(part, laid.side))
    .flatMap(({ x, y, width, height }) => [
      { x, y },
      { x: x + width, y: y + height },
    ]);
}

const alongLine = ({ at }: Drawn): Point[] => Array.from({ length: SAMPLES }, (_, index) => at((index + 1) / SAMPLES));

/** Which joint takes what hangs, in words that are clear of lugs, of the lines that come now and of the signs on them. */
function takenOf(coming: readonly Drawn[], signs: readonly SceneSign[], laid: LaidGuard): SceneSign[] {
  const others = [...laid.lugs.values(), ...signs.map(({ at }) => at), ...coming.flatMap(alongLine)];
  const taken: SceneSign[] = [];
  for (const { to, tail } of coming) {
    if (!tail) continue;
    const at = takenSpot(to, tail.along, [...others, ...taken.map((each) => each.at)]);
    taken.push({ text: `→ ${tail.takenBy}`, at });
  }
  return taken;
}

/** What has to be in the picture beside the places to heat and their parts: what comes now, as far as it is near, and all signs. */
function pointsOf(
  coming: readonly Drawn[],
  heats: readonly SceneHeat[],
  signs: readonly SceneSign[],
  taken: readonly SceneSign[],
) {
  const ends = coming.flatMap(({ from, to }) => [from, to]);
  return [
    ...ends.filter((point) => heats.some(({ at }) => distance(point, at) <= NEAR)),
    ...signs.map(({ at }) => at),
    ...taken.flatMap(({ at: { x, y } }) => [
      { x: x - TAKEN.x, y: y - TAKEN.y },
      { x: x + TAKEN.x, y: y + TAKEN.y },
    ]),
  ];
}

/**
 * What a guard on its way looks like.
 * @param made of a single joint its picture is close to, with letters on its ends; of a stage it shows all of them, numbered
 */
export function sceneOf(input: SceneInput, made: Made, of: "joint" | "stage"): JointScene {
  const { schedule, laid } = input;
  const picture = pictureOf(schedule, made);
  const lines = linesOf(picture, input);
  const { spot } = waysOf(schedule, laid);
  const heats = picture.now.map((joint) => ({ joint, at: spot({ lug: joint.at, isSplice: joint.kind === "splice" }) }));
  const signs =
    of === "joint"
      ? lettersOf(heats[0]!.joint, lines, input)
      : heats.map(({ joint, at }) => ({ text: String(joint.number), at }));
  const coming = lines.filter(({ when }) => when === "now");
  const taken = takenOf(coming, signs, laid);
  const parts = new Set(heats.map(({ joint }) => joint.at.split(".", 1)[0]!));
  const points = [...heats.map(({ at }) => at), ...pointsOf(coming, heats, signs, taken), ...cornersOf(laid, parts)];
  return { of, picture, lines, heats, signs, taken, frame: frameOf(points, of === "joint" ? heats[0]!.at : undefined) };
}

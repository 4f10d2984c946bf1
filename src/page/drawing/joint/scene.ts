import { boxOf, type LaidGuard } from "../laid-guard.ts";
import type { Point } from "../shapes.ts";
import type { SeenLug } from "../view.ts";
import { wireCurve } from "../wire-curves.ts";
import { type Frame, frameOf } from "./frame.ts";
import { FARTHEST, JointSpots } from "./joint-spots.ts";
import { type Made, type Picture, type PictureRun, type PictureTail, pictureOf, type When } from "./picture.ts";
import type { Schedule, SheetJoint, Stop } from "./schedule.ts";
import { spotsOf } from "./spots.ts";
import { startOf } from "./tail-curve.ts";

/** Drawing units of an end that hangs free; side by side they are of different lengths, so that their numbers stand apart. */
const TAIL = 66;
const TAIL_STEP = 26;
/** A letter keeps to this share of an end that hangs, clear of what stands at its tip. */
const LETTER_SHARE = 0.6;
/** So near the joint, the other end of what comes now is worth showing. */
const NEAR = 190;

export interface SceneLine {
  readonly piece: number;
  readonly when: When;
  readonly isGround: boolean;
  readonly d: string;
  /** Its soldered stops, as "piece@lug". */
  readonly soldered: readonly string[];
  readonly from: Point;
  readonly to: Point;
  /** Of an end that hangs free. */
  readonly tail?: { readonly takenBy: number; readonly along: Point };
}

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
  readonly picture: Picture;
  readonly lines: readonly SceneLine[];
  readonly heats: readonly SceneHeat[];
  readonly signs: readonly SceneSign[];
  readonly frame: Frame;
}

export interface SceneInput {
  readonly schedule: Schedule;
  readonly laid: LaidGuard;
  readonly isGround: (lug: string) => boolean;
}

/** Whether a guard's part is there by then: what comes loose hangs on by its first joint. */
export function isThere({ hangingOn }: Picture, name: string, kind: string): boolean {
  return !["pickup", "cap", "resistor"].includes(kind) || hangingOn.has(name);
}

/** "A", "B", … for the ends of a joint in the order in which the sheet names them; none for a single one. */
export function letterOf(index: number, count: number): string {
  return count < 2 ? "" : String.fromCharCode("A".charCodeAt(0) + index);
}

interface Drawn extends SceneLine {
  /** Where a letter may stand, from the first of the ends on. */
  at(t: number): Point;
  readonly ends: readonly [Stop, Stop];
}

function drawRun({ piece, from, to, when }: PictureRun, spot: (stop: Stop) => SeenLug, isGround: boolean): Drawn {
  const [a, b] = [spot(from), spot(to)];
  const curve = wireCurve(a, b, piece);
  const soldered = [from, to].filter(({ joint }) => joint !== undefined).map(({ lug }) => `${piece}@${lug}`);
  return { piece, when, isGround, d: curve.d, soldered, from: a, to: b, at: curve.at, ends: [from, to] };
}

function drawTail(tail: PictureTail, units: number, spot: (stop: Stop) => SeenLug, isGround: boolean): Drawn {
  const { piece, from, to, when, takenBy } = tail;
  const a = spot(from);
  const curve = wireCurve(a, spot(to), piece);
  const { d, end, along, until } = startOf(curve, units);
  const at = (t: number) => curve.at((t * until * LETTER_SHARE) / FARTHEST);
  const soldered = [`${piece}@${from.lug}`];
  return { piece, when, isGround, d, soldered, from: a, to: end, tail: { takenBy, along }, at, ends: [from, to] };
}

function linesOf({ runs, tails }: Picture, { schedule, laid, isGround }: SceneInput): Drawn[] {
  const spot = spotsOf(schedule, laid);
  const inNumber = new Map<string, number>();
  const isGroundPiece = (number: number) => isGround(schedule.pieces[number - 1]!.stops[0]!);
  return [
    ...runs.map((run) => drawRun(run, spot, isGroundPiece(run.piece))),
    ...tails.map((tail) => {
      const before = inNumber.get(tail.from.lug) ?? 0;
      inNumber.set(tail.from.lug, before + 1);
      return drawTail(tail, TAIL + TAIL_STEP * before, spot, isGroundPiece(tail.piece));
    }),
  ];
}

/** The line of a joint's end that a letter is best put on: the one that it came by, and else the one that goes on. */
function lineOfEnd(lines: readonly Drawn[], piece: number, { number }: SheetJoint): Drawn {
  const own = lines.filter((line) => line.piece === piece && line.ends.some(({ joint }) => joint === number));
  return own.find(({ ends }) => ends[1].joint === number) ?? own[0]!;
}

function lettersOf(joint: SheetJoint, lines: readonly Drawn[], { schedule, laid }: SceneInput): SceneSign[] {
  const spots = new JointSpots(laid.lugs.values());
  return joint.ends.flatMap((end, index, { length }) => {
    const text = letterOf(index, length);
    if (text === "") return [];
    const line = lineOfEnd(lines, schedule.pieceOf(end).number, joint);
    return [{ text, at: spots.place(line, line.ends[0].joint === joint.number) }];
  });
}

const NUMBER_AWAY = 24;

/** The number of a joint of several, on the other side of its lug than its wires. */
function numberSign({ joint, at }: SceneHeat): SceneSign {
  const leave = at.turned?.leave ?? { x: 0, y: at.out };
  const isCase = joint.kind === "case";
  const away = isCase ? { x: -NUMBER_AWAY, y: 0 } : { x: -leave.x * NUMBER_AWAY, y: -leave.y * NUMBER_AWAY };
  return { text: String(joint.number), at: { x: at.x + away.x, y: at.y + away.y } };
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

const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** What a guard on its way looks like, once the joints that `made` says are made: of one joint close to, of several all of them. */
export function sceneOf(input: SceneInput, made: Made): JointScene {
  const { schedule, laid } = input;
  const picture = pictureOf(schedule, made);
  const lines = linesOf(picture, input);
  const spot = spotsOf(schedule, laid);
  const heats = picture.now.map((joint) => ({ joint, at: spot({ lug: joint.at, isSplice: joint.kind === "splice" }) }));
  const only = heats.length === 1 && made.first === made.last ? heats[0] : undefined;
  const signs = only ? lettersOf(only.joint, lines, input) : heats.map(numberSign);
  const coming = lines.filter(({ when }) => when === "now").flatMap(({ from, to }) => [from, to]);
  const near = coming.filter((point) => !only || distance(point, only.at) <= NEAR);
  const parts = new Set(heats.map(({ joint }) => joint.at.split(".", 1)[0]!));
  const points = [...heats.map(({ at }) => at), ...(only ? near : []), ...signs.map(({ at }) => at)];
  return {
    picture,
    lines,
    heats,
    signs,
    frame: frameOf([...points, ...cornersOf(laid, parts)], only?.at),
  };
}

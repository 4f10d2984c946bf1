import type { LaidGuard } from "../laid-guard.ts";
import type { Point } from "../point.ts";
import type { Picture, PictureRun, PictureTail, When } from "./picture.ts";
import type { Schedule, Stop } from "./schedule.ts";
import { startOf } from "./tail-curve.ts";
import { type Ways, waysOf } from "./ways.ts";

/** Drawing units of an end that hangs free; side by side they are of different lengths, so that their numbers stand apart. */
const TAIL = 74;
const TAIL_STEP = 22;
/** Of the way to a lug that is near, so that it does not seem to be soldered there. */
const SHORT_SHARE = 0.6;

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
  at(t: number): Point;
}

export interface SceneInput {
  readonly schedule: Schedule;
  readonly laid: LaidGuard;
  readonly isGround: (lug: string) => boolean;
}

/** A line with the stops that it leads from and to. */
export interface Drawn extends SceneLine {
  readonly ends: readonly [Stop, Stop];
}

const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

function drawRun({ piece, from, to, when }: PictureRun, ways: Ways, isGround: boolean): Drawn {
  const [a, b] = [ways.spot(from), ways.spot(to)];
  const curve = ways.between(a, b);
  const soldered = [from, to].filter(({ joint }) => joint !== undefined).map(({ lug }) => `${piece}@${lug}`);
  return { piece, when, isGround, d: curve.d, soldered, from: a, to: b, at: curve.at, ends: [from, to] };
}

function drawTail(tail: PictureTail, units: number, ways: Ways, isGround: boolean): Drawn {
  const { piece, from, to, when, takenBy } = tail;
  const [a, b] = [ways.spot(from), ways.spot(to)];
  const curve = ways.between(a, b);
  const { d, end, along, until } = startOf(curve, Math.min(units, distance(a, b) * SHORT_SHARE));
  const at = (t: number) => curve.at(t * until);
  const soldered = [`${piece}@${from.lug}`];
  return {
    piece,
    when,
    isGround,
    d,
    soldered,
    from: a,
    to: end,
    tail: { takenBy, along },
    at,
    ends: [from, to],
  };
}

/** What is there and what hangs, each as the line that it is drawn as. */
export function linesOf({ runs, tails }: Picture, { schedule, laid, isGround }: SceneInput): Drawn[] {
  const ways = waysOf(schedule, laid);
  const inNumber = new Map<string, number>();
  const isGroundPiece = (number: number) => isGround(schedule.pieces[number - 1]!.stops[0]!);
  return [
    ...runs.map((run) => drawRun(run, ways, isGroundPiece(run.piece))),
    ...tails.map((tail) => {
      const before = inNumber.get(tail.from.lug) ?? 0;
      inNumber.set(tail.from.lug, before + 1);
      return drawTail(tail, TAIL + TAIL_STEP * before, ways, isGroundPiece(tail.piece));
    }),
  ];
}

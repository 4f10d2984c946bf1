import type { Schedule, SheetJoint, Stop } from "./schedule.ts";

/** Whether something is made in what is pictured, or was there already. */
export type When = "now" | "before";

/** A length of a piece from one of its stops to the next. */
export interface PictureRun {
  readonly piece: number;
  readonly from: Stop;
  readonly to: Stop;
  readonly when: When;
}

/** An end that is not soldered yet, of a length that is soldered at `from`. */
export interface PictureTail extends PictureRun {
  /** The later joint that takes it, at `to`. */
  readonly takenBy: number;
}

/** A guard on its way: what is there once some joints in a row are made. */
export interface Picture {
  /** Each of them a place that is heated. */
  readonly now: readonly SheetJoint[];
  readonly runs: readonly PictureRun[];
  readonly tails: readonly PictureTail[];
  /** Parts that hang on by an end that is soldered: pickups, caps and resistors. */
  readonly hangingOn: ReadonlySet<string>;
}

/** Joint numbers, both included. */
export interface Made {
  readonly first: number;
  readonly last: number;
}

function whenOf(joints: readonly (number | undefined)[], { first }: Made): When {
  return joints.some((joint) => joint !== undefined && joint >= first) ? "now" : "before";
}

/** What is to be seen of one length of a piece; nothing where neither of its ends is soldered. */
function lengthOf(piece: number, a: Stop, b: Stop, made: Made): { run?: PictureRun; tail?: PictureTail } {
  const isMade = ({ joint }: Stop) => joint !== undefined && joint <= made.last;
  const hasEnd = (stop: Stop) => stop.joint === undefined || isMade(stop);
  if (hasEnd(a) && hasEnd(b)) return { run: { piece, from: a, to: b, when: whenOf([a.joint, b.joint], made) } };
  const [from, to] = isMade(a) ? [a, b] : [b, a];
  if (!isMade(from)) return {};
  return { tail: { piece, from, to, when: whenOf([from.joint], made), takenBy: to.joint! } };
}

/** The guard once the joints up to `made.last` are made, those from `made.first` on as what comes now. */
export function pictureOf(schedule: Schedule, made: Made): Picture {
  const lengths = schedule.pieces.flatMap((piece) => {
    const stops = schedule.stopsOf(piece);
    return stops.slice(1).map((to, index) => lengthOf(piece.number, stops[index]!, to, made));
  });
  const done = schedule.joints.filter(({ number }) => number <= made.last);
  const leads = done.flatMap(({ ends }) => ends.map((end) => schedule.pieceOf(end))).filter(({ grown }) => grown);
  return {
    now: done.filter(({ number }) => number >= made.first),
    runs: lengths.flatMap(({ run }) => run ?? []),
    tails: lengths.flatMap(({ tail }) => tail ?? []),
    hangingOn: new Set(leads.map(({ stops }) => stops[0]!.split(".", 1)[0]!)),
  };
}

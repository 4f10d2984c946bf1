import type { Build } from "../../build-file/schema.ts";
import { type Check, checksAfter } from "./checks/stage-checks.ts";
import type { Heated } from "./heat/bodies.ts";
import { type Heat, heatOf } from "./heat/heat.ts";
import type { Iron } from "./heat/iron.ts";
import type { Block } from "./order/blocks.ts";
import type { Joint, JointEnd, JointKind } from "./order/joints.ts";
import { partOf } from "./pieces/loose-ends.ts";
import { type Piece, type PieceMeans, solderedStops } from "./pieces/piece.ts";
import { endText, wireName } from "./text/end-text.ts";
import { heatText, jointText } from "./text/joint-text.ts";
import type { CutWire } from "./wire/cut-list.ts";

/** One end at a joint: a part's own lead or leg, or a wire by its number. */
export interface SheetEnd {
  readonly lead?: string;
  readonly wire?: number;
  /** The lug that it comes from; of a lead its own. */
  readonly from: string;
  readonly means: PieceMeans;
  readonly colour?: string;
  /** Where its bared end goes on to. */
  readonly onTo?: string;
}

/** An end that hangs free until a later joint takes it. */
export interface Waiting {
  readonly wire?: number;
  readonly lead?: string;
  readonly at: string;
  readonly joint: number;
}

export interface SheetHeat extends Heat {
  /** Whether this place has been heated before. */
  readonly again: boolean;
  readonly text: string;
}

export interface SheetJoint {
  /** From 1, through the whole sheet. */
  readonly number: number;
  readonly kind: JointKind;
  readonly at: string;
  readonly ends: readonly SheetEnd[];
  readonly waits: readonly Waiting[];
  readonly heat: SheetHeat;
  readonly text: string;
}

export interface SheetStage {
  readonly title: string;
  readonly parts: readonly string[];
  readonly joints: readonly SheetJoint[];
  readonly checks: readonly Check[];
}

interface Written {
  readonly build: Build;
  readonly cuts: readonly CutWire[];
  readonly iron: Iron;
  /** Of both sittings, in the order to make them. */
  readonly blocks: readonly Block[];
}

function isLead({ grown, means }: Piece): boolean {
  return grown && means !== "bent lug";
}

/** Writes blocks as stages, with joints numbered through and ends that wait told where they go. */
export class SheetWriter {
  readonly #build: Build;
  readonly #cuts: ReadonlyMap<number, CutWire>;
  readonly #iron: Iron;
  readonly #numbers: ReadonlyMap<Joint, number>;
  readonly #jointsOf = new Map<number, { number: number; at: string }[]>();
  readonly #done: Piece[] = [];
  /** By what is heated and with how many ends. */
  readonly #heats = new Map<string, Heat>();

  constructor({ build, cuts, iron, blocks }: Written) {
    this.#build = build;
    this.#cuts = new Map(cuts.map((cut) => [cut.wire, cut]));
    this.#iron = iron;
    const joints = blocks.flatMap((block) => block.joints);
    this.#numbers = new Map(joints.map((joint, index) => [joint, index + 1]));
    for (const [joint, number] of this.#numbers)
      for (const { piece } of joint.ends)
        this.#jointsOf.set(piece.number, [...(this.#jointsOf.get(piece.number) ?? []), { number, at: joint.at }]);
  }

  stage(block: Block, isHarness: boolean): SheetStage {
    const joints = block.joints.map((joint) => this.#joint(joint));
    const last = joints.at(-1)!.number;
    const pieces = [...new Set(block.joints.flatMap(({ ends }) => ends.map(({ piece }) => piece)))];
    const finished = pieces.filter((piece) => this.#jointsOf.get(piece.number)!.every(({ number }) => number <= last));
    this.#done.push(...finished);
    const checks = checksAfter(this.#build, block, isHarness, this.#done, finished);
    return { title: block.title, parts: block.parts, joints, checks };
  }

  #joint(joint: Joint): SheetJoint {
    const { kind, at, ends, isAgain } = joint;
    const number = this.#numbers.get(joint)!;
    const waiting = ends.map(({ piece }) => ({ piece, waits: this.#waits(piece, at, number) }));
    const texts = ends.map((end, index) => {
      const hangs = waiting[index]!.waits.some((wait) => wait.at === end.from);
      return endText({ ...end, hangs }, this.#cuts.get(end.piece.number));
    });
    const later = waiting.flatMap(({ piece, waits }) => waits.map((each) => this.#waitText(each, piece)));
    return {
      number,
      kind,
      at,
      ends: ends.map((end) => this.#end(end)),
      waits: waiting.flatMap(({ waits }) => waits),
      heat: this.#heat(joint),
      text: [jointText({ kind, at, isAgain, ends: texts }), ...later].join(" "),
    };
  }

  #end({ piece, from, onTo }: JointEnd): SheetEnd {
    const colour = this.#cuts.get(piece.number)?.colour;
    const own = isLead(piece) && from === piece.stops[0];
    return {
      ...(own ? { lead: from } : { wire: piece.number }),
      from,
      means: piece.means,
      ...(colour === undefined ? {} : { colour }),
      ...(onTo === undefined ? {} : { onTo }),
    };
  }

  #heat({ at, kind, ends, isAgain }: Joint): SheetHeat {
    const part = this.#build.parts[partOf(at)]!;
    const isClaw = part.kind === "terminal" && part.role === "claw";
    const heated: Heated = isClaw ? "claw" : kind;
    const key = `${heated} ${ends.length}`;
    const heat = this.#heats.get(key) ?? heatOf(heated, ends.length, this.#iron);
    this.#heats.set(key, heat);
    return { ...heat, again: isAgain, text: heatText(heat) };
  }

  /** The neighbouring stops of a piece that are not soldered yet. */
  #waits(piece: Piece, at: string, number: number): Waiting[] {
    const stops = solderedStops(piece);
    const index = stops.indexOf(at);
    const of = isLead(piece) ? { lead: piece.stops[0]! } : { wire: piece.number };
    return [stops[index - 1], stops[index + 1]].flatMap((stop): Waiting[] => {
      const later = this.#jointsOf.get(piece.number)!.find((joint) => joint.at === stop && joint.number > number);
      return later ? [{ ...of, at: later.at, joint: later.number }] : [];
    });
  }

  #waitText({ lead, at, joint }: Waiting, piece: Piece): string {
    if (lead !== undefined) return `The leg of ${lead} goes on to ${at}: joint ${joint} takes it.`;
    const name = wireName(piece, this.#cuts.get(piece.number));
    const far = piece.stops.length > 2 ? `The end of ${name} for ${at}` : `The far end of ${name}`;
    return `${far} hangs: joint ${joint} takes it.`;
  }
}

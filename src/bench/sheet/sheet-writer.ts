import { type Connection, isCut } from "../../build-file/connections.ts";
import type { Build } from "../../build-file/schema.ts";
import { coloursOf } from "./colours.ts";
import { type Arrival, jointText } from "./joint-text.ts";
import type { Joint, JointKind } from "./joints.ts";
import { type Check, checksAfter } from "./stage-checks.ts";
import type { Stage } from "./stages.ts";

export interface SheetJoint {
  /** From 1, through the whole sheet. */
  readonly number: number;
  readonly kind: JointKind;
  readonly lugs: readonly string[];
  readonly arrivals: readonly Arrival[];
  readonly text: string;
}

export interface SheetStage {
  readonly title: string;
  readonly parts: readonly string[];
  readonly joints: readonly SheetJoint[];
  readonly checks: readonly Check[];
}

/** Writes the stages one after another, numbering joints and keeping what is connected so far. */
export class SheetWriter {
  readonly #build: Build;
  readonly #connections: readonly Connection[];
  readonly #colours: ReadonlyMap<number, string>;
  readonly #endsLeft: Map<number, number>;
  readonly #done: Connection[] = [];
  #jointCount = 0;

  constructor(build: Build, connections: readonly Connection[], joints: readonly Joint[]) {
    this.#build = build;
    this.#connections = connections;
    this.#colours = coloursOf(build, connections.filter(isCut)).byConnection;
    this.#endsLeft = new Map(
      connections.map(({ number }) => [number, joints.filter(({ arrivals }) => arrivals.includes(number)).length]),
    );
  }

  stage(stage: Stage): SheetStage {
    const joints = stage.joints.map((joint) => this.#joint(joint));
    const finished = stage.joints.flatMap((joint) => this.#finishedBy(joint));
    this.#done.push(...finished);
    const checks = checksAfter(this.#build, stage, this.#connections, this.#done, finished);
    return { title: stage.title, parts: stage.parts, joints, checks };
  }

  #joint({ kind, lugs, arrivals }: Joint): SheetJoint {
    const named = arrivals.map((number) => this.#arrival(number, lugs));
    return { number: ++this.#jointCount, kind, lugs, arrivals: named, text: jointText(kind, lugs, named) };
  }

  #arrival(number: number, lugs: readonly string[]): Arrival {
    const { from, to, means } = this.#connections[number - 1]!;
    const colour = this.#colours.get(number);
    const other = lugs.includes(to) ? from : to;
    return { connection: number, means, other, ...(colour === undefined ? {} : { colour }) };
  }

  #finishedBy({ arrivals }: Joint): Connection[] {
    return arrivals.flatMap((number) => {
      const left = this.#endsLeft.get(number)! - 1;
      this.#endsLeft.set(number, left);
      return left === 0 ? [this.#connections[number - 1]!] : [];
    });
  }
}

import type { Build } from "../../build-file/schema.ts";
import { CAUTIONS } from "./cautions.ts";
import { coloursOf } from "./colours.ts";
import { type Connection, connectionsOf, isCut } from "./connections.ts";
import { type Allowances, type CutWire, cutList, DEFAULT_ALLOWANCES } from "./cut-list.ts";
import { type Joint, type JointKind, jointsOf } from "./joints.ts";
import { type Check, checksAfter } from "./stage-checks.ts";
import { stagesOf } from "./stages.ts";

/** One thing that meets a joint. */
export interface Arrival {
  readonly connection: number;
  readonly means: string;
  /** The lug at the connection's other end. */
  readonly other: string;
  /** Of a cut wire. */
  readonly colour?: string;
}

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

export interface BuildSheet {
  /** Cautions come first. */
  readonly cautions: readonly string[];
  readonly preparations: readonly string[];
  readonly connections: readonly Connection[];
  readonly cuts: readonly CutWire[];
  readonly allowances: Allowances;
  readonly stages: readonly SheetStage[];
  readonly notes: readonly string[];
}

/** "volume.1 (joint 14)": a bent lug, and the joint at the case that takes it in. */
function bentLugText(build: Build, { number, from, to }: Connection, stages: readonly SheetStage[]): string {
  const joint = stages
    .flatMap((stage) => stage.joints)
    .find(({ arrivals }) => arrivals.some(({ connection }) => connection === number));
  const lug = isCase(build, from) ? to : from;
  return joint ? `${lug} (joint ${joint.number})` : lug;
}

function preparations(
  build: Build,
  connections: readonly Connection[],
  cuts: readonly CutWire[],
  stages: readonly SheetStage[],
): string[] {
  const cases = new Set(connections.flatMap(({ from, to }) => [from, to]).filter((lug) => isCase(build, lug)));
  const bent = connections
    .filter(({ means }) => means === "bent lug")
    .map((connection) => bentLugText(build, connection, stages));
  return [
    "Fit every part to the guard and turn the pots so that their lugs face where their wires come from.",
    ...(bent.length > 0
      ? [`Bend back until they lie on the case; each is soldered later, in the joint named: ${bent.join(", ")}.`]
      : []),
    ...(cases.size > 0 ? [`Roughen a spot on the back of ${[...cases].join(", ")} so that solder takes.`] : []),
    ...(cuts.length > 0 ? [`Cut and strip the ${cuts.length} wires of the cut list; mark each with its number.`] : []),
  ];
}

function isCase(build: Build, lug: string): boolean {
  const [part, local] = lug.split(".");
  return local === "case" && build.parts[part!]?.kind === "pot";
}

function arrivalText({ means, other, colour }: Arrival): string {
  if (means === "bent lug") return `the bent lug (${other})`;
  if (means === "leg") return `the leg of ${other}`;
  if (means === "lead") return `the lead ${other}`;
  return `${colour ?? "the"} ${means} ${colour === undefined ? "" : "from "}${other}`.replace("  ", " ");
}

/** As many ends as this slip out of place while a case is heated, unless they are one bundle (common practice, no source). */
const BUNDLE_FROM = 4;

function jointText(kind: JointKind, lugs: readonly string[], arrivals: readonly Arrival[]): string {
  const list = arrivals.map(arrivalText).join(", ");
  const where = lugs.join(" + ");
  switch (kind) {
    case "case": {
      const bundle =
        arrivals.length >= BUNDLE_FROM ? "twist the wires into one bundle, tin it and lay it on the tinned spot; " : "";
      return `${where}: gather ${list}; ${bundle}heat the case once for all of them.`;
    }
    case "splice":
      return `${where}: twist the leads together${arrivals.length > 1 ? ` with ${list}` : ""}, solder, and sleeve the joint.`;
    case "leg":
      return `${where}, at the leg: ${list}.`;
    default:
      return `${where}: ${list}${arrivals.length > 1 ? "; all in place before heating" : ""}.`;
  }
}

class SheetWriter {
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

  stage(stage: ReturnType<typeof stagesOf>[number]): SheetStage {
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

function notes(build: Build, clashes: readonly string[]): string[] {
  const pickups = Object.values(build.parts).some((part) => part.kind === "pickup");
  return [
    ...(clashes.length > 0
      ? [`The build gives ${clashes.join(", ")} both to ground and to something hot: mark one of them with tape.`]
      : []),
    ...(pickups ? ["Lead colours of pickups differ between makers: go by the meter and the phase check."] : []),
    "Lengths are measured along the guard's edges from part to part; try the first wire before cutting the rest.",
  ];
}

/** What to solder in which order. The same build always gives the same sheet. */
export function buildSheet(build: Build, allowances: Allowances = DEFAULT_ALLOWANCES): BuildSheet {
  const connections = connectionsOf(build);
  const joints = jointsOf(build, connections);
  const cut = connections.filter(isCut);
  const cuts = cutList(build, connections, allowances);
  const writer = new SheetWriter(build, connections, joints);
  const stages = stagesOf(build, connections, joints).map((stage) => writer.stage(stage));
  return {
    cautions: CAUTIONS,
    preparations: preparations(build, connections, cuts, stages),
    connections,
    cuts,
    allowances,
    stages,
    notes: notes(build, coloursOf(build, cut).clashes),
  };
}

import { lugsOfPart } from "../../build-file/lugs.ts";
import type { Step } from "../../build-file/rewire/steps.ts";
import type { Build, Part, Wire } from "../../build-file/schema.ts";
import { LugWords } from "../../build-file/words/lug-words.ts";
import type { RewiringTold } from "../engine/rewire-told.ts";

/** Which guard something belongs to. */
export type Belongs = "found" | "wanted" | "both";

export interface SceneLine {
  readonly from: string;
  readonly to: string;
  readonly what: "stays" | "opens" | "comes";
  readonly belongs: Belongs;
  /** Indexes of the steps at its ends. */
  readonly steps: readonly number[];
}

export interface SceneJoint {
  readonly step: number;
  readonly do: Step["do"];
  readonly lug: string;
  /** Index of the line that it is an end of. */
  readonly line: number;
  readonly belongs: Belongs;
}

/** Both guards in one, every part once. Lugs go by the names that they have in its build. */
export interface Scene {
  readonly build: Build;
  readonly belongs: ReadonlyMap<string, Belongs>;
  readonly lines: readonly SceneLine[];
  readonly joints: readonly SceneJoint[];
  /** What a lug is called where its guard has it. */
  lugText(lug: string): string;
}

/** A part that goes out where another of its name comes in; no build file can have a part of that name. */
const oldName = (name: string) => `old ${name}`;

/** Laid by hand to the place where another comes in, it would hide under it: unpinned it makes way. */
function makingWay(part: Part): Part {
  if (part.place?.turn === undefined) return part;
  const { turn: _, ...place } = part.place;
  return { ...part, place };
}

/** The parts of both guards, and the names by which those of the guard as found are in it. */
class SharedParts {
  readonly parts: Build["parts"];
  readonly belongs: ReadonlyMap<string, Belongs>;
  readonly #names: ReadonlyMap<string, string>;
  readonly #found: Build["parts"];

  constructor(found: Build, wanted: Build, { stay, comeIn, goOut }: RewiringTold["parts"]) {
    this.#found = found.parts;
    const going = goOut.map(({ name, replacedBy }) => {
      const own = found.parts[name]!;
      const part = replacedBy === null ? own : makingWay(own);
      return { name, as: Object.hasOwn(wanted.parts, name) ? oldName(name) : name, part };
    });
    this.parts = { ...wanted.parts, ...Object.fromEntries(going.map(({ as, part }) => [as, part])) };
    this.#names = new Map([
      ...stay.map(({ from, to }) => [from, to] as const),
      ...going.map(({ name, as }) => [name, as] as const),
    ]);
    this.belongs = new Map<string, Belongs>([
      ...stay.map(({ to }) => [to, "both"] as const),
      ...comeIn.map(({ name }) => [name, "wanted"] as const),
      ...going.map(({ as }) => [as, "found"] as const),
    ]);
  }

  /** By the names of the guard as found, lug by lug, since a part that stays may be called otherwise as wanted. */
  foundLugs(): Map<string, string> {
    return new Map(
      [...this.#names].flatMap(([name, as]) => {
        const own = lugsOfPart(as, this.parts[as]!);
        return lugsOfPart(name, this.#found[name]!).flatMap((lug, index) =>
          [...lug.aliases, lug.name].map((called) => [called, own[index]!.name] as const),
        );
      }),
    );
  }
}

const partOf = (lug: string) => lug.split(".")[0]!;

/** Whether both its ends are opened, or made. */
function isSameWire(a: Step, b: Step): boolean {
  return a.do === b.do && a.from === b.from && a.to === b.to;
}

/** Joined inside a part that comes in. */
function comesInside(wire: Wire, parts: SharedParts): boolean {
  const part = partOf(wire.from);
  return "how" in wire && wire.how === "inside" && part === partOf(wire.to) && parts.belongs.get(part) === "wanted";
}

type Named = (lug: string, of: Belongs) => string;

/** Wires that nobody touches: those that stay, those that go out between parts that do, and those within parts that come in. */
function untouchedLines(found: Build, wanted: Build, told: RewiringTold, shared: SharedParts, named: Named) {
  const laid = (wires: readonly Pick<Wire, "from" | "to">[], of: Belongs): SceneLine[] =>
    wires.map(({ from, to }) => ({ from: named(from, of), to: named(to, of), what: "stays", belongs: of, steps: [] }));
  const leaving = told.leaving.map((wire) => found.wires[wire]!);
  const coming = wanted.wires.filter((wire) => comesInside(wire, shared));
  return [...laid(told.kept, "both"), ...laid(leaving, "found"), ...laid(coming, "wanted")];
}

/** A line for every wire that is touched, one where both its ends are, and a joint for every step. */
function touchedLines(steps: readonly Step[], belongsTo: (step: Step) => Belongs, named: Named, first: number) {
  const lines: SceneLine[] = [];
  const joints: SceneJoint[] = [];
  for (const [index, step] of steps.entries()) {
    const { partner } = step;
    const of = belongsTo(step);
    const isWhole = partner !== null && isSameWire(step, steps[partner]!);
    const before = isWhole ? joints[partner]?.line : undefined;
    joints.push({
      step: index,
      do: step.do,
      lug: named(step.at, of),
      line: before ?? first + lines.length,
      belongs: of,
    });
    if (before !== undefined) continue;
    lines.push({
      from: named(step.from, of),
      to: named(step.to, of),
      what: step.do === "open" ? "opens" : "comes",
      belongs: of,
      steps: isWhole ? [index, partner] : [index],
    });
  }
  return { lines, joints };
}

/**
 * What a rewiring does, as one picture.
 * @param way to the guard as wanted, or home to the guard as found, where what is opened belongs to the guard as wanted
 */
export function sceneOf(found: Build, wanted: Build, told: RewiringTold, way: "there" | "home"): Scene {
  const shared = new SharedParts(found, wanted, told.parts);
  const foundLugs = shared.foundLugs();
  const named: Named = (lug, of) => (of === "found" ? (foundLugs.get(lug) ?? lug) : lug);
  const untouched = untouchedLines(found, wanted, told, shared, named);
  const belongsTo = (step: Step) => ((step.do === "open") === (way === "there") ? "found" : "wanted");
  const steps = way === "there" ? told.steps : told.home;
  const touched = touchedLines(steps, belongsTo, named, untouched.length);
  const lines = [...untouched, ...touched.lines];
  const [foundWords, wantedWords] = [new LugWords(found), new LugWords(wanted)];
  const foundNames = new Map([...foundLugs].map(([name, as]) => [as, name]));
  return {
    build: { ...wanted, parts: shared.parts, wires: lines.map(({ from, to }) => ({ from, to })) },
    belongs: shared.belongs,
    lines,
    joints: touched.joints,
    lugText: (lug) =>
      shared.belongs.get(partOf(lug)) === "found" ? foundWords.of(foundNames.get(lug)!) : wantedWords.of(lug),
  };
}

import { LugTable } from "../../build-file/lugs.ts";
import { suggestion } from "../../build-file/nearest.ts";
import type { Build, Part } from "../../build-file/schema.ts";
import { type InputFault, refused } from "../../errors.ts";
import { ExtendedBuild, OPEN_OHMS } from "./extended-build.ts";
import type { Free, FreeSpec, SearchSpace } from "./free-parts.ts";

const USUAL_CABLE_FARADS_PER_METRE = 100e-12;

class SpaceMaker {
  readonly frees: Free[] = [];
  readonly faults: InputFault[] = [];
  readonly #extended: ExtendedBuild;
  readonly #lugs: LugTable;

  constructor(build: Build) {
    this.#extended = new ExtendedBuild(build);
    this.#lugs = new LugTable(build.parts);
  }

  get build(): Build {
    return this.#extended.result();
  }

  add(spec: FreeSpec, path: string): void {
    switch (spec.kind) {
      case "part":
        this.#freePart(spec, path);
        break;
      case "taper":
        this.#freeTaper(spec, path);
        break;
      case "cable":
        this.#freeCable(spec.values);
        break;
      case "across":
        this.#freeAcross(spec, path);
        break;
      case "in-wire":
        this.#freeInWire(spec, path);
        break;
      case "series-pair":
        this.#freeSeriesPair(spec, path);
        break;
      default:
        spec satisfies never;
    }
  }

  #partNamed(name: string, kinds: readonly Part["kind"][], path: string): Part | undefined {
    const part = Object.hasOwn(this.#extended.parts, name) ? this.#extended.parts[name] : undefined;
    if (part && kinds.includes(part.kind)) return part;
    const known = Object.entries(this.#extended.parts).flatMap(([key, { kind }]) =>
      kinds.includes(kind) ? [key] : [],
    );
    const found = part ? `"${name}" is a ${part.kind}` : `there is no part "${name.slice(0, 60)}"`;
    const message = `${found}; expected a ${kinds.join(", ")}${part ? "" : suggestion(name, known)}`;
    this.faults.push({ path: `${path}.part`, message });
    return undefined;
  }

  #freePart({ part: name, values, orNone }: Extract<FreeSpec, { kind: "part" }>, path: string): void {
    const part = this.#partNamed(name, ["cap", "resistor", "pot"], path);
    if (!part) return;
    const isCap = part.kind === "cap";
    const fields = isCap
      ? ["capacitance"]
      : part.kind === "pot" && part.measured
        ? ["resistance", "measured"]
        : ["resistance"];
    const none = isCap ? 0 : OPEN_OHMS;
    if (orNone && part.kind === "pot")
      this.faults.push({ path: `${path}.orNone`, message: "a pot cannot be left out; expected a cap or a resistor" });
    this.frees.push({
      name,
      unit: isCap ? "farads" : "ohms",
      values: orNone ? [null, ...values] : values,
      patchesFor: (value) => fields.map((field) => ({ part: name, field, value: value ?? none })),
    });
  }

  #freeTaper({ part: name, values }: Extract<FreeSpec, { kind: "taper" }>, path: string): void {
    const part = this.#partNamed(name, ["pot"], path);
    if (part?.kind !== "pot") return;
    // A midpoint means nothing to a table of points, so the pot takes a usual track, which has one.
    if (typeof part.taper !== "string") this.#extended.parts[name] = { ...part, taper: "audio" };
    const patchesFor = (value: number | null) => [{ part: name, field: "midpoint", value: value! }];
    this.frees.push({ name: `${name} at half rotation`, unit: "fraction", values, patchesFor });
  }

  #freeCable(values: readonly number[]): void {
    this.#extended.cable ??= { length: 0, capacitance: USUAL_CABLE_FARADS_PER_METRE };
    const patchesFor = (value: number | null) => [{ part: null, field: "cable.length", value: value! }];
    this.frees.push({ name: "cable", unit: "metres", values, patchesFor });
  }

  #checkLugs(lugs: readonly string[], path: string): boolean {
    const unknown = lugs.filter((lug) => this.#lugs.find(lug) === undefined);
    for (const lug of unknown) this.faults.push({ path, message: this.#lugs.complaint(lug) });
    return unknown.length === 0;
  }

  #freeNew(name: string, kind: "cap" | "resistor", values: readonly number[], none?: number): void {
    const field = kind === "cap" ? "capacitance" : "resistance";
    this.frees.push({
      name,
      unit: kind === "cap" ? "farads" : "ohms",
      values: none === undefined ? values : [null, ...values],
      patchesFor: (value) => [{ part: name, field, value: value ?? none! }],
    });
  }

  #freeAcross({ add, between, values, orNone }: Extract<FreeSpec, { kind: "across" }>, path: string): void {
    if (!this.#checkLugs(between, `${path}.between`)) return;
    const name = this.#extended.addPart(add === "cap" ? "addedCap" : "addedResistor", add);
    this.#extended.join(`${name}.a`, between[0]);
    this.#extended.join(`${name}.b`, between[1]);
    this.#freeNew(name, add, values, orNone ? (add === "cap" ? 0 : OPEN_OHMS) : undefined);
  }

  #freeInWire({ wire: [from, to], values, orNone }: Extract<FreeSpec, { kind: "in-wire" }>, path: string): void {
    const ends = [from, to].map((lug) => this.#lugs.find(lug));
    const at = this.#extended.wires.findIndex((wire) => {
      const own = [this.#lugs.find(wire.from), this.#lugs.find(wire.to)];
      return (own[0] === ends[0] && own[1] === ends[1]) || (own[0] === ends[1] && own[1] === ends[0]);
    });
    if (ends.includes(undefined) || at < 0) {
      this.faults.push({ path: `${path}.inWire`, message: `there is no wire from "${from}" to "${to}"` });
      return;
    }
    const name = this.#extended.addPart("seriesResistor", "resistor");
    this.#extended.cut(at);
    this.#extended.join(from, `${name}.a`);
    this.#extended.join(`${name}.b`, to);
    this.#freeNew(name, "resistor", values, orNone ? 0 : undefined);
  }

  #freeSeriesPair({ between, caps, resistors }: Extract<FreeSpec, { kind: "series-pair" }>, path: string): void {
    if (!this.#checkLugs(between, `${path}.between`)) return;
    const cap = this.#extended.addPart("addedCap", "cap");
    const resistor = this.#extended.addPart("addedResistor", "resistor");
    this.#extended.join(`${cap}.a`, between[0]);
    this.#extended.join(`${cap}.b`, `${resistor}.a`);
    this.#extended.join(`${resistor}.b`, between[1]);
    this.#freeNew(cap, "cap", caps);
    this.#freeNew(resistor, "resistor", resistors);
  }
}

/**
 * The build with every free part in place, and what there is to choose.
 * @throws PresolderError REQUEST_INVALID naming each free part at fault, paths beginning with `free`
 */
export function searchSpace(build: Build, specs: readonly FreeSpec[]): SearchSpace {
  const maker = new SpaceMaker(build);
  for (const [index, spec] of specs.entries()) maker.add(spec, `free.${index}`);
  if (maker.faults.length > 0) throw refused("REQUEST_INVALID", maker.faults);
  return { build: maker.build, frees: maker.frees };
}

import { localCoilLeads, trackLugs } from "../../build-file/lug-names.ts";
import { LugTable } from "../../build-file/lugs.ts";
import type { Build, PartOf, Pickup, Pot } from "../../build-file/schema.ts";
import { coilTolerance, type Tolerance, trackTolerance, valueTolerance } from "../../build-file/tolerances.ts";
import { copperFactor } from "./copper.ts";

/** A value that a tolerance moves: one coil, one track, one resistor. */
export interface Parameter {
  readonly part: string;
  readonly coil?: string;
  /** 0 the pot's own track, 1 its second gang. */
  readonly gang?: number;
  readonly tolerance: Tolerance;
}

/** A track's half, or a fixed resistance. */
export type Span = "whole" | "below" | "above";

/** One resistance between two nodes; for a half of a track `ohms` is the whole track's. */
export interface DcResistor {
  readonly a: number;
  readonly b: number;
  readonly ohms: number;
  readonly parameter: number;
  readonly span: Span;
  /** Index into `tracks` for a half of a track, else −1. */
  readonly track: number;
}

export interface DcTrack {
  readonly pot: string;
  readonly spec: Pick<Pot, "taper" | "midpoint" | "angles" | "resistance" | "measured" | "endResistance">;
  readonly noLoad: boolean;
}

/** What carries direct current in a build, over nodes that are lugs by their index in the table, then inner nodes. */
export interface DcParts {
  readonly lugs: LugTable;
  readonly nodeCount: number;
  readonly resistors: readonly DcResistor[];
  readonly tracks: readonly DcTrack[];
  readonly parameters: readonly Parameter[];
}

class Collector {
  readonly resistors: DcResistor[] = [];
  readonly tracks: DcTrack[] = [];
  readonly parameters: Parameter[] = [];
  readonly lugs: LugTable;
  nodeCount: number;

  constructor(build: Build) {
    this.lugs = new LugTable(build.parts);
    this.nodeCount = this.lugs.lugs.length;
  }

  resistor(name: string, resistor: PartOf<"resistor">): void {
    const [a, b] = [this.lugs.indexOf(`${name}.a`), this.lugs.indexOf(`${name}.b`)];
    this.fixed(a, b, resistor.resistance, { part: name, tolerance: valueTolerance(resistor) });
  }

  fixed(a: number, b: number, ohms: number, parameter: Parameter): void {
    const index = this.parameters.push(parameter) - 1;
    this.resistors.push({ a, b, ohms, parameter: index, span: "whole", track: -1 });
  }

  track(part: string, pot: Pot, gang: number): void {
    const spec = gang === 0 ? pot : pot.gangs![gang - 1]!;
    const [lug1, wiper, lug3] = trackLugs(part, gang).map((lug) => this.lugs.indexOf(lug)) as [number, number, number];
    const ohms = spec.measured ?? spec.resistance;
    const tolerance = trackTolerance(pot, spec.measured);
    const parameter = this.parameters.push({ part, gang, tolerance }) - 1;
    const track = this.tracks.push({ pot: part, spec, noLoad: pot.noLoad && gang === 0 }) - 1;
    this.resistors.push({ a: lug1, b: wiper, ohms, parameter, span: "below", track });
    this.resistors.push({ a: wiper, b: lug3, ohms, parameter, span: "above", track });
  }

  pickup(name: string, pickup: Pickup, factor: number): void {
    const coils = Object.entries(pickup.coils);
    const lug = (local: string) => this.lugs.indexOf(`${name}.${local}`);
    const inner = coils.length === 2 && pickup.conductors === 2 ? this.nodeCount++ : -1;
    for (const [index, [coil, spec]] of coils.entries()) {
      const ends =
        coils.length === 1
          ? [lug("ground"), lug("hot")]
          : inner < 0
            ? localCoilLeads(coil).map(lug)
            : index === 0
              ? [lug("ground"), inner]
              : [inner, lug("hot")];
      const tolerance = coilTolerance(pickup, spec);
      this.fixed(ends[0]!, ends[1]!, spec.resistance * factor, { part: name, coil, tolerance });
    }
  }
}

/**
 * Lists what carries direct current: coils, tracks, resistors. Capacitors carry none.
 * @param celsius temperature of the coils; their resistance is given at 20 °C
 */
export function dcPartsOf(build: Build, celsius: number): DcParts {
  const into = new Collector(build);
  for (const [name, part] of Object.entries(build.parts)) {
    switch (part.kind) {
      case "pickup":
        into.pickup(name, part, copperFactor(celsius));
        break;
      case "pot":
        into.track(name, part, 0);
        if (part.gangs) into.track(name, part, 1);
        break;
      case "resistor":
        into.resistor(name, part);
        break;
      case "cap":
      case "switch":
      case "jack":
      case "terminal":
        break;
      default:
        part satisfies never;
    }
  }
  return into;
}

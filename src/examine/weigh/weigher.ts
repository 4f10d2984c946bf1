import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Departure } from "../departures/departure.ts";
import { Point, type Unknowns } from "../model/point.ts";
import { multipleAt } from "../model/unknowns.ts";
import { type DepartedGuard, DepartedGuards } from "./departed-guard.ts";
import type { Contribution, Evidence, Subject } from "./evidence.ts";
import { type LinearFit, linearFit } from "./fit.ts";
import { FIRST_FLOOR, FLOOR } from "./floor.ts";
import { type Stage, settled } from "./settle.ts";
import { ownOf, pointAbout, pointAt, startedPoint } from "./starting-points.ts";

/** A departure, weighed. */
export interface Weighed {
  readonly departure: Departure;
  readonly fit: LinearFit;
  readonly point: Point;
}

interface RefineOptions {
  readonly rounds?: number;
  readonly floor?: number;
  /** ln of the evidence under which it is not worth going on. */
  readonly hopeless?: number;
}

/** Weighs one departure after another against all evidence. */
export class Weigher {
  readonly #unknowns: Unknowns;
  readonly #evidence: readonly Evidence[];
  readonly #nominal: Point;
  readonly #known = new Map<string, Contribution>();
  /** How many times guards have been weighed anew. */
  count = 0;
  readonly #guards: DepartedGuards;

  /** @param settings that the evidence's settings are indexes of */
  constructor(build: Build, settings: readonly Settings[], unknowns: Unknowns, evidence: readonly Evidence[]) {
    this.#guards = new DepartedGuards(build, settings);
    this.#unknowns = unknowns;
    this.#evidence = evidence;
    this.#nominal = new Point(unknowns);
  }

  guardOf(departure: Departure): DepartedGuard {
    return this.#guards.of(departure, this.#nominalWith(departure));
  }

  /** Lets go of the networks of a departure that is given up. */
  forget(departure: Departure): void {
    this.#guards.forget(departure);
  }

  subjectAt(departure: Departure, point: Point): Subject {
    const { build, standIns, viewOf } = this.guardOf(departure);
    return { build, standIns, viewOf, point };
  }

  /** Departures of equal keys are told apart by nothing that was given. */
  keyOf(departure: Departure): string {
    const guard = this.guardOf(departure);
    const freed = departure.freed.map(({ part, field }) => `${part}.${field}`).join();
    return [freed, ...this.#evidence.map((each) => each.keyOf(guard))].join("|");
  }

  /**
   * Linear about the drawing, and about where another guard's parts are likeliest; the start that fits best.
   * @param about that other point, of no more unknowns than every departure has
   */
  firstLook(departure: Departure, about?: Point): Weighed {
    const looks = departure.starts.flatMap((start) => {
      const first = this.#lookAt(departure, start);
      return about ? [first, this.#lookAbout(departure, start, about)] : [first];
    });
    return looks.reduce((best, each) => (each.fit.log > best.fit.log ? each : best));
  }

  /** At its own likeliest parts. @param rounds at most */
  refined(
    { departure, point: from }: Weighed,
    { rounds, floor = FLOOR, hopeless = Number.NEGATIVE_INFINITY }: RefineOptions = {},
  ): Weighed {
    const deviations = this.deviationsOf(departure);
    const stageAt = (point: Point) => this.#stageAt(departure, point, deviations, floor);
    const { point, fit } = settled(stageAt(from), stageAt, deviations, rounds, hopeless);
    return { departure, point, fit };
  }

  /** With all that every departure has at another guard's place. */
  movedTo({ departure, point, fit }: Weighed, there: Point): Weighed {
    return { departure, fit, point: pointAt(point, departure, there, this.#unknowns.all.length) };
  }

  /** A departure without values of its own at another guard's place, but for one value. */
  startedAt(departure: Departure, there: Point, part: string, field: string, value: number): Weighed {
    const begun = this.#nominalWith(departure);
    const index = this.#unknowns.indexOf(part, field);
    const values = begun.values.map((own, k) => (k === index ? value : (there.values[k] ?? own)));
    const point = new Point(begun.unknowns, values);
    return { departure, point, fit: this.#fitAt(departure, point, FLOOR) };
  }

  /** How far two weighed guards are from each other in all that was given, as chi-square. */
  apart(one: Weighed, other: Weighed): number {
    const [a, b] = [one, other].map(({ departure, point }) => this.subjectAt(departure, point)) as [Subject, Subject];
    return this.#evidence.reduce((sum, each) => sum + each.apart(a, b, FLOOR), 0);
  }

  /** The same from where the drawing's parts are. */
  fromDrawing({ departure }: Weighed): Weighed {
    const looks = departure.starts.map((start) => this.#lookAt(departure, start));
    return looks.reduce((best, each) => (each.fit.log > best.fit.log ? each : best));
  }

  deviationsOf({ freed, added }: Departure): Float64Array {
    const unknowns = this.#unknowns.with(added);
    const deviations = Float64Array.from(unknowns.all, ({ deviation }) => deviation);
    for (const { part, field, deviation } of freed) deviations[unknowns.indexOf(part, field)] = deviation;
    return deviations;
  }

  /** How many times what was drawn each freed or added value has. */
  factorsOf({ departure, point }: Weighed): number[] {
    return ownOf(departure).map(({ part, field }) => {
      const index = point.unknowns.indexOf(part, field);
      return index < 0 ? 1 : multipleAt(point.unknowns.all[index]!, point.values[index]!);
    });
  }

  #stageAt(departure: Departure, point: Point, deviations: Float64Array, floor: number): Stage {
    this.count++;
    const subject = this.subjectAt(departure, point);
    const contributions = this.#evidence.map((each) => each.weigh(subject, floor));
    return { point, contributions, fit: linearFit(contributions, point.values, deviations) };
  }

  #nominalWith({ added }: Departure): Point {
    return added.length === 0 ? this.#nominal : new Point(this.#unknowns.with(added));
  }

  #lookAt(departure: Departure, start: readonly number[]): Weighed {
    const nominal = this.#nominalWith(departure);
    const point = startedPoint(nominal, departure, start);
    const isNominal = point === nominal && departure.added.length === 0;
    return { departure, point, fit: this.#fitAt(departure, point, FIRST_FLOOR, isNominal ? "drawn" : undefined) };
  }

  #lookAbout(departure: Departure, start: readonly number[], about: Point): Weighed {
    const nominal = this.#nominalWith(departure);
    const begun = startedPoint(nominal, departure, start);
    const isPlain = begun === nominal && departure.added.length === 0;
    const point = isPlain ? about : pointAbout(begun, about);
    return { departure, point, fit: this.#fitAt(departure, point, FIRST_FLOOR, isPlain ? "about" : undefined) };
  }

  /** Contributions about a point that many ask for are kept: most departures leave most takes as they were. */
  #fitAt(departure: Departure, point: Point, floor: number, kept?: string): LinearFit {
    const deviations = this.deviationsOf(departure);
    if (kept === undefined) return this.#stageAt(departure, point, deviations, floor).fit;
    const subject = this.subjectAt(departure, point);
    const contributions = this.#evidence.map((each, index) => {
      const key = `${kept} ${index} ${each.keyOf(subject)}`;
      const known = this.#known.get(key) ?? each.weigh(subject, floor);
      this.#known.set(key, known);
      return known;
    });
    return linearFit(contributions, point.values, deviations);
  }
}

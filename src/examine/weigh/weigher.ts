import { edited } from "../../bench/faults/edits/edit-build.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Port } from "../../network/port.ts";
import type { Departure } from "../departures/departure.ts";
import { Point, type Unknowns } from "../model/point.ts";
import { multipleAt } from "../model/unknowns.ts";
import { DepartedGuard } from "./departed-guard.ts";
import type { Contribution, Evidence, Subject } from "./evidence.ts";
import { type LinearFit, linearFit } from "./fit.ts";
import { FIRST_FLOOR, FLOOR } from "./floor.ts";

/** A departure, weighed. */
export interface Weighed {
  readonly departure: Departure;
  readonly fit: LinearFit;
  readonly point: Point;
}

const MOST_ROUNDS = 30;
/** A round that gains less, in chi-square, is the last. */
const SETTLED = 0.05;
/** Tried in turn until one brings a round nearer. */
const DAMPINGS = [0, 0.1, 1, 10, 100];
/** No round moves an unknown by more of its own deviations. */
const MOST_STEP = 2;

/** Rounds before a departure is judged by how far it has come. */
const PATIENCE = 2;

interface RefineOptions {
  readonly rounds?: number;
  readonly floor?: number;
  /** ln of the evidence under which it is not worth going on. */
  readonly hopeless?: number;
}

interface Stage {
  readonly point: Point;
  readonly contributions: readonly Contribution[];
  readonly fit: LinearFit;
}

/** Weighs one departure after another against all evidence. */
export class Weigher {
  readonly #build: Build;
  readonly #settings: readonly Settings[];
  readonly #unknowns: Unknowns;
  readonly #evidence: readonly Evidence[];
  readonly #nominal: Point;
  readonly #known = new Map<string, Contribution>();
  /** How many times guards have been weighed anew. */
  count = 0;
  readonly #ports = new Map<string, Port>();
  readonly #guards = new Map<Departure, DepartedGuard>();

  /** @param settings that the evidence's settings are indexes of */
  constructor(build: Build, settings: readonly Settings[], unknowns: Unknowns, evidence: readonly Evidence[]) {
    this.#build = build;
    this.#settings = settings;
    this.#unknowns = unknowns;
    this.#evidence = evidence;
    this.#nominal = new Point(unknowns);
  }

  guardOf(departure: Departure): DepartedGuard {
    const known = this.#guards.get(departure);
    if (known) return known;
    const guard = edited(this.#build, departure.edits);
    const made = new DepartedGuard(guard, this.#settings, this.#nominalWith(departure), this.#ports);
    this.#guards.set(departure, made);
    return made;
  }

  /** Lets go of the networks of a departure that is given up. */
  forget(departure: Departure): void {
    this.#guards.delete(departure);
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
    { rounds = MOST_ROUNDS, floor = FLOOR, hopeless = Number.NEGATIVE_INFINITY }: RefineOptions = {},
  ): Weighed {
    const deviations = this.deviationsOf(departure);
    let stage = this.#stageAt(departure, from, deviations, floor);
    for (let round = 0; round < rounds; round++) {
      if (stage.fit.objective - (stage.fit.chiSquare + stage.fit.extra) < SETTLED) break;
      const next = this.#better(departure, stage, deviations, floor);
      if (!next) break;
      const gained = stage.fit.objective - next.fit.objective;
      if (round >= PATIENCE && next.fit.log < hopeless) break;
      stage = next;
      if (gained < SETTLED) break;
    }
    return { departure, point: stage.point, fit: stage.fit };
  }

  /** With all that every departure has at another guard's place. */
  movedTo({ departure, point, fit }: Weighed, there: Point): Weighed {
    const shared = this.#unknowns.all.length;
    const free = new Set(departure.freed.map(({ part, field }) => this.#unknowns.indexOf(part, field)));
    const values = point.values.map((value, k) => (k < shared && !free.has(k) ? there.values[k]! : value));
    return { departure, fit, point: new Point(point.unknowns, values) };
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
  factorsOf({ departure: { freed, added }, point }: Weighed): number[] {
    const asked = freed.length > 0 ? freed : added;
    return asked.map(({ part, field }) => {
      const index = point.unknowns.indexOf(part, field);
      return index < 0 ? 1 : multipleAt(point.unknowns.all[index]!, point.values[index]!);
    });
  }

  #better(departure: Departure, { point, contributions, fit }: Stage, deviations: Float64Array, floor: number) {
    for (const damping of DAMPINGS) {
      const { best } = damping === 0 ? fit : linearFit(contributions, point.values, deviations, damping);
      const values = point.values.map((value, k) => {
        const most = MOST_STEP * deviations[k]!;
        return value + Math.max(-most, Math.min(most, best[k]! - value));
      });
      const next = this.#stageAt(departure, new Point(point.unknowns, values), deviations, floor);
      if (next.fit.objective < fit.objective) return next;
    }
    return undefined;
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
    const point = this.#startAt(departure, start);
    const isNominal = start.every((each) => each === 0) && departure.added.length === 0;
    return { departure, point, fit: this.#fitAt(departure, point, FIRST_FLOOR, isNominal ? "drawn" : undefined) };
  }

  #lookAbout(departure: Departure, start: readonly number[], about: Point): Weighed {
    const isPlain = start.every((each) => each === 0) && departure.added.length === 0;
    const begun = this.#startAt(departure, start);
    const point = isPlain
      ? about
      : new Point(
          begun.unknowns,
          begun.values.map((value, k) => (value === 0 ? (about.values[k] ?? 0) : value)),
        );
    return { departure, point, fit: this.#fitAt(departure, point, FIRST_FLOOR, isPlain ? "about" : undefined) };
  }

  #startAt(departure: Departure, start: readonly number[]): Point {
    const nominal = this.#nominalWith(departure);
    if (start.every((each) => each === 0)) return nominal;
    const asked = departure.freed.length > 0 ? departure.freed : departure.added;
    const values = nominal.values.slice();
    for (const [which, { part, field }] of asked.entries())
      values[nominal.unknowns.indexOf(part, field)] = start[which]!;
    return new Point(nominal.unknowns, values);
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

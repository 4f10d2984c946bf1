import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Departure } from "../departures/departure.ts";
import { Point, type Unknowns } from "../model/point.ts";
import type { DepartedGuard } from "./departed-guard.ts";
import type { Evidence, Subject } from "./evidence.ts";
import { type About, firstLook, fromDrawing } from "./first-look.ts";
import { FIRST_FLOOR, FLOOR } from "./floor.ts";
import { settled } from "./settle.ts";
import { Stages } from "./stages.ts";
import { pointAlone, pointAside, pointAt, pointBeside } from "./starting-points.ts";
import { deviationsOf, type Weighed } from "./weighed.ts";

interface RefineOptions {
  readonly rounds?: number;
  readonly floor?: number;
  /** ln of the evidence under which it is not worth going on. */
  readonly hopeless?: number;
}

/** Weighs one departure after another against all evidence. */
export class Weigher {
  readonly #stages: Stages;

  /** @param settings that the evidence's settings are indexes of */
  constructor(build: Build, settings: readonly Settings[], unknowns: Unknowns, evidence: readonly Evidence[]) {
    this.#stages = new Stages(build, settings, unknowns, evidence);
  }

  /** Those that every departure has. */
  get unknowns(): Unknowns {
    return this.#stages.unknowns;
  }

  /** How many times guards have been weighed anew. */
  get count(): number {
    return this.#stages.count;
  }

  guardOf(departure: Departure): DepartedGuard {
    return this.#stages.guardOf(departure);
  }

  /** Lets go of the networks of a departure that is given up. */
  forget(departure: Departure): void {
    this.#stages.forget(departure);
  }

  subjectAt(departure: Departure, point: Point): Subject {
    return this.#stages.subjectAt(departure, point);
  }

  /** Departures of equal keys are told apart by nothing that was given. */
  keyOf(departure: Departure): string {
    const guard = this.guardOf(departure);
    const freed = departure.freed.map(({ part, field }) => `${part}.${field}`).join();
    return [freed, ...this.#stages.evidence.map((each) => each.keyOf(guard))].join("|");
  }

  /**
   * Linear about the drawing, and about where another guard's parts are likeliest; the start that fits best.
   * @param about that other point, of no more unknowns than the departure has
   */
  firstLook(departure: Departure, about?: About): Weighed {
    return firstLook(this.#stages, departure, about);
  }

  /** The best start of a pair's second departure, linear about where its first was found. @param name of that place */
  besideLook(pair: Departure, { departure, point }: Weighed, name: string): Weighed {
    const nominal = this.#stages.nominalOf(pair);
    const looks = pair.starts.map((start): Weighed => {
      const at = pointBeside(nominal, point, pair, departure, start);
      return {
        departure: pair,
        point: at,
        fit: this.#stages.fitAt(pair, at, FIRST_FLOOR, at === point ? name : undefined),
      };
    });
    return looks.reduce((best, each) => (each.fit.log > best.fit.log ? each : best));
  }

  /** The first of two departures alone, begun from where both were found. */
  aloneLook({ departure, fit }: Weighed, { departure: pair, point }: Weighed): Weighed {
    return { departure, fit, point: pointAlone(this.#stages.nominalOf(departure), point, departure, pair) };
  }

  /** A little aside of where it was found. */
  aside({ departure, point, fit }: Weighed): Weighed {
    return { departure, fit, point: pointAside(point, this.deviationsOf(departure)) };
  }

  /** The same from where the drawing's parts are alone. */
  fromDrawing({ departure }: Weighed): Weighed {
    return fromDrawing(this.#stages, departure);
  }

  /** At its own likeliest parts. @param rounds at most */
  refined(
    { departure, point: from }: Pick<Weighed, "departure" | "point">,
    { rounds, floor = FLOOR, hopeless = Number.NEGATIVE_INFINITY }: RefineOptions = {},
  ): Weighed {
    const deviations = this.deviationsOf(departure);
    const stageAt = (point: Point) => this.#stages.stageAt(departure, point, deviations, floor);
    const { point, fit } = settled(stageAt(from), stageAt, deviations, rounds, hopeless);
    return { departure, point, fit };
  }

  /** With all that every departure has at another guard's place. */
  movedTo({ departure, point, fit }: Weighed, there: Point): Weighed {
    return { departure, fit, point: pointAt(point, departure, there, this.#stages.unknowns.all.length) };
  }

  /** A departure without values of its own at another guard's place, but for one value. */
  startedAt(departure: Departure, there: Point, part: string, field: string, value: number): Weighed {
    const begun = this.#stages.nominalOf(departure);
    const index = begun.unknowns.indexOf(part, field);
    const values = begun.values.map((own, k) => (k === index ? value : (there.values[k] ?? own)));
    const point = new Point(begun.unknowns, values);
    return { departure, point, fit: this.#stages.fitAt(departure, point, FLOOR) };
  }

  /** How far two weighed guards are from each other in all that was given, as chi-square. */
  apart(one: Weighed, other: Weighed): number {
    const [a, b] = [one, other].map(({ departure, point }) => this.subjectAt(departure, point)) as [Subject, Subject];
    return this.#stages.evidence.reduce((sum, each) => sum + each.apart(a, b, FLOOR), 0);
  }

  deviationsOf(departure: Departure): Float64Array {
    return deviationsOf(this.#stages.unknowns, departure);
  }
}

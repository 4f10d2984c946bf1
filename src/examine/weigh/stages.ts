import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Departure } from "../departures/departure.ts";
import { Point, type Unknowns } from "../model/point.ts";
import { type DepartedGuard, DepartedGuards } from "./departed-guard.ts";
import type { Contribution, Evidence, Subject } from "./evidence.ts";
import { type LinearFit, linearFit } from "./fit.ts";
import type { Stage } from "./settle.ts";
import { deviationsOf } from "./weighed.ts";

/** What all evidence says of one departure after another, wherever their unknowns are put. */
export class Stages {
  readonly unknowns: Unknowns;
  readonly evidence: readonly Evidence[];
  /** How many times guards have been weighed anew. */
  count = 0;
  readonly #nominal: Point;
  readonly #guards: DepartedGuards;
  readonly #known = new Map<string, Contribution>();

  /** @param settings that the evidence's settings are indexes of */
  constructor(build: Build, settings: readonly Settings[], unknowns: Unknowns, evidence: readonly Evidence[]) {
    this.#guards = new DepartedGuards(build, settings);
    this.unknowns = unknowns;
    this.evidence = evidence;
    this.#nominal = new Point(unknowns);
  }

  /** All unknowns as drawn, what the departure brings with it among them. */
  nominalOf({ added }: Departure): Point {
    return added.length === 0 ? this.#nominal : new Point(this.unknowns.with(added));
  }

  guardOf(departure: Departure): DepartedGuard {
    return this.#guards.of(departure, this.nominalOf(departure));
  }

  forget(departure: Departure): void {
    this.#guards.forget(departure);
  }

  subjectAt(departure: Departure, point: Point): Subject {
    const { build, standIns, viewOf } = this.guardOf(departure);
    return { build, standIns, viewOf, point };
  }

  stageAt(departure: Departure, point: Point, deviations: Float64Array, floor: number): Stage {
    this.count++;
    const subject = this.subjectAt(departure, point);
    const contributions = this.evidence.map((each) => each.weigh(subject, floor));
    return { point, contributions, fit: linearFit(contributions, point.values, deviations) };
  }

  /**
   * Contributions about a point that many ask for are kept: most departures leave most takes as they were.
   * @param kept the name of such a point, each of one floor
   */
  fitAt(departure: Departure, point: Point, floor: number, kept?: string): LinearFit {
    const deviations = deviationsOf(this.unknowns, departure);
    if (kept === undefined) return this.stageAt(departure, point, deviations, floor).fit;
    const subject = this.subjectAt(departure, point);
    const contributions = this.evidence.map((each, index) => {
      const key = `${kept} ${index} ${each.keyOf(subject)}`;
      const known = this.#known.get(key) ?? each.weigh(subject, floor);
      this.#known.set(key, known);
      return known;
    });
    return linearFit(contributions, point.values, deviations);
  }
}

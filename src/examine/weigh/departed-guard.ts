import { type Edited, edited } from "../../bench/faults/edits/edit-build.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Port } from "../../network/port.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import type { Departure } from "../departures/departure.ts";
import type { Point } from "../model/point.ts";
import { type View, viewOf } from "../model/view.ts";

/** The guard that a departure makes, put into the takes' settings once each. */
export class DepartedGuard {
  readonly build: Build;
  readonly standIns: ReadonlyMap<string, string>;
  readonly #maker: CircuitMaker;
  readonly #settings: readonly Settings[];
  readonly #nominal: Point;
  readonly #ports: Map<string, Port>;
  readonly #views: (View | undefined)[] = [];

  constructor({ build, standIns }: Edited, settings: readonly Settings[], nominal: Point, ports: Map<string, Port>) {
    this.build = build;
    this.standIns = standIns;
    this.#maker = new CircuitMaker(build);
    this.#settings = settings;
    this.#nominal = nominal;
    this.#ports = ports;
  }

  readonly viewOf = (index: number): View => {
    this.#views[index] ??= viewOf(this.#maker, this.#settings[index]!, this.#nominal, this.#ports);
    return this.#views[index]!;
  };
}

/** The guards that departures make of a drawing, made once each. */
export class DepartedGuards {
  readonly #build: Build;
  readonly #settings: readonly Settings[];
  readonly #ports = new Map<string, Port>();
  readonly #known = new Map<Departure, DepartedGuard>();

  constructor(build: Build, settings: readonly Settings[]) {
    this.#build = build;
    this.#settings = settings;
  }

  of(departure: Departure, nominal: Point): DepartedGuard {
    const known = this.#known.get(departure);
    if (known) return known;
    const made = new DepartedGuard(edited(this.#build, departure.edits), this.#settings, nominal, this.#ports);
    this.#known.set(departure, made);
    return made;
  }

  forget(departure: Departure): void {
    this.#known.delete(departure);
  }
}

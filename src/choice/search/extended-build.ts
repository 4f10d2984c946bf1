import type { Build } from "../../build-file/schema.ts";

/** Stands for no resistor across two lugs: a thousand times the highest value in use, 120 dB under what it bridges. */
export const OPEN_OHMS = 1e12;

/** A build that takes on caps and resistors of its own naming, wires to them, and a cable. */
export class ExtendedBuild {
  readonly parts: Build["parts"];
  cable: Build["cable"];
  readonly #original: Build;
  #wires: Build["wires"];

  constructor(build: Build) {
    this.#original = build;
    this.parts = { ...build.parts };
    this.cable = build.cable;
    this.#wires = build.wires;
  }

  get wires(): Build["wires"] {
    return this.#wires;
  }

  #newName(stem: string): string {
    for (let number = 1; ; number++) {
      const name = number === 1 ? stem : `${stem}${number}`;
      if (!Object.hasOwn(this.parts, name)) return name;
    }
  }

  /** Adds a cap or resistor, for the time being without effect across two lugs. @returns its name */
  addPart(stem: string, kind: "cap" | "resistor"): string {
    const name = this.#newName(stem);
    this.parts[name] = kind === "cap" ? { kind, capacitance: 0 } : { kind, resistance: OPEN_OHMS };
    return name;
  }

  join(from: string, to: string): void {
    this.#wires = [...this.#wires, { from, to }];
  }

  /** Takes a wire out. @param wire its index in `wires` */
  cut(wire: number): void {
    this.#wires = this.#wires.filter((_, index) => index !== wire);
  }

  result(): Build {
    return { ...this.#original, parts: this.parts, wires: this.#wires, cable: this.cable };
  }
}

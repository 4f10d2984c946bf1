import type { Random } from "../../random.ts";

/** Parts and wires of a build file, as they come together. */
export class AnyGuard {
  readonly parts: Record<string, object> = { jack: { kind: "jack" } };
  readonly wires: [string, string][] = [];
  readonly random: Random;
  #count = 0;

  constructor(random: Random) {
    this.random = random;
  }

  part(kind: string, fields: object): string {
    const name = `${kind}${++this.#count}`;
    this.parts[name] = { kind, ...fields };
    return name;
  }

  wire(from: string, to: string): void {
    this.wires.push([from, to]);
  }

  /** Between low and high on a log scale, of three digits, as values are written. */
  between(low: number, high: number): number {
    return Number((low * (high / low) ** this.random.next()).toPrecision(3));
  }

  maybe(probability: number, fields: () => object): object {
    return this.random.chance(probability) ? fields() : {};
  }

  build(rest: object = {}): object {
    return { presolder: 1, parts: this.parts, wires: this.wires, ...rest };
  }
}

const DIALS = [0, 10, 9.999, 0.001, 5];

/** Of every pot: an end, a hair from one, or anywhere. */
export function anySettings(random: Random, build: object, count: number): Record<string, number>[] {
  const { parts } = build as { parts: Record<string, { kind: string }> };
  const pots = Object.keys(parts).filter((name) => parts[name]!.kind === "pot");
  const switches = Object.keys(parts).filter((name) => parts[name]!.kind === "switch");
  const moved = pots.filter(() => random.chance(0.5));
  const rest = Object.fromEntries(pots.map((name) => [name, anyDial(random)]));
  const state = () => ({
    ...rest,
    ...Object.fromEntries(moved.map((name) => [name, anyDial(random)])),
    ...Object.fromEntries(switches.map((name) => [name, 1 + random.below(3)])),
  });
  return Array.from({ length: count }, state);
}

function anyDial(random: Random): number {
  return random.chance(0.5) ? random.pick(DIALS) : Number((10 * random.next()).toFixed(2));
}

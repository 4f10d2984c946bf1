import { isFinish, type Structure } from "./structure.ts";

/** What a meter sees between two places. */
export type Between = "open" | "joint" | "first" | "second" | "sum" | "side by side";

/** The way from one place (minus) to another (plus). */
export interface Path {
  readonly between: Between;
  /** By coil: +1 where it is gone through from start to finish, −1 the other way, 0 where it is not on the way. */
  readonly signs: readonly [number, number];
}

const OPEN: Path = { between: "open", signs: [0, 0] };
const JOINT: Path = { between: "joint", signs: [0, 0] };

/** +1, −1 or 0: how a coil that is whole lies between two places. */
function direct({ places, broken }: Structure, coil: 0 | 1, minus: number, plus: number): number {
  if (broken[coil]) return 0;
  const at = (place: number) => places[place]!.ends.find((end) => end >> 1 === coil);
  const [from, to] = [at(minus), at(plus)];
  return from === undefined || to === undefined ? 0 : isFinish(to) ? 1 : -1;
}

function pathBetween(structure: Structure, minus: number, plus: number): Path {
  if (minus === plus) return JOINT;
  const own = [0, 1].map((coil) => direct(structure, coil as 0 | 1, minus, plus)) as [number, number];
  if (own[0] !== 0 && own[1] !== 0) return { between: "side by side", signs: own };
  if (own[0] !== 0 || own[1] !== 0) return { between: own[0] !== 0 ? "first" : "second", signs: own };
  const middle = structure.places.findIndex(({ ends }) => ends.length === 2);
  if (structure.arrangement !== "series" || minus === middle || plus === middle) return OPEN;
  const halves = [0, 1].map(
    (coil) => direct(structure, coil as 0 | 1, minus, middle) + direct(structure, coil as 0 | 1, middle, plus),
  ) as [number, number];
  return halves[0] !== 0 && halves[1] !== 0 ? { between: "sum", signs: halves } : OPEN;
}

/** Every way between two places of a structure, [minus][plus]. */
export class Paths {
  readonly #paths: readonly (readonly Path[])[];
  readonly #metalAt: number;

  constructor(structure: Structure) {
    const all = structure.places.map((_, index) => index);
    this.#paths = all.map((minus) => all.map((plus) => pathBetween(structure, minus, plus)));
    this.#metalAt = structure.metalAt;
  }

  /** @param minus and plus: places; below 0 for none */
  of(minus: number, plus: number): Path {
    return minus < 0 || plus < 0 ? OPEN : this.#paths[minus]![plus]!;
  }

  toMetal(place: number): Path {
    return this.of(this.#metalAt, place);
  }
}

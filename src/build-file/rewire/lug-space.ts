import { LugTable } from "../lugs.ts";
import type { Build } from "../schema.ts";
import type { PartMatch } from "./match-parts.ts";

/** A lug's number: those of the guard as wanted first, then those of parts that go out. */
export type LugNumber = number;

/** The lugs of both guards, one number for a lug that is in both. */
export class LugSpace {
  readonly size: number;
  readonly #found: LugTable;
  readonly #wanted: LugTable;
  /** By index in the table of the guard as found. */
  readonly #numbers: readonly LugNumber[];
  readonly #foundIndexes: ReadonlyMap<LugNumber, number>;

  constructor(from: Build, to: Build, { stays }: PartMatch) {
    this.#found = new LugTable(from.parts);
    this.#wanted = new LugTable(to.parts);
    const wantedName = new Map([...stays].map(([name, old]) => [old, name]));
    const seen = new Map<string, number>();
    let next = this.#wanted.lugs.length;
    this.#numbers = this.#found.lugs.map(({ part }) => {
      const index = seen.get(part) ?? 0;
      seen.set(part, index + 1);
      const name = wantedName.get(part);
      return name === undefined ? next++ : [...this.#wanted.lugsOf(name).values()][index]!;
    });
    this.#foundIndexes = new Map(this.#numbers.map((number, index) => [number, index]));
    this.size = next;
  }

  ofFound(name: string): LugNumber {
    return this.#numbers[this.#found.indexOf(name)]!;
  }

  ofWanted(name: string): LugNumber {
    return this.#wanted.indexOf(name);
  }

  /** The lugs of a part of the guard as wanted. */
  lugsOf(part: string): LugNumber[] {
    return [...this.#wanted.lugsOf(part).values()];
  }

  /** Whether the lug's part is not in the guard as wanted. */
  goesOut(lug: LugNumber): boolean {
    return lug >= this.#wanted.lugs.length;
  }

  /** Whether the lug's part is not in the guard as found. */
  comesIn(lug: LugNumber): boolean {
    return !this.#foundIndexes.has(lug);
  }

  /** The lug's name in the guard as found; as wanted where it comes in. */
  foundName(lug: LugNumber): string {
    const index = this.#foundIndexes.get(lug);
    return index === undefined ? this.#wanted.nameAt(lug) : this.#found.nameAt(index);
  }

  /** The lug's name in the guard as wanted; as found where it goes out. */
  wantedName(lug: LugNumber): string {
    return this.goesOut(lug) ? this.foundName(lug) : this.#wanted.nameAt(lug);
  }
}

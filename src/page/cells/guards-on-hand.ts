import { openShelf } from "../shelf/open-shelf.ts";
import type { Bench } from "../start/bench.ts";
import { toReading } from "../start/open-build.ts";
import { keptAs } from "../state/kept-as.ts";
import type { Reading } from "../state/reading.ts";
import type { GuardOnHand } from "./cell.ts";

export interface OnHand {
  /** The one on the bench first, then those of the shelf, the latest changed first. */
  readonly guards: readonly GuardOnHand[];
  /** Names of those that cannot be read. */
  readonly unreadable: readonly string[];
}

interface Read {
  readonly file: string;
  readonly reading: Promise<Reading | undefined>;
}

async function parsed(bench: Bench, file: string): Promise<Reading | undefined> {
  try {
    return await toReading(bench, JSON.parse(file));
  } catch {
    return undefined;
  }
}

/** Guards of one name are numbered, in their order. */
function distinctNames(guards: readonly GuardOnHand[]): GuardOnHand[] {
  const counts = new Map<string, number>();
  return guards.map((guard) => {
    const count = (counts.get(guard.name) ?? 0) + 1;
    counts.set(guard.name, count);
    return count === 1 ? guard : { ...guard, name: `${guard.name} (${count})` };
  });
}

/** The guards that can be heard against each other; a guard of the shelf is read once, until it is another one. */
export class GuardsOnHand {
  readonly #bench: Bench;
  readonly #read = new Map<string, Read>();

  constructor(bench: Bench) {
    this.#bench = bench;
  }

  async list(): Promise<OnHand> {
    const kept = await (await openShelf()).getAll();
    const all = await Promise.all(
      kept.map(async ({ id, name, file }) => ({ id, name, reading: await this.#reading(id, file) })),
    );
    const shelf = all.flatMap(({ id, name, reading }) => (reading ? [{ id, name, reading }] : []));
    const unreadable = all.flatMap(({ name, reading }) => (reading ? [] : [name]));
    return { guards: distinctNames([...this.#onBench(shelf), ...shelf]), unreadable };
  }

  #reading(id: string, file: string): Promise<Reading | undefined> {
    const known = this.#read.get(id);
    if (known?.file === file) return known.reading;
    const reading = parsed(this.#bench, file);
    this.#read.set(id, { file, reading });
    return reading;
  }

  /** The guard on the bench, unless the shelf has it as it is. */
  #onBench(shelf: readonly GuardOnHand[]): GuardOnHand[] {
    const { reading, guard } = this.#bench.store.state;
    if (!reading) return [];
    const kept = shelf.find(({ id }) => id === keptAs(guard));
    if (kept && JSON.stringify(kept.reading.source) === JSON.stringify(reading.source)) return [];
    const title = reading.source.title || "the guard";
    return [{ id: "bench", name: kept ? `${title} (as changed on the bench)` : `${title} (on the bench)`, reading }];
  }
}

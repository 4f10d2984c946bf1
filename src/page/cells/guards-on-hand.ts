import { openShelf } from "../shelf/open-shelf.ts";
import type { Bench } from "../start/bench.ts";
import { toReading } from "../start/open-build.ts";
import { keptAs } from "../state/kept-as.ts";
import type { Reading } from "../state/reading.ts";
import type { GuardName, GuardOnHand } from "./cell.ts";

/** The name of the guard on the bench where the shelf has not the same. */
const BENCH = "bench";

/** Guards as they were read. */
export interface ReadGuards {
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
function distinctNames(guards: readonly GuardName[]): GuardName[] {
  const counts = new Map<string, number>();
  return guards.map(({ id, name }) => {
    const count = (counts.get(name) ?? 0) + 1;
    counts.set(name, count);
    return { id, name: count === 1 ? name : `${name} (${count})` };
  });
}

/** The guards that can be heard against each other; one of the shelf is read when it is wanted, and again when it is another one. */
export class GuardsOnHand {
  readonly #bench: Bench;
  readonly #read = new Map<string, Read>();

  constructor(bench: Bench) {
    this.#bench = bench;
  }

  /** The one on the bench first, then those of the shelf, the latest changed first. */
  async names(): Promise<readonly GuardName[]> {
    const shelf = await openShelf();
    return distinctNames([...(await this.#onBench()), ...(await shelf.list())]);
  }

  /** Reads some of them, in their order. */
  async read(names: readonly GuardName[]): Promise<ReadGuards> {
    const shelf = await openShelf();
    const kept = await shelf.getAll(names.map(({ id }) => id).filter((id) => id !== BENCH));
    const files = new Map(kept.map(({ id, file }) => [id, file]));
    const all = await Promise.all(
      names.map(async ({ id, name }) => ({ id, name, reading: await this.#readingOf(id, files.get(id)) })),
    );
    return {
      guards: all.flatMap(({ id, name, reading }) => (reading ? [{ id, name, reading }] : [])),
      unreadable: all.flatMap(({ name, reading }) => (reading ? [] : [name])),
    };
  }

  /** Which of them is on the bench. */
  onBench(names: readonly GuardName[]): GuardName | undefined {
    const kept = keptAs(this.#bench.store.state.guard);
    return names.find(({ id }) => id === BENCH) ?? names.find(({ id }) => id === kept);
  }

  async #readingOf(id: string, file: string | undefined): Promise<Reading | undefined> {
    if (id === BENCH) return this.#bench.store.state.reading;
    if (file === undefined) return undefined;
    const known = this.#read.get(id);
    if (known?.file === file) return known.reading;
    const reading = parsed(this.#bench, file);
    this.#read.set(id, { file, reading });
    return reading;
  }

  /** The guard on the bench, unless the shelf has it as it is. */
  async #onBench(): Promise<GuardName[]> {
    const { reading, guard } = this.#bench.store.state;
    if (!reading) return [];
    const id = keptAs(guard);
    const kept = id === undefined ? undefined : await (await openShelf()).get(id);
    const same = kept && (await this.#readingOf(kept.id, kept.file));
    if (same && JSON.stringify(same.source) === JSON.stringify(reading.source)) return [];
    const title = reading.source.title || "the guard";
    return [{ id: BENCH, name: kept ? `${title} (as changed on the bench)` : `${title} (on the bench)` }];
  }
}

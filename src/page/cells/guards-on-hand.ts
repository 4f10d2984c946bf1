import type { GuardLine } from "../../shelf/guard.ts";
import { openShelf } from "../shelf/open-shelf.ts";
import { markOfSource, sameOnShelf } from "../shelf/same-guard.ts";
import type { Bench } from "../start/bench.ts";
import { toReading } from "../start/open-build.ts";
import { keptAs } from "../state/kept-as.ts";
import type { Reading } from "../state/reading.ts";
import { type GuardName, type GuardOnHand, ON_BENCH } from "./cell.ts";

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
  /** Which guard of the shelf is on the bench as it is. */
  #asOnBench: string | undefined;

  constructor(bench: Bench) {
    this.#bench = bench;
  }

  /** The one on the bench first, then those of the shelf, the latest changed first. */
  async names(): Promise<readonly GuardName[]> {
    const lines = await (await openShelf()).list();
    return distinctNames([...(await this.#onBench(lines)), ...lines]);
  }

  /** The guard that has such a build file: one of the shelf, or else the one on the bench. @param mark as `markOfSource` */
  async withMark(mark: string): Promise<GuardName | undefined> {
    const names = await this.names();
    const same = sameOnShelf(await (await openShelf()).list(), mark);
    if (same) return names.find(({ id }) => id === same.id);
    const { reading } = this.#bench.store.state;
    const isOnBench = reading !== undefined && markOfSource(reading.source) === mark;
    return isOnBench ? names.find(({ id }) => id === ON_BENCH) : undefined;
  }

  /** Reads some of them, in their order. */
  async read(names: readonly GuardName[]): Promise<ReadGuards> {
    const shelf = await openShelf();
    const kept = await shelf.getAll(names.map(({ id }) => id).filter((id) => id !== ON_BENCH));
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
    return names.find(({ id }) => id === ON_BENCH) ?? names.find(({ id }) => id === this.#asOnBench);
  }

  async #readingOf(id: string, file: string | undefined): Promise<Reading | undefined> {
    if (id === ON_BENCH) return this.#bench.store.state.reading;
    if (file === undefined) return undefined;
    const known = this.#read.get(id);
    if (known?.file === file) return known.reading;
    const reading = parsed(this.#bench, file);
    this.#read.set(id, { file, reading });
    return reading;
  }

  /** The guard on the bench, unless the shelf has it as it is. */
  async #onBench(lines: readonly GuardLine[]): Promise<GuardName[]> {
    const { reading, guard } = this.#bench.store.state;
    this.#asOnBench = undefined;
    if (!reading) return [];
    const id = keptAs(guard);
    const kept = id === undefined ? undefined : await (await openShelf()).get(id);
    const read = kept && (await this.#readingOf(kept.id, kept.file));
    const isAsKept = JSON.stringify(read?.source) === JSON.stringify(reading.source);
    // What it is kept as is not known of one that came back after the browser was killed.
    this.#asOnBench = isAsKept ? id : sameOnShelf(lines, markOfSource(reading.source))?.id;
    if (this.#asOnBench !== undefined) return [];
    const title = reading.source.title || "the guard";
    return [{ id: ON_BENCH, name: kept ? `${title} (as changed on the bench)` : `${title} (on the bench)` }];
  }
}

import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";

/** The fewest guards found that between them have every sound. */
export interface Cover {
  /** Rising. */
  readonly guards: readonly number[];
  /** No choice of fewer guards than this can do. */
  readonly atLeast: number;
  /** Whether no smaller choice exists: all were weighed or ruled out. */
  readonly isFewest: boolean;
}

/** Out of twenty guards there are no more choices than this, so that all can be weighed; of more guards, in about a second, not all. */
const EXACT_GUARDS = 20;
const MOST_NODES = 2 ** EXACT_GUARDS;
const MOST_NODES_BEYOND = 20_000;
const NODES_BETWEEN_CHECKS = 4096;

/** @param sounds of every sound, the guards that have it, none twice */
function greedy(sounds: readonly (readonly number[])[]): number[] {
  const chosen: number[] = [];
  let left = sounds;
  while (left.length > 0) {
    const counts = new Map<number, number>();
    for (const guards of left) for (const guard of guards) counts.set(guard, (counts.get(guard) ?? 0) + 1);
    const most = [...counts].reduce((best, each) =>
      each[1] > best[1] || (each[1] === best[1] && each[0] < best[0]) ? each : best,
    );
    chosen.push(most[0]);
    left = left.filter((guards) => !guards.includes(most[0]));
  }
  return chosen;
}

/** Sounds of which no two are had by one guard: each needs a guard of its own. Those that few guards have come first. */
function needed(sounds: readonly (readonly number[])[]): number {
  const taken = new Set<number>();
  let count = 0;
  for (const guards of [...sounds].sort((a, b) => a.length - b.length)) {
    if (guards.some((guard) => taken.has(guard))) continue;
    for (const guard of guards) taken.add(guard);
    count += 1;
  }
  return count;
}

/** Branch and bound over the sound that fewest guards have. */
class Search {
  readonly #mostNodes: number;
  readonly #checkpoint: () => void;
  best: number[];
  nodes = 0;

  constructor(best: number[], mostNodes: number, checkpoint: () => void) {
    this.best = best;
    this.#mostNodes = mostNodes;
    this.#checkpoint = checkpoint;
  }

  get isExhausted(): boolean {
    return this.nodes > this.#mostNodes;
  }

  /** @param left sounds that none of the chosen has, with the guards that may still be chosen for each */
  from(chosen: readonly number[], left: readonly (readonly number[])[]): void {
    this.nodes += 1;
    if (this.isExhausted) return;
    if (this.nodes % NODES_BETWEEN_CHECKS === 0) this.#checkpoint();
    if (left.length === 0) {
      if (chosen.length < this.best.length) this.best = [...chosen];
      return;
    }
    if (left.some((guards) => guards.length === 0)) return;
    if (chosen.length + needed(left) >= this.best.length) return;
    const hardest = left.reduce((fewest, guards) => (guards.length < fewest.length ? guards : fewest));
    let open = left;
    for (const guard of hardest) {
      this.from(
        [...chosen, guard],
        open.filter((guards) => !guards.includes(guard)),
      );
      // What follows does without this guard, so that no choice is weighed twice.
      open = open.map((guards) => guards.filter((other) => other !== guard));
    }
  }
}

/**
 * The fewest guards that have all of some sounds: the set cover problem, by branch and bound from the greedy choice (V. Chvátal, Math.
 * Oper. Res. 4, 233, 1979), which alone may take H(n) times as many as are needed. Exact up to twenty guards; with more the search
 * may end before that, and then tells between what and what the answer lies.
 * @param sounds of every sound, the guards that have it
 * @throws RangeError naming a sound that no guard has
 */
export function fewestGuards(
  sounds: readonly (readonly number[])[],
  { checkpoint }: Checkpoint = NO_CHECKPOINT,
): Cover {
  const without = sounds.findIndex((guards) => guards.length === 0);
  if (without >= 0) throw new RangeError(`sounds[${without}] is had by no guard; expected at least one`);
  const wanted = sounds.map((guards) => [...new Set(guards)].sort((a, b) => a - b));
  const mostNodes = new Set(wanted.flat()).size <= EXACT_GUARDS ? MOST_NODES : MOST_NODES_BEYOND;
  const search = new Search(greedy(wanted), mostNodes, checkpoint);
  search.from([], wanted);
  const isFewest = !search.isExhausted;
  const guards = search.best.sort((a, b) => a - b);
  return { guards, isFewest, atLeast: isFewest ? guards.length : needed(wanted) };
}

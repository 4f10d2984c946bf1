import { Heard } from "../heard.ts";
import { mostTelling } from "../search/most-telling.ts";
import { type NextTouch, toldOnce, type Verdict } from "../search/verdict.ts";
import type { ToldTouch } from "../touches.ts";
import { OwnTable } from "./own-table.ts";

/** What the beeps make of a switch that is no known one. */
export function ownVerdict(lugs: number, positions: number, touches: readonly ToldTouch[]): Verdict {
  const own = new OwnTable(new Heard(lugs, positions, touches));
  const torn = own.contradicted();
  const doubtful = touches.filter(({ a, b }) =>
    torn.some((pair) => pair.a === Math.min(a, b) && pair.b === Math.max(a, b)),
  );
  const again = doubtful.find((touch) => toldOnce(touches, touch));
  const open = own.openPairs();
  const next = again ?? mostTelling(open, touches.at(-1));
  const told: NextTouch | undefined = next && { a: next.a, b: next.b, outcomes: [], again: again !== undefined };
  const isDone = open.length === 0 && !again;
  return {
    misheard: 0,
    contradictions: doubtful.map(({ index }) => index),
    tables: isDone ? [{ contacts: own.contacts(), probability: 1 }] : [],
    bits: undefined,
    count: isDone ? 1 : undefined,
    done: isDone,
    next: told,
  };
}

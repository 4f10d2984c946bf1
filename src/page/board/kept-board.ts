import type { RawSettings } from "../../build-file/settings.ts";
import { type Cell, cellOf, ON_BENCH } from "../cells/cell.ts";
import type { GuardsOnHand } from "../cells/guards-on-hand.ts";
import { markOfSource } from "../shelf/same-guard.ts";
import type { Board } from "./board.ts";

const KEY = "presolder.board.1";

/** A cell as this browser keeps it: the guard by its id, and how it is set. */
export interface KeptCell {
  readonly guard: string;
  readonly settings: RawSettings;
  /** Of the build file, where the guard was on no shelf: another one may be on the bench by now. */
  readonly mark?: string;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** What stands in the storage as far as it is cells. */
export function readKept(text: string | null): KeptCell[] {
  try {
    const cells = JSON.parse(text ?? "[]") as unknown;
    if (!Array.isArray(cells)) return [];
    return cells.flatMap((cell: unknown) =>
      isRecord(cell) && typeof cell.guard === "string" && isRecord(cell.settings)
        ? [
            {
              guard: cell.guard,
              settings: cell.settings as RawSettings,
              ...(typeof cell.mark === "string" ? { mark: cell.mark } : {}),
            },
          ]
        : [],
    );
  } catch {
    return [];
  }
}

export function writeKept(cells: readonly Cell[]): string {
  return JSON.stringify(
    cells.map(({ guard, settings }): KeptCell => {
      const { id, reading } = guard;
      return { guard: id, settings, ...(id === ON_BENCH ? { mark: markOfSource(reading.source) } : {}) };
    }),
  );
}

/** The cells by the ids that their guards have now; without those whose guard was on the bench and is nowhere any more. */
async function settled(kept: readonly KeptCell[], onHand: GuardsOnHand): Promise<KeptCell[]> {
  const all = await Promise.all(
    kept.map(async (cell) => {
      if (cell.guard !== ON_BENCH) return cell;
      const name = cell.mark === undefined ? undefined : await onHand.withMark(cell.mark);
      return name && { ...cell, guard: name.id };
    }),
  );
  return all.filter((cell) => cell !== undefined);
}

function restored(kept: readonly KeptCell[], { guards }: Awaited<ReturnType<GuardsOnHand["read"]>>): Cell[] {
  return kept.flatMap(({ guard: id, settings }) => {
    const guard = guards.find((each) => each.id === id);
    if (!guard) return [];
    try {
      return [cellOf(guard, settings)];
    } catch {
      // The guard was changed since, and has no such control or position any longer.
      return [];
    }
  });
}

/** Puts what was on the board the last time on it again, as far as its guards are there still, and keeps it from now on. */
export async function keepBoard(board: Board, onHand: GuardsOnHand): Promise<void> {
  let kept: KeptCell[] = [];
  try {
    kept = readKept(localStorage.getItem(KEY));
  } catch {
    // Refused; the board lasts until the page is closed.
  }
  if (kept.length > 0) {
    const cells = await settled(kept, onHand);
    const names = (await onHand.names()).filter(({ id }) => cells.some(({ guard }) => guard === id));
    board.add(restored(cells, await onHand.read(names)));
  }
  board.watch((cells) => {
    try {
      localStorage.setItem(KEY, writeKept(cells));
    } catch {
      // Without storage it lasts until the page is closed.
    }
  });
}

import { LugTable } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { LugWords } from "../../build-file/words/lug-words.ts";

/** How what leaves a guard is let go: a joint opened, a plug pulled, or the far end unscrewed and taken along. */
export const LETTING_GO = ["solder", "plug", "along"] as const;
export type LettingGo = (typeof LETTING_GO)[number];

/** What stays in the guitar when a guard is lifted out. */
export type Anchor = "jack" | "claw" | "shield" | "other";

/** A wire from the guard to something that stays in the guitar. */
export interface Leaving {
  readonly anchor: Anchor;
  /** In the guitar: "jack, tip". */
  readonly at: string;
  readonly atLug: string;
  /** On the guard: "volume, lug 2 (wiper)". */
  readonly from: string;
  readonly fromLug: string;
}

/** A ground point is a lug of the guard's own; everything else that is no part of it stays in the body. */
function anchorOf(part: Build["parts"][string]): Anchor | undefined {
  if (part.kind === "jack") return "jack";
  if (part.kind !== "terminal" || part.role === "ground") return undefined;
  return part.role ?? "other";
}

/** Every wire that leaves a guard, the jack's first. */
export function leavingWires(build: Build): Leaving[] {
  const table = new LugTable(build.parts);
  const words = new LugWords(build);
  const anchorAt = (lug: string) => {
    const index = table.find(lug);
    return index === undefined ? undefined : anchorOf(build.parts[table.lugs[index]!.part]!);
  };
  const wires = build.wires.flatMap(({ from, to }): Leaving[] => {
    const [start, end] = [anchorAt(from), anchorAt(to)];
    // From one anchor to another nothing of the guard is soldered.
    if ((start === undefined) === (end === undefined)) return [];
    const [atLug, fromLug] = start === undefined ? [to, from] : [from, to];
    return [{ anchor: (start ?? end)!, at: words.of(atLug), atLug, from: words.of(fromLug), fromLug }];
  });
  const order: readonly Anchor[] = ["jack", "claw", "other", "shield"];
  return wires.sort((a, b) => order.indexOf(a.anchor) - order.indexOf(b.anchor));
}

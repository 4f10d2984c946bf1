import { findSwitch, judgeTouches } from "../../../src/bench/switch-finder/find-switch.ts";
import type { BeepTold, SwitchQuestion } from "../../../src/bench/switch-finder/question.ts";
import { CONTACT_TABLES } from "../../build-file/contact-tables.ts";
import type { Random } from "../../random.ts";

/** For every position, the groups of joined lugs: "A0-A1 B0-B1". */
export type TradeTable = readonly string[];

/** A rotary by the trade's rule: in position p each pole's common is on its throw p. */
export function rotaryTable(poles: number, throws: number): TradeTable {
  const letters = [..."ABCDEFGH"].slice(0, poles);
  return Array.from({ length: throws }, (_, way) => letters.map((pole) => `${pole}0-${pole}${way + 1}`).join(" "));
}

export const NAMED_TABLES: readonly (readonly [string, TradeTable])[] = Object.entries(CONTACT_TABLES);

const EXTRA: Readonly<Record<string, readonly string[]>> = { "toggle-3": ["frame"] };

export function lugsOf(name: string, table: TradeTable): string[] {
  return [...new Set(table.flatMap((groups) => groups.split(/[ -]/))), ...(EXTRA[name] ?? [])];
}

/** In which positions two lugs of a trade's table beep. */
export function heardAt(table: TradeTable, a: string, b: string): number[] {
  return table.flatMap((groups, index) => {
    const together = groups.split(" ").some((group) => group.split("-").includes(a) && group.split("-").includes(b));
    return together ? [index + 1] : [];
  });
}

/** A switch on the bench, its lugs numbered in any order; `roles` says which is which. */
export interface OnBench {
  readonly names: readonly string[];
  readonly roles: ReadonlyMap<string, string>;
  readonly positions: number;
  hears(a: string, b: string): number[];
}

export function shuffled<T>(items: readonly T[], random: Random): T[] {
  const left = [...items];
  return items.map(() => left.splice(random.below(left.length), 1)[0]!);
}

export function onBench(table: TradeTable, lugs: readonly string[]): OnBench {
  const names = lugs.map((_, index) => String(index + 1));
  const roles = new Map(names.map((name, index) => [name, lugs[index]!]));
  return {
    names,
    roles,
    positions: table.length,
    hears: (a, b) => heardAt(table, roles.get(a)!, roles.get(b)!),
  };
}

export function questionOf({ names, positions }: OnBench, rest: Partial<SwitchQuestion> = {}): SwitchQuestion {
  return { lugs: names.map((name) => ({ name })), positions, beeps: [], errors: 0.01, moves: {}, ...rest };
}

/** Touches what it is told to touch until it is done. @returns what was told on the way */
export function followed(bench: OnBench, question: SwitchQuestion): BeepTold[] {
  const beeps = [...question.beeps];
  for (;;) {
    const { verdict } = judgeTouches({ ...question, beeps });
    if (verdict.done) return beeps;
    const [a, b] = [bench.names[verdict.next!.a]!, bench.names[verdict.next!.b]!];
    beeps.push({ between: [a, b], positions: bench.hears(a, b) });
  }
}

export const answerOf = (question: SwitchQuestion, beeps: readonly BeepTold[]) => findSwitch({ ...question, beeps });

/** Pairs of lugs of which the found table says otherwise than the switch beeps. */
export function wrongPairs(bench: OnBench, positions: readonly (readonly (readonly string[])[])[]): string[] {
  const said = (a: string, b: string) =>
    positions.flatMap((groups, index) =>
      groups.some((group) => group.includes(a) && group.includes(b)) ? [index + 1] : [],
    );
  return bench.names.flatMap((a, index) =>
    bench.names.slice(index + 1).flatMap((b) => (said(a, b).join() === bench.hears(a, b).join() ? [] : [`${a} ${b}`])),
  );
}

import type { Controls } from "../../../build-file/settings.ts";
import { listed } from "../../../english.ts";
import { withArticle } from "../changes/few-names.ts";
import type { HeardRow } from "../comparison-row.ts";
import { sizeOf } from "../comparison-row.ts";

/** One thing that is moved from row to row: the main switch, a pot, pots of one role that go together, another switch. */
export interface Axis {
  readonly kind: "position" | "dial" | "switch";
  /** "position", "tone", "volume 1", "lower tone". */
  readonly name: string;
  /** The controls that are moved. */
  readonly controls: readonly string[];
  /** Row by row. */
  readonly values: readonly (string | number)[];
}

/** Rows at one value of an axis. */
export interface Group {
  readonly value: string | number;
  readonly rows: readonly HeardRow[];
}

const ROLES = ["tone", "volume"];

/** What is moved from row to row of the first side. */
export function axesOf(heard: readonly HeardRow[], controls: Controls, words: ReadonlyMap<string, string>): Axis[] {
  const names = Object.keys(heard[0]?.row.settings[0] ?? {});
  const valuesOf = (name: string) => heard.map(({ row }) => row.settings[0][name]!);
  const moved = names.filter((name) => new Set(valuesOf(name)).size > 1);
  const together = ROLES.flatMap((role) => {
    const pots = controls.potsWithRole(role);
    const keys = new Set(pots.map((pot) => JSON.stringify(valuesOf(pot))));
    return pots.length > 0 && keys.size === 1 && moved.includes(pots[0]!) ? [{ role, pots }] : [];
  });
  const taken = new Set(together.flatMap(({ pots }) => pots));
  const axes = moved
    .filter((name) => !taken.has(name))
    .map((name): Axis => {
      const kind = name === controls.main?.name ? "position" : controls.pots.includes(name) ? "dial" : "switch";
      const part = words.get(name.replace(/\.s$/, "")) ?? name;
      return { kind, name: kind === "position" ? "position" : part, controls: [name], values: valuesOf(name) };
    });
  const roles = together.map(
    ({ role, pots }): Axis => ({ kind: "dial", name: role, controls: pots, values: valuesOf(pots[0]!) }),
  );
  return [...axes, ...roles].sort((a, b) => Number(b.kind === "position") - Number(a.kind === "position"));
}

export function groupsAlong({ values }: Axis, heard: readonly HeardRow[]): Group[] {
  return [...new Set(values)].map((value) => ({ value, rows: heard.filter((_, index) => values[index] === value) }));
}

/** Rows in which both sound differ by less than silence from sound. */
const SILENCE_SIZE = 100;

/** How much of the difference comes and goes along an axis. */
function spread(axis: Axis, heard: readonly HeardRow[]): number {
  const sizes = groupsAlong(axis, heard).map(({ rows }) =>
    rows.reduce((most, row) => Math.max(most, Math.min(SILENCE_SIZE, sizeOf(row))), 0),
  );
  return Math.max(...sizes) - Math.min(...sizes);
}

/** The axis by which the answer is told: the pickups where their own values are asked about, else where most changes. */
export function tellingAxis(axes: readonly Axis[], heard: readonly HeardRow[], isOfPickups: boolean): Axis | undefined {
  const [first] = axes;
  if (!first || (isOfPickups && first.kind === "position")) return first;
  return axes.reduce((best, axis) => (spread(axis, heard) > spread(best, heard) + 1e-9 ? axis : best), first);
}

/** "the tone at 0, 2 and 4", "the lower tone up". */
export function dialWords({ kind, name }: Axis, values: readonly (string | number)[]): string {
  return `${withArticle(name)} ${kind === "dial" ? "at " : ""}${listed(values)}`;
}

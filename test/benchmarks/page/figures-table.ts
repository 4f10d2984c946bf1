import { TABS } from "../../page/tabs.ts";
import { median } from "../stopwatch.ts";
import type { Condition } from "./condition.ts";
import type { Turn } from "./knob-turns.ts";
import type { VisitFigures } from "./visit-figures.ts";

interface Row {
  readonly title: string;
  readonly of: (figures: VisitFigures) => number;
  readonly digits?: number;
  readonly aims?: Readonly<Record<Condition["name"], number>>;
}

function share95(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(0.95 * (values.length - 1))]!;
}

const changedMs = ({ curveMs, readoutMs, drawingMs }: Turn) => Math.max(curveMs, readoutMs, drawingMs);
const curveMs = (turn: Turn) => Math.max(turn.curveMs, turn.readoutMs);
const frameMs = (turn: Turn) => turn.frameMs;

function turnRows(what: "dial" | "lever", of: (figures: VisitFigures) => readonly Turn[]): Row[] {
  const times = (time: (turn: Turn) => number) => (figures: VisitFigures) => of(figures).map(time);
  const row = (title: string, time: (turn: Turn) => number, aims?: Row["aims"]): Row[] => [
    {
      title: `${what} to ${title}, median (ms)`,
      of: (figures) => median(times(time)(figures)),
      digits: 1,
      ...(aims && { aims }),
    },
    { title: "  95 % within (ms)", of: (figures) => share95(times(time)(figures)), digits: 1 },
  ];
  return [
    ...row("curve and readout changed", curveMs),
    ...row("curve, readout and drawing changed", changedMs, { plain: 16, slowed: 32 }),
    ...row("the frame handed over that shows them", frameMs),
  ];
}

export const ROWS: readonly Row[] = [
  { title: "first contentful paint (ms)", of: ({ loading }) => loading.firstPaintMs },
  {
    title: "largest contentful paint (ms)",
    of: ({ loading }) => loading.largestPaintMs,
    aims: { plain: 1000, slowed: 2500 },
  },
  { title: "main thread blocked (ms)", of: ({ loading }) => loading.blockedMs, aims: { plain: 150, slowed: 400 } },
  {
    title: "layout shift",
    of: ({ loading }) => loading.layoutShift,
    digits: 3,
    aims: { plain: 0.05, slowed: 0.05 },
  },
  {
    title: "play to first audible sample (ms)",
    of: ({ sound }) => sound.playMs,
    aims: { plain: 150, slowed: 150 },
  },
  {
    title: "another position's sound takes over (ms)",
    of: ({ sound }) => median(sound.changeMs),
    aims: { plain: 50, slowed: 50 },
  },
  ...turnRows("dial", ({ turns }) => turns.dials),
  ...turnRows("lever", ({ turns }) => turns.lever),
  ...[...TABS, "Joint by joint"].map((tab) => ({
    title: `${tab}: opened until it stands (ms)`,
    of: ({ panels }: VisitFigures) => panels.openMs[tab]!,
  })),
  { title: "a choice in the plan until curve and form show it (ms)", of: ({ panels }) => panels.planMs },
  { title: "script and style, compressed (kB)", of: ({ traffic }) => traffic.codeBytes / 1000, digits: 1 },
  { title: "requests until quiet", of: ({ traffic }) => traffic.requests },
];

export interface Column {
  readonly condition: Condition;
  readonly visits: readonly VisitFigures[];
}

/** Medians of the visits, a column a condition, with the aim beside it. */
export function figuresTable(columns: readonly Column[]): string {
  const lines = [
    ["", ...columns.flatMap(({ condition: { name } }) => [name, "aim"])],
    ...ROWS.map(({ title, of, digits = 0, aims }) => [
      title,
      ...columns.flatMap(({ condition, visits }) => [
        median(visits.map(of)).toFixed(digits),
        String(aims?.[condition.name] ?? ""),
      ]),
    ]),
  ];
  const width = Math.max(...lines.map(([title]) => title!.length));
  return lines
    .map(([title, ...cells]) => `  ${title!.padEnd(width)}${cells.map((cell) => cell.padStart(9)).join("")}`.trimEnd())
    .join("\n");
}

import { DEFAULT_SHEET_OPTIONS, SHEET_BOUNDS, type SheetOptions } from "../../bench/sheet/options.ts";
import type { Reel } from "../../bench/sheet/wire/reels.ts";
import { WIRE_KINDS, type WireKind } from "../../build-file/wire-kinds.ts";

const KEY = "presolder.workbench.1";

type Unknown = Readonly<Record<string, unknown>>;

const asRecord = (value: unknown): Unknown => (typeof value === "object" && value !== null ? (value as Unknown) : {});

const isKind = (value: unknown): value is WireKind => WIRE_KINDS.includes(value as WireKind);

/** A figure as kept, or the usual one where it cannot be. */
function figure(value: unknown, [min, max]: readonly [number, number], usual: number): number {
  return typeof value === "number" && value >= min && value <= max ? value : usual;
}

function reelsFrom(value: unknown): Reel[] {
  if (!Array.isArray(value)) return [];
  return value.map(asRecord).flatMap(({ colour, kind, metres }): Reel[] => {
    if (typeof colour !== "string" || colour === "" || !isKind(kind)) return [];
    const left = figure(metres, [Number.MIN_VALUE, SHEET_BOUNDS.reelMetres], 0);
    return [{ colour, kind, ...(left > 0 ? { metres: left } : {}) }];
  });
}

/** What this browser keeps of a person's wire and iron: the same bench serves every guard. Nothing where nothing is kept. */
export function keptSheetOptions(): Partial<SheetOptions> {
  try {
    const text = localStorage.getItem(KEY);
    if (text === null) return {};
    const kept = asRecord(JSON.parse(text));
    const usual = DEFAULT_SHEET_OPTIONS;
    const [allowances, kinds, iron] = [kept.allowances, kept.kinds, kept.iron].map(asRecord) as [
      Unknown,
      Unknown,
      Unknown,
    ];
    const length = (key: keyof typeof usual.allowances) =>
      figure(allowances[key], SHEET_BOUNDS.allowance, usual.allowances[key]);
    const kind = (key: keyof typeof usual.kinds) => (isKind(kinds[key]) ? kinds[key] : usual.kinds[key]);
    return {
      allowances: {
        slack: length("slack"),
        strip: length("strip"),
        jackLoop: length("jackLoop"),
        clawLoop: length("clawLoop"),
        foilLength: length("foilLength"),
      },
      reels: reelsFrom(kept.reels),
      kinds: { hot: kind("hot"), ground: kind("ground"), jack: kind("jack") },
      maxEnds: Math.round(figure(kept.maxEnds, SHEET_BOUNDS.maxEnds, usual.maxEnds)),
      iron: {
        celsius: figure(iron.celsius, SHEET_BOUNDS.celsius, usual.iron.celsius),
        watts: figure(iron.watts, SHEET_BOUNDS.watts, usual.iron.watts),
        solder: iron.solder === "lead-free" ? "lead-free" : "leaded",
      },
    };
  } catch {
    return {};
  }
}

export function keepSheetOptions(options: SheetOptions): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(options));
  } catch {
    // Without storage they last until the page is closed.
  }
}

import type { SettingValue } from "../../build-file/settings.ts";
import type { Finding } from "../drawing/finding-marks.ts";

/** What the page uses of `POST /api/bench`. Ohms are null where open. */
export interface BenchAnswer {
  readonly audit: readonly Finding[];
  readonly temperature: number;
  readonly readings: readonly MeterReading[];
  readonly probes: readonly MeterReading[];
  readonly sheet: BuildSheet;
  readonly partsList: PartsList;
  readonly phaseCheck: PhaseCheck;
}

export interface MeterReading {
  readonly label: string;
  readonly settings: Readonly<Record<string, SettingValue>>;
  readonly between: readonly [string, string];
  readonly sweep?: string;
  readonly ohms: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

export interface BuildSheet {
  readonly cautions: readonly string[];
  readonly preparations: readonly string[];
  readonly cuts: readonly CutWire[];
  readonly stages: readonly SheetStage[];
  readonly notes: readonly string[];
}

export interface CutWire {
  readonly connection: number;
  readonly from: string;
  readonly to: string;
  readonly colour: string;
  /** Metres. */
  readonly cut: number;
  readonly strip: number;
}

export interface SheetStage {
  readonly title: string;
  readonly joints: readonly { readonly number: number; readonly text: string }[];
  readonly checks: readonly { readonly text: string }[];
}

export interface PartsList {
  readonly lines: readonly PartsLine[];
  readonly wire: readonly { readonly colour: string; readonly pieces: number; readonly metres: number }[];
  readonly notes: readonly string[];
}

export interface PartsLine {
  readonly what: string;
  readonly code: string | null;
  readonly quantity: number;
  readonly fromDrawer: number;
  readonly toBuy: number;
  readonly parts: readonly string[];
}

export interface PhaseCheck {
  readonly how: readonly string[];
  readonly pickups: readonly { readonly pickup: string; readonly message: string }[];
}

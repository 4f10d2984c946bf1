import type { ToleranceAnswer } from "../../contract/tolerance.ts";

/** What part tolerances leave open: level in dB at each frequency. */
export type Band = Pick<ToleranceAnswer, "frequencies" | "low" | "high">;

import type { PreviewRequest } from "../../render/preview.ts";
import type { CurvesRequest } from "../../response/curve-reader.ts";
import type { CompareJob } from "./choice-jobs.ts";
import type { WorkSize } from "./fair-queue.ts";
import type { JobName } from "./jobs.ts";

/** Jobs that may hold a worker for seconds whatever they are asked. */
const ALWAYS_LARGE: ReadonlySet<string> = new Set(["previewBatch", "search", "tolerance", "table", "diagnose", "fit"]);
/** About a tenth of a second of solving. */
const MANY_POINTS = 100_000;
/** A comparison weighs each of them against noise and tolerance. */
const FEW_SETTINGS = 4;
/** A minute of mono at 44.1 kHz and 16 bits stays under it and renders in well under a second. */
const LONG_FILE_BYTES = 6_000_000;

function isLarge(name: JobName, input: unknown): boolean {
  if (ALWAYS_LARGE.has(name)) return true;
  if (name === "curvesJson" || name === "curveTexts") {
    const { settings, frequenciesHz } = input as CurvesRequest;
    return settings.length * frequenciesHz.length > MANY_POINTS;
  }
  if (name === "compare") return (input as CompareJob).settings[0].length > FEW_SETTINGS;
  if (name !== "preview") return false;
  const { signal } = input as PreviewRequest;
  return "file" in signal && signal.file.length > LONG_FILE_BYTES;
}

/** How long a job may hold its worker, judged from what it is asked. */
export function sizeOfJob(name: JobName, input: unknown): WorkSize {
  return isLarge(name, input) ? "large" : "small";
}

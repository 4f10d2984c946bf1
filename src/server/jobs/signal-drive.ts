import { commonDrive, type Drive, driveOfEach, flatDrive } from "../../choice/drive.ts";
import type { Guard } from "../../choice/guard.ts";
import { feedOf } from "../../render/feed.ts";
import { DEFAULT_SAMPLE_RATE_HZ } from "../../render/signals.ts";

/** What drives a guard's coils: a built-in signal played on its strings, or every band alike. */
export function driveFor(guard: Guard, signal: string | undefined, checkpoint?: () => void): Drive {
  if (signal === undefined) return flatDrive();
  const source = { name: signal, sampleRateHz: DEFAULT_SAMPLE_RATE_HZ };
  const { drive, coils, sampleRateHz } = feedOf(guard.build, guard.sources, source, undefined, checkpoint);
  const [common] = drive;
  return common ? commonDrive(signal, common, sampleRateHz) : driveOfEach(signal, coils, sampleRateHz);
}

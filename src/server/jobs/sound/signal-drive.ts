import { type Drive, flatDrive } from "../../../choice/drive.ts";
import type { Guard } from "../../../choice/guard.ts";
import { commonDrive, driveOfEach } from "../../../choice/recorded-drive.ts";
import { feedOf } from "../../../render/feed.ts";
import type { Playing } from "../../../render/playing.ts";
import { DEFAULT_SAMPLE_RATE_HZ } from "../../../render/signals.ts";
import { playingOf } from "./phrase-only.ts";

/** What bands are weighed by: a built-in signal; every band alike where undefined. */
export interface Weighting extends Playing {
  readonly signal: string | undefined;
}

/** As a request says it. @throws PresolderError REQUEST_INVALID for a hand or strings without a phrase */
export function weightingOf({ signal, ...playing }: Playing & { readonly signal?: string | undefined }): Weighting {
  return { signal, ...playingOf(signal, playing) };
}

/** What drives a guard's coils: a built-in signal played on its strings, or every band alike. */
export function driveFor(guard: Guard, { signal, ...playing }: Weighting, checkpoint?: () => void): Drive {
  if (signal === undefined) return flatDrive();
  const source = { name: signal, sampleRateHz: DEFAULT_SAMPLE_RATE_HZ, ...playing };
  const { drive, coils, sampleRateHz } = feedOf(guard.build, guard.sources, source, checkpoint);
  const [common] = drive;
  return common ? commonDrive(signal, common, sampleRateHz) : driveOfEach(signal, coils, sampleRateHz);
}

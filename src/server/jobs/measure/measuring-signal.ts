import { type Encoding, encodeWav } from "../../../audio/wav-encode.ts";
import { measuringSignal, type SignalKind } from "../../../measure/signal/measuring-signal.ts";
import type { Job } from "../../work/job.ts";

interface SignalJob {
  readonly kind: SignalKind;
  readonly rate: number;
  readonly encoding: Encoding;
}

export const measuringSignalJob = {
  run: ({ kind, rate, encoding }: SignalJob): Uint8Array =>
    encodeWav({ sampleRateHz: rate, channels: [measuringSignal(kind, rate)] }, encoding),
  size: () => "small",
  gate: "render",
} satisfies Job<SignalJob, Uint8Array>;

import { type SwapCard, type SwapRequest, swapCard } from "../../../bench/swap-card/swap-card.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { SwapCardBody } from "../../../contract/bench/swap-card.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { pluckedDrive } from "../sound/plucked-drive.ts";

interface SwapCardJob {
  readonly out: Build;
  readonly into: Build;
  readonly request: SwapRequest;
}

export const swapCardJob = {
  read: ({ out, in: into, ...request }: SwapCardBody): SwapCardJob => ({
    out: readBuildAt("out", out),
    into: readBuildAt("in", into),
    request,
  }),
  run: ({ out, into, request }: SwapCardJob, context: JobContext): SwapCard =>
    swapCard(out, into, request, pluckedDrive, context),
  size: () => "large",
  gate: "render",
} satisfies Job<SwapCardJob, SwapCard>;

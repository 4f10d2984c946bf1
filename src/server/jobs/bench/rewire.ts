import { rewire } from "../../../build-file/rewire/rewire.ts";
import type { Build } from "../../../build-file/schema.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { RewireAnswer, RewireBody } from "../../../contract/rewire.ts";
import type { Job } from "../../work/job.ts";

interface RewireJob {
  readonly from: Build;
  readonly to: Build;
}

export const rewireJob = {
  read: (body: RewireBody): RewireJob => ({ from: readBuildAt("from", body.from), to: readBuildAt("to", body.to) }),
  run: ({ from, to }: RewireJob): RewireAnswer => rewire(from, to),
  size: () => "small",
  gate: "render",
} satisfies Job<RewireJob, RewireAnswer>;

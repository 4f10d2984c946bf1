import type { Job } from "../../work/job.ts";

export const readyJob = {
  run: (_nothing: null) => true,
  size: () => "small",
} satisfies Job<null, boolean>;

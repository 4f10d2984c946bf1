import type { Measures } from "../../../bench/room/measures.ts";
import { type RoomTold, roomFor } from "../../../bench/room/room.ts";
import { type TemplateDrawing, templateOf } from "../../../bench/room/template/drawing.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { RoomBody } from "../../../contract/bench/room.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { Job, JobContext } from "../../work/job.ts";

interface RoomJob {
  readonly build: Build;
  readonly measures: Measures;
}

function read({ build, ...measures }: RoomBody): RoomJob {
  return { build: readBuildAt("build", build), measures };
}

export const roomJob = {
  read,
  run: ({ build, measures }: RoomJob, context: JobContext): RoomTold => roomFor(build, measures, context),
  size: () => "large",
  gate: "render",
} satisfies Job<RoomJob, RoomTold>;

export const roomTemplateJob = {
  read,
  run: ({ build, measures }: RoomJob): TemplateDrawing => templateOf(build, measures),
  size: () => "small",
  gate: "render",
} satisfies Job<RoomJob, TemplateDrawing>;

import type { z } from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { settingsField, sweepField } from "./fields.ts";
import { recordedWithField, soundFields } from "./sound-fields.ts";
import type { Sent } from "./wire.ts";

export const previewsRequestSchema = strict({
  ...soundFields,
  sweep: sweepField.optional(),
  settings: settingsField.optional(),
  recordedWith: recordedWithField.optional(),
});

export type PreviewsRequest = Sent<typeof previewsRequestSchema>;
export type PreviewsBody = z.output<typeof previewsRequestSchema>;

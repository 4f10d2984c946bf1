import { z } from "zod";
import type { Answered } from "./wire.ts";

export const healthAnswerSchema = z.object({ status: z.literal("ok") });

export type HealthAnswer = Answered<typeof healthAnswerSchema>;

import * as z from "zod";

export const healthAnswerSchema = z.object({ status: z.literal("ok") });

import * as z from "zod";
import { MAX_LINK_CODE_CHARS, MAX_SAMPLE_RATE_HZ, MAX_VALUE_CHARS, MIN_SAMPLE_RATE_HZ } from "../limits.ts";

export const codeField = z
  .string({ error: () => "is missing; expected a link code, as POST /api/link gives it" })
  .min(1)
  .max(MAX_LINK_CODE_CHARS)
  .describe("link code of the build");

export const rateInAddress = z
  .string()
  .regex(/^\d{1,6}$/, "expected a whole number of Hz")
  .transform(Number)
  .pipe(z.number().min(MIN_SAMPLE_RATE_HZ).max(MAX_SAMPLE_RATE_HZ))
  .describe("sample rate in Hz");

/** A query whose other keys are settings, by control or role. */
export function addressQuery<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  const value = z.string({ error: () => "is given more than once" }).max(MAX_VALUE_CHARS);
  return z.object(shape).catchall(value).describe("every other key is a control or a role, as in lever=2&tone=7");
}

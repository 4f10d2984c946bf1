import * as z from "zod";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import { MAX_LABEL_CHARS, MAX_LINK_CODE_CHARS, MAX_LINK_GUARDS, MAX_LINK_JSON_BYTES } from "../limits.ts";
import { checkGuard } from "../shelf/file/check-guard.ts";
import { CheckError } from "../shelf/file/checks.ts";
import { GUARD_STATES } from "../shelf/guard.ts";
import { unpacked } from "../shelf/packed.ts";
import type { Answered, Sent } from "./wire.ts";

const line = (meaning: string) => z.string().max(MAX_LABEL_CHARS).describe(meaning);
const text = (meaning: string) => z.string().max(MAX_LINK_JSON_BYTES).describe(meaning);

const readingsField = strict({
  id: line("a UUID"),
  date: line("YYYY-MM-DD"),
  note: text("what is written on these readings"),
  values: z.array(strict({ what: line("what was measured"), read: line("what it read, as it was written") })),
});

const guardField = strict({
  id: line("a UUID"),
  name: line("what the guard is called"),
  guitar: line("the guitar that it is for"),
  state: oneOf(GUARD_STATES),
  made: line("YYYY-MM-DD"),
  changed: line("when it was last changed, ISO 8601"),
  notes: text("what is written on it"),
  readings: z.array(readingsField),
  build: z.any().optional().describe("its build file; in its place `file`"),
  file: text("its build file as text, where that is not as this service's page writes it").optional(),
});

/** As the page that opens the link will check it, so that no link is made whose guards nobody can keep. */
const keepable = guardField.superRefine((guard, context) => {
  const { build, ...rest } = guard;
  if (build !== undefined && guard.file !== undefined)
    context.addIssue({ code: "custom", path: ["file"], message: "stands beside `build`; expected one of the two" });
  try {
    checkGuard(unpacked(build === undefined ? rest : guard));
  } catch (error) {
    if (!(error instanceof CheckError)) throw error;
    context.addIssue({ code: "custom", path: error.path.split("."), message: error.message });
  }
});

const guardsField = z.array(keepable).min(1).max(MAX_LINK_GUARDS).describe("the guards, without their histories");

export const shelfLinkRequestSchema = strict({ guards: guardsField });

export const shelfLinkAnswerSchema = z.object({
  code: z.string().max(MAX_LINK_CODE_CHARS).describe("carries the guards"),
  url: z.string().describe("opens the page, which shows them and asks before it keeps any"),
});

export const shelfLinkParamsSchema = z.object({ code: z.string() });

export const shelfLinkContentSchema = z.object({ guards: z.array(z.any()).describe("as they were sent") });

export type ShelfLinkRequest = Sent<typeof shelfLinkRequestSchema>;
export type ShelfLinkAnswer = Answered<typeof shelfLinkAnswerSchema>;
export type ShelfLinkContent = Answered<typeof shelfLinkContentSchema>;

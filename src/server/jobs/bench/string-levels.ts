import { stringLevels } from "../../../audio/string-levels/string-levels.ts";
import type { StringLevelsQuestion } from "../../../audio/string-levels/usable-plucks.ts";
import { decodeWav } from "../../../audio/wav-decode.ts";
import type { StringLevelsAnswer, StringLevelsBody } from "../../../contract/bench/string-levels.ts";
import { faultAt } from "../../../errors.ts";
import type { Job } from "../../work/job.ts";

interface StringLevelsJob {
  readonly file: Uint8Array;
  readonly question: StringLevelsQuestion;
}

function read({ strings, plucks, order }: StringLevelsBody, upload: Uint8Array | undefined): StringLevelsJob {
  if (!upload) throw faultAt("REQUEST_INVALID", "signal", "is missing; expected a multipart form with a WAV file");
  return { file: upload, question: { strings, plucks, order } };
}

/** Half a minute in mono at 44.1 kHz and 16 bits is read in a glance. */
const LONG_FILE_BYTES = 3_000_000;

export const stringLevelsJob = {
  read,
  run: ({ file, question }: StringLevelsJob): StringLevelsAnswer => stringLevels(decodeWav(file), question),
  size: ({ file }) => (file.length > LONG_FILE_BYTES ? "large" : "small"),
  gate: "render",
} satisfies Job<StringLevelsJob, StringLevelsAnswer>;

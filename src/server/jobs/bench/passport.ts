import { type Passport, type PassportRequest, passportOf } from "../../../bench/passport/passport.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { PassportBody } from "../../../contract/bench/passport.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import { passportLabel } from "../../paper/passport-label.ts";
import { passportPage } from "../../paper/passport-page.ts";
import type { Job } from "../../work/job.ts";

interface PassportJob extends PassportRequest {
  readonly build: Build;
}

interface PaperJob extends PassportJob {
  readonly format: "pdf" | "label";
  readonly link: string;
  readonly drawing: PassportBody["drawing"];
}

/** The same for every format; `paper` says what a page needs besides. */
export const passportJob = {
  read: ({ build, guitar, date, temperature, meter, noted, heights, drawer, notes }: PassportBody): PassportJob => ({
    build: readBuildAt("build", build),
    ...{ guitar, date, temperature, meter, noted, heights, drawer, notes },
  }),
  run: ({ build, ...request }: PassportJob): Passport => passportOf(build, request),
  size: () => "small",
  gate: "render",
} satisfies Job<PassportJob, Passport>;

export const passportPaperJob = {
  run: ({ build, format, link, drawing, ...request }: PaperJob): Promise<Uint8Array> => {
    const paper = { passport: passportOf(build, request), link, drawing };
    return format === "label" ? passportLabel(paper) : passportPage(paper);
  },
  size: () => "small",
  gate: "render",
} satisfies Job<PaperJob, Uint8Array>;

import { describePart } from "../../../bench/parts/describe-part.ts";
import type { Build } from "../../../build-file/schema.ts";
import { VERDICT_BASIS } from "../../../choice/compare/verdict-basis.ts";
import { heardChanges } from "../../../choice/exchange/heard-change.ts";
import type { HeardChangeAnswer, HeardChangeBody } from "../../../contract/heard-change.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { Drawer, OwnedPart } from "../../../drawer/drawer-schema.ts";
import type { Piece } from "../../../drawer/pieces.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { pluckedDrive } from "../sound/plucked-drive.ts";
import { freePieces } from "./free-pieces.ts";

interface HeardChangeJob {
  readonly build: Build;
  readonly drawer: Drawer;
  readonly free: readonly Piece[];
}

function read({ build, drawer, soldered }: HeardChangeBody): HeardChangeJob {
  return { build: readBuildAt("build", build), drawer, free: freePieces(drawer, soldered) };
}

/** A pot's name says its nominal value alone. */
function exchangedFor(part: OwnedPart): HeardChangeAnswer["heard"][number]["to"] {
  const measured = part.kind === "pot" ? part.measured : undefined;
  return { ...describePart(part), ...(measured === undefined ? {} : { measured }) };
}

function run({ build, drawer, free }: HeardChangeJob, { checkpoint }: JobContext): HeardChangeAnswer {
  const { heard, ...rest } = heardChanges(build, free, drawer, { driveOf: pluckedDrive, checkpoint });
  return {
    ...rest,
    heard: heard.map(({ from, to, ...exchange }) => ({ ...exchange, from: describePart(from), to: exchangedFor(to) })),
    basis: VERDICT_BASIS,
  };
}

export const heardChangeJob = {
  read,
  run,
  size: () => "large",
  gate: "render",
} satisfies Job<HeardChangeJob, HeardChangeAnswer>;

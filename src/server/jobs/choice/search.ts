import type { Build } from "../../../build-file/schema.ts";
import { Controls, parseSettings } from "../../../build-file/settings.ts";
import type { Dimension } from "../../../build-file/units.ts";
import { type Choices, candidates, fractions, USUAL_CHOICES } from "../../../choice/search/candidates.ts";
import type { FreeSpec } from "../../../choice/search/free-parts.ts";
import { runSearch, type SearchJob, type WishJob } from "../../../choice/search/search-job.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { FreeBody, SearchAnswer, SearchBody, WishBody } from "../../../contract/search.ts";
import { faultAt } from "../../../errors.ts";
import { MAX_FREE_PARTS } from "../../../limits.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { pluckedDrive } from "../sound/plucked-drive.ts";

function partChoices(build: Build, part: string): [Choices, Dimension] {
  const kind = Object.hasOwn(build.parts, part) ? build.parts[part]!.kind : undefined;
  if (kind === "cap") return [USUAL_CHOICES.toneCaps, "capacitance"];
  return [kind === "pot" ? USUAL_CHOICES.pots : USUAL_CHOICES.resistors, "resistance"];
}

function bleedSpecs(pot: string, style: "cap" | "parallel" | "series"): FreeSpec[] {
  const between = [`${pot}.3`, `${pot}.2`] as const;
  const caps = candidates({}, USUAL_CHOICES.bleedCaps, "capacitance", "free");
  const resistors = candidates({}, USUAL_CHOICES.bleedResistors, "resistance", "free");
  if (style === "series") return [{ kind: "series-pair", between, caps, resistors }];
  const cap: FreeSpec = { kind: "across", add: "cap", between, values: caps, orNone: false };
  if (style === "cap") return [cap];
  return [cap, { kind: "across", add: "resistor", between, values: resistors, orNone: false }];
}

function specsOf(build: Build, free: FreeBody, path: string): FreeSpec[] {
  if ("part" in free) {
    const [usual, dimension] = partChoices(build, free.part);
    const values = candidates(free, usual, dimension, path);
    return [{ kind: "part", part: free.part, values, orNone: free.orNone }];
  }
  if ("taper" in free) return [{ kind: "taper", part: free.taper, values: fractions(free.values, path) }];
  if ("cable" in free) return [{ kind: "cable", values: candidates(free, USUAL_CHOICES.cables, "length", path) }];
  if ("bleed" in free) return bleedSpecs(free.bleed, free.style);
  if ("inWire" in free) {
    const values = candidates(free, USUAL_CHOICES.resistors, "resistance", path);
    return [{ kind: "in-wire", wire: free.inWire, values, orNone: free.orNone }];
  }
  const [usual, dimension] =
    free.add === "cap"
      ? [USUAL_CHOICES.bleedCaps, "capacitance" as const]
      : [USUAL_CHOICES.resistors, "resistance" as const];
  const values = candidates(free, usual, dimension, path);
  return [{ kind: "across", add: free.add, between: free.between, values, orNone: free.orNone }];
}

function wishOf(build: Build, wish: WishBody): WishJob {
  const controls = new Controls(build);
  const settings = parseSettings(controls, wish.settings, "wish.settings");
  switch (wish.kind) {
    case "peak":
      return { kind: "peak", frequencyHz: wish.frequency, settings };
    case "tone-halfway":
      return { kind: "tone-halfway", settings };
    case "keeps-treble":
      return { kind: "keeps-treble", settings, dial: wish.dial };
    case "as-bright": {
      const as = wish.as.map((raw, index) => parseSettings(controls, raw, `wish.as.${index}`));
      return { kind: "as-bright", settings, as };
    }
    case "like": {
      const other = readBuildAt("wish.build", wish.build);
      const like = parseSettings(new Controls(other), wish.like, "wish.like");
      return { kind: "like", settings, target: { build: other, settings: like } };
    }
  }
}

function read(body: SearchBody): SearchJob {
  const build = readBuildAt("build", body.build);
  const free = body.free.flatMap((entry, index) => specsOf(build, entry, `free.${index}`));
  if (free.length > MAX_FREE_PARTS) {
    const message = `gives ${free.length} parts to choose; expected at most ${MAX_FREE_PARTS}`;
    throw faultAt("LIMIT_EXCEEDED", "free", message);
  }
  return { build, free, wish: wishOf(build, body.wish) };
}

export const searchJob = {
  read,
  run: (job: SearchJob, context: JobContext): SearchAnswer =>
    runSearch(job, { checkpoint: context.checkpoint, driveOf: pluckedDrive }),
  size: () => "large",
  gate: "render",
} satisfies Job<SearchJob, SearchAnswer>;

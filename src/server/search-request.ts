import { z } from "zod";
import { type Dimension, parseQuantity, QuantityError } from "../build-file/quantity.ts";
import type { Build } from "../build-file/schema.ts";
import { Controls, parseSettings } from "../build-file/settings.ts";
import { oneOf, quantity, strict } from "../build-file/zod-tools.ts";
import { preferredValues, SERIES_NAMES } from "../choice/search/e-series.ts";
import type { FreeSpec } from "../choice/search/free-parts.ts";
import { buildField, settingsField } from "../contract/fields.ts";
import { faultAt } from "../errors.ts";
import { readBuildAt } from "./http/validation.ts";
import type { WishJob } from "./work/choice-jobs.ts";

const MAX_FREE = 6;
const MAX_VALUES = 200;

const written = z.union([z.number(), z.string().max(40)]);
const choices = {
  values: z.array(written).min(1).max(MAX_VALUES).optional().describe("what is in the drawer"),
  series: oneOf(SERIES_NAMES).optional().describe("of IEC 60063"),
  from: written.optional().describe("the lowest value of the series"),
  to: written.optional().describe("the highest value of the series"),
};
const orNone = z.boolean().default(false).describe("whether leaving the part out is a choice too");
const name = z.string().min(1).max(120);
const pair = z.tuple([name, name]);

const freeField = z.union(
  [
    strict({ part: name.describe("a cap, resistor or pot of the build"), orNone, ...choices }),
    strict({ taper: name.describe("a pot whose fraction at half rotation is free"), values: choices.values }),
    strict({ cable: z.literal(true).describe("the cable's length"), values: choices.values }),
    strict({
      add: oneOf(["cap", "resistor"]),
      between: pair.describe("two lugs to put it across, such as a load resistor from hot to ground"),
      orNone,
      ...choices,
    }),
    strict({ inWire: pair.describe("a wire to cut for a resistor in series"), orNone, ...choices }),
    strict({
      bleed: name.describe("a volume pot to put a treble bleed across"),
      style: oneOf(["cap", "parallel", "series"]).default("parallel"),
    }),
  ],
  { error: () => 'expected one of "part", "taper", "cable", "add" with "between", "inWire" or "bleed"' },
);

const wishField = z.discriminatedUnion(
  "kind",
  [
    strict({
      kind: z.literal("peak"),
      frequency: quantity("frequency", { above: 0, max: 20_000 }, "where the peak should stand"),
      settings: settingsField.default({}),
    }),
    strict({ kind: z.literal("tone-halfway"), settings: settingsField.default({}) }),
    strict({
      kind: z.literal("keeps-treble"),
      dial: z.number().gt(0).lt(10).default(5).describe("the volume that should sound as 10 does, only softer"),
      settings: settingsField.default({}),
    }),
    strict({
      kind: z.literal("as-bright"),
      settings: settingsField.describe("the setting to be made as bright"),
      as: z.array(settingsField).min(1).max(10).describe("as the mean of these"),
    }),
    strict({
      kind: z.literal("like"),
      build: buildField,
      like: settingsField.default({}).describe("of the other build"),
      settings: settingsField.default({}).describe("of this build"),
    }),
  ],
  { error: () => 'expected an object whose "kind" is "peak", "tone-halfway", "keeps-treble", "as-bright" or "like"' },
);

export const searchBodySchema = strict({
  build: buildField,
  free: z.array(freeField).min(1).max(MAX_FREE),
  wish: wishField,
});

type Body = z.output<typeof searchBodySchema>;
type FreeBody = Body["free"][number];
interface Choices {
  readonly values?: readonly (number | string)[] | undefined;
  readonly series?: (typeof SERIES_NAMES)[number] | undefined;
  readonly from?: number | string | undefined;
  readonly to?: number | string | undefined;
}

/** Where nothing is said: customary spans and values (common practice, no source). */
const TONE_CAPS = { series: "E6", from: "1n", to: "100n" } as const;
const BLEED_CAPS = { series: "E12", from: "100p", to: "3.3n" } as const;
const BLEED_RESISTORS = { series: "E12", from: "47k", to: "470k" } as const;
const RESISTORS = { series: "E12", from: "1k", to: "4.7M" } as const;
const POTS = { values: ["100k", "250k", "300k", "500k", "1M"] } as const;
const TAPERS = { values: [0.1, 0.15, 0.2, 0.3, 0.35, 0.5] } as const;
const CABLES = { values: ["1m", "2m", "3m", "4m", "5m", "6m", "8m", "10m"] } as const;

function readValue(written: number | string, dimension: Dimension, path: string): number {
  try {
    const { value } = parseQuantity(written, dimension);
    if (value > 0) return value;
    throw faultAt("REQUEST_INVALID", path, `is ${value}; expected more than 0`);
  } catch (error) {
    if (error instanceof QuantityError) throw faultAt("REQUEST_INVALID", path, error.message);
    throw error;
  }
}

function candidates(given: Choices, usual: Choices, dimension: Dimension, path: string): number[] {
  const isSaid = [given.values, given.series, given.from, given.to].some((field) => field !== undefined);
  const { values, series, from, to } = isSaid ? given : usual;
  if (values) return values.map((value, i) => readValue(value, dimension, `${path}.values.${i}`));
  if (series === undefined || from === undefined || to === undefined)
    throw faultAt("REQUEST_INVALID", path, 'expected either "values" or all of "series", "from" and "to"');
  const [low, high] = [readValue(from, dimension, `${path}.from`), readValue(to, dimension, `${path}.to`)];
  const found = preferredValues(series, low, high);
  if (found.length > 0 && found.length <= MAX_VALUES) return found;
  throw faultAt("REQUEST_INVALID", path, `${series} has ${found.length} values there; expected 1 to ${MAX_VALUES}`);
}

function partChoices(build: Build, part: string): [Choices, Dimension] {
  const kind = Object.hasOwn(build.parts, part) ? build.parts[part]!.kind : undefined;
  if (kind === "cap") return [TONE_CAPS, "capacitance"];
  return [kind === "pot" ? POTS : RESISTORS, "resistance"];
}

function bleedSpecs(pot: string, style: "cap" | "parallel" | "series"): FreeSpec[] {
  const between = [`${pot}.3`, `${pot}.2`] as const;
  const caps = candidates({}, BLEED_CAPS, "capacitance", "free");
  const resistors = candidates({}, BLEED_RESISTORS, "resistance", "free");
  if (style === "series") return [{ kind: "series-pair", between, caps, resistors }];
  const cap: FreeSpec = { kind: "across", add: "cap", between, values: caps, orNone: false };
  if (style === "cap") return [cap];
  return [cap, { kind: "across", add: "resistor", between, values: resistors, orNone: false }];
}

/** A fraction of a track between 0 and 1. */
function fractions(values: readonly (number | string)[] | undefined, path: string): number[] {
  return (values ?? TAPERS.values).map((value, i) => {
    const fraction = Number(value);
    if (fraction > 0 && fraction < 1) return fraction;
    throw faultAt(
      "REQUEST_INVALID",
      `${path}.values.${i}`,
      `"${value}" is no fraction; expected a number between 0 and 1`,
    );
  });
}

function specsOf(build: Build, free: FreeBody, path: string): FreeSpec[] {
  if ("part" in free) {
    const [usual, dimension] = partChoices(build, free.part);
    const values = candidates(free, usual, dimension, path);
    return [{ kind: "part", part: free.part, values, orNone: free.orNone }];
  }
  if ("taper" in free) return [{ kind: "taper", part: free.taper, values: fractions(free.values, path) }];
  if ("cable" in free) return [{ kind: "cable", values: candidates(free, CABLES, "length", path) }];
  if ("bleed" in free) return bleedSpecs(free.bleed, free.style);
  if ("inWire" in free) {
    const values = candidates(free, RESISTORS, "resistance", path);
    return [{ kind: "in-wire", wire: free.inWire, values, orNone: free.orNone }];
  }
  const [usual, dimension] =
    free.add === "cap" ? [BLEED_CAPS, "capacitance" as const] : [RESISTORS, "resistance" as const];
  const values = candidates(free, usual, dimension, path);
  return [{ kind: "across", add: free.add, between: free.between, values, orNone: free.orNone }];
}

function wishOf(build: Build, wish: Body["wish"]): WishJob {
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

/**
 * The search that a request asks for.
 * @throws PresolderError naming the field at fault
 */
export function searchJobOf(body: Body) {
  const build = readBuildAt("build", body.build);
  const free = body.free.flatMap((entry, index) => specsOf(build, entry, `free.${index}`));
  if (free.length > MAX_FREE) {
    const message = `gives ${free.length} parts to choose; expected at most ${MAX_FREE}`;
    throw faultAt("LIMIT_EXCEEDED", "free", message);
  }
  return { build, free, wish: wishOf(build, body.wish) };
}

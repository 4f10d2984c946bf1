import { dimensionOfField } from "../../build-file/field-dimension.ts";
import type { Build } from "../../build-file/schema.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { symmetricEigen } from "../../choice/fit/symmetric-eigen.ts";
import { valueAt } from "../../choice/variant.ts";
import { capitalised, listed } from "../../english.ts";
import type { Departure } from "../departures/departure.ts";
import { multipleAt } from "../model/unknowns.ts";
import { covarianceOf } from "../weigh/covariance.ts";
import type { Weighed } from "../weigh/weighed.ts";
import type { Weigher } from "../weigh/weigher.ts";

/** A part's value as the takes have it. */
export interface ToldPart {
  readonly part: string;
  readonly field: string;
  readonly title: string;
  /** SI units. */
  readonly drawn: number;
  readonly value: number;
  readonly standardError: number;
  readonly tolerance: number;
  readonly told: "takes" | "tolerance";
  readonly message: string;
}

/** Values that the takes tell together and not each for itself. */
export interface ToldTogether {
  readonly parts: readonly { readonly part: string; readonly field: string }[];
  readonly message: string;
}

/** A value whose error the takes make narrower than this share of what was known before is told by them. */
const TOLD = 0.7;
/** A combination of values narrower than this is told. */
const TOGETHER = 0.25;
/** Values that make up less of a combination, by the square of their share, are not named. */
const NAMED_SHARE = 0.15;
const MOST_NAMED = 4;

const dimensionOf = (field: string) => dimensionOfField(field) ?? "resistance";

/** "inductance", "core loss", "core loss 1, resistance". */
function coilValue([name, section, value]: readonly string[]): string {
  if (name !== "loss") return dimensionOf(name!);
  return section && value ? `core loss ${Number(section) + 1}, ${dimensionOf(value)}` : "core loss";
}

/** "the slug coil of the bridge humbucker: inductance". */
function titleOf({ parts }: Build, words: ReadonlyMap<string, string>, part: string, field: string): string {
  const [head, coil, ...rest] = field.split(".");
  const who = words.get(part) ?? part;
  const pickup = parts[part];
  const isOnly = pickup?.kind === "pickup" && Object.keys(pickup.coils).length === 1;
  if (head !== "coils") return `${who}: ${dimensionOf(field)}${head === "gangs" ? ", second track" : ""}`;
  const what = coilValue(rest);
  return isOnly ? `${who}: ${what}` : `${who}, ${coil} coil: ${what}`;
}

interface Told extends ToldPart {
  readonly index: number;
}

/**
 * What an unknown counts from in the guard that departs so; undefined for a winding that is broken or shorted, which has no value. A pot
 * that was changed has no measured track any more.
 */
function baseOf(departed: Build, { edits }: Departure, part: string, field: string, drawn: number): number | undefined {
  const base = valueAt(departed, part, field) ?? valueAt(departed, part, field.replace(/measured$/, "resistance"));
  const isOther = edits.some((edit) => "factor" in edit && edit.part === part);
  return isOther || base === drawn ? base : undefined;
}

function toldParts(build: Build, weigher: Weigher, { departure, point }: Weighed, covariance: Float64Array): Told[] {
  const words = partWords(build.parts);
  const departed = weigher.guardOf(departure).build;
  const deviations = weigher.deviationsOf(departure);
  const size = deviations.length;
  return point.unknowns.all.flatMap((unknown, index): Told[] => {
    const { part, field, law, tolerance } = unknown;
    const drawn = law === "log" && part in build.parts ? valueAt(build, part, field) : undefined;
    if (drawn === undefined || field === "coupling") return [];
    const base = baseOf(departed, departure, part, field, drawn);
    if (base === undefined) return [];
    const value = base * multipleAt(unknown, point.values[index]!);
    const error = Math.sqrt(Math.max(0, covariance[index * size + index]!));
    const told = error < TOLD * deviations[index]! ? "takes" : "tolerance";
    const [shown, was] = [value, drawn].map((each) => showQuantity(each, dimensionOf(field), 3));
    const percent = `${(100 * error).toPrecision(2)} %`;
    const title = titleOf(build, words, part, field);
    const message =
      told === "takes"
        ? `${capitalised(title)} is ${shown} ± ${percent}; drawn as ${was}.`
        : `${capitalised(title)}: these takes tell no more than its tolerance; drawn as ${was}.`;
    return [{ index, part, field, title, drawn, value, standardError: value * error, tolerance, told, message }];
  });
}

/** Combinations by the eigenvectors of what the takes leave of the parts' tolerances. */
function together(parts: readonly Told[], deviations: Float64Array, covariance: Float64Array): ToldTogether[] {
  const untold = parts.filter(({ told }) => told === "tolerance");
  const size = deviations.length;
  if (untold.length < 2) return [];
  const shares = untold.flatMap(({ index: a }) =>
    untold.map(({ index: b }) => covariance[a * size + b]! / (deviations[a]! * deviations[b]!)),
  );
  const { values, vectors } = symmetricEigen(Float64Array.from(shares), untold.length);
  return Array.from(values).flatMap((value, which): ToldTogether[] => {
    if (Math.sqrt(Math.max(0, value)) > TOGETHER) return [];
    const members = untold
      .map((part, k) => ({ part, weight: vectors[k * untold.length + which]! ** 2 }))
      .filter(({ weight }) => weight > NAMED_SHARE)
      .sort((a, b) => b.weight - a.weight)
      .slice(0, MOST_NAMED);
    if (members.length < 2) return [];
    const names = members.map(({ part }) => part.title);
    return [
      {
        parts: members.map(({ part: { part, field } }) => ({ part, field })),
        message: `${capitalised(listed(names))} are told only together: one of them may be off as long as the others make up for it.`,
      },
    ];
  });
}

/** What the takes tell of the parts' values if the guard is so. */
export function partsTold(build: Build, weigher: Weigher, weighed: Weighed) {
  const deviations = weigher.deviationsOf(weighed.departure);
  const covariance = covarianceOf(weighed.fit.factor, deviations.length);
  const parts = toldParts(build, weigher, weighed, covariance);
  return {
    parts: parts.map(({ index: _, ...part }): ToldPart => part),
    together: together(parts, deviations, covariance),
  };
}

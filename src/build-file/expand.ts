import type { z } from "zod";
import { faultAt } from "../errors.ts";
import { parseLongForm } from "./build-file.ts";
import { Draft } from "./plans/draft.ts";
import { addGrounds, groundPoint } from "./plans/grounds.ts";
import { layoutOf } from "./plans/layouts.ts";
import { applyPickupOptions } from "./plans/pickup-options.ts";
import { placeOf } from "./plans/places.ts";
import { addPickups, pickupNames } from "./plans/plan-pickups.ts";
import { type Plan, planSchema } from "./plans/plan-schema.ts";
import { PushPulls } from "./plans/push-pulls.ts";
import { addResistors } from "./plans/resistors.ts";
import { addSelector, applyAutomaticSplits } from "./plans/selector.ts";
import { wireSignalPath } from "./plans/signal-path.ts";
import { addToneCaps, addTones, feedTones } from "./plans/tones.ts";
import { addVolumes, finishVolume } from "./plans/volumes.ts";
import { type BuildInput, cableSchema, loadSchema, longFormSchema, stringsSchema } from "./schema.ts";
import { parseOrThrow, strict } from "./zod-tools.ts";

export const planFormSchema = strict({
  presolder: longFormSchema.shape.presolder,
  title: longFormSchema.shape.title,
  notes: longFormSchema.shape.notes,
  plan: planSchema,
  cable: cableSchema.optional(),
  load: loadSchema.optional(),
  strings: stringsSchema.optional(),
});

/** A build file that describes its guard by a plan. */
export type PlanFormInput = z.input<typeof planFormSchema>;

/** Whether a build file is a plan, which `expandBuild` turns into the long form. */
export function hasPlan(input: unknown): input is { plan: unknown } {
  return typeof input === "object" && input !== null && "plan" in input;
}

/**
 * The parts and wires of a plan that the schema has read.
 * @throws PresolderError BUILD_INVALID where it cannot be wired
 */
export function draftOf(plan: Plan, scaleMetres: number): Draft {
  const layout = layoutOf(plan.layout);
  const draft = new Draft();
  const taps = addPickups(draft, plan, layout, scaleMetres);
  const names = pickupNames(plan, layout);
  const selector = addSelector(draft, layout, names[0]!);
  const volumes = addVolumes(draft, plan, layout);
  const tones = addTones(draft, plan, layout, names);
  const pots = [...volumes, ...tones].map((pot) => pot.name);
  const ground = groundPoint(plan, volumes[0]!.name);
  const pushPulls = new PushPulls(draft, pots);

  const automatic = applyPickupOptions({ draft, plan, taps, pushPulls, ground });
  const lugs = applyAutomaticSplits(draft, plan, layout, selector, automatic, ground);
  const signal = { plan, layout, lugs, volumes };
  draft.part("jack", { kind: "jack", label: "Output jack", place: placeOf(layout, "jack") });
  const wired = wireSignalPath(draft, signal, taps, pushPulls);
  feedTones(draft, { ...signal, lugs: wired }, tones);
  addToneCaps(draft, plan, tones);
  for (const [index, volume] of volumes.entries())
    finishVolume(draft, plan, volume, volumes.length === 1 ? "" : `${index + 1}`);
  addResistors(draft, plan, taps, pots, ground);
  addGrounds(draft, plan, layout, pots, taps.values(), ground);
  return draft;
}

/**
 * Turns a plan into the long form that a technician would wire from it, quantities as they were written. A long form is
 * checked and returned as it is. The same plan always gives the same long form.
 * @throws PresolderError BUILD_INVALID with one fault for every field at fault; paths begin with `build`.
 */
export function expandBuild(input: unknown): BuildInput {
  if (!hasPlan(input)) {
    parseLongForm(input);
    return input as BuildInput;
  }
  for (const key of ["parts", "wires"])
    if (key in input)
      throw faultAt("BUILD_INVALID", `build.${key}`, `expected either \`plan\` or \`${key}\`, not both`);
  const form = parseOrThrow(planFormSchema, input, "BUILD_INVALID", ["build"]);
  const { parts, wires } = draftOf(form.plan, form.strings?.scale ?? stringsSchema.parse({}).scale);
  const written = input as unknown as PlanFormInput;
  const long: BuildInput = {
    presolder: 1,
    title: form.title,
    ...(form.notes === undefined ? {} : { notes: form.notes }),
    parts,
    wires,
    ...(written.cable ? { cable: written.cable } : {}),
    ...(written.load ? { load: written.load } : {}),
    ...(written.strings ? { strings: written.strings } : {}),
  };
  parseLongForm(long);
  return long;
}

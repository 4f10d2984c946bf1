import * as z from "zod";
import { PICKUP_TYPE_NAMES, pickupType } from "../catalogue/pickup-types.ts";
import { suggestion } from "../nearest.ts";
import { coilSchema, partName, pickupSchema, potSchema } from "../part-schemas.ts";
import { oneOf, strict, writtenQuantity } from "../zod-tools.ts";
import { LAYOUT_NAMES } from "./layouts.ts";

const ohms = (meaning: string) => writtenQuantity("resistance", { above: 0, max: 1e9 }, meaning);
const farads = (meaning: string) => writtenQuantity("capacitance", { above: 0, max: 1e-4 }, meaning);

const typeName = z.string().superRefine((name, context) => {
  if (!pickupType(name))
    context.addIssue({
      code: "custom",
      message: `"${name.slice(0, 60)}" is no pickup type of the catalogue${suggestion(name, PICKUP_TYPE_NAMES)}`,
    });
});

const lengthUpTo = (max: number, meaning: string) => writtenQuantity("length", { above: 0, max }, meaning);

const changedCoil = strict({
  resistance: writtenQuantity("resistance", { above: 0, max: 1e7 }, "DC resistance at 20 °C").optional(),
  inductance: writtenQuantity("inductance", { above: 0, max: 1000 }, "inductance").optional(),
  capacitance: writtenQuantity("capacitance", { min: 0, max: 1e-6 }, "winding capacitance").optional(),
  loss: coilSchema.shape.loss,
  shielding: coilSchema.shape.shielding,
  winding: coilSchema.shape.winding.unwrap().optional(),
  magnet: coilSchema.shape.magnet.unwrap().optional(),
  output: coilSchema.shape.output.unwrap().optional(),
  distance: lengthUpTo(2, "from the bridge to the coil's middle").optional(),
  slant: writtenQuantity("length", { min: -0.2, max: 0.2 }, "how much nearer the bridge the treble end is").optional(),
  aperture: lengthUpTo(0.2, "length of string the coil senses").optional(),
  tolerance: coilSchema.shape.tolerance,
});

/** Changes to a catalogue type; a coil's values are changed under its own name. */
const changedType = strict({
  type: typeName,
  coils: z.record(partName, changedCoil).optional(),
  distance: lengthUpTo(2, "from the bridge to the pickup's middle").optional(),
  conductors: pickupSchema.shape.conductors,
  coupling: pickupSchema.shape.coupling,
  metal: pickupSchema.shape.metal,
  label: pickupSchema.shape.label,
});

export const planPickup = z.union([typeName, changedType, pickupSchema], {
  error: () =>
    `expected a pickup type (${PICKUP_TYPE_NAMES.slice(0, 4).join(", ")}, …), an object with "type" and changes, or a whole pickup part`,
});

const potShape = {
  taper: potSchema.shape.taper.unwrap().optional(),
  midpoint: potSchema.shape.midpoint,
  measured: ohms("what a meter read between the outer lugs").optional(),
};

const volume = strict({
  pot: ohms("track resistance"),
  ...potShape,
  pickups: z.array(partName).min(1).optional().describe("with two volumes: whose volume it is"),
});

const tone = strict({
  pot: ohms("track resistance"),
  ...potShape,
  noLoad: z.boolean().optional(),
  cap: farads("the tone cap; left out where tones share one").optional(),
  pickups: z.array(partName).min(1).optional().describe("left out: a master tone"),
});

/** Where an option is worked from: a pot's push-pull switch by the pot's name, or a switch of its own. */
const by = z.union([z.string(), strict({ switch: partName })], {
  error: () => 'expected a pot, such as "tone2", for a push-pull, or {"switch": a name} for a switch of its own',
});

const split = strict({
  pickup: z.string(),
  by: z.union([
    z.string(),
    strict({ switch: partName }),
    strict({ position: z.int().min(1).max(5).describe("split automatically in this position") }),
  ]),
  keeps: z.string().optional().describe("the coil that stays on; default: the coil nearest the hot lead"),
});

const oneOrMore = <Schema extends z.ZodType>(schema: Schema) =>
  z.union([schema, z.array(schema).max(6)]).transform((value) => (Array.isArray(value) ? value : [value]));

export const planSchema = strict({
  layout: oneOf(LAYOUT_NAMES),
  pickups: z.record(partName, planPickup),
  volume: z.union([ohms("track resistance of every volume").transform((pot) => ({ pot })), volume]).optional(),
  volumes: z.array(volume).min(1).max(2).optional(),
  independentVolumes: z.boolean().default(false).describe("pickups on the wipers, so that no volume mutes the other"),
  tones: z.array(tone).max(2).default([]),
  sharedCap: farads("one cap that the tones share").optional(),
  toneFeed: oneOf(["before-volume", "after-volume"]).default("before-volume"),
  trebleBleed: strict({
    capacitance: farads("cap from the volume's input to its output"),
    parallel: ohms("resistor beside the cap").optional(),
    series: ohms("resistor in line with the cap").optional(),
  })
    .refine(({ parallel, series }) => parallel === undefined || series === undefined, {
      message: "expected either `parallel` or `series`",
    })
    .optional(),
  split: oneOrMore(split).default([]),
  seriesParallel: oneOrMore(strict({ pickup: z.string(), by })).default([]),
  phase: oneOrMore(strict({ pickup: z.string(), by })).default([]),
  seriesLink: strict({ pickups: z.tuple([z.string(), z.string()]), by }).optional(),
  alwaysOn: strict({ pickup: z.string(), by }).optional().describe("adds this pickup to whatever is selected"),
  resistors: z
    .array(
      strict({
        across: z.string().describe("a pot, for its outer lugs, or a pickup"),
        resistance: ohms("resistance"),
      }),
    )
    .max(6)
    .default([]),
  grounds: oneOf(["cases", "star"]).default("cases").describe("everything to the pot cases, or to one ground point"),
  shield: z.boolean().default(true).describe("a shielding foil under the guard, with its own ground wire"),
});

export type Plan = z.infer<typeof planSchema>;
export type PlanInput = z.input<typeof planSchema>;
export type PlanPickup = z.infer<typeof planPickup>;
export type Where = string | { switch: string };
export type PlanTone = Plan["tones"][number];
export type PlanVolume = z.infer<typeof volume>;

import * as z from "zod";
import { DEFAULT_SCALE_METRES } from "../lengths.ts";
import { MAX_PARTS, MAX_WIRES } from "../limits.ts";
import {
  capSchema,
  type coilSchema,
  jackSchema,
  partName,
  pickupSchema,
  potSchema,
  resistorSchema,
  switchSchema,
  terminalSchema,
} from "./part-schemas.ts";
import { WIRE_KINDS } from "./wire-kinds.ts";
import { WIRE_MEANS } from "./wire-means.ts";
import { oneOf, quantity, strict } from "./zod-tools.ts";

const PART_KINDS = ["pickup", "pot", "switch", "cap", "resistor", "jack", "terminal"] as const;

export const partSchema = z.discriminatedUnion(
  "kind",
  [pickupSchema, potSchema, switchSchema, capSchema, resistorSchema, jackSchema, terminalSchema],
  { error: () => `expected an object whose "kind" is one of ${PART_KINDS.map((kind) => `"${kind}"`).join(", ")}` },
);

const lugName = z.string().min(1).max(120);

export const wireSchema = z.union([
  z.tuple([lugName, lugName]).transform(([from, to]) => ({ from, to })),
  strict({
    from: lugName,
    to: lugName,
    how: oneOf(WIRE_MEANS).optional().describe("a wire (default), a bent lug, a part's own leg or lead, …"),
    colour: z.string().max(30).optional(),
    length: quantity("length", { above: 0, max: 20 }, "cut length").optional(),
    kind: oneOf(WIRE_KINDS).optional().describe("as it is sold; a screened wire's capacitance is in the curve"),
    capacitance: quantity("capacitancePerLength", { min: 0, max: 1e-8 }, "of a screened wire, a metre")
      .optional()
      .describe("from core to screen; 100 pF a metre where left out"),
  }).superRefine(({ kind, length, capacitance }, context) => {
    if (kind === "screened" && length === undefined)
      context.addIssue({
        code: "custom",
        path: ["length"],
        message: "expected the length of a screened wire, since its capacitance is by the metre",
      });
    if (kind !== "screened" && capacitance !== undefined)
      context.addIssue({
        code: "custom",
        path: ["capacitance"],
        message: 'expected none, since only a wire of kind "screened" has a screen',
      });
  }),
]);

export const DEFAULT_LOAD_OHMS = 1e6;

export const cableSchema = strict({
  length: quantity("length", { min: 0, max: 200 }, "cable length"),
  capacitance: quantity("capacitancePerLength", { min: 0, max: 1e-8 }, "capacitance a metre"),
  resistance: quantity("resistancePerLength", { min: 0, max: 1000 }, "of the centre conductor, a metre")
    .optional()
    .describe("of the centre conductor, Ω a metre; absent: none, as a usual lead's 0.2 Ω changes nothing"),
});

export const loadSchema = strict({
  resistance: quantity("resistance", { above: 0, max: 1e12 }, "input resistance").default(DEFAULT_LOAD_OHMS),
  capacitance: quantity("capacitance", { min: 0, max: 1e-6 }, "input capacitance").default(0),
  stopper: quantity("resistance", { above: 0, max: 1e9 }, "in line")
    .optional()
    .describe("Ω before the capacitance, as at a valve's grid; the curve is that at the input, in front of it"),
});

export const stringsSchema = strict({
  scale: quantity("length", { min: 0.2, max: 2 }, "scale length").default(DEFAULT_SCALE_METRES),
  gauges: z
    .array(quantity("length", { min: 1e-4, max: 5e-3 }, "string diameter, from the highest string down"))
    .min(1)
    .max(12)
    .optional(),
});

/** The long form: every part and every wire named. All quantities come out in SI units. */
export const longFormSchema = strict({
  presolder: z.literal(1, { error: () => "expected 1, the format's version" }),
  title: z.string().max(200).default(""),
  notes: z.string().max(4000).optional(),
  parts: z
    .record(partName, partSchema)
    .refine((parts) => Object.keys(parts).length <= MAX_PARTS, `expected at most ${MAX_PARTS} parts`),
  wires: z.array(wireSchema).max(MAX_WIRES, `expected at most ${MAX_WIRES} wires`),
  cable: cableSchema.optional().describe("absent: no cable"),
  load: loadSchema.default({ resistance: DEFAULT_LOAD_OHMS, capacitance: 0 }).describe("absent: 1 MΩ"),
  strings: stringsSchema.default({ scale: DEFAULT_SCALE_METRES }),
});

export type Build = z.infer<typeof longFormSchema>;
/** The long form as a person writes it, quantities still text. */
export type BuildInput = z.input<typeof longFormSchema>;
export type Part = Build["parts"][string];
export type PartOf<Kind extends Part["kind"]> = Extract<Part, { kind: Kind }>;
export type Coil = z.infer<typeof coilSchema>;
export type Pickup = PartOf<"pickup">;
export type Pot = PartOf<"pot">;
export type Wire = Build["wires"][number];

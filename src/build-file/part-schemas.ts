import * as z from "zod";
import { MAX_LOSS_FACTOR, MAX_LUG_GRID, MAX_LUG_NAME_CHARS, MAX_METALS, MAX_NAME_CHARS } from "../limits.ts";
import { JACK_BODIES, POT_BODIES, SHAFT_BODIES, SWITCH_BODIES } from "./bodies/body-names.ts";
import { DIELECTRIC_NAMES } from "./catalogue/dielectrics.ts";
import { MAX_ROTARY_POLES, MAX_THROWS, NAMED_SWITCH_TYPES, ON_ON_ON_PATTERNS, SWITCH_TYPES } from "./switch-types.ts";
import { TURN_STEP_DEGREES } from "./turn-step.ts";
import { oneOf, quantity, quantityWithTolerance, strict } from "./zod-tools.ts";

const tolerance = z.number().min(0).max(0.9).optional().describe("fraction; default: common practice for the kind");

const TURN_WORDS = `expected whole steps of ${TURN_STEP_DEGREES} degrees, from -345 to 345`;

const place = strict({
  x: quantity("length", { min: -2, max: 2 }, "along the guard, from the bridge towards the neck"),
  y: quantity("length", { min: -2, max: 2 }, "across the guard, from the bass side towards the treble side"),
  turn: z
    .int({ error: TURN_WORDS })
    .min(-345, TURN_WORDS)
    .max(345, TURN_WORDS)
    .multipleOf(TURN_STEP_DEGREES, TURN_WORDS)
    .optional()
    .describe(
      "degrees counter-clockwise from the back, in steps of 15; a part that says it, 0 included, is drawn just where it sits",
    ),
})
  .optional()
  .describe("where the part sits on the guard");

/** What every part may carry besides its own values. */
const common = {
  label: z.string().min(1).max(80).optional().describe("what the part is called on the page and in sheets"),
  place,
};

const resistance = (meaning: string) => quantity("resistance", { above: 0, max: 1e9 }, meaning);

const NAME_PATTERN = /^[A-Za-z][A-Za-z0-9_-]{0,31}$/;

/** Names of parts and coils. Names that every JavaScript object answers to are refused. */
export const partName = z
  .string()
  .regex(NAME_PATTERN, "expected a name of at most 32 letters, digits, - and _ that begins with a letter")
  .refine((name) => !(name in Object.prototype), "this name is reserved");

export const lossSection = strict({
  resistance: resistance("bridges the inductance"),
  inductance: quantity(
    "inductance",
    { above: 0, max: 1000 },
    "in the main branch; left out: all of the coil's",
  ).optional(),
});

const metal = z.union(
  [
    strict({
      pole: quantity("frequency", { min: 50, max: 1e6 }, "3 dB less at this frequency, 6 dB an octave above"),
    }),
    strict({
      shelf: quantity("frequency", { min: 50, max: 1e6 }, "half of `depth` less at this frequency"),
      depth: z.number().min(0).max(60).describe("dB less far above it"),
    }),
  ],
  { error: () => 'expected {"pole": Hz}, or {"shelf": Hz, "depth": dB}' },
);

const shielding = z
  .union([metal, z.array(metal).max(MAX_METALS)], {
    error: () => `expected {"pole": Hz}, {"shelf": Hz, "depth": dB}, or a list of up to ${MAX_METALS}`,
  })
  .optional()
  .describe(
    "what metal about the coil takes of its EMF: a cover or can a pole, steel poles and a base plate a shelf; of a list, all; of an empty one, nothing",
  );

export const coilSchema = strict({
  resistance: quantity("resistance", { above: 0, max: 1e7 }, "DC resistance at 20 °C"),
  inductance: quantity("inductance", { above: 0, max: 1000 }, "inductance"),
  capacitance: quantity("capacitance", { min: 0, max: 1e-6 }, "winding capacitance across the coil's leads").default(0),
  loss: z
    .union([
      resistance("resistor across the inductance, for core and eddy-current loss"),
      z.array(lossSection).min(1).max(8),
    ])
    .optional(),
  winding: oneOf(["forward", "reverse"]).default("forward"),
  magnet: oneOf(["north", "south"]).default("north"),
  shielding,
  output: z
    .number()
    .min(0)
    .max(100)
    .default(1)
    .describe("EMF relative to a reference single coil, at the height it has"),
  distance: quantity(
    "length",
    { above: 0, max: 2 },
    "from the bridge saddles to the coil's middle, along the strings",
  ).optional(),
  slant: quantity(
    "length",
    { min: -0.2, max: 0.2 },
    "how much nearer the bridge the treble end is than the bass end",
  ).optional(),
  aperture: quantity("length", { min: 0, max: 0.2 }, "length of string the coil senses").optional(),
  tolerance,
});

export const pickupSchema = strict({
  kind: z.literal("pickup"),
  ...common,
  coils: z.record(partName, coilSchema).refine((coils) => {
    const count = Object.keys(coils).length;
    return count >= 1 && count <= 2;
  }, "expected one coil or two"),
  conductors: z
    .union([z.literal(2), z.literal(4)], { error: () => "expected 2 or 4" })
    .optional()
    .describe("with two coils: 4 brings every lead out (default), 2 joins the coils in series, hum cancelling, inside"),
  coupling: z
    .number()
    .gt(-1)
    .lt(1)
    .optional()
    .describe("mutual inductance coefficient k for the series-aiding connection"),
  metal: oneOf(["cover", "baseplate", "braid", "none"]).optional().describe("the metal behind the lug `shield`"),
  type: z.string().max(60).optional().describe("catalogue name the values came from"),
  leads: z
    .record(z.string().max(MAX_LUG_NAME_CHARS), z.string().trim().min(1).max(MAX_NAME_CHARS))
    .optional()
    .describe('what the lead on each lug is called, by colour or mark: {"hot": "red", "shield": "bare"}'),
  tolerance,
});

const taper = z.union(
  [
    oneOf(["linear", "audio", "reverse-audio"]),
    z
      .array(z.tuple([z.number().min(0).max(1), z.number().min(0).max(1)]))
      .min(2)
      .max(64)
      .superRefine((table, context) => {
        const ordered = table.every(
          (point, i) => i === 0 || (point[0] > table[i - 1]![0] && point[1] >= table[i - 1]![1]),
        );
        const [first, last] = [table[0]!, table[table.length - 1]!];
        if (!ordered) context.addIssue({ code: "custom", message: "rotations must rise and fractions must not fall" });
        if (first[0] !== 0 || last[0] !== 1)
          context.addIssue({ code: "custom", message: "the first rotation must be 0 and the last 1" });
      }),
  ],
  { error: () => 'expected "linear", "audio", "reverse-audio" or a table of [rotation, fraction] points' },
);

/** Six pots of 100 kΩ read 1.04 to 1.23 Ω (measurements beside B. Holmes and M. van Walstijn, DAFx-19, 2019). */
export const USUAL_END_OHMS = 1;

const degrees = z.number().min(30).max(3600);

const track = {
  resistance: quantity("resistance", { above: 0, max: 1e8 }, "nominal track resistance"),
  taper: taper.default("linear"),
  angles: strict({ mechanical: degrees.default(300), electrical: degrees })
    .refine(({ mechanical, electrical }) => electrical <= mechanical, {
      error: ({ input }) => {
        const { mechanical, electrical } = input as { mechanical: number; electrical: number };
        return `electrical is ${electrical}°; expected at most the mechanical ${mechanical}°`;
      },
    })
    .optional()
    .describe("of turn, and of what changes in it"),
  midpoint: z.number().gt(0).lt(1).optional().describe("fraction of the track below the wiper at half rotation"),
  endResistance: quantity("resistance", { min: 0, max: 1e6 }, "left between wiper and lug at either end").default(
    USUAL_END_OHMS,
  ),
};

const BODY_MEANING = "which of its shapes; absent: the usual one";

const lugName = z.string().regex(/^[A-Za-z0-9_-]{1,16}$/, "expected a lug name");

export const switchSpecShape = {
  type: oneOf(SWITCH_TYPES).optional(),
  centre: oneOf(ON_ON_ON_PATTERNS).optional().describe("contacts of an on-on-on switch in its centre"),
  poles: z.int().min(1).max(MAX_ROTARY_POLES).optional().describe("of a rotary switch"),
  throws: z.int().min(2).max(MAX_THROWS).optional().describe("of a rotary switch"),
  positions: z
    .array(z.array(z.array(lugName).min(1).max(24)).max(24))
    .min(1)
    .max(24)
    .optional()
    .describe("one's own contacts: for each position, the groups of joined lugs"),
};

const lugRows = z
  .array(z.array(lugName.nullable()).min(1).max(MAX_LUG_GRID))
  .min(1)
  .max(MAX_LUG_GRID)
  .optional()
  .describe(
    "lugs as found, from the back: rows from treble to bass side, each from bridge to neck, null where none is; in place of `body`",
  );

const shaftSchema = strict({
  ...switchSpecShape,
  body: oneOf(SHAFT_BODIES).optional().describe("how its lugs lie behind the pot"),
});

export const potSchema = strict({
  kind: z.literal("pot"),
  ...common,
  body: oneOf(POT_BODIES).optional().describe(BODY_MEANING),
  role: oneOf(["volume", "tone", "blend", "other"]).optional(),
  ...track,
  measured: resistance("what a meter read between the outer lugs, in place of nominal").optional(),
  noLoad: z.boolean().default(false).describe("lifts lug 3's track at dial 10"),
  gangs: z
    .array(strict({ ...track, measured: resistance("measured track resistance").optional() }))
    .length(1)
    .optional()
    .describe("a second track on its shaft, lugs b1, b2, b3"),
  drives: z
    .union([oneOf(NAMED_SWITCH_TYPES).transform((type): z.infer<typeof shaftSchema> => ({ type })), shaftSchema])
    .optional()
    .describe("a switch on the same shaft; its lugs are <pot>.s.<lug>"),
  tolerance,
});

export const switchSchema = strict({
  kind: z.literal("switch"),
  ...common,
  body: oneOf(SWITCH_BODIES).optional().describe(BODY_MEANING),
  lugRows,
  ...switchSpecShape,
}).superRefine((spec, context) => {
  const ways = [spec.type, spec.positions].filter((way) => way !== undefined).length;
  if (ways !== 1)
    context.addIssue({ code: "custom", message: "expected either `type` or `positions`", path: ["type"] });
  if (spec.type === "rotary" && (spec.poles === undefined || spec.throws === undefined))
    context.addIssue({ code: "custom", message: "a rotary switch needs `poles` and `throws`", path: ["poles"] });
});

export const capSchema = strict({
  kind: z.literal("cap"),
  ...common,
  capacitance: quantityWithTolerance("capacitance", { above: 0, max: 1e-4 }, "capacitance at 1 kHz"),
  dielectric: oneOf(DIELECTRIC_NAMES).optional().describe("brings its loss and usual tolerance; absent: no loss"),
  lossFactor: z.number().min(0).max(MAX_LOSS_FACTOR).optional().describe("tan δ, in place of the dielectric's"),
  tolerance,
}).transform(({ capacitance, ...part }) => {
  const printed = part.tolerance ?? capacitance.tolerance;
  return { ...part, capacitance: capacitance.value, ...(printed === undefined ? {} : { tolerance: printed }) };
});

export const resistorSchema = strict({
  kind: z.literal("resistor"),
  ...common,
  resistance: resistance("resistance"),
  tolerance,
});

export const jackSchema = strict({
  kind: z.literal("jack"),
  ...common,
  body: oneOf(JACK_BODIES).optional().describe(BODY_MEANING),
  stereo: z.boolean().default(false).describe("adds the lug `ring`"),
});
export const terminalSchema = strict({
  kind: z.literal("terminal"),
  ...common,
  role: oneOf(["claw", "shield", "ground", "other"]).optional().describe("the spring claw, a shielding foil"),
});

import { z } from "zod";
import { DEFAULT_ALLOWANCES } from "../bench/sheet/cut-list.ts";
import { SYMPTOM_CODES, SYMPTOMS } from "../bench/symptoms/symptom-codes.ts";
import { partSchema } from "../build-file/schema.ts";
import { oneOf, quantity, strict } from "../build-file/zod-tools.ts";
import { MAX_PARTS, MAX_PROBES } from "../limits.ts";
import { settingsField } from "./fields.ts";

const resistance = (meaning: string) => quantity("resistance", { above: 0, max: 1e9 }, meaning);
const lugName = z.string().min(1).max(120);

export const temperatureField = z
  .number()
  .min(-40)
  .max(100)
  .default(20)
  .describe("°C, of the coils; copper gains 0.393 % a kelvin (IEC 60028), and a coil's resistance is given at 20 °C");

export const betweenField = z.tuple([lugName, lugName]).describe("the two lugs that the probes touch");

export const sweptPotField = z
  .string()
  .min(1)
  .max(80)
  .describe("a pot to turn through its whole travel while noting the highest reading");

export const probesField = z
  .array(strict({ between: betweenField, settings: settingsField.optional(), sweep: sweptPotField.optional() }))
  .max(MAX_PROBES)
  .default([])
  .describe("readings across any two lugs, answered under `probes`");

export const solveField = strict({
  coil: strict({
    reading: resistance("at the jack, volume at 10, one coil on"),
    pot: resistance("the volume pot's track"),
    tolerance: z.number().min(0).max(0.9).default(0).describe("fraction by which the track may be off"),
  })
    .optional()
    .describe("finds the coil: coil = reading · pot / (pot − reading)"),
  sweep: strict({
    atTen: resistance("at the jack with the volume at 10"),
    highest: resistance("the highest reading while the volume is swept, which is (pot + coil) / 4"),
  })
    .optional()
    .describe("finds the coil and the volume pot from two readings at the jack"),
}).describe("solves backwards from readings, whatever the build says");

const allowance = (meaning: string, usual: number) => quantity("length", { min: 0, max: 0.5 }, meaning).default(usual);

export const allowancesField = strict({
  slack: allowance("added to every wire", DEFAULT_ALLOWANCES.slack),
  strip: allowance("bared at each end", DEFAULT_ALLOWANCES.strip),
})
  .default(DEFAULT_ALLOWANCES)
  .describe("what the cut list adds to a wire's run along the guard's edges");

export const drawerField = z
  .array(strict({ part: partSchema, quantity: z.int().min(1).max(1000).default(1) }))
  .max(MAX_PARTS)
  .default([])
  .describe("parts already in the drawer, written as in a build file; taken off the parts list");

const ohmsAnswer = z.number().nullable();

export const readingAnswer = z.object({
  label: z.string(),
  settings: z
    .record(z.string(), z.union([z.number(), z.string()]))
    .readonly()
    .describe("every control by its own name"),
  between: z.tuple([z.string(), z.string()]).readonly(),
  sweep: z.string().optional().describe("the pot swept through its whole travel for the highest reading"),
  ohms: ohmsAnswer.describe("nominal; null where open"),
  low: ohmsAnswer.describe("every part at the low end of its tolerance"),
  high: ohmsAnswer.describe("every part at the high end; up to 1 Ω of joint and test leads where the wiring has none"),
});

export const readingsAnswer = {
  temperature: z.number().describe("°C"),
  readings: z.array(readingAnswer).readonly().describe("the standing readings, nothing plugged in"),
  probes: z.array(readingAnswer).readonly(),
  defaultTolerances: z
    .array(z.object({ part: z.string(), coil: z.string().optional(), tolerance: z.number() }))
    .readonly()
    .describe("parts that name no tolerance, and the fraction of common practice used instead"),
};

export const impedancesAnswer = z
  .array(
    z.object({
      label: z.string(),
      settings: z.record(z.string(), z.union([z.number(), z.string()])).readonly(),
      frequency: z.number().describe("Hz"),
      seriesOhms: ohmsAnswer.describe("null where no current flows"),
      reactanceOhms: ohmsAnswer,
      henries: z.number().nullable().describe("series inductance, where the reactance is inductive"),
      farads: z.number().nullable().describe("parallel capacitance, where the reactance is capacitive"),
    }),
  )
  .readonly()
  .describe("what a meter for inductance and capacitance shows at the jack, nothing plugged in, dials at 10");

export const solvedAnswer = z
  .object({
    coil: z.object({ ohms: z.number(), low: z.number(), high: z.number() }).optional(),
    sweep: z.object({ coil: z.number(), pot: z.number() }).optional(),
  })
  .optional()
  .describe("ohms; the range is the meter's 1 % and the pot's tolerance");

const lugPair = z.tuple([z.string(), z.string()]).readonly();
const strings = z.array(z.string()).readonly();
const settingsAnswer = z.record(z.string(), z.union([z.number(), z.string()])).readonly();

export const auditAnswer = z
  .array(
    z.object({
      code: z.string().describe("stable name of the finding"),
      severity: z.enum(["fault", "warning", "note"]),
      lugs: strings,
      settings: z.array(settingsAnswer).readonly().describe("where it shows; none: everywhere"),
      message: z.string(),
      remedy: z.string(),
    }),
  )
  .readonly()
  .describe("what the wiring shows to be wrong, worst first");

const connectionAnswer = z.object({
  number: z.int(),
  from: z.string(),
  to: z.string(),
  means: z.string().describe("wire, bent lug, jumper, leg, lead, bus wire, braid or inside"),
  grownFrom: strings.describe("lugs that it grows out of, with nothing to solder there"),
});

const cutAnswer = z.object({
  connection: z.int(),
  from: z.string(),
  to: z.string(),
  kind: z.string(),
  colour: z.string().describe("ground has one of its own"),
  run: z.number().describe("metres along the guard's edges"),
  cut: z.number().describe("metres to cut: run, slack and both strips, rounded up to 5 mm; or the build's own length"),
  strip: z.number().describe("metres bared at each end"),
});

const jointAnswer = z.object({
  number: z.int(),
  kind: z.enum(["case", "lug", "leg", "lead", "splice"]),
  lugs: strings,
  arrivals: z
    .array(z.object({ connection: z.int(), means: z.string(), other: z.string(), colour: z.string().optional() }))
    .readonly()
    .describe("what meets here, all of it in place before the one heating"),
  text: z.string(),
});

const checkAnswer = z.object({
  text: z.string(),
  between: lugPair.optional(),
  low: ohmsAnswer.optional(),
  high: ohmsAnswer.optional(),
});

export const sheetAnswer = z
  .object({
    cautions: strings,
    preparations: strings,
    connections: z.array(connectionAnswer).readonly(),
    cuts: z.array(cutAnswer).readonly(),
    allowances: z.object({ slack: z.number(), strip: z.number() }).describe("metres"),
    stages: z
      .array(
        z.object({
          title: z.string(),
          parts: strings,
          joints: z.array(jointAnswer).readonly(),
          checks: z.array(checkAnswer).readonly().describe("before going on to the next stage"),
        }),
      )
      .readonly(),
    notes: strings,
  })
  .describe("what to solder in which order");

export const partsListAnswer = z.object({
  lines: z
    .array(
      z.object({
        what: z.string(),
        code: z.string().nullable().describe("what is printed on the part"),
        quantity: z.int(),
        fromDrawer: z.int(),
        toBuy: z.int(),
        parts: strings.describe("their names in the build"),
      }),
    )
    .readonly(),
  wire: z.array(z.object({ colour: z.string(), pieces: z.int(), metres: z.number() })).readonly(),
  totals: z.object({ parts: z.int(), fromDrawer: z.int(), toBuy: z.int(), wireMetres: z.number() }),
  notes: strings,
});

const kick = z.enum(["up", "down"]);

export const phaseAnswer = z.object({
  how: strings,
  pickups: z
    .array(
      z.object({
        pickup: z.string(),
        coils: z
          .array(
            z.object({
              coil: z.string(),
              kick: kick.describe("with + on the finish; up is a forward coil over north, by definition"),
              humSign: z.number().describe("coils of opposite sign cancel each other's hum"),
            }),
          )
          .readonly(),
        kickAtJack: kick.nullable().describe("where the pickup is loudest; null where it never is heard"),
        settings: settingsAnswer.nullable(),
        agrees: z.boolean().describe("whether it agrees, as wired, with the most of the others"),
        swap: z.array(lugPair).readonly().describe("leads to exchange where the needle disagrees"),
        metal: z.string().nullable().describe("what to do with its metal first"),
        message: z.string(),
      }),
    )
    .readonly(),
});

const ohmsShown = quantity("resistance", { min: 0, max: 1e12 }, "what the meter showed");

// One transform over plain types: a union with a transform inside would be documented by its other branches alone.
const ohmsRead = z
  .union([z.number(), z.string(), z.null()], {
    error: () => 'expected a number or text such as "5k9" (ohms), or null where the meter showed an open circuit',
  })
  .describe("ohms, or text with a unit; null where the meter showed an open circuit")
  .transform((shown, context) => {
    if (shown === null) return null;
    const read = ohmsShown.safeParse(shown);
    if (read.success) return read.data;
    for (const { message } of read.error.issues) context.addIssue({ code: "custom", message });
    return z.NEVER;
  });

export const measuredField = strict({
  between: betweenField,
  settings: settingsField.optional(),
  sweep: sweptPotField.optional(),
  label: z.string().max(200).optional().describe("for the person's own eyes"),
  ohms: ohmsRead
    .optional()
    .describe("ohms, or text with a unit; null where the meter showed an open circuit on its highest range"),
  above: quantity("resistance", { above: 0, max: 1e12 }, "the end of the range")
    .optional()
    .describe(
      "instead of ohms, where a meter on a range of its own showed OL: the end of that range (ohms, or text with a unit). " +
        "The reading then lies somewhere above it and need not be open",
    ),
  low: ohmsRead
    .optional()
    .describe(
      "ohms, lowest that the display wandered to. Without low and high, or where ohms is not between them (a reading of " +
        "/api/bench sent back with other ohms: its range is what tolerances allow), the meter's error is taken as 1 %, " +
        "which `notes` then says",
    ),
  high: ohmsRead.optional().describe("ohms, highest that the display wandered to; null where open"),
}).superRefine(({ ohms, above }, context) => {
  if ((ohms === undefined) !== (above === undefined)) return;
  const found = above === undefined ? "neither ohms nor above is given" : "both ohms and above are given";
  context.addIssue({ code: "custom", path: ["ohms"], message: `${found}; expected one of them` });
});

const symptomMeanings = Object.entries(SYMPTOMS)
  .map(([code, meaning]) => `${code}: ${meaning}`)
  .join("; ");

export const symptomField = strict({
  code: oneOf(SYMPTOM_CODES).describe(symptomMeanings),
  settings: settingsField.optional().describe("where it was noticed; without it in any position, dials at 10"),
  control: z.string().min(1).max(80).optional().describe("the pot or role that a tone or volume symptom is about"),
});

const faultAnswer = z.object({
  kind: z
    .string()
    .describe(
      'what is wrong, by stable name; "none" where nothing is, "unexplained" where nothing accounts for all readings, ' +
        '"nothing-measured" where there is nothing to go by',
    ),
  lugs: z.array(z.string()).readonly(),
  ohms: z.number().optional().describe("the value that the readings say the part has, where that is what is wrong"),
});
const faultSets = z.array(z.array(faultAnswer).readonly()).readonly();
const alternativeAnswer = {
  faults: z.array(faultAnswer).readonly(),
  message: z.string(),
};

export const diagnosisAnswer = z.object({
  considered: z
    .object({ singles: z.int(), ofSingles: z.int(), pairs: z.int() })
    .describe("how many faults were weighed; all single ones of a usual guard, the commonest of a huge one"),
  explanations: z
    .array(
      z.object({
        ...alternativeAnswer,
        fit: z
          .number()
          .describe(
            "how well it explains what was told, 0 to 1: the probability that a guard that is so shows readings at least " +
              "this far from its own (chi-square), times that of its symptoms being told; 0 where a reading lies far outside",
          ),
        probability: z
          .number()
          .describe(
            "0 to 1, of this explanation and those in `sameAs` together, of all that account for every reading",
          ),
        predicted: z
          .array(ohmsAnswer)
          .readonly()
          .describe("what the meter would show for each reading given, other parts at nominal; ohms, null where open"),
        sameAs: z.array(z.object(alternativeAnswer)).readonly().describe("would read exactly the same"),
      }),
    )
    .readonly()
    .describe("those that account for every reading first, the likelier before the others"),
  notes: z.array(z.string()).readonly().describe("what was taken otherwise than it was written"),
  nextMeasurement: z
    .discriminatedUnion("kind", [
      z.object({
        kind: z.literal("meter"),
        label: z.string(),
        between: lugPair,
        settings: settingsAnswer,
        sweep: z.string().optional(),
        outcomes: z
          .array(z.object({ low: ohmsAnswer, high: ohmsAnswer, faults: faultSets }))
          .readonly()
          .describe("what the meter may show (ohms, null where open), and the faults that would then remain"),
      }),
      z.object({
        kind: z.literal("listen"),
        label: z.string(),
        symptom: z.object({ code: z.enum(SYMPTOM_CODES), settings: settingsAnswer, control: z.string().optional() }),
        outcomes: z.array(z.object({ heard: z.boolean(), faults: faultSets })).readonly(),
      }),
    ])
    .nullable()
    .describe("the one further check that best tells the leading explanations apart: with a meter, or else by ear"),
});

import type { Build } from "../../../build-file/schema.ts";
import { Controls, rawSettings, type Settings, type SettingValue } from "../../../build-file/settings.ts";
import { mainPositions } from "../../main-positions.ts";
import type { MeterModel } from "../../meter/meter-model.ts";
import { SYMPTOMS, type SymptomCode } from "../../symptoms/symptom-codes.ts";
import { type Symptom, Witness } from "../../symptoms/witness.ts";
import type { NamedFault } from "../answer/explanations.ts";
import { namesOf, type Suspect } from "./suspects.ts";

/** Something to listen for where no meter tells the leading explanations apart. */
export interface NextListening {
  readonly kind: "listen";
  readonly label: string;
  /** The same as a sentence. */
  readonly instruction: string;
  readonly symptom: {
    readonly code: SymptomCode;
    readonly settings: Readonly<Record<string, SettingValue>>;
    readonly control?: string;
  };
  readonly outcomes: readonly { readonly heard: boolean; readonly faults: readonly (readonly NamedFault[])[] }[];
}

const MAX_LISTENED_FOR = 24;
/** What listening must be expected to tell, in nats, to be worth proposing. */
const MIN_INFORMATION = 1e-3;

interface Candidate {
  readonly symptom: Symptom;
  readonly settings: Settings;
  readonly label: string;
}

function candidatesFor(controls: Controls): Candidate[] {
  return mainPositions(controls).flatMap(({ settings, label }) => {
    const where = label === "" ? "" : ` in ${label}`;
    const raw = rawSettings(controls, settings);
    const listenFor = (code: SymptomCode, control?: string): Candidate => ({
      symptom: { code, settings: raw, ...(control === undefined ? {} : { control }) },
      settings,
      label: `Listen${where}${control === undefined ? "" : `, turning ${control}`}: ${SYMPTOMS[code]}?`,
    });
    return [
      listenFor("thin"),
      listenFor("dark"),
      listenFor("hum"),
      ...controls
        .potsWithRole("tone")
        .flatMap((pot) => [listenFor("tone-no-effect", pot), listenFor("tone-backwards", pot)]),
    ];
  });
}

function uncertainty(chance: number): number {
  return -chance * Math.log(chance) - (1 - chance) * Math.log(1 - chance);
}

/**
 * The thing to listen for whose answer is expected to tell most (mutual information); null where none tells anything.
 * @param affordable how many settings may be listened to
 */
export function nextListening(
  build: Build,
  model: MeterModel,
  suspects: readonly Suspect[],
  affordable: number,
): NextListening | null {
  const controls = new Controls(build);
  const candidates = candidatesFor(controls);
  const witness = new Witness(
    build,
    model,
    candidates.map(({ symptom }) => symptom),
  );
  const few = suspects.slice(0, Math.min(MAX_LISTENED_FOR, Math.floor(affordable / Math.max(1, witness.listenings))));
  if (few.length < 2) return null;
  const total = few.reduce((sum, { share }) => sum + share, 0);
  const chances = few.map(({ hypothesis }) => witness.chances(hypothesis));
  const told = candidates.map((_, index) => {
    const expected = few.reduce((sum, { share }, at) => sum + (share / total) * chances[at]![index]!, 0);
    const left = few.reduce((sum, { share }, at) => sum + (share / total) * uncertainty(chances[at]![index]!), 0);
    return uncertainty(expected) - left;
  });
  const best = told.reduce((top, value, index) => (value > (told[top] ?? 0) + 1e-9 ? index : top), 0);
  const chosen = candidates[best];
  if (!chosen || told[best]! < MIN_INFORMATION) return null;
  const speaking = (heard: boolean) => few.filter((_, at) => chances[at]![best]! >= 0.5 === heard);
  const { code, control } = chosen.symptom;
  return {
    kind: "listen",
    label: chosen.label,
    instruction: `Next, ${chosen.label.charAt(0).toLowerCase()}${chosen.label.slice(1)}`,
    symptom: {
      code,
      settings: rawSettings(controls, chosen.settings),
      ...(control === undefined ? {} : { control }),
    },
    outcomes: [true, false].map((heard) => ({ heard, faults: namesOf(speaking(heard)) })),
  };
}

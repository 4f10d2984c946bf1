import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, parseSettings, type RawSettings, type Settings } from "../../build-file/settings.ts";
import { faultAt } from "../../errors.ts";
import { editBuild } from "../faults/edits/edit-build.ts";
import type { Fault } from "../faults/fault.ts";
import { mainPositions } from "../main-positions.ts";
import { isJoint, isOpen } from "../meter/hobby-meter.ts";
import { type MeterModel, type MeterState, meterStateOf } from "../meter/meter-model.ts";
import { Ohmmeter } from "../meter/ohmmeter.ts";
import { feltChance } from "./felt-faults.ts";
import { Listener } from "./loudness.ts";
import { chanceOf, type Situation, type StringsTo } from "./predict-symptom.ts";
import type { SymptomCode } from "./symptom-codes.ts";

/** What somebody heard or felt. */
export interface Symptom {
  readonly code: SymptomCode;
  readonly settings?: RawSettings | undefined;
  /** The pot or role that it is about; without it every tone, or every volume. */
  readonly control?: string | undefined;
}

interface Told {
  readonly code: SymptomCode;
  /** Where it was noticed; several where the person did not say. */
  readonly settings: readonly Settings[];
  readonly tones: readonly string[];
  readonly volumes: readonly string[];
  /** The pots that the person named; undefined for any. */
  readonly pots: readonly string[] | undefined;
  /** Whether the person said in which setting. */
  readonly isLocal: boolean;
}

/** A guard under suspicion. */
export interface Suspicion {
  readonly faults: readonly Fault[];
  readonly model: MeterModel;
}

function potsMeant(controls: Controls, control: string | undefined, path: string): readonly string[] | undefined {
  if (control === undefined) return undefined;
  const target = controls.resolve(control);
  if (target && "pots" in target) return target.pots;
  const message = `"${control.slice(0, 60)}" names no pot; expected one of ${controls.pots.join(", ")}, or a role`;
  throw faultAt("REQUEST_INVALID", `${path}.control`, message);
}

function read(
  controls: Controls,
  everywhere: readonly Settings[],
  { code, settings, control }: Symptom,
  path: string,
): Told {
  const meant = potsMeant(controls, control, path);
  return {
    code,
    settings: settings ? [parseSettings(controls, settings, `${path}.settings`)] : everywhere,
    tones: meant ?? controls.potsWithRole("tone"),
    volumes: meant ?? controls.potsWithRole("volume"),
    pots: meant,
    isLocal: settings !== undefined,
  };
}

/** Says how well a suspected guard accounts for what was heard. */
export class Witness {
  readonly #build: Build;
  readonly #controls: Controls;
  readonly #told: readonly Told[];
  readonly #sound: Listener;
  readonly #soundModel: MeterModel;
  readonly #meter: Ohmmeter;
  readonly #lugs: { readonly tip: number; readonly sleeve: number; readonly strings: readonly number[] };
  readonly #metal: readonly number[];

  /** @throws PresolderError SETTINGS_INVALID or REQUEST_INVALID naming the field at fault */
  constructor(build: Build, sound: MeterModel, symptoms: readonly Symptom[]) {
    this.#build = build;
    this.#controls = new Controls(build);
    const everywhere = mainPositions(this.#controls).map(({ settings }) => settings);
    this.#told = symptoms.map((symptom, index) => read(this.#controls, everywhere, symptom, `symptoms.${index}`));
    this.#sound = new Listener(build);
    this.#soundModel = sound;
    this.#meter = new Ohmmeter(sound);
    const lug = (name: string) => sound.parts.lugs.indexOf(name);
    const [jack] = partsOfKind(build, "jack")[0]!;
    const terminals = partsOfKind(build, "terminal");
    const strings = terminals.filter(([, { role }]) => role === "claw").map(([name]) => lug(name));
    this.#lugs = { tip: lug(`${jack}.tip`), sleeve: lug(`${jack}.sleeve`), strings };
    this.#metal = this.#groundedMetal([
      ...terminals.map(([name]) => lug(name)),
      ...partsOfKind(build, "pot").map(([name]) => lug(`${name}.case`)),
      ...partsOfKind(build, "pickup").map(([name]) => lug(`${name}.shield`)),
    ]);
  }

  /** How many settings are listened to for one suspicion: each once, and both ends of every knob that is turned. */
  get listenings(): number {
    const plain = new Set(this.#told.flatMap(({ settings }) => settings)).size;
    const turns = this.#told.filter(({ code }) => /^(tone|volume)-/.test(code));
    return turns.reduce((sum, { settings }) => sum + 2 * settings.length, plain);
  }

  get isSilent(): boolean {
    return this.#told.length === 0;
  }

  /** ln P(all symptoms | this guard). */
  logChance(suspicion: Suspicion): number {
    return this.chances(suspicion).reduce((sum, chance) => sum + Math.log(chance), 0);
  }

  /** For each symptom, the probability that this guard has somebody tell of it. */
  chances({ faults, model }: Suspicion): number[] {
    if (this.isSilent) return [];
    const edits = faults.flatMap((fault) => fault.edits);
    const faulty = edits.length === 0 ? this.#sound : new Listener(editBuild(this.#build, edits));
    // A break leaves some stray capacitance or none to speak of: what is heard of it differs from coil to coil.
    const isBroken = edits.some(({ edit }) => edit === "coil-open");
    const silent = isBroken ? new Listener(editBuild(this.#build, edits, { breakFarads: 0 })) : undefined;
    return this.#told.map((told) => {
      const heard = told.settings.flatMap((settings) => {
        const situation = this.#situation(told, settings, faulty, model);
        const chances = [chanceOf(told.code, situation)];
        if (silent) chances.push(chanceOf(told.code, { ...situation, faulty: silent }));
        return chances;
      });
      return Math.max(feltChance(told, faults), ...heard);
    });
  }

  #situation({ tones, volumes }: Told, settings: Settings, faulty: Listener, model: MeterModel): Situation {
    const state = meterStateOf(model, settings);
    this.#meter.prepare(model, state);
    const { tip, sleeve } = this.#lugs;
    const strings = this.#stringsTo();
    return {
      controls: this.#controls,
      settings,
      tones,
      volumes,
      sound: this.#sound,
      faulty,
      stringsTo: strings,
      tipOpen: isOpen(this.#meter.read(tip, sleeve)),
      metalOffGround: !this.#metal.every((lug) => isJoint(this.#meter.read(lug, sleeve))),
    };
  }

  #stringsTo(): StringsTo {
    const [first] = this.#lugs.strings;
    if (first === undefined) return "unknown";
    const toSleeve = this.#meter.read(first, this.#lugs.sleeve);
    if (isJoint(toSleeve)) return "sleeve";
    return isOpen(toSleeve) ? "nowhere" : "hot";
  }

  #groundedMetal(lugs: readonly number[]): number[] {
    const state: MeterState = meterStateOf(this.#soundModel, this.#controls.atRest);
    this.#meter.prepare(this.#soundModel, state);
    return lugs.filter((lug) => isJoint(this.#meter.read(lug, this.#lugs.sleeve)));
  }
}

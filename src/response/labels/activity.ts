import { BoundedMap } from "../../bounded-map.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, type Settings, settingsKey } from "../../build-file/settings.ts";
import { decibels } from "../../decibels.ts";
import { ResponseEngine } from "../engine.ts";
import type { Transfers } from "../transfers.ts";
import { fullControls } from "./position-coils.ts";

/** One frequency in each part of the band where a control can act: bass cuts, volumes, tones, treble bleeds. */
const PROBE_HZ = Float64Array.of(80, 400, 2000, 6000);
/** A tenth of what anybody hears as a change of level, and far above rounding. */
const EFFECT_DB = 0.1;
/** What lies under this is silence, whatever it does there. */
const FLOOR_DB = -100;
/** Ends first, since that is where nearly every pot shows; halfway for tracks whose ends agree. */
const DIALS = [0, 10, 5];

/** Whether two sets of levels differ by something to be heard. */
export function levelsDiffer(a: Float64Array, b: Float64Array): boolean {
  return a.some((level, i) => Math.abs(Math.max(level, FLOOR_DB) - Math.max(b[i]!, FLOOR_DB)) > EFFECT_DB);
}

/**
 * Levels of the curve at the probing frequencies, then of the coils' powers added: two equal pickups out of phase leave
 * silence, yet a control that acts on both of them acts; and what turns one of them round changes the curve alone.
 */
function probedLevels({ sources, perSource }: Transfers): Float64Array {
  const count = PROBE_HZ.length;
  const levels = new Float64Array(2 * count);
  const spectra = perSource(PROBE_HZ);
  for (let i = 0; i < count; i++) {
    let [re, im, power] = [0, 0, 0];
    for (const [k, { emf }] of sources.entries()) {
      const [ownRe, ownIm] = [emf * spectra[k]!.re[i]!, emf * spectra[k]!.im[i]!];
      re += ownRe;
      im += ownIm;
      power += ownRe ** 2 + ownIm ** 2;
    }
    levels[i] = decibels(Math.hypot(re, im));
    levels[count + i] = decibels(Math.sqrt(power));
  }
  return levels;
}

/** Twice what a guard of five positions and four push-pulls has to move; an entry has some hundred bytes. */
const MAX_KNOWN = 4000;

/** Finds which controls of one build do anything in a setting, remembering the levels it has computed. */
export class ActivityReader {
  readonly controls: Controls;
  readonly #transfersIn: (settings: Settings) => Transfers;
  readonly #build: Build;
  readonly #levels = new BoundedMap<string, Float64Array>(MAX_KNOWN);
  readonly #active = new BoundedMap<string, readonly string[]>(MAX_KNOWN);

  /** @param transfersIn the engine's, where there is one already, so that its work is shared */
  constructor(build: Build, transfersIn?: (settings: Settings) => Transfers) {
    const engine = transfersIn ? undefined : new ResponseEngine(build);
    this.#build = build;
    this.controls = new Controls(build);
    this.#transfersIn = transfersIn ?? ((settings) => engine!.transfersIn(settings));
  }

  /** Levels in dB at the probing frequencies, as `probedLevels` gives them. */
  levelsIn(settings: Settings): Float64Array {
    const key = settingsKey(settings);
    const known = this.#levels.get(key);
    if (known) return known;
    const levels = probedLevels(this.#transfersIn(settings));
    this.#levels.set(key, levels);
    return levels;
  }

  /** The states that moving one control reaches from a setting. */
  #movesOf(name: string, settings: Settings): Settings[] {
    const control = this.controls.switches.find((candidate) => candidate.name === name);
    if (!control) return DIALS.map((dial) => ({ ...settings, dials: { ...settings.dials, [name]: dial } }));
    return control.table.positions.map((_, index) => ({
      ...settings,
      switches: { ...settings.switches, [name]: index + 1 },
    }));
  }

  /** Whether moving one control, the others as they stand, changes the curve by more than 0.1 dB anywhere. */
  isActive(name: string, settings: Settings): boolean {
    const here = this.levelsIn(settings);
    return this.#movesOf(name, settings).some((moved) => levelsDiffer(here, this.levelsIn(moved)));
  }

  /**
   * The controls, pots first, that have any effect in the switches' positions: each is moved with the other volumes and
   * tones at 10, so that one tone at 0 does not hide another; only where that is silent, as they stand.
   */
  activeIn(settings: Settings): readonly string[] {
    const full = fullControls(this.#build, settings);
    const silent = this.levelsIn(full).every((level) => level < FLOOR_DB);
    return this.#activeOnce(silent ? settings : full);
  }

  #activeOnce(settings: Settings): readonly string[] {
    const key = settingsKey(settings);
    const known = this.#active.get(key);
    if (known) return known;
    const names = [...this.controls.pots, ...this.controls.switches.map((control) => control.name)];
    const active = names.filter((name) => this.isActive(name, settings));
    this.#active.set(key, active);
    return active;
  }
}

/** As `ActivityReader.activeIn`, for one setting. */
export function activeControls(build: Build, settings: Settings): readonly string[] {
  return new ActivityReader(build).activeIn(settings);
}

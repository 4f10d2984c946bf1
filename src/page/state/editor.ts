import {
  parseSettings,
  type RawSettings,
  rawSettings,
  type SettingValue,
  withControl,
} from "../../build-file/settings.ts";
import type { AppStore } from "./app-state.ts";
import { History } from "./history.ts";
import { type BuildSource, type Reading, readSource } from "./reading.ts";

/** Settings that fit a build: those of the old ones that its controls still know, the rest at rest. */
export function fitSettings(reading: Reading, wanted: RawSettings): RawSettings {
  const { controls } = reading;
  let settings = parseSettings(controls);
  for (const [name, value] of Object.entries(wanted)) {
    try {
      settings = withControl(controls, settings, name, value);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return rawSettings(controls, settings);
}

interface Step {
  readonly source: BuildSource;
  readonly guard: object;
}

/** All that changes the build being written or its controls. */
export class Editor {
  readonly #store: AppStore;
  readonly #history = new History<Step>();

  constructor(store: AppStore) {
    this.#store = store;
  }

  /** Puts another build on the bench. */
  open(source: BuildSource, settings: RawSettings = {}): void {
    this.#push({ source, guard: {} }, settings);
  }

  /** One step of change; the history keeps it. */
  edit(change: (source: BuildSource) => BuildSource): void {
    const now = this.#history.now;
    if (!now) return;
    const next = change(now.source);
    if (next !== now.source) this.#push({ ...now, source: next }, this.#store.state.settings);
  }

  undo(): void {
    const step = this.#history.undo();
    if (step) this.#show(step, this.#store.state.settings);
  }

  redo(): void {
    const step = this.#history.redo();
    if (step) this.#show(step, this.#store.state.settings);
  }

  turn(control: string, value: SettingValue): void {
    const { reading, settings } = this.#store.state;
    if (reading) this.#store.set({ settings: fitSettings(reading, { ...settings, [control]: value }) });
  }

  /** Several controls at once. */
  turnAll(values: RawSettings): void {
    const { reading, settings } = this.#store.state;
    if (reading) this.#store.set({ settings: fitSettings(reading, { ...settings, ...values }) });
  }

  #push(step: Step, settings: RawSettings): void {
    this.#history.push(step);
    this.#show(step, settings);
  }

  #show({ source, guard }: Step, settings: RawSettings): void {
    const result = readSource(source);
    const walk = { canUndo: this.#history.canUndo, canRedo: this.#history.canRedo };
    if ("faults" in result) this.#store.set({ source, faults: result.faults, ...walk });
    else {
      const { reading } = result;
      this.#store.set({ source, reading, guard, faults: [], settings: fitSettings(reading, settings), ...walk });
    }
  }
}

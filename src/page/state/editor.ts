import type { RawSettings, SettingValue } from "../../build-file/settings.ts";
import { latestOnly } from "../dom/later.ts";
import type { Engine } from "../engine/engine.ts";
import type { AppStore } from "./app-state.ts";
import { changeWords } from "./change-words.ts";
import { fitSettings } from "./fit-settings.ts";
import { History } from "./history.ts";
import type { BuildSource, Reading, ReadResult } from "./reading.ts";

interface Step {
  readonly source: BuildSource;
  readonly guard: object;
}

/** All that changes the build being written or its controls. What is written shows at once; its reading follows. */
export class Editor {
  readonly #store: AppStore;
  readonly #engine: Pick<Engine, "read">;
  readonly #history = new History<Step>();
  readonly #latest = latestOnly();

  constructor(store: AppStore, engine: Pick<Engine, "read">) {
    this.#store = store;
    this.#engine = engine;
  }

  /**
   * Puts another build on the bench.
   * @param read its reading, where there is one already
   * @param guard what is to stand for it
   */
  open(source: BuildSource, settings: RawSettings = {}, read?: Reading, guard: object = {}): Promise<void> {
    return this.#push({ source, guard }, settings, read);
  }

  /** One step of change; the history keeps it. */
  async edit(change: (source: BuildSource) => BuildSource): Promise<void> {
    await this.#change(change, () => "");
  }

  /**
   * One step of change that touches wires or several parts; what it came to is told.
   * @param besides what wires and parts do not tell of it
   */
  async rework(change: (source: BuildSource) => BuildSource, besides = ""): Promise<void> {
    await this.#change(change, (from, to) => [changeWords(from, to), besides].filter((each) => each !== "").join("; "));
  }

  async undo(): Promise<void> {
    const step = this.#history.undo();
    if (step) await this.#show(step);
  }

  async redo(): Promise<void> {
    const step = this.#history.redo();
    if (step) await this.#show(step);
  }

  turn(control: string, value: SettingValue): void {
    this.turnAll({ [control]: value });
  }

  /** Several controls at once. */
  turnAll(values: RawSettings): void {
    const { reading, settings } = this.#store.state;
    if (reading) this.#store.set({ settings: fitSettings(reading, { ...settings, ...values }) });
  }

  async #change(change: (source: BuildSource) => BuildSource, words: typeof changeWords): Promise<void> {
    const now = this.#history.now;
    if (!now) return;
    const next = change(now.source);
    if (next === now.source) return;
    const done = this.#push({ ...now, source: next });
    this.#store.set({ changed: words(now.source, next) });
    await done;
  }

  #push(step: Step, settings?: RawSettings, read?: Reading): Promise<void> {
    this.#history.push(step);
    return this.#show(step, settings, read);
  }

  async #show({ source, guard }: Step, settings?: RawSettings, read?: Reading): Promise<void> {
    const isLatest = this.#latest();
    const walk = { canUndo: this.#history.canUndo, canRedo: this.#history.canRedo };
    this.#store.set({ changed: "" });
    if (!read) this.#store.set({ source, ...walk });
    const result: ReadResult = read ? { reading: read } : await this.#engine.read(source);
    // A later step has been read by now, or will be.
    if (!isLatest()) return;
    if ("faults" in result) this.#store.set({ source, faults: result.faults, ...walk });
    else {
      const { reading } = result;
      const fitting = fitSettings(reading, settings ?? this.#store.state.settings);
      this.#store.set({ source, reading, guard, faults: [], settings: fitting, ...walk });
    }
  }
}

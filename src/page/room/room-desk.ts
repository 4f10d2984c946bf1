import { partWords } from "../../build-file/words/part-words.ts";
import { faultLine, type InputFault } from "../../errors.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { type Child, h, replaceContent } from "../dom/element.ts";
import { later, latestOnly, whileShown } from "../dom/later.ts";
import type { RoomAsked } from "../engine/room-asked.ts";
import type { FormField } from "../fields/form-fields.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { type Entries, isBare } from "./entries.ts";
import { keepEntries, keptEntries } from "./kept-entries.ts";
import { readEntries } from "./read-entries.ts";
import { roomAnswer } from "./room-answer.ts";

/** Long enough that a length being typed is not asked about figure by figure. */
const WAIT_MS = 250;

const BARE = "Enter a cavity's line and the outline of a part, and what room there is stands here.";
const LEFT_OUT = "What is marked as a fault cannot be read and is left out.";

/** Puts each fault beside the field of its path. @returns what belongs to no field */
function showFaults(fields: readonly FormField[], faults: readonly InputFault[]): string {
  const isAt = (field: FormField, { path }: InputFault) => path === field.path || path.startsWith(`${field.path}.`);
  for (const field of fields) field.showFault(faults.find((fault) => isAt(field, fault))?.message);
  return faultLine(faults.filter((fault) => !fields.some((field) => isAt(field, fault))));
}

const alert = (text: string) => h("p", { class: "fault-text", role: "alert" }, text);

/** What was typed, kept in this browser, and the answer about it, kept up to date. */
export class RoomDesk {
  readonly #verdict = h("p", { class: "room-told", role: "status" });
  readonly #details = h("div", { class: "stack" });
  /** Where the answer stands; of all of it only the verdict is said when it changes. */
  readonly answer = h("div", { class: "room-answer stack" }, this.#verdict, this.#details);
  /** Asks once things have been quiet for a while and somebody sees it. */
  readonly askLater: () => void;
  readonly #store: AppStore;
  readonly #fields: () => readonly FormField[];
  readonly #latest = latestOnly();
  #entries = keptEntries();

  /** @param panel that is shown or not; @param fields that stand there now */
  constructor(store: AppStore, panel: HTMLElement, fields: () => readonly FormField[]) {
    this.#store = store;
    this.#fields = fields;
    this.askLater = later(
      WAIT_MS,
      whileShown(panel, () => this.#ask()),
    );
  }

  get entries(): Entries {
    return this.#entries;
  }

  change(part: Partial<Entries>): void {
    this.#entries = { ...this.#entries, ...part };
    keepEntries(this.#entries);
    this.askLater();
  }

  /** What the guard on the bench is to be asked about. */
  question() {
    const { reading } = this.#store.state;
    return reading && { reading, ...readEntries(reading.build, this.#entries) };
  }

  async #ask(): Promise<void> {
    const isLatest = this.#latest();
    const question = this.question();
    if (!question) return;
    const { reading, measures, faults } = question;
    if (isBare(this.#entries)) {
      showFaults(this.#fields(), faults);
      this.#tell(BARE);
      return;
    }
    try {
      const asked = await benchEngineOf(this.#store).room(reading.build, measures);
      if (isLatest()) this.#show(reading, asked, faults, measures);
    } catch (error) {
      if (isLatest()) this.#tell("", alert((error as Error).message));
    }
  }

  #show(
    { build }: Reading,
    asked: RoomAsked,
    unread: readonly InputFault[],
    measures: Parameters<typeof roomAnswer>[0],
  ): void {
    const faults = "faults" in asked ? [...unread, ...asked.faults] : unread;
    const rest = showFaults(this.#fields(), faults);
    this.#tell(
      "told" in asked ? asked.told.text : "",
      rest && alert(rest),
      faults.length > 0 && alert(LEFT_OUT),
      "told" in asked && roomAnswer(measures, asked.told, partWords(build.parts)),
    );
  }

  #tell(verdict: string, ...details: Child[]): void {
    this.#verdict.textContent = verdict;
    replaceContent(this.#details, ...details);
  }
}

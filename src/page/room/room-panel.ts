import type { Build, Part } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { faultLine, type InputFault } from "../../errors.ts";
import { MAX_CAVITIES } from "../../limits.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { h, replaceContent } from "../dom/element.ts";
import { later, latestOnly, whileShown } from "../dom/later.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { FormField } from "../fields/form-fields.ts";
import type { AppStore } from "../state/app-state.ts";
import { cavityCard } from "./cavity-card.ts";
import { type CavityEntry, type Entries, emptyCavity, isBare, type PartEntry } from "./entries.ts";
import { guardFields } from "./guard-fields.ts";
import { keepEntries, keptEntries } from "./kept-entries.ts";
import { type CardOf, partCard } from "./part-card.ts";
import { readEntries } from "./read-entries.ts";
import { roomAnswer } from "./room-answer.ts";
import { templateButtons } from "./template-buttons.ts";

const WAIT_MS = 250;

const HOW =
  "Lengths are in millimetres, bare or with a unit. Places are as in the drawing: x from the bridge towards the neck, y from the centre line towards the treble side, less than 0 towards the bass side. What you leave out is asked for and passes nothing. All of it stays in this browser, for the next guard of the same guitar.";
const BARE = "Enter a cavity's line and the outline of a part, and what room there is stands here.";

const HAS_ROOM: readonly Part["kind"][] = ["pickup", "pot", "switch", "jack"];
const partsWithRoom = ({ parts }: Build) => Object.entries(parts).filter(([, { kind }]) => HAS_ROOM.includes(kind));

/** Puts each fault beside the fields of its path. @returns what belongs to no field */
function showFaults(fields: readonly FormField[], faults: readonly InputFault[]): string {
  const isAt = (field: FormField, { path }: InputFault) => path === field.path || path.startsWith(`${field.path}.`);
  for (const field of fields) field.showFault(faults.find((fault) => isAt(field, fault))?.message);
  return faultLine(faults.filter((fault) => !fields.some((field) => isAt(field, fault))));
}

/** Whether the guard goes into a body that a person measures, with what is typed kept in this browser. */
export function createRoomPanel(store: AppStore): HTMLElement {
  bringStyle("tools.css");
  const engine = benchEngineOf(store);
  const latest = latestOnly();
  let entries = keptEntries();
  let cavityCards: readonly CardOf[] = [];
  let partCards: readonly CardOf[] = [];
  const cavities = h("div", { class: "stack" });
  const parts = h("div", { class: "stack" });
  const answer = h("div", { class: "room-answer", "aria-live": "polite" });
  const guard = guardFields(entries.guard, (field, text) =>
    change({ ...entries, guard: { ...entries.guard, [field]: text } }),
  );
  const fields = () => [...cavityCards, ...partCards, guard].flatMap((card) => card.fields);

  const ask = async () => {
    const isLatest = latest();
    const { reading } = store.state;
    if (!reading) return;
    const { measures, faults } = readEntries(reading.build, entries);
    if (isBare(entries)) {
      showFaults(fields(), faults);
      replaceContent(answer, h("p", { class: "hint" }, BARE));
      return;
    }
    try {
      const asked = await engine.room(reading.build, measures);
      if (!isLatest()) return;
      const rest = showFaults(fields(), "faults" in asked ? [...faults, ...asked.faults] : faults);
      const isStale = "faults" in asked || faults.length > 0;
      replaceContent(
        answer,
        rest && h("p", { class: "fault-text", role: "alert" }, rest),
        isStale && h("p", { class: "fault-text" }, "What is marked above cannot be read and is left out."),
        "told" in asked && roomAnswer(measures, asked.told, partWords(reading.build.parts)),
      );
    } catch (error) {
      if (isLatest()) replaceContent(answer, h("p", { class: "fault-text", role: "alert" }, (error as Error).message));
    }
  };
  const element = h("div", { class: "sections room" });
  const askLater = later(WAIT_MS, whileShown(element, ask));
  const change = (next: Entries) => {
    entries = next;
    keepEntries(entries);
    askLater();
  };

  const setCavities = (next: readonly CavityEntry[]) => {
    change({ ...entries, cavities: next });
    drawCavities();
  };
  const drawCavities = () => {
    cavityCards = entries.cavities.map((entry, index) =>
      cavityCard(
        entry,
        index,
        (part) =>
          change({ ...entries, cavities: entries.cavities.with(index, { ...entries.cavities[index]!, ...part }) }),
        () => setCavities(entries.cavities.toSpliced(index, 1)),
      ),
    );
    add.disabled = entries.cavities.length >= MAX_CAVITIES;
    replaceContent(
      cavities,
      cavityCards.map((card) => card.element),
    );
  };
  const addCavity = () => setCavities([...entries.cavities, emptyCavity(entries.cavities.length + 1)]);
  const add = h("button", { type: "button", onclick: addCavity }, "Add a cavity");

  const takePart = (name: string, part: PartEntry) => change({ ...entries, parts: { ...entries.parts, [name]: part } });
  const drawParts = (build: Build) => {
    const words = partWords(build.parts);
    partCards = partsWithRoom(build).map(([name, part]) =>
      partCard([name, part], words.get(name)!, entries.parts[name] ?? {}, (field, text) =>
        takePart(name, { ...entries.parts[name], [field]: text }),
      ),
    );
    replaceContent(
      parts,
      partCards.map((card) => card.element),
    );
  };

  let drawn = "";
  store.watchAny(
    (state) => [state.reading],
    () => {
      const { reading } = store.state;
      if (!reading) return;
      const words = partWords(reading.build.parts);
      const signature = JSON.stringify(
        partsWithRoom(reading.build).map(([name, { kind }]) => [name, kind, words.get(name)]),
      );
      // A value that changed leaves the cards as they stand, open ones open.
      if (signature !== drawn) drawParts(reading.build);
      drawn = signature;
      askLater();
    },
  );
  drawCavities();
  element.append(
    h(
      "section",
      { class: "stack no-print" },
      h("h3", {}, "Will it fit?"),
      h("p", { class: "hint" }, HOW),
      h("h4", {}, "Cavities of the body"),
      cavities,
      h("div", { class: "buttons" }, add),
      h("h4", {}, "Parts, as you measure them"),
      parts,
      guard.element,
    ),
    h("section", { class: "stack", "aria-label": "Room" }, h("h3", {}, "Room"), answer),
    templateButtons(() => {
      const { reading } = store.state;
      return reading && { reading, measures: readEntries(reading.build, entries).measures };
    }),
  );
  return element;
}

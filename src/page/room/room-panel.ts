import type { Build, Part } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { MAX_CAVITIES } from "../../limits.ts";
import { h, replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { createNoiseFold } from "../noise/noise-fold.ts";
import type { AppStore } from "../state/app-state.ts";
import { cavityCard } from "./cavity-card.ts";
import { type CavityEntry, nextCavity } from "./entries.ts";
import { guardFields } from "./guard-fields.ts";
import { type CardOf, partCard } from "./part-card.ts";
import { RoomDesk } from "./room-desk.ts";
import { templateButtons } from "./template-buttons.ts";

const HOW =
  "Lengths are in millimetres, bare or with a unit. Places are as in the drawing: x from the bridge towards the neck, y from the centre line towards the treble side, less than 0 towards the bass side. What you leave out is asked for and passes nothing. All of it stays in this browser, for the next guard of the same guitar.";

const FROM_MEMORY =
  "From memory, no source, to know what to look for and never to go by: a control cavity is 38 to 45 mm deep, a push-pull reaches 30 to 35 mm under the guard, and a lever's two screws are 41.3 mm apart. Measure yours.";

/** Cards that are drawn anew, and the fields that stand in them now. */
interface Cards {
  readonly element: HTMLElement;
  cards: readonly CardOf[];
}

const noCards = (): Cards => ({ element: h("div", { class: "stack" }), cards: [] });

function showCards(of: Cards, cards: readonly CardOf[]): void {
  of.cards = cards;
  replaceContent(
    of.element,
    cards.map(({ element }) => element),
  );
}

/** The body's cavities, one card each, and a button for one more. */
function cavitySection(desk: RoomDesk, shown: Cards): HTMLElement {
  const set = (cavities: readonly CavityEntry[]) => {
    desk.change({ cavities });
    draw();
    // The button that was pressed may be gone; the last card is the new one, or the nearest to the one removed.
    (shown.element.lastElementChild?.querySelector("input") ?? add).focus();
  };
  const add = h(
    "button",
    { type: "button", onclick: () => set([...desk.entries.cavities, nextCavity(desk.entries.cavities)]) },
    "Add a cavity",
  );
  const cardOf = (entry: CavityEntry, index: number) =>
    cavityCard(
      entry,
      index,
      (part) => {
        const { cavities } = desk.entries;
        desk.change({ cavities: cavities.with(index, { ...cavities[index]!, ...part }) });
      },
      () => set(desk.entries.cavities.toSpliced(index, 1)),
    );
  const draw = () => {
    showCards(shown, desk.entries.cavities.map(cardOf));
    add.disabled = desk.entries.cavities.length >= MAX_CAVITIES;
  };
  draw();
  return h(
    "section",
    { class: "stack" },
    h("h4", {}, "Cavities of the body"),
    shown.element,
    h("div", { class: "buttons" }, add),
  );
}

const HAS_ROOM: readonly Part["kind"][] = ["pickup", "pot", "switch", "jack"];

const partsWithRoom = ({ parts }: Build) => Object.entries(parts).filter(([, { kind }]) => HAS_ROOM.includes(kind));

/** A card for each part that takes room, as long as the guard has the same ones: a value that changes leaves open cards open. */
function partSection(store: AppStore, desk: RoomDesk, shown: Cards): HTMLElement {
  const take = (name: string, field: string, text: string) => {
    const { parts } = desk.entries;
    desk.change({ parts: { ...parts, [name]: { ...parts[name], [field]: text } } });
  };
  let drawn = "";
  const draw = (build: Build) => {
    const words = partWords(build.parts);
    const parts = partsWithRoom(build);
    const signature = JSON.stringify(parts.map(([name, { kind }]) => [name, kind, words.get(name)]));
    if (signature === drawn) return;
    drawn = signature;
    const cardOf = ([name, part]: (typeof parts)[number]) =>
      partCard([name, part], words.get(name)!, desk.entries.parts[name] ?? {}, (field, text) =>
        take(name, field, text),
      );
    showCards(shown, parts.map(cardOf));
  };
  store.watch(
    (state) => [state.reading],
    (reading) => {
      if (reading) draw(reading.build);
      desk.askLater();
    },
  );
  return h("section", { class: "stack" }, h("h4", {}, "Parts, as you measure them"), shown.element);
}

/** Whether the guard goes into a body that a person measures. */
export function createRoomPanel(store: AppStore): HTMLElement {
  bringStyle("tools.css");
  const element = h("div", { class: "sections room" });
  const [cavities, parts] = [noCards(), noCards()];
  const fields = () => [...cavities.cards, ...parts.cards, guard].flatMap((card) => card.fields);
  const desk = new RoomDesk(store, element, fields);
  const guard = guardFields(desk.entries.guard, (field, text) =>
    desk.change({ guard: { ...desk.entries.guard, [field]: text } }),
  );
  element.append(
    h(
      "section",
      { class: "stack no-print" },
      h("h3", {}, "Will it fit?"),
      h("p", { class: "hint" }, HOW),
      h("p", { class: "hint" }, FROM_MEMORY),
      cavitySection(desk, cavities),
      partSection(store, desk, parts),
      guard.element,
    ),
    h("section", { class: "stack", "aria-label": "Room" }, h("h3", {}, "Room"), desk.answer),
    templateButtons(() => desk.question()),
    createNoiseFold(store),
  );
  return element;
}

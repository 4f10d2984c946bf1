import { withFittingBody } from "../../build-file/bodies/fitting-body.ts";
import type { InputFault } from "../../errors.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { Commit, Field } from "../fields/field.ts";
import type { Bench } from "../start/bench.ts";
import { createChangeLine } from "../state/change-line.ts";
import type { Editor } from "../state/editor.ts";
import { type Path, setAt } from "../state/paths.ts";
import type { BuildSource } from "../state/reading.ts";
import { createAddPart } from "./add-part.ts";
import { createPartCard, type PartCard } from "./part-card.ts";
import { partShape } from "./part-fields.ts";
import { createSurroundings } from "./surroundings.ts";

/** The first fault at a field or anywhere inside its value. */
export function faultOf(field: Field, faults: readonly InputFault[]): string | undefined {
  const path = `build.${field.path.join(".")}`;
  return faults.find((fault) => fault.path === path || fault.path.startsWith(`${path}.`))?.message;
}

/** A part that becomes one of another type may have to give up its body. */
function withItsBody(source: BuildSource, [root, name]: Path): BuildSource {
  const part = root === "parts" ? source.parts[String(name)] : undefined;
  if (!part) return source;
  const fitting = withFittingBody(part);
  return fitting === part ? source : setAt(source, ["parts", String(name)], fitting);
}

/** A pickup whose coils have values of their own is no longer of its type; where they sit and how they are turned is no matter. */
function asChanged(source: BuildSource, [root, name, coils, _coil, key]: Path): BuildSource {
  if (root !== "parts" || coils !== "coils" || ["distance", "slant", "tolerance"].includes(String(key))) return source;
  return setAt(source, ["parts", String(name), "type"], undefined);
}

export function committer(editor: Editor): Commit {
  return (path, value) => editor.edit((source) => withItsBody(asChanged(setAt(source, path, value), path), path));
}

interface KeptCard extends PartCard {
  readonly shape: string;
}

/** Keeps a card while its part has the same fields, so that focus and opened details stay. */
class CardShelf {
  readonly #bench: Bench;
  #cards = new Map<string, KeptCard>();

  constructor(bench: Bench) {
    this.#bench = bench;
  }

  cardsFor(source: BuildSource): PartCard[] {
    const commit = committer(this.#bench.editor);
    this.#cards = new Map(
      Object.entries(source.parts).map(([name, part]) => {
        const shape = partShape(part);
        const kept = this.#cards.get(name);
        if (kept?.shape === shape) return [name, kept];
        return [name, { ...createPartCard(name, part, this.#bench, commit), shape }];
      }),
    );
    return [...this.#cards.values()];
  }
}

/** It comes once the values stand. */
const whereFrom = () => import("../sources/where-from.ts");

/** Every part with its values. */
export function createPartsPanel(bench: Bench): HTMLElement {
  const { store, editor } = bench;
  const shelf = new CardShelf(bench);
  const surroundings = createSurroundings(committer(editor));
  const grid = h("div", { class: "part-grid" });
  store.watch(
    (state) => [state.source, state.faults],
    (source, faults) => {
      if (!source) return;
      const cards = shelf.cardsFor(source);
      const elements = [...cards.map((card) => card.element), surroundings.element];
      const unchanged =
        grid.children.length === elements.length && elements.every((each, i) => each === grid.children[i]);
      if (!unchanged) replaceContent(grid, elements);
      for (const card of cards) card.show(source);
      for (const field of surroundings.fields) field.show(source);
      void whereFrom().then(({ markFields }) =>
        markFields([...cards.flatMap((card) => card.marked), ...surroundings.fields], source),
      );
      const fields = [...cards.flatMap((card) => card.fields), ...surroundings.fields];
      for (const field of fields) field.showFault(faultOf(field, faults));
    },
  );
  return h("div", { class: "stack" }, createChangeLine(store), grid, createAddPart(editor));
}

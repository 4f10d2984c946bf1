import type { HeightsRequest } from "../../contract/bench/heights.ts";
import { h, replaceContent } from "../dom/element.ts";
import { type FormField, formText } from "../fields/form-fields.ts";
import { inMillimetres } from "../fields/in-millimetres.ts";
import type { LevelRow } from "./level-row.ts";

type GapsSent = Readonly<Record<string, NonNullable<HeightsRequest["heights"]>[string][string]>>;

/** Heights at which every position is recorded, and the levels there. The first is as the pickups stand, measured above. */
export interface HeightSet {
  readonly element: HTMLElement;
  readonly name: string;
  readonly rows: readonly LevelRow[];
  fields(): FormField[];
  /** By pickup; those that are left empty stand as above. */
  gaps(): GapsSent;
}

interface PickupPair {
  readonly name: string;
  readonly bassGap: FormField;
  readonly trebleGap: FormField;
}

function pairOf(set: string, name: string, words: string): PickupPair {
  return {
    name,
    bassGap: formText(`heights.${set}.${name}.bass`, `${words}, bass gap, mm`, "", "3.4"),
    trebleGap: formText(`heights.${set}.${name}.treble`, `${words}, treble gap, mm`, "", "3"),
  };
}

export interface SetSpec {
  readonly name: string;
  readonly title: string;
  /** Pickups by name and what they are called; none where it is the height that they stand at. */
  readonly pickups: readonly (readonly [name: string, words: string])[];
  readonly rows: readonly LevelRow[];
}

export function createHeightSet({ name, title, pickups, rows }: SetSpec): HeightSet {
  const pairs = pickups.map(([pickup, words]) => pairOf(name, pickup, words));
  const element = h("fieldset", { class: "height-group" });
  replaceContent(
    element,
    h("legend", {}, title),
    pairs.length > 0 &&
      h(
        "div",
        { class: "field-row" },
        pairs.flatMap(({ bassGap, trebleGap }) => [bassGap.element, trebleGap.element]),
      ),
    rows.map((row) => row.element),
  );
  return {
    element,
    name,
    rows,
    fields: () => [...pairs.flatMap(({ bassGap, trebleGap }) => [bassGap, trebleGap]), ...rows.map((row) => row.field)],
    gaps: () =>
      Object.fromEntries(
        pairs
          .filter(({ bassGap, trebleGap }) => bassGap.read() !== "" || trebleGap.read() !== "")
          .map(({ name: pickup, bassGap, trebleGap }) => [
            pickup,
            { bass: inMillimetres(bassGap.read()), treble: inMillimetres(trebleGap.read()) },
          ]),
      ),
  };
}

import type { HeightsRequest } from "../../contract/bench/heights.ts";
import { h } from "../dom/element.ts";
import { type FormField, formChoice, formText } from "../fields/form-fields.ts";

/** A length as it is typed beside a field that says millimetres: a bare number is of those. */
export function inMillimetres(text: string): string {
  const plain = text.replace(",", ".");
  return /^[-−]?\d*\.?\d+$/.test(plain) ? `${plain.replace("−", "-")}mm` : text;
}

type PickupSent = NonNullable<HeightsRequest["pickups"]>[string];

/** What is asked of one pickup: its gaps as it stands, its screws, and the least gap wanted. */
export interface PickupHeights {
  readonly name: string;
  readonly element: HTMLElement;
  readonly fields: readonly FormField[];
  /** Nothing where neither gap is filled in. */
  read(): PickupSent | undefined;
}

const WAYS = [
  { value: "raises", label: "raises it (usual)" },
  { value: "lowers", label: "lowers it" },
] as const;

export function createPickupHeights(name: string, words: string): PickupHeights {
  const path = `pickups.${name}`;
  const bass = formText(`${path}.bass.gap`, "Bass gap, mm", "", "2.4");
  const treble = formText(`${path}.treble.gap`, "Treble gap, mm", "", "2");
  const pitch = formText(`${path}.bass.pitch`, "One turn travels, mm", "", "ten turns ÷ 10");
  const least = formText(`${path}.limits.min`, "Least gap wanted, mm", "", "1.5");
  const way = formChoice(`${path}.clockwiseLowers`, "Clockwise, a screw", WAYS);
  const fields = [bass, treble, pitch, least, way];
  const read = (): PickupSent | undefined => {
    if (bass.read() === "" && treble.read() === "") return undefined;
    const turn = pitch.read() === "" ? {} : { pitch: inMillimetres(pitch.read()) };
    return {
      bass: { gap: inMillimetres(bass.read()), ...turn },
      treble: { gap: inMillimetres(treble.read()), ...turn },
      ...(least.read() === "" ? {} : { limits: { min: inMillimetres(least.read()) } }),
      clockwiseLowers: way.read() === "lowers",
    };
  };
  const rows = fields.map((field) => field.element);
  const element = h(
    "fieldset",
    { class: "height-group" },
    h("legend", {}, words),
    h("div", { class: "field-row" }, rows),
  );
  return { name, element, fields, read };
}

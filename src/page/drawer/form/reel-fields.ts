import { WIRE_KINDS } from "../../../build-file/wire-kinds.ts";
import type { KeptReel } from "../../../drawer/kept-drawer.ts";
import { formChoice, formText } from "../../fields/form-fields.ts";
import { areRight, quantityFault } from "./value-faults.ts";

/** What a reel of wire is. */
export function createReelFields() {
  const kinds = WIRE_KINDS.map((each) => ({ value: each, label: each }));
  const kind = formChoice("kind", "Kind", kinds);
  const colour = formText("colour", "Colour", "", "black");
  const metres = formText("length", "Length on the reel", "", "2m");
  const elements = [kind.element, colour.element, metres.element];
  return {
    elements,
    show: (isShown: boolean) => {
      for (const element of elements) element.hidden = !isShown;
    },
    /** @returns undefined where something is wrong, which is told */
    read: (): Omit<KeptReel, "id" | "price"> | undefined => {
      if (!areRight([[metres, quantityFault(metres.read(), "length")]])) return undefined;
      const said = colour.read() ? { colour: colour.read() } : {};
      return { kind: kind.read(), length: metres.read(), ...said };
    },
  };
}

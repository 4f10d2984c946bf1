import { h, replaceContent } from "../dom/element.ts";
import { formChoice } from "../fields/form-fields.ts";

const ORDERS = [
  { value: "before-behind", label: "1 before the resistor, 2 behind" },
  { value: "behind-before", label: "2 before the resistor, 1 behind" },
] as const;

/** The inputs before the known resistor and behind it. */
export type Inputs = readonly [before: string, behind: string];

const inputsOf = (order: string): Inputs =>
  order === "behind-before" ? ["input 2", "input 1"] : ["input 1", "input 2"];

/** Which input hangs where, and a picture that follows it. */
export function createChannelOrder(path: string, draw: (inputs: Inputs) => SVGElement) {
  const field = formChoice(path, "Which input is where", ORDERS);
  const picture = h("div", {});
  const show = () => replaceContent(picture, draw(inputsOf(field.read())));
  field.element.addEventListener("change", show);
  show();
  return { field, picture };
}

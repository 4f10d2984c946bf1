import { dimensionOfField } from "../../build-file/field-dimension.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { LugSpeech } from "../words/lug-speech.ts";

type Part = ExaminedAnswer["parts"][number];

function shown(value: number, field: string, digits: number): string {
  const dimension = dimensionOfField(field);
  return dimension ? showQuantity(value, dimension, digits) : String(Number(value.toPrecision(digits)));
}

const rowOf = ({ title, field, drawn, value, standardError }: Part, speech: LugSpeech) => [
  speech.say(title),
  shown(drawn, field, 3),
  `${shown(value, field, 3)} ± ${shown(standardError, field, 2)}`,
];

/** The parts' values as the best answer has them: those that the takes tell, and under a fold those that they do not. */
export function partsFound({ parts }: ExaminedAnswer, speech: LugSpeech): HTMLElement | false {
  const [told, untold] = [true, false].map((isTold) => parts.filter((part) => (part.told === "takes") === isTold));
  const table = (caption: string, of: readonly Part[] = []) =>
    of.length > 0 &&
    plainTable(
      caption,
      ["Part", "Drawn", "Found"],
      of.map((part) => rowOf(part, speech)),
    );
  return (
    parts.length > 0 &&
    h(
      "details",
      {},
      h("summary", {}, `What the parts are: ${told!.length} of ${parts.length} values told by these takes`),
      table("Told by these takes", told),
      table("No more is known than the tolerance", untold),
    )
  );
}

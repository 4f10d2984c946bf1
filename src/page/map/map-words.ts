import { stressWords } from "../../choice/map/stress-words.ts";
import { h } from "../dom/element.ts";
import type { DrawnMap } from "./drawn-map.ts";

/** From this on the axis is told as brighter to the right; a choice, no source. */
const TELLING_CORRELATION = 0.5;

function axesWords({ brightness, fullness }: DrawnMap): string {
  const words = [
    ...(brightness >= TELLING_CORRELATION ? ["brighter to the right"] : []),
    ...(fullness >= TELLING_CORRELATION ? ["fuller upwards"] : []),
  ];
  const side = words.length > 0 ? `On the whole it is ${words.join(" and ")}; the axes` : "The axes";
  return `${side} have no unit of their own, only distances tell: the RMS difference of the ERB bands at equal loudness (Plomp 1970), of a strummed chord.`;
}

function countWords({ cells, silent, cut, guards }: DrawnMap): string {
  const count = `${cells.length} cells of ${guards.length} ${guards.length === 1 ? "guard" : "guards"}.`;
  const mute = silent > 0 ? ` ${silent} more give no sound.` : "";
  const names = cut.map((guard) => guards[guard]!.name).join(", ");
  return `${count}${mute}${cut.length > 0 ? ` Of ${names}, which would make too many, small switches stay down.` : ""}`;
}

/** What a map shows, how far it can be trusted, and how to go about on it. */
export function mapWords(map: DrawnMap): HTMLElement[] {
  return [
    h("p", {}, `${countWords(map)} ${stressWords(map.stress1)}`),
    h(
      "p",
      { class: "hint" },
      `${axesWords(map)} Arrow keys or a tap go to a dot and play it, with a mouse the way over it does; every dot plays equally loud. Dots that would hide each other stand side by side.`,
    ),
  ];
}

import type { SheetAnswer } from "../../../contract/bench/bench.ts";
import { replaceContent } from "../../dom/element.ts";
import { bringStyle } from "../../dom/style-sheet.ts";
import { drawPicture } from "../../drawing/joint/draw-picture.ts";
import { picturing } from "../../drawing/joint/picturing.ts";
import { sceneOf } from "../../drawing/joint/scene.ts";
import type { Reading } from "../../state/reading.ts";
import { pictureLegend } from "./picture-legend.ts";

/** So near the screen, a picture is drawn before it is scrolled to. */
const NEAR = "600px";

const SELECTOR = ".stage-picture[data-first]";

/**
 * Draws each stage's picture in its place in the sheet, when it comes near the screen or all of them are to be printed.
 * @returns how to stop, before the sheet is replaced
 */
export function hangStagePictures(within: HTMLElement, { build }: Reading, sheet: SheetAnswer): () => void {
  bringStyle("joint.css");
  const input = picturing(build, sheet);
  const places = [...within.querySelectorAll<HTMLElement>(SELECTOR)];
  const draw = (place: HTMLElement) => {
    if (place.hasChildNodes()) return;
    const { first, last, label } = place.dataset;
    const scene = sceneOf(input, { first: Number(first), last: Number(last) }, "stage");
    place.append(drawPicture(build, input, scene, label!));
  };
  for (const place of within.querySelectorAll(".stage-legend")) replaceContent(place, pictureLegend());
  const observer = new IntersectionObserver(
    (entries) => {
      for (const { isIntersecting, target } of entries) if (isIntersecting) draw(target as HTMLElement);
    },
    { rootMargin: NEAR },
  );
  for (const place of places) observer.observe(place);
  const drawAll = () => places.forEach(draw);
  const paper = matchMedia("print");
  if (paper.matches) drawAll();
  paper.addEventListener("change", drawAll);
  addEventListener("beforeprint", drawAll);
  return () => {
    observer.disconnect();
    paper.removeEventListener("change", drawAll);
    removeEventListener("beforeprint", drawAll);
  };
}

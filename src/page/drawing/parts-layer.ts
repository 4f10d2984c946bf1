import { type Attributes, s } from "../dom/element.ts";
import type { Placed } from "./arrange.ts";
import type { LaidGuard } from "./laid-guard.ts";
import { type BodyState, partBody } from "./part-bodies.ts";

export interface PartLook {
  /** Classes of the body and of its texts. */
  readonly cls: string;
  readonly state: BodyState;
  readonly body?: Attributes;
  readonly caption?: Attributes;
}

export interface PartsLayer {
  readonly bodies: readonly SVGElement[];
  /** A part's texts, to lie over the wires: they could not be read where many cross. */
  readonly captions: readonly SVGElement[];
}

export function drawParts({ placed, side }: LaidGuard, lookOf: (part: Placed) => PartLook): PartsLayer {
  const drawn = placed.map((each) => {
    const { cls, state, body = {}, caption = {} } = lookOf(each);
    const shapes = partBody(each, side, state);
    const element = s("g", { class: `part part-${each.part.kind} ${cls}`.trim(), ...body }, shapes);
    const texts = [...element.querySelectorAll("text")];
    return { body: element, caption: s("g", { class: cls, ...caption }, texts) };
  });
  return { bodies: drawn.map(({ body }) => body), captions: drawn.map(({ caption }) => caption) };
}

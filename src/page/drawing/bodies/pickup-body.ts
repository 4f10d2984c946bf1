import type { PartOf } from "../../../build-file/schema.ts";
import { s } from "../../dom/element.ts";
import { coilCentres, PICKUP } from "./pickup-size.ts";

const { coilWidth, coilGap, coilHeight } = PICKUP;

/** A pickup's plate and its coils. @param how a coil stands */
export function pickupBody(part: PartOf<"pickup">, how: (coil: string) => string): SVGElement[] {
  const centres = coilCentres(part);
  const width = (centres.length - 1) * coilGap + coilWidth + 22;
  return [
    s("rect", { x: -width / 2, y: -coilHeight / 2, width, height: coilHeight, rx: 18, class: "body" }),
    ...centres.map(({ coil, x }) =>
      s("rect", {
        x: x - coilWidth / 2,
        y: -coilHeight / 2 + 8,
        width: coilWidth,
        height: coilHeight - 16,
        rx: 14,
        class: `coil coil-${how(coil)}`,
      }),
    ),
  ];
}

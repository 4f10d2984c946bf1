import type { Dimension } from "./units.ts";

const DIMENSIONS: Readonly<Record<string, Dimension>> = {
  resistance: "resistance",
  measured: "resistance",
  loss: "resistance",
  inductance: "inductance",
  capacitance: "capacitance",
};

/** What a part's value is measured in, by its path in the build file: "coils.slug.inductance"; undefined of a plain number. */
export function dimensionOfField(field: string): Dimension | undefined {
  return DIMENSIONS[field.split(".").at(-1)!];
}

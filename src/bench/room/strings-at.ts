import type { Build } from "../../build-file/schema.ts";
import type { Measures } from "./measures.ts";

/** Metres from the first string to the last, so far from the bridge: they are straight, so that it grows evenly. */
export function stringsAt(build: Build, { strings }: Measures, distance: number): number | undefined {
  if (strings === undefined) return undefined;
  const { nut, bridge, scale = build.strings.scale } = strings;
  return bridge + ((nut - bridge) * distance) / scale;
}

import type { Build } from "../../build-file/schema.ts";
import { summarize } from "../../build-file/setting-label.ts";
import { Controls } from "../../build-file/settings.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import type { Take } from "./take.ts";

/** What the person calls it; else "position 2, tone 10, volume 5". */
export function takeTitle(
  build: Build,
  { settings, through, label }: Pick<Take, "settings" | "through" | "label">,
): string {
  if (label !== undefined && label.trim() !== "") return label.trim();
  const words = partWords(build.parts);
  const called = (name: string) => words.get(name) ?? name;
  const at = summarize(new Controls(build), settings, called).label;
  return through === "jack" ? at : `small coil over ${called(through.pickup)}, ${at}`;
}

import type { Build } from "../../build-file/schema.ts";
import { summarize } from "../../build-file/setting-label.ts";
import { Controls } from "../../build-file/settings.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import type { Take } from "./take.ts";

/** "position 2, tone 10, volume 5". */
export function takeTitle(build: Build, { settings, through }: Take): string {
  const { label } = summarize(new Controls(build), settings);
  if (through === "jack") return label;
  return `small coil over ${partWords(build.parts).get(through.pickup) ?? through.pickup}, ${label}`;
}

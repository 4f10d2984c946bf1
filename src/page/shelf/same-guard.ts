import type { GuardLine } from "../../shelf/guard.ts";
import { markOf } from "../../shelf/line.ts";
import { buildText } from "../../shelf/packed.ts";
import type { BuildSource } from "../state/reading.ts";

/** The mark of the build file that a guard on the bench is kept as. */
export const markOfSource = (source: BuildSource) => markOf(buildText(source));

/** The guard of the shelf whose build file is this guard's. */
export function sameOnShelf(lines: readonly GuardLine[], mark: string): GuardLine | undefined {
  return lines.find(({ fileMark }) => fileMark === mark);
}

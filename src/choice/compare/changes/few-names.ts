import { listed } from "../../../english.ts";

/** More in a row are not read. */
const MOST_NAMES = 4;

/** "volume, upper tone and lower tone"; of many the first, and how many more. */
export function fewNames(names: readonly string[]): string {
  if (names.length <= MOST_NAMES) return listed(names);
  return `${names.slice(0, MOST_NAMES - 1).join(", ")} and ${names.length - MOST_NAMES + 1} more`;
}

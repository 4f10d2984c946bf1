import { listed } from "../../../english.ts";

/** More in a row are not read. */
const MOST_NAMES = 4;

/** A name with its article, unless it is numbered. */
export const withArticle = (name: string) => (/\d$/.test(name) ? name : `the ${name}`);

/** "the volume, upper tone and lower tone"; of many the first, and how many more. */
export function fewNames([first = "", ...others]: readonly string[]): string {
  const names = [withArticle(first), ...others];
  if (names.length <= MOST_NAMES) return listed(names);
  return `${names.slice(0, MOST_NAMES - 1).join(", ")} and ${names.length - MOST_NAMES + 1} more`;
}

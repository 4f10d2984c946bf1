import type { Reading } from "../state/reading.ts";

/** What the two guards are called; a change seldom renames a guard, and then they are told apart by where they are. */
export function foundAndWanted(found: Pick<Reading, "source">, wanted: Pick<Reading, "source">): string {
  const [was, is] = [found.source.title || "", wanted.source.title || ""];
  const named = (title: string, place: string) => (title === "" ? place : was === is ? `${title}, ${place}` : title);
  return `As found: ${named(was, "the guard kept as B")}. As wanted: ${named(is, "the guard on the bench")}.`;
}

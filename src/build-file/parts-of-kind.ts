import type { Build, Part } from "./schema.ts";

/** Parts of one kind, with their names. */
export function partsOfKind<Kind extends Part["kind"]>(
  build: Build,
  kind: Kind,
): [name: string, part: Extract<Part, { kind: Kind }>][] {
  return Object.entries(build.parts).filter(
    (entry): entry is [string, Extract<Part, { kind: Kind }>] => entry[1].kind === kind,
  );
}

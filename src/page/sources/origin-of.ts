import { getAt, type Path } from "../state/paths.ts";
import type { BuildSource } from "../state/reading.ts";
import type { Origin } from "./origin.ts";
import { partOrigin } from "./part-origin.ts";
import { coilOrigin, pickupOrigin } from "./pickup-origin.ts";
import { surroundingOrigin } from "./surrounding-origin.ts";

/** Where the value of a field stands in the catalogue; undefined where the person has said it. */
export function originOf(source: BuildSource, path: Path): Origin | undefined {
  const [root, name, ...keys] = path.map(String);
  if (root !== "parts") return surroundingOrigin(source, path.map(String));
  const part = source.parts[name!];
  if (!part) return undefined;
  const value = getAt(part, keys);
  if (part.kind === "pickup")
    return keys[0] === "coils" ? coilOrigin(name!, part, keys.slice(1), value) : pickupOrigin(part, keys[0]!, value);
  return partOrigin(part, keys[0]!, value);
}

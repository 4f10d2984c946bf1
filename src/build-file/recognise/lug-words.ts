import type { Build } from "../schema.ts";

/** A lug as one would point at it: "lug 2 of tone1", "the case of volume", "the tip of jack". */
export function lugWords(parts: Build["parts"], lug: string): string {
  const [name = "", ...rest] = lug.split(".");
  const part = parts[name];
  if (rest.length === 0 || !part) return lug;
  if (rest[0] === "s" && part.kind === "pot") return `lug ${rest[1]} of ${name}'s push-pull`;
  if (part.kind === "pickup" && rest[0] === "shield") return `the metal of ${name}`;
  if (part.kind === "pickup")
    return rest.length === 1 ? `the ${rest[0]} lead of ${name}` : `the ${rest[1]} of ${name}'s coil ${rest[0]}`;
  if (part.kind === "cap" || part.kind === "resistor") return `leg ${rest[0]} of ${name}`;
  return rest[0] === "case" || part.kind === "jack" ? `the ${rest[0]} of ${name}` : `lug ${rest[0]} of ${name}`;
}

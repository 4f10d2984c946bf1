import { MAX_LINE_CHARS } from "./bounds.ts";
import type { Guard, GuardContent } from "./guard.ts";

/** Random by RFC 9562, version 4; browsers have `randomUUID` on secure addresses alone, and a workshop's own net has none. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6]! & 0x0f) | 0x40;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

/** The day of an instant where the person is, YYYY-MM-DD. */
export function dayOf(at: Date): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${String(at.getFullYear()).padStart(4, "0")}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** A guard that was on no shelf yet. */
export function newGuard(content: Partial<GuardContent> & Pick<GuardContent, "name" | "file">, at: Date): Guard {
  return {
    id: newId(),
    guitar: "",
    state: "wanted",
    made: dayOf(at),
    notes: "",
    readings: [],
    ...content,
    changed: at.toISOString(),
    history: [],
  };
}

/** Another guard wired as this one. Readings and history are of the first alone: nobody measured the second. */
export function duplicateOf({ name, guitar, notes, file }: Guard, at: Date): Guard {
  const suffix = " (copy)";
  return newGuard({ name: `${name.slice(0, MAX_LINE_CHARS - suffix.length)}${suffix}`, guitar, notes, file }, at);
}

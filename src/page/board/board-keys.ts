import { BOARD_KEYS } from "./board.ts";

/** What a key on the board asks for: a cell by its place, the next or the one before, or silence. */
export type Asked = { readonly place: number } | { readonly step: 1 | -1 } | "stop";

const STEPS: Readonly<Record<string, 1 | -1>> = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 };

function isWriting(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches("input, select, textarea");
}

export function askedByKey(event: KeyboardEvent): Asked | undefined {
  if (event.ctrlKey || event.altKey || event.metaKey || isWriting(event.target)) return undefined;
  const { key } = event;
  const place = (BOARD_KEYS as readonly string[]).indexOf(key);
  if (place >= 0) return { place };
  const step = STEPS[key];
  if (step) return { step };
  return key === "Escape" ? "stop" : undefined;
}

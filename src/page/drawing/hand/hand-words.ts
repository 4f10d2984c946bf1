import type { HandState } from "./hand-state.ts";

const HOW_TO =
  "Drag from lug to lug, or tap one and then the other, to lay a wire. Tap a wire or a part to change it. By keyboard: arrow keys walk from lug to lug, Enter takes up and lays, Escape lets go.";

function heldWords({ held, warnings }: HandState): string {
  const what =
    held?.kind === "end" ? `The end of a wire from ${held.from} is in hand` : `A wire from ${held?.from} is in hand`;
  const glowing = warnings.size === 0 ? "" : " A square marks the lugs where it would make a fault.";
  return `${what}: choose the lug it goes to. Escape lets go.${glowing}`;
}

/** What is said of the hand: why a wire would be wrong, what is held, or what was done. */
export function handWords(state: HandState): string {
  const { held, chosen, over, warnings, said } = state;
  // What is chosen has words of its own beside it.
  if (!held) return said || (chosen ? "" : HOW_TO);
  const reason = over === undefined ? undefined : warnings.get(over);
  return reason === undefined ? heldWords(state) : `To ${over} it would make a fault. ${reason}`;
}

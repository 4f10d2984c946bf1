import { latestOnly } from "../../dom/later.ts";
import { BenchEngine } from "../../engine/bench-engine.ts";
import type { AppStore } from "../../state/app-state.ts";
import type { Editor } from "../../state/editor.ts";
import type { GuardDrawing } from "../guard-drawing.ts";
import { listenForGestures } from "./gestures.ts";
import { Hand } from "./hand.ts";
import { createHandCard } from "./hand-card.ts";
import type { Held } from "./hand-state.ts";
import { createHandTools } from "./hand-tools.ts";
import { showInHand } from "./in-hand-marks.ts";
import { findJoinFaults } from "./join-faults.ts";
import { LugFocus, listenForKeys } from "./lug-keys.ts";
import { createZoom } from "./zoom.ts";

export interface ByHand {
  readonly hand: Hand;
  readonly tools: HTMLElement;
  readonly card: HTMLElement;
  /** Shows in a new drawing what is in hand. */
  drawn(drawing: GuardDrawing): void;
  /** What puts the focus where it was, once the drawing is drawn anew. */
  keptFocus(): (() => void) | undefined;
}

/** Those near the start first, since a wire mostly goes to one of them. */
function lugsByDistance({ lugs }: GuardDrawing, from: string): string[] {
  const start = lugs.get(from)!;
  const away = ({ x, y }: { x: number; y: number }) => Math.hypot(x - start.x, y - start.y);
  return [...lugs.values()].sort((a, b) => away(a) - away(b)).map(({ name }) => name);
}

/** Has a worker try what is held at every net, and marks where it would make a fault. */
function warnWhileHeld(hand: Hand, drawing: () => GuardDrawing | undefined): void {
  const engine = new BenchEngine();
  const latest = latestOnly();
  const warn = async (held: Held, now: GuardDrawing) => {
    const isLatest = latest();
    const { source, build } = now.input.reading;
    await findJoinFaults({
      build,
      moved: held.kind === "end" ? source.wires.indexOf(held.wire) : undefined,
      from: held.from,
      targets: lugsByDistance(now, held.from),
      faults: (candidate) => engine.faults(candidate),
      isWanted: () => isLatest() && hand.state.state.held === held,
      found: (warnings) => hand.state.set({ warnings }),
    });
  };
  hand.state.watch(
    (state) => [state.held],
    (held) => {
      const now = drawing();
      // Without an answer the wire can be laid all the same, and the audit of what was laid follows.
      if (held && now) warn(held, now).catch(() => undefined);
    },
  );
}

/** Lets go of what is no longer there, as after a step back. */
function dropWhatIsGone(store: AppStore, hand: Hand): void {
  store.watch(
    (state) => [state.source],
    (source) => {
      const { held, chosen } = hand.state.state;
      const isThere = (lug: string) => lug.split(".")[0]! in (source?.parts ?? {});
      const wires = [held?.kind === "end" && held.wire, chosen?.kind === "wire" && chosen.wire];
      const names = [held?.from, chosen && chosen.kind !== "wire" ? chosen.name : undefined];
      const isGone =
        wires.some((wire) => wire && !source?.wires.includes(wire)) ||
        names.some((name) => name !== undefined && !isThere(name));
      if (isGone) hand.choose(undefined);
    },
  );
}

/** Wiring in the drawing, by pointer, finger and keys. */
export function wireByHand(
  bench: { readonly store: AppStore; readonly editor: Editor },
  frame: HTMLElement,
  drawing: () => GuardDrawing | undefined,
): ByHand {
  const hand = new Hand(bench.editor, drawing);
  const focus = new LugFocus(frame, drawing);
  const card = createHandCard(hand, focus, frame, drawing);
  const tools = createHandTools(bench, hand, createZoom(frame), drawing);
  listenForGestures({ frame, hand, drawing });
  listenForKeys(frame, hand, focus, drawing);
  for (const element of [frame, card.element])
    element.addEventListener("keydown", (event) => {
      if (event.key !== "Escape") return;
      if (hand.state.state.held) hand.letGo();
      else hand.choose(undefined);
    });
  hand.state.watchAny(
    (state) => [state.held, state.chosen, state.warnings],
    () => {
      const now = drawing();
      if (now) showInHand(now, hand);
    },
  );
  hand.state.watchAny(
    (state) => [state.chosen, state.held],
    () => {
      const now = drawing();
      if (now) card.show(now);
    },
  );
  warnWhileHeld(hand, drawing);
  dropWhatIsGone(bench.store, hand);
  return {
    hand,
    tools,
    card: card.element,
    drawn: (now) => {
      showInHand(now, hand);
      card.show(now);
      focus.stand();
    },
    keptFocus: () => focus.kept(),
  };
}

import { changedWire, wireEnds } from "../../describe/wire-ends.ts";
import type { Editor } from "../../state/editor.ts";
import type { BuildSource, WireSource } from "../../state/reading.ts";
import { Store } from "../../state/store.ts";
import type { GuardDrawing } from "../guard-drawing.ts";
import type { Point } from "../point.ts";
import { type Chosen, EMPTY_HAND, type HandState, type Held, type WireEnd } from "./hand-state.ts";
import { movedPart, turnedPart } from "./place-edits.ts";
import { withChangedWire, withoutWire, withWire } from "./wire-edits.ts";

/** What a person does to the wiring in the drawing, however it was pointed at. Every change is one step of the editor's. */
export class Hand {
  readonly state = new Store<HandState>(EMPTY_HAND);
  readonly #editor: Editor;
  readonly #drawing: () => GuardDrawing | undefined;

  constructor(editor: Editor, drawing: () => GuardDrawing | undefined) {
    this.#editor = editor;
    this.#drawing = drawing;
  }

  /** The lugs that a wire joins, by the names that the drawing has for them. */
  endsOf(wire: WireSource): readonly [string, string] {
    const [from, to] = wireEnds(wire);
    const named = (lug: string) => this.#drawing()?.find(lug)?.name ?? lug;
    return [named(from), named(to)];
  }

  /** A lug was pointed at: what is held goes there, or something is taken up there. */
  tapLug(name: string): void {
    if (this.state.state.held) this.joinTo(name);
    else this.takeUp(name);
  }

  /** Takes up a new wire at a lug, or the end of the chosen wire that is there. */
  takeUp(name: string): void {
    const { chosen } = this.state.state;
    const wire = chosen?.kind === "wire" ? chosen.wire : undefined;
    const at = wire ? this.endsOf(wire).indexOf(name) : -1;
    if (wire && at >= 0) this.takeEnd(wire, at === 0 ? "from" : "to");
    else this.#hold({ kind: "new", from: name }, { kind: "lug", name });
  }

  takeEnd(wire: WireSource, end: WireEnd): void {
    const [from, to] = this.endsOf(wire);
    this.#hold({ kind: "end", wire, end, from: end === "from" ? to : from }, { kind: "wire", wire });
  }

  /** Lays what is held to a lug. */
  joinTo(name: string): void {
    const { held } = this.state.state;
    if (!held) return;
    if (held.from === name) {
      this.letGo(`Let go: a wire does not join ${name} with itself.`);
      return;
    }
    if (held.kind === "new") this.#layNew(held.from, name);
    else this.#moveEnd(held.wire, held.end, name);
  }

  letGo(said = "Let go: nothing was changed."): void {
    if (this.state.state.held) this.#rest(this.state.state.chosen, said);
  }

  choose(chosen: Chosen | undefined): void {
    this.#rest(chosen, "");
  }

  changeWire(wire: WireSource, next: WireSource, said: string): void {
    // First the hand: it lets go of what an edit takes away.
    this.#rest({ kind: "wire", wire: next }, said);
    void this.#editor.edit((source) => withChangedWire(source, wire, next));
  }

  takeOut(wire: WireSource): void {
    this.#rest(undefined, `Taken out: ${this.endsOf(wire).join(" — ")}.`);
    void this.#editor.edit((source) => withoutWire(source, wire));
  }

  /** @param by drawing units, towards the neck and the treble side */
  movePart(name: string, by: Point): void {
    this.#placePart(name, (source, placed) => movedPart(source, placed, by), "Moved.");
  }

  /** @param steps counter-clockwise as seen from the back */
  turnPart(name: string, steps: number): void {
    this.#placePart(name, (source, placed) => turnedPart(source, placed, steps), "Turned.");
  }

  point(over: string | undefined): void {
    if (over !== this.state.state.over) this.state.set({ over });
  }

  #hold(held: Held, chosen: Chosen): void {
    this.state.set({ held, chosen, warnings: new Map(), said: "" });
  }

  #rest(chosen: Chosen | undefined, said: string): void {
    this.state.set({ held: undefined, chosen, warnings: new Map(), said });
  }

  #layNew(from: string, to: string): void {
    this.#rest({ kind: "lug", name: to }, `Laid: ${from} — ${to}.`);
    void this.#editor.edit((source) => withWire(source, from, to));
  }

  #moveEnd(wire: WireSource, end: WireEnd, to: string): void {
    if (this.endsOf(wire)[end === "from" ? 0 : 1] === to) {
      this.letGo();
      return;
    }
    const next = changedWire(wire, end, to);
    this.changeWire(wire, next, `Moved: ${this.endsOf(next).join(" — ")}.`);
  }

  #placePart(
    name: string,
    change: (source: BuildSource, placed: GuardDrawing["placed"][number]) => BuildSource,
    said: string,
  ): void {
    const placed = this.#drawing()?.placed.find((each) => each.name === name);
    if (!placed) return;
    void this.#editor.edit((source) => change(source, placed));
    this.#rest({ kind: "part", name }, said);
  }
}

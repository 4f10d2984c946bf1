import type { Guard, GuardLine } from "../../shelf/guard.ts";

/** Why the shelf could not do what was asked. */
export type ShelfReason =
  /** The browser's storage has no room left. */
  | "full"
  /** The browser stores nothing for this page, or no longer. */
  | "refused"
  /** The guard is not on the shelf any more. */
  | "gone";

/** What the shelf could not keep, in plain words, with what a file is to be offered for. */
export class ShelfFault extends Error {
  readonly reason: ShelfReason;
  /** What was to be kept and is not; nothing where nothing was. */
  readonly unkept: readonly Guard[];

  constructor(reason: ShelfReason, message: string, unkept: readonly Guard[] = []) {
    super(message);
    this.name = "ShelfFault";
    this.reason = reason;
    this.unkept = unkept;
  }
}

/** The guards that this browser keeps. Every call may fail with a `ShelfFault`; what it was to change is then as it was. */
export interface Shelf {
  /** Whether it outlasts the visit; false where the browser stores nothing, and what is put is kept until the page is closed. */
  readonly lasts: boolean;
  /** All guards, the latest changed first. */
  list(): Promise<readonly GuardLine[]>;
  /** The first so many of them. */
  latest(count: number): Promise<readonly GuardLine[]>;
  get(id: string): Promise<Guard | undefined>;
  /** All guards whole, history included; of some, or of all. */
  getAll(ids?: readonly string[]): Promise<readonly Guard[]>;
  /** The build file of a guard, parsed and not yet read by an engine. @throws SyntaxError where it is no JSON */
  build(id: string): Promise<unknown>;
  /** Puts guards as they are, in the place of those with their ids. All or none. */
  put(guards: readonly Guard[]): Promise<void>;
  /** Puts those of which none with their ids is there: what another tab put meanwhile stays. All or none. @returns them */
  add(guards: readonly Guard[]): Promise<readonly Guard[]>;
  /**
   * Changes a guard as it stands now, whatever another tab did to it since it was read. @returns what it came to
   * @param edit pure: it may be run more than once
   * @throws ShelfFault "gone"
   */
  change(id: string, edit: (guard: Guard) => Guard): Promise<Guard>;
  remove(ids: readonly string[]): Promise<void>;
  /** Calls `effect` with the ids of guards that were put, changed or removed, here or in another tab. @returns how to stop */
  subscribe(effect: (ids: readonly string[]) => void): () => void;
}

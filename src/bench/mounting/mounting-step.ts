import type { Reading } from "../meter/reading-taker.ts";

/** What is read on a closed guard, and where it is to lie. */
export interface AcceptanceReading extends Pick<Reading, "label" | "low" | "high"> {
  /** On the person's own meter, where they said which. */
  readonly shows?: string;
}

/** One thing to do with the hands, before the first wire or after the last. */
export interface MountingStep {
  readonly title: string;
  readonly text: string;
  /** The parts concerned, by their names; none where it is of the guard as a whole. */
  readonly parts: readonly string[];
  /** Readings to be noted with their date. */
  readonly readings?: readonly AcceptanceReading[];
}

/** A step that some parts call for; none where the build has none of them. */
export function stepFor(parts: readonly string[], title: string, text: string): MountingStep[] {
  return parts.length === 0 ? [] : [{ title, text, parts }];
}

/** A step of every guard. */
export function stepOfGuard(title: string, text: string): MountingStep {
  return { title, text, parts: [] };
}

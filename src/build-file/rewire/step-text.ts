import type { Fate } from "./moves.ts";
import { grownText, placeText, type SaidLug } from "./said-lug.ts";

export interface StepWords {
  readonly do: "open" | "make";
  readonly fate: Fate;
  readonly means: string;
  /** The lug that is heated. */
  readonly at: SaidLug;
  /** The lug at the strand's other end. */
  readonly other: SaidLug;
  /** Whether it grows from that other lug: a lead, a leg or a bent lug. */
  readonly grown: boolean;
  /** Whether the strand comes new, to be cut from the reel. */
  readonly isNew: boolean;
  /** Where the end goes, or came from. */
  readonly moved: SaidLug | undefined;
}

/** "the wire from the volume, lug 3 (clockwise end)", "the hot lead of the neck single coil". */
function named({ means, other, grown }: StepWords): string {
  if (means === "inside") return `the joint inside, to ${placeText(other)}`;
  return grown ? grownText(other, means) : `the ${means} from ${placeText(other)}`;
}

/** What is told in commas is closed by one where the sentence goes on. */
function within(what: string): string {
  return what.includes(",") ? `${what},` : what;
}

function openText(step: StepWords): string {
  const { at, other, grown, fate, moved, means } = step;
  const what = within(named(step));
  const head = `Open the joint at ${placeText(at)}`;
  if (means === "bent lug" && grown) return `${head}: bend ${other.own} off it.`;
  switch (fate) {
    case "moves":
      if (moved === undefined) return `${head}: ${what} moves.`;
      return grown
        ? `${head}: ${what} moves to ${placeText(moved)}.`
        : `${head}: this end of the ${means} moves to ${placeText(moved)}; the other stays on ${placeText(other)}.`;
    case "wire":
      return `${head}: ${what} is taken out.`;
    case "part":
      return `${head}: ${what} goes out with its part.`;
    case "free":
      return `${head}: ${what} stays free; insulate its end.`;
  }
}

function makeText(step: StepWords): string {
  const { at, other, fate, moved, means } = step;
  const what = named(step);
  const head = `Solder to ${placeText(at)}`;
  if (means === "bent lug" && step.grown) return `${head}: ${other.own}, bent to it.`;
  switch (fate) {
    case "moves":
      return `${head}: ${what}${moved === undefined ? "" : `, until now at ${placeText(moved)}`}.`;
    case "wire":
      return `${head}: ${step.isNew ? `a new ${means}` : `the ${means} that was taken out,`} to ${placeText(other)}.`;
    case "part":
      return `${head}: ${what}, which comes in with its part.`;
    case "free":
      return `${head}: ${what}, which hung free.`;
  }
}

/** What to do at a joint, in a sentence. */
export function stepText(step: StepWords): string {
  return step.do === "open" ? openText(step) : makeText(step);
}

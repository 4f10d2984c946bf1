import type { Fate } from "./moves.ts";

export interface StepWords {
  readonly do: "open" | "make";
  readonly fate: Fate;
  readonly means: string;
  /** The lug that is heated. */
  readonly at: string;
  /** The lug at the strand's other end. */
  readonly other: string;
  /** Whether it grows from that other lug: a lead, a leg or a bent lug. */
  readonly grown: boolean;
  /** Whether the strand comes new, to be cut from the reel. */
  readonly isNew: boolean;
  /** Where the end goes, or came from. */
  readonly moved: string | undefined;
}

/** "the wire from volume lug 3", "the lead neck hot", "cap leg a". */
function named({ means, other, grown }: StepWords): string {
  if (means === "inside") return `the joint inside, to ${other}`;
  if (means === "leg" && grown) return other;
  return grown ? `the ${means} ${other}` : `the ${means} from ${other}`;
}

function openText(step: StepWords): string {
  const { at, other, grown, fate, moved, means } = step;
  const what = named(step);
  const head = `Open the joint at ${at}`;
  if (means === "bent lug" && grown) return `${head}: bend ${other} off it.`;
  switch (fate) {
    case "moves":
      if (moved === undefined) return `${head}: ${what} moves.`;
      return grown
        ? `${head}: ${what} moves to ${moved}.`
        : `${head}: the ${means} stays on ${other}, and moves to ${moved}.`;
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
  const head = `Solder to ${at}`;
  if (means === "bent lug" && step.grown) return `${head}: ${other}, bent to it.`;
  switch (fate) {
    case "moves":
      return `${head}: ${what}${moved === undefined ? "" : `, until now at ${moved}`}.`;
    case "wire":
      return `${head}: ${step.isNew ? `a new ${means}` : `the ${means} that was taken out,`} to ${other}.`;
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

import type { Build } from "../../build-file/schema.ts";
import { amplitudeFromDecibels } from "../../decibels.ts";
import type { TapStep } from "./plan-taps.ts";
import { type TapInput, type TapTransfer, TapTransfers } from "./tap-transfers.ts";

/** What a tap on a row should make at the jack, in the EMF of one reference coil. */
export interface ForetoldTap {
  /** Of the row's own coil. */
  readonly re: number;
  readonly im: number;
  /** What reaches the jack past it: through a neighbour on the same magnet, or from afar. Its sign is nobody's. */
  readonly leak: number;
}

/**
 * Two coils on one magnet share its flux, so that a tap on one pole is heard in both; and a tool is steel a few centimetres from the
 * other pickups, and brings a hand's hum. A judgement, no source.
 */
const SHARED = 0.15;
const AFAR = amplitudeFromDecibels(-46);

const NOTHING = { re: 0, im: 0 };

const sizeOf = ({ re, im }: { readonly re: number; readonly im: number }) => Math.hypot(re, im);

function foretoldIn(transfers: readonly TapTransfer[], { pickup, coil }: TapStep, strongest: number): ForetoldTap {
  const own = transfers.find((each) => each.pickup === pickup && each.coil === coil) ?? NOTHING;
  const others = transfers.filter((each) => each.pickup === pickup && each.coil !== coil);
  const near = others.map((each) => SHARED * sizeOf(each));
  return { re: own.re, im: own.im, leak: Math.hypot(AFAR * strongest, ...near) };
}

/** For each step, by the guard's own network. */
export function foretoldTaps(
  build: Build,
  steps: readonly TapStep[],
  input?: TapInput,
  transfers = new TapTransfers(build, input),
): ForetoldTap[] {
  const all = steps.map(({ settings }) => transfers.in(settings));
  // A hand's own hum comes where no coil is let through as well as anywhere.
  const strongest = Math.max(0, ...all.flat().map(sizeOf));
  return steps.map((step, i) => foretoldIn(all[i]!, step, strongest));
}

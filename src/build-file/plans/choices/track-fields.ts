import type { Plan, PlanTone, PlanVolume } from "../plan-schema.ts";
import type { PlanChoice, PlanControl } from "./field.ts";

const TAPERS: readonly PlanChoice[] = [
  { value: "audio", label: "audio" },
  { value: "linear", label: "linear" },
  { value: "reverse-audio", label: "reverse audio" },
];

/** A written value is another pot's, and so is what a meter read on it. */
export function withTrack<Pot extends PlanTone | PlanVolume>({ measured: _, ...pot }: Pot, value: string): Pot {
  return { ...pot, pot: value } as Pot;
}

export function taperField(
  id: string,
  title: string,
  pot: PlanTone | PlanVolume,
  made: (taper: string) => Plan,
): PlanControl {
  const isOwn = Array.isArray(pot.taper);
  const own: PlanChoice[] = isOwn ? [{ value: "own", label: "its own table", reason: "as it stands" }] : [];
  return {
    id,
    option: id.startsWith("tone") ? "tones" : "volume",
    title,
    kind: "choice",
    value: isOwn ? "own" : ((pot.taper as string | undefined) ?? "audio"),
    choices: [...own, ...TAPERS],
    made,
  };
}

export function withTaper<Pot extends PlanTone | PlanVolume>(
  { taper: _, midpoint: __, ...pot }: Pot,
  taper: string,
): Pot {
  return (taper === "audio" ? pot : { ...pot, taper }) as Pot;
}

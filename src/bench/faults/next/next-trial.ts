import type { NamedFault } from "../answer/explanations.ts";
import { REMEDIES, type Remedy } from "./remedies.ts";
import { namesOf, type Suspect } from "./suspects.ts";

/** Something to do by hand where neither meter nor ear tells: it helps, or it does not. */
export interface NextTrial {
  readonly kind: "try";
  readonly label: string;
  /** The same as a sentence. */
  readonly instruction: string;
  readonly cautions: readonly string[];
  readonly outcomes: readonly { readonly helped: boolean; readonly faults: readonly (readonly NamedFault[])[] }[];
}

function remedyOf({ hypothesis: { faults } }: Suspect): Remedy | undefined {
  return faults.map(({ kind }) => REMEDIES[kind]).find((remedy) => remedy !== undefined);
}

/** The remedy that most of the belief calls for, where it calls for one with at least this share; else null. */
export function nextTrial(suspects: readonly Suspect[], leastShare: number): NextTrial | null {
  const shares = new Map<Remedy, number>();
  for (const suspect of suspects) {
    const remedy = remedyOf(suspect);
    if (remedy) shares.set(remedy, (shares.get(remedy) ?? 0) + suspect.share);
  }
  const [best] = [...shares].sort(([, a], [, b]) => b - a);
  if (!best || best[1] < leastShare) return null;
  const [remedy] = best;
  const [meant, others] = [true, false].map((wanted) =>
    suspects.filter((each) => (remedyOf(each) === remedy) === wanted),
  );
  return {
    kind: "try",
    label: remedy.label,
    instruction: `Next, ${remedy.label}.`,
    cautions: remedy.cautions,
    outcomes: [
      { helped: true, faults: namesOf(meant!) },
      ...(others!.length > 0 ? [{ helped: false, faults: namesOf(others!) }] : []),
    ],
  };
}

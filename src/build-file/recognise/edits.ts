import { DisjointSets } from "../../disjoint-sets.ts";
import type { Draft } from "../plans/draft.ts";
import { LugWords } from "../words/lug-words.ts";
import { type Fit, LugMap } from "./fit.ts";
import type { Guard } from "./guard.ts";
import { valuesApart } from "./values-apart.ts";

interface Said {
  /** A plain sentence. */
  readonly text: string;
}

/** One thing that was done by hand on top of a plan, in the guard's own names. */
export type Edit =
  | (Said & { readonly kind: "wire-laid" | "wire-left-out"; readonly between: readonly [string, string] })
  | (Said & { readonly kind: "part-added"; readonly part: string })
  | (Said & { readonly kind: "part-left-out"; readonly part: string })
  | (Said & { readonly kind: "value"; readonly part: string; readonly field: string });

/** What a lug of the guard is called. */
type Say = (lug: string) => string;

/** Joins of the guard's that the plan has not: wires from one of the plan's nets to another. */
function laid(guard: Guard, fit: Fit, say: Say): Edit[] {
  const sets = new DisjointSets(guard.table.lugs.length);
  const first = new Map<number, number>();
  for (const [lug, planNet] of fit.planNetOf.entries()) {
    const key = planNet * guard.netCount + guard.netOf[lug]!;
    if (first.has(key)) sets.join(first.get(key)!, lug);
    else first.set(key, lug);
  }
  return guard.build.wires.flatMap(({ from, to }): Edit[] => {
    const [a, b] = [guard.table.indexOf(from), guard.table.indexOf(to)];
    if (guard.netOf[a] !== guard.netOf[b] || sets.find(a) === sets.find(b)) return [];
    sets.join(a, b);
    const text = `A wire is laid by hand: ${say(from)} — ${say(to)}.`;
    return [{ kind: "wire-laid", between: [from, to], text }];
  });
}

/** Joins of the plan's that the guard has not. */
function leftOut(guard: Guard, draft: Draft, map: LugMap, fit: Fit, say: Say): Edit[] {
  const count = guard.table.lugs.length;
  const standsAt = new Map([...fit.roleOf].map((role, lug) => [role, lug]));
  const ends = draft.wires.map(({ from, to }) => [map.idOf(from), map.idOf(to)] as const);
  const sets = new DisjointSets(map.size);
  const place = (role: number) => standsAt.get(role) ?? role;
  const net = (lug: number) => (lug < count ? guard.netOf[lug]! : -1 - lug);
  const byNet = new Map<string, number>();
  for (let lug = 0; lug < count; lug++) {
    const key = `${net(lug)} ${fit.planNetOf[lug]}`;
    if (byNet.has(key)) sets.join(byNet.get(key)!, lug);
    else byNet.set(key, lug);
  }
  // A lug of a part that is left out joins what the guard may well have joined elsewhere, so it counts for nothing by itself.
  for (const [a, b] of ends) if (place(a) >= count || place(b) >= count) sets.join(place(a), place(b));
  return ends.flatMap(([from, to]): Edit[] => {
    const [a, b] = [place(from), place(to)];
    if (sets.find(a) === sets.find(b)) return [];
    sets.join(a, b);
    const between = [guard.table.nameAt(a), guard.table.nameAt(b)] as const;
    return [
      { kind: "wire-left-out", between, text: `A wire of the plan is left out: ${between.map(say).join(" — ")}.` },
    ];
  });
}

function missingText(draft: Draft, planName: string): string {
  const { label } = draft.parts[planName]!;
  return label === undefined
    ? `There is no ${planName}.`
    : `There is no ${label.toLowerCase()}, which the plan calls ${planName}.`;
}

/** What was done by hand to make the guard of the plan that is laid onto it. */
export function editsBetween(guard: Guard, draft: Draft, names: ReadonlyMap<string, string>, fit: Fit): Edit[] {
  const map = new LugMap(guard, names);
  let words: LugWords | undefined;
  const say: Say = (lug) => {
    words ??= new LugWords(guard.build);
    return words.of(lug);
  };
  const used = new Set(names.values());
  const added = Object.keys(guard.build.parts).filter((name) => !used.has(name));
  const missing = Object.keys(draft.parts).filter((planName) => !names.has(planName));
  return [
    ...missing.map((part): Edit => ({ kind: "part-left-out", part, text: missingText(draft, part) })),
    ...added.map(
      (part): Edit => ({ kind: "part-added", part, text: `${part} is a part that the plan does not have.` }),
    ),
    ...valuesApart(guard, draft, names).map(
      ({ part, field, words }): Edit => ({ kind: "value", part, field, text: `${part} ${words}.` }),
    ),
    ...leftOut(guard, draft, map, fit, say),
    ...laid(guard, fit, say),
  ];
}

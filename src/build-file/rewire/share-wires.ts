/** A join that a net lacks, and how many joints it saves to make it with a wire that must be opened anyway. */
export interface Lack {
  readonly net: number;
  readonly saves: number;
}

/**
 * Shares wires out among nets so that most joints are saved: a matching of greatest weight, by augmenting paths from the
 * weightiest lack down (wires that can be shared out together form a transversal matroid, for which that is enough).
 * @param nets for every wire the nets that it could serve, the dearest first
 * @returns for every wire the net that it serves, or undefined
 */
export function shareWires(lacks: readonly Lack[], nets: readonly (readonly number[])[]): (number | undefined)[] {
  const serves: (Lack | undefined)[] = nets.map(() => undefined);
  const give = (lack: Lack, tried: Set<number>): boolean => {
    const able = [...nets.keys()].filter((wire) => nets[wire]!.includes(lack.net));
    // A wire that would rather serve this net than another is asked first.
    able.sort((a, b) => nets[a]!.indexOf(lack.net) - nets[b]!.indexOf(lack.net));
    for (const wire of able) {
      if (tried.has(wire)) continue;
      tried.add(wire);
      const holder = serves[wire];
      if (holder && !give(holder, tried)) continue;
      serves[wire] = lack;
      return true;
    }
    return false;
  };
  for (const lack of [...lacks].sort((a, b) => b.saves - a.saves)) give(lack, new Set());
  return serves.map((lack) => lack?.net);
}

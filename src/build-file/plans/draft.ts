import type { BuildInput } from "../schema.ts";
import type { WireMeans } from "../wire-means.ts";

export type PartInput = BuildInput["parts"][string];
export type PotInput = Extract<PartInput, { kind: "pot" }>;

/** A long form in the making: parts and wires in the order in which a technician would lay them out. */
export class Draft {
  readonly parts: Record<string, PartInput> = {};
  readonly wires: { from: string; to: string; how?: WireMeans }[] = [];

  part<Kind extends PartInput>(name: string, part: Kind): Kind {
    this.parts[name] = part;
    return part;
  }

  /** Joins two lugs; a plain wire unless said otherwise. */
  join(from: string, to: string, how?: WireMeans): void {
    this.wires.push({ from, to, ...(how === undefined || how === "wire" ? {} : { how }) });
  }

  pot(name: string): PotInput | undefined {
    const part = this.parts[name];
    return part?.kind === "pot" ? part : undefined;
  }
}

import type { Description } from "../../bench/parts/describe-part.ts";
import type { DrawerInput } from "../../drawer/drawer-schema.ts";
import type { WireCheck } from "../../drawer/wire-lengths.ts";
import type { InputFault } from "../../errors.ts";

export interface GuardAsked {
  readonly name: string;
  /** The build file's text. */
  readonly file: string;
  /** Whether its parts are soldered in and counted in the drawer. */
  readonly isSoldered: boolean;
  readonly isOnList: boolean;
}

export interface DrawerAsked {
  readonly drawer: DrawerInput;
  readonly guards: readonly GuardAsked[];
}

/** Parts alike that a guard takes. */
export interface NeedTold extends Description {
  readonly wanted: number;
  readonly there: number;
  /** Guards that hold one that would serve. */
  readonly heldBy: readonly string[];
}

export interface GuardTold {
  readonly name: string;
  readonly isSoldered: boolean;
  readonly lines: readonly NeedTold[];
  readonly wanted: number;
  readonly missing: number;
  /** Why it cannot be read; empty where it can. */
  readonly fault: string;
}

export interface ShoppingLine {
  readonly what: string;
  readonly code: string | null;
  readonly count: number;
  /** Of one; null where none is known. */
  readonly price: number | null;
  readonly guards: readonly string[];
}

export interface ShoppingTold {
  readonly lines: readonly ShoppingLine[];
  readonly total: number;
  readonly isCheapest: boolean;
  readonly staysOver: readonly { readonly what: string; readonly count: number }[];
  readonly wire: readonly WireCheck[];
}

export interface DrawerTold {
  readonly items: readonly (Description & { readonly soldered: number })[];
  readonly kits: readonly { readonly content: readonly { readonly what: string; readonly count: number }[] }[];
  readonly guards: readonly GuardTold[];
  readonly shopping: ShoppingTold | null;
}

export type DrawerReply = { readonly told: DrawerTold } | { readonly faults: readonly InputFault[] };

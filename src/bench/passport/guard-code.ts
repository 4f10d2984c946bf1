import { encode } from "uqr";

/** Modules of blank margin that a reader needs about the symbol (ISO/IEC 18004). */
const QUIET_ZONE = 4;

export interface GuardCode {
  /** Modules along a side, blank margin included. */
  readonly size: number;
  readonly rows: readonly (readonly boolean[])[];
}

/** A QR code symbol (ISO/IEC 18004) with error correction level M: a fold or a smear through a seventh of it does no harm. */
export function guardCodeOf(text: string): GuardCode {
  const { size, data } = encode(text, { ecc: "M", border: QUIET_ZONE });
  return { size, rows: data };
}

/** What a guard is heard through, as the page asks for it. */
export interface AskedChain {
  readonly drive: number;
  /** One's own, by a name that no other has, and its WAV file. */
  readonly cabinet?: { readonly key: string; readonly bytes: Uint8Array } | undefined;
}

/** What tells one chain from another, without the bytes of its cabinet. */
export function keyOf(asked: AskedChain | undefined): string {
  return asked ? `${asked.drive} ${asked.cabinet?.key ?? ""}` : "";
}

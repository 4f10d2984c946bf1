interface Details<How> {
  readonly how?: How | undefined;
  readonly colour?: string | undefined;
  readonly length?: number | string | undefined;
  readonly kind?: string | undefined;
  readonly capacitance?: number | string | undefined;
}

/** A wire that says of itself only what is known. */
export function wireWith<How extends string>(
  from: string,
  to: string,
  { how, colour, length, kind, capacitance }: Details<How>,
) {
  return {
    from,
    to,
    ...(how === undefined ? {} : { how }),
    ...(colour === undefined ? {} : { colour }),
    ...(length === undefined ? {} : { length }),
    ...(kind === undefined ? {} : { kind }),
    ...(capacitance === undefined ? {} : { capacitance }),
  };
}

/**
 * "1" per cent as the fraction that the service takes, under a key; nothing where nothing is said, and what is no number as it is, to be
 * refused.
 */
export function fractionAs<Key extends string>(key: Key, percent: string): { readonly [K in Key]?: number } {
  if (percent === "") return {};
  return { [key]: Number(percent.replace(",", ".")) / 100 } as { readonly [K in Key]: number };
}

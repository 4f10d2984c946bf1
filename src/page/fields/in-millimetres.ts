/** A length as it is typed beside a field that says millimetres: a bare number is of those. */
export function inMillimetres(text: string): string {
  const plain = text.replace(",", ".");
  return /^[-−]?\d*\.?\d+$/.test(plain) ? `${plain.replace("−", "-")}mm` : text;
}

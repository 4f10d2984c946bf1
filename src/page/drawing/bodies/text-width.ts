const NARROW = "iljftr.,:'1 ()-";
const WIDE = "mwMWΩµ";

/** Ems a letter takes in a wide sans-serif typeface, about: texts in a narrower one have air. */
function ems(letter: string): number {
  if (NARROW.includes(letter)) return 0.42;
  if (WIDE.includes(letter)) return 0.95;
  return letter >= "A" && letter <= "Z" ? 0.72 : 0.63;
}

/** Drawing units that a text takes, about. @param size of its letters */
export function textWidth(text: string, size: number): number {
  let sum = 0;
  for (const letter of text) sum += ems(letter);
  return Math.round(sum * size * 10) / 10;
}

/** "1-3" and "1 to 3" as the positions that they stand for. */
function withoutRanges(text: string): string {
  return text.replace(/(?<![\d.])(\d)\s*(?:-|–|to)\s*(\d)(?![\d.])/g, (whole, from: string, to: string) => {
    const [low, high] = [Number(from), Number(to)];
    return low < high ? Array.from({ length: high - low + 1 }, (_, index) => low + index).join(" ") : whole;
  });
}

/** The words and numbers of a phrase; "bridge + middle" as one, since together they are another sound than either. */
export function tokensOf(text: string): readonly string[] {
  return (
    withoutRanges(text.toLowerCase().replaceAll("’", "'").replaceAll("−", "-"))
      // What is no sign joins two words.
      .replace(/(?<=\S)-|-(?!\d)/g, " ")
      // Two positions are two places; two pickups are a third sound.
      .replace(/(?<=\d)\s*[+&/]\s*(?=\d)/g, " ")
      .replace(/\s*[+&/]\s*/g, "+")
      .match(/-?\d+(?:\.\d+)?(?![\p{L}\d+])|[\p{L}\d+']+/gu) ?? []
  );
}

/** Phrases, apart by commas and the like; a full stop within a number parts nothing. */
export function phrasesOf(text: string): readonly string[] {
  return text.split(/[,;\n]+|\.(?!\d)/).filter((each) => each.trim() !== "");
}

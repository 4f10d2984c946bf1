/** The place that a parser's own words name, as line and column. */
function placeIn(text: string, message: string): string {
  const named = /line (\d+) column (\d+)/.exec(message);
  if (named) return ` near line ${named[1]}, column ${named[2]}`;
  const position = /position (\d+)/.exec(message)?.[1];
  if (position === undefined) return "";
  const before = text.slice(0, Number(position)).split("\n");
  return ` near line ${before.length}, column ${before.at(-1)!.length + 1}`;
}

/** Parses JSON. @throws SyntaxError in plain words: what the engine says differs from browser to browser */
export function parseJson(text: string): unknown {
  if (text.trim() === "") throw new SyntaxError("it is empty");
  try {
    return JSON.parse(text);
  } catch (error) {
    const place = placeIn(text, (error as Error).message);
    throw new SyntaxError(
      `it is no build file as this page saves it: the text breaks off or has a wrong character${place} (expected JSON)`,
    );
  }
}

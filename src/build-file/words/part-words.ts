import type { Build, Part } from "../schema.ts";

type Parts = Build["parts"];
type Named = readonly [name: string, part: Part];

/** "tone1" is "tone 1", "bleedResistor" is "bleed resistor". */
export function readableName(name: string): string {
  return name
    .replaceAll(/([a-z])([A-Z0-9])/g, "$1 $2")
    .replaceAll(/[_-]+/g, " ")
    .toLowerCase();
}

/** A label within a sentence: its first letter small unless a capital or digit follows, what stands in brackets left out. */
function inSentence(label: string): string {
  const bare = label.replaceAll(/\s*\([^)]*\)/g, "").replace(/:\s*/, " ");
  return /^[A-Z][^A-Z0-9]/.test(bare) ? bare.charAt(0).toLowerCase() + bare.slice(1) : bare;
}

/** Where a pickup sits, as its label or its name says: "bridge". */
export function pickupPlace([name, part]: Named): string {
  const [place, rest] = (part.label ?? "").split(": ");
  return rest !== undefined && place ? inSentence(place) : readableName(name);
}

function pickupWords(named: Named): string {
  const [, part] = named;
  if (part.kind !== "pickup") return "";
  if (part.label !== undefined && !part.label.includes(": ")) return inSentence(part.label);
  const isSingle = Object.keys(part.coils).length === 1;
  const what = part.type?.startsWith("p90") ? "wide single coil" : isSingle ? "single coil" : "humbucker";
  return `${pickupPlace(named)} ${what}`;
}

/** Of two tones the lower one lies farther from the neck; without places the later one. */
function toneWords([name, part]: Named, tones: readonly Named[]): string {
  if (tones.length === 1) return "tone";
  if (tones.length > 2) return readableName(name);
  const [first, second] = tones.map(([, tone]) => tone.place?.x);
  const firstIsLower = first !== undefined && second !== undefined && first < second;
  const isFirst = tones[0]![1] === part;
  return isFirst === firstIsLower ? "lower tone" : "upper tone";
}

/** A label that only says what the knob works on is no name that tells one knob from another. */
const SAYS_ITS_PICKUPS = /^tone(:|$)/i;

function potWords(named: Named, parts: readonly Named[]): string {
  const [name, part] = named;
  const isTone = part.kind === "pot" && part.role === "tone";
  if (isTone && (part.label === undefined || SAYS_ITS_PICKUPS.test(part.label))) {
    const tones = parts.filter(([, other]) => other.kind === "pot" && other.role === "tone");
    return toneWords(named, tones);
  }
  return part.label === undefined ? readableName(name) : inSentence(part.label);
}

function switchWords([name, part]: Named, parts: readonly Named[]): string {
  if (part.kind !== "switch") return "";
  const sort = (other: Part) => (other.kind === "switch" ? /^(lever|toggle)/.exec(other.type ?? "")?.[0] : undefined);
  const own = sort(part);
  const alone = parts.filter(([, other]) => sort(other) === own).length === 1;
  if (own !== undefined && alone) return own;
  return part.label === undefined ? readableName(name) : inSentence(part.label);
}

function wordsOf(named: Named, parts: readonly Named[]): string {
  const [name, part] = named;
  switch (part.kind) {
    case "pickup":
      return pickupWords(named);
    case "pot":
      return potWords(named, parts);
    case "switch":
      return switchWords(named, parts);
    case "jack":
    case "cap":
    case "resistor":
    case "terminal":
      return part.kind === "jack" ? "jack" : part.label === undefined ? readableName(name) : inSentence(part.label);
  }
}

/** What every part is called within a sentence, each by words of its own: "lower tone", "bridge humbucker", "tone cap 2". */
export function partWords(parts: Parts): ReadonlyMap<string, string> {
  const all = Object.entries(parts);
  const words = all.map((named) => wordsOf(named, all));
  const seen = new Map<string, number>();
  return new Map(
    all.map(([name], index) => {
      const own = words[index]!;
      if (words.indexOf(own) === words.lastIndexOf(own)) return [name, own];
      const number = (seen.get(own) ?? 0) + 1;
      seen.set(own, number);
      return [name, `${own} ${number}`];
    }),
  );
}

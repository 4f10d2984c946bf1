/** Words about an entry, and its name: no values. */
const WORDS_ABOUT = ["name", "title", "use", "id", "basis", "type"];

type Entry = Readonly<Record<string, unknown>>;

function isEntry(value: unknown): value is Entry {
  return typeof value === "object" && value !== null;
}

/** Entries of a list go by what they are called, else by their value, else by their number. */
function nameOf(entry: unknown, index: number): string {
  const { name, id, type, value } = isEntry(entry) ? entry : ({} as Entry);
  return String(name ?? id ?? type ?? value ?? index);
}

/** Every value of a catalogue by its path: "pickups.p90.coils.coil.inductance", "pots.250k.value", "loads.triode.stopper". */
export function valuePaths(value: unknown, path = ""): string[] {
  if (!isEntry(value)) return value === undefined ? [] : [path];
  const entries: (readonly [string, unknown])[] = Array.isArray(value)
    ? value.map((entry, index) => [nameOf(entry, index), entry] as const)
    : Object.entries(value).filter(([key]) => !WORDS_ABOUT.includes(key));
  return entries.flatMap(([key, inner]) => valuePaths(inner, path === "" ? key : `${path}.${key}`));
}

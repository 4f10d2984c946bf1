import type { Random } from "../../random.ts";

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** Values that arithmetic, parsers and JavaScript itself are known to stumble over. */
const ODD_VALUES: readonly Json[] = [
  ...[0, -0, -1, 1, 0.5, 1e-308, 5e-324, 1e308, -1e308, 1e21, 2 ** 31, 2 ** 53, 1e-12, 1e9, 1e12, 10, 11, 3.7],
  ...[
    "",
    " ",
    "0",
    "-1",
    "1e400",
    "NaN",
    "Infinity",
    "-Infinity",
    "0x10",
    "250k",
    "4k7",
    "22n",
    "1e-30F",
    "1e308H",
    "∞",
  ],
  ...[
    "0k",
    "k",
    "1kk",
    "1 2",
    "½",
    "１",
    "null",
    "__proto__",
    "constructor",
    "toString",
    "\u0000",
    "\ud800",
    "a".repeat(5_000),
  ],
  ...[
    "down",
    "up",
    "centre",
    "audio",
    "linear",
    "jack.tip",
    "jack.sleeve",
    "volume.2",
    "neck.hot",
    "forward",
    "reverse",
  ],
  ...[null, true, false, [], {}, [[]], [null], { a: 1 }, [1, 2, 3], [["jack.tip", "jack.sleeve"]]],
];
/** Quantities at the ends of what is allowed, and beyond. */
const QUANTITIES = [
  "0",
  "1",
  "1p",
  "1f",
  "1m",
  "1k",
  "1M",
  "1G",
  "1e9",
  "1e-9",
  "1e-12",
  "1e-15",
  "100H",
  "1uH",
  "1n",
  "10ft",
  "999G",
];
const ODD_KEYS = [
  "",
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "length",
  "0",
  "kind",
  "coils",
  "a.b",
  "\u0000",
  "é",
];

interface Place {
  readonly parent: Json[] | Record<string, Json>;
  readonly key: string | number;
}

function placesOf(value: Json, found: Place[] = []): Place[] {
  if (typeof value !== "object" || value === null) return found;
  const keys = Array.isArray(value) ? value.keys() : Object.keys(value);
  for (const key of keys) {
    found.push({ parent: value as Place["parent"], key });
    placesOf((value as Record<string | number, Json>)[key]!, found);
  }
  return found;
}

const at = ({ parent, key }: Place): Json => (parent as Record<string | number, Json>)[key]!;

function put(parent: Place["parent"], key: string | number, value: Json): void {
  Object.defineProperty(parent, key, { value, enumerable: true, configurable: true, writable: true });
}

function remove({ parent, key }: Place): void {
  if (Array.isArray(parent)) parent.splice(Number(key), 1);
  else delete parent[key];
}

type Change = (place: Place, random: Random, places: readonly Place[]) => void;

function scaleOrMutate(place: Place, random: Random): void {
  const value = at(place);
  if (typeof value === "number") put(place.parent, place.key, value * 10 ** (random.below(41) - 20));
  else if (typeof value === "string" && /^[\d.]+\S*$/.test(value))
    put(place.parent, place.key, random.pick(QUANTITIES));
  else if (typeof value === "string") put(place.parent, place.key, mutateText(value, random));
}

const CHANGES: readonly Change[] = [
  ({ parent, key }, random) => put(parent, key, random.pick(ODD_VALUES)),
  ({ parent, key }, random) => put(parent, key, random.pick(ODD_VALUES)),
  (place) => remove(place),
  ({ parent, key }, random, places) => put(parent, key, structuredClone(at(random.pick(places)))),
  (place, random, places) => {
    const other = random.pick(places);
    const [mine, yours] = [structuredClone(at(place)), structuredClone(at(other))];
    put(place.parent, place.key, yours);
    put(other.parent, other.key, mine);
  },
  scaleOrMutate,
  scaleOrMutate,
  scaleOrMutate,
  (place, random) => {
    if (Array.isArray(place.parent)) place.parent.push(structuredClone(at(place)));
    else put(place.parent, random.pick(ODD_KEYS), structuredClone(at(place)));
  },
  (place, random, places) => {
    if (Array.isArray(place.parent)) return;
    const value = at(place);
    remove(place);
    put(place.parent, String(random.pick(places).key), value);
  },
];

/** The same value with a few changes that leave it JSON. */
export function mutateJson(value: unknown, random: Random): unknown {
  const root = [structuredClone(value)] as Json[];
  for (let change = random.chance(0.7) ? 0 : random.below(4); change >= 0; change--) {
    const places = placesOf(root);
    const place = places.length > 1 && random.chance(0.98) ? places[1 + random.below(places.length - 1)]! : places[0];
    if (place) random.pick(CHANGES)(place, random, places);
  }
  return root[0];
}

const isQuantity = (value: Json) =>
  typeof value === "number" || (typeof value === "string" && /^[\d.]+\S*$/.test(value));

/** The same unit, another number. */
function scaledQuantity(value: number | string, random: Random): Json {
  const factor = random.chance(0.3) ? 10 ** (random.below(13) - 6) : 0.3 + 3 * random.next();
  if (typeof value === "number") return value * factor;
  const [, number, unit] = /^([\d.]+)(.*)$/.exec(value) ?? [];
  return random.chance(0.05) ? random.pick(QUANTITIES) : `${Number((Number(number) * factor).toPrecision(4))}${unit}`;
}

function rewire(wires: Json[], random: Random): void {
  const lugs = wires.flatMap((wire) => (Array.isArray(wire) ? wire : []));
  const wire = [random.pick(lugs) ?? "jack.tip", random.pick(lugs) ?? "jack.sleeve"];
  if (random.chance(0.4)) wires.splice(random.below(wires.length), 1);
  else if (random.chance(0.5)) wires.push(wire);
  else wires[random.below(wires.length)] = wire;
}

/** A build that is still one: other values, other wires. What comes of it reaches all the arithmetic. */
export function mutateValues(build: unknown, random: Random): unknown {
  const root = structuredClone(build) as Record<string, Json>;
  for (let change = random.below(5); change >= 0; change--) {
    const { wires } = root;
    if (Array.isArray(wires) && wires.length > 0 && random.chance(0.4)) {
      rewire(wires, random);
      continue;
    }
    const places = placesOf(root).filter((place) => place.key !== "presolder" && isQuantity(at(place)));
    if (places.length === 0) continue;
    const place = random.pick(places);
    const value = at(place);
    put(place.parent, place.key, scaledQuantity(value as number | string, random));
  }
  return root;
}

/** The same bytes with some flipped, cut out, doubled, moved or put in. */
export function mutateBytes(bytes: Uint8Array, random: Random): Buffer {
  let result = Buffer.from(bytes);
  for (let change = random.below(4); change >= 0; change--) {
    const from = random.below(result.length + 1);
    const to = Math.min(result.length, from + random.below(random.chance(0.8) ? 8 : 200));
    const inserted = Buffer.from(Array.from({ length: random.below(6) }, () => random.below(256)));
    const wild = [0, 0xff, 0x7f, 0x80];
    switch (random.below(6)) {
      case 0:
        for (let index = from; index < to; index++) result[index] = random.below(256);
        break;
      case 1:
        for (let index = from; index < to; index++) result[index] = random.pick(wild);
        break;
      case 2:
        result = Buffer.concat([result.subarray(0, from), result.subarray(to)]);
        break;
      case 3:
        result = Buffer.concat([result.subarray(0, to), result.subarray(from)]);
        break;
      case 4:
        result = Buffer.concat([result.subarray(0, from), inserted, result.subarray(from)]);
        break;
      default:
        if (random.chance(0.3)) result = result.subarray(0, from);
        else if (from < result.length) result[from] = (result[from]! ^ (1 << random.below(8))) & 0xff;
    }
  }
  return result;
}

export function mutateText(text: string, random: Random): string {
  return mutateBytes(Buffer.from(text), random).toString(random.chance(0.5) ? "utf8" : "latin1");
}

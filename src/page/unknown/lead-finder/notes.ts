import type { LeadsRequest } from "../../../bench/leads/leads-request.ts";
import type { OwnMeter } from "../../../bench/meter/own/own-meter.ts";
import { readShown } from "../../../bench/meter/shown.ts";
import { QuantityError } from "../../../build-file/quantity.ts";
import type { LeadsAnswer } from "../../../contract/bench/leads.ts";
import { MAX_LEADS, MIN_LEADS } from "../../../limits.ts";

export type Tap = LeadsRequest["kicks"][number];
export type Drawn = LeadsRequest["compass"][number]["draws"];
export type AskedTest = NonNullable<LeadsAnswer["next"]>["test"];

/** What a person wrote about an unknown pickup, as it was written; kept while the page is open. */
export interface LeadNotes {
  /** Names, a comma between them. */
  readonly leads: string;
  readonly coils: "" | "1" | "2";
  readonly rows: string;
  readonly hasMetal: boolean;
  /** °C. */
  readonly temperature: number;
  /** What the meter showed, by `ohmsKey`. */
  readonly ohms: Readonly<Record<string, string>>;
  readonly taps: readonly Tap[];
  readonly compass: Readonly<Record<string, Drawn | "">>;
  /** How often a result was had again, by `resultKey`: one that is had again and again is no slip. */
  readonly repeats: Readonly<Record<string, number>>;
  /** A pickup of the guard, or a free lug; "" while it is to go nowhere. */
  readonly place: string;
  /** "neck up": what the same meter did on a pickup of the guard; "" where it was not tried. */
  readonly reference: string;
}

export const NOTHING_MEASURED = { ohms: {}, taps: [], compass: {}, repeats: {} } as const;

export const FIRST_NOTES: LeadNotes = {
  leads: "A, B, C, D, bare",
  coils: "2",
  rows: "screws, slugs",
  hasMetal: true,
  temperature: 20,
  ...NOTHING_MEASURED,
  place: "",
  reference: "",
};

const split = (text: string) =>
  text
    .split(",")
    .map((name) => name.trim())
    .filter(Boolean);

export const leadsOf = ({ leads }: Pick<LeadNotes, "leads">): string[] => split(leads);

/** As the bench calls them where nobody gave them names. */
export function rowsOf({ coils, rows }: Pick<LeadNotes, "coils" | "rows">): string[] {
  if (coils === "1") return ["poles"];
  const named = split(rows);
  return coils === "2" && named.length === 2 ? named : ["first row", "second row"];
}

export const METAL = "the metal";

/** By its two leads, or a lead and the metal. */
export const ohmsKey = (a: string, b: string) => `${a} | ${b}`;

export function pairsOf({ leads, hasMetal }: Pick<LeadNotes, "leads" | "hasMetal">): (readonly [string, string])[] {
  const names = leadsOf({ leads });
  return [
    ...names.flatMap((a, index) => names.slice(index + 1).map((b) => [a, b] as const)),
    ...(hasMetal ? names.map((a) => [a, METAL] as const) : []),
  ];
}

/** What is wrong with what the meter is said to have shown; "" where nothing is. */
export function ohmsComplaint(text: string): string {
  try {
    readShown(text);
    return "";
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}

export function leadsComplaint(notes: Pick<LeadNotes, "leads">): string {
  const names = leadsOf(notes);
  if (names.length < MIN_LEADS || names.length > MAX_LEADS)
    return `Expected ${MIN_LEADS} to ${MAX_LEADS} names with commas between them; there ${names.length === 1 ? "is 1" : `are ${names.length}`}.`;
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined) return `“${twice}” is there twice; every lead needs a name of its own.`;
  return names.includes(METAL) ? `“${METAL}” is the cover's or base plate's name here.` : "";
}

function readOhms(text: string | undefined): number | null | undefined {
  if (text === undefined || ohmsComplaint(text) !== "") return undefined;
  const shown = readShown(text);
  if (shown === undefined || !("ohms" in shown)) return undefined;
  return shown.ohms;
}

/** A test with what it showed: another result of the same test was not had before. */
export const resultKey = (test: string, shown: string) => `${test} = ${shown}`;

export const tapKey = ({ row, between: [plus, minus], kick }: Tap) => {
  const [first, last] = [plus, minus].sort();
  const turned = kick === "up" ? "down" : "up";
  return resultKey(`${row} ${first} ${last}`, kick === "none" || plus === first ? kick : turned);
};

/** The notes with a result had once more. */
export const withRepeat = ({ repeats }: LeadNotes, key: string) => ({
  repeats: { ...repeats, [key]: (repeats[key] ?? 0) + 1 },
});

/** More often than this nothing is learnt. */
const MOST_REPEATS = 2;

const asOftenAsHad = <Result>({ repeats }: LeadNotes, key: string, result: Result): Result[] =>
  Array<Result>(1 + Math.min(repeats[key] ?? 0, MOST_REPEATS)).fill(result);

/** What is asked of the bench; undefined while the leads have no names to go by. Results of leads that are gone stay out. */
export function requestOf(notes: LeadNotes, meter: OwnMeter | undefined): LeadsRequest | undefined {
  if (leadsComplaint(notes) !== "") return undefined;
  const [leads, rows] = [leadsOf(notes), rowsOf(notes)];
  const shown = pairsOf(notes).flatMap(([a, b]) => {
    const ohms = readOhms(notes.ohms[ohmsKey(a, b)]);
    const key = resultKey(ohmsKey(a, b), notes.ohms[ohmsKey(a, b)] ?? "");
    return ohms === undefined ? [] : asOftenAsHad(notes, key, { a, b, ohms });
  });
  return {
    leads,
    ...(notes.coils === "" ? {} : { coils: Number(notes.coils) as 1 | 2, rows }),
    readings: shown.filter(({ b }) => b !== METAL).map(({ a, b, ohms }) => ({ between: [a, b], ohms })),
    metal: notes.hasMetal ? shown.filter(({ b }) => b === METAL).map(({ a, ohms }) => ({ lead: a, ohms })) : "none",
    kicks: notes.taps
      .filter(({ row, between }) => rows.includes(row) && between.every((lead) => leads.includes(lead)))
      .flatMap((tap) => asOftenAsHad(notes, tapKey(tap), tap)),
    compass: rows.flatMap((row) => {
      const draws = notes.compass[row];
      return draws ? asOftenAsHad(notes, resultKey(row, draws), { row, draws }) : [];
    }),
    temperature: notes.temperature,
    ...(meter ? { meter } : {}),
  };
}

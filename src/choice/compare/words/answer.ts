import { capitalised, listed } from "../../../english.ts";
import type { Change } from "../changes/changes.ts";
import type { HeardRow } from "../comparison-row.ts";
import { type Audibility, audibility, figureWords, inDecibels, signedDecibels } from "../verdict.ts";
import type { Places, Told } from "./places.ts";
import { humWords, loudnessWords } from "./row-words.ts";

/** What is said of one thing, and of several. */
const PREDICATES: Readonly<Record<Exclude<Audibility, "none">, readonly [one: string, several: string]>> = {
  edge: ["is at the edge of hearing", "are at the edge of hearing"],
  "side-by-side": ["is heard side by side", "are heard side by side"],
  plain: ["is plainly heard", "are plainly heard"],
  "another-sound": ["makes another sound", "make another sound"],
};

/** From here on level and hum belong to the answer, and not only to the settings listed after it; choices, no source. */
const TELLING_LU = 2;
const TELLING_HUM_DB = 6;

/** More than these in one subject, and the parts table tells the rest. */
const MOST_CHANGES = 3;

/** What differs, as the subject of a sentence, and whether it is one thing. */
export function subjectOf(changes: readonly Change[]): { words: string; isOne: boolean } {
  if (changes.length === 0) return { words: "what differs between the two", isOne: true };
  if (changes.length <= MOST_CHANGES)
    return { words: listed(changes.map(({ words }) => words)), isOne: changes.length === 1 };
  const first = changes.slice(0, MOST_CHANGES - 1).map(({ words }) => words);
  return { words: `${first.join(", ")} and ${changes.length - first.length} more changes`, isOne: false };
}

const dbOf = ({ most }: Told) => most.row.weighed.largest.difference;
const hzOf = ({ most }: Told) => most.row.weighed.largest.frequency;
const classOf = (group: Told) => audibility(dbOf(group));
const figureOf = (group: Told) => figureWords(dbOf(group), hzOf(group), signedDecibels);

/** Groups of one character after another, each in one clause: "; with bridge + middle and the middle it also gets brighter, by 3.5 and 3.4 dB". */
function alsoWords(groups: readonly Told[], lead: Told, places: Places): string {
  const characters = [...new Set(groups.map(({ most }) => most.row.weighed.character))];
  const way = lead.most.row.weighed.character;
  const upTo = places.isUpTo ? "up to " : "";
  const clauses = characters.map((character) => {
    const own = groups.filter(({ most }) => most.row.weighed.character === character);
    const figures = listed(own.map((group) => inDecibels(dbOf(group)).replace(/ dB$/, "")));
    return `; ${places.where(own)} it ${character === way ? "also " : ""}gets ${character}, by ${upTo}${figures} dB`;
  });
  return clauses.join("");
}

function quietWords(groups: readonly Told[], places: Places): string {
  const of = (wanted: Audibility) => groups.filter((group) => classOf(group) === wanted);
  const [edge, none] = [of("edge"), of("none")];
  const atEdge = edge.length === 0 ? "" : `; ${places.where(edge)} it is at the edge of hearing`;
  return `${atEdge}${none.length === 0 ? "" : `; ${places.where(none)} nobody hears it`}`;
}

/** The one that stands out most, by size; undefined where none reaches the least. */
function outstanding(
  heard: readonly HeardRow[],
  of: (row: HeardRow) => number | null,
  least: number,
): number | undefined {
  const values = heard.map((row) => of(row) ?? 0);
  const most = values.reduce((best, value) => (Math.abs(value) > Math.abs(best) ? value : best), 0);
  return Math.abs(most) >= least ? most : undefined;
}

function levelWords(heard: readonly HeardRow[]): string {
  const loudness = outstanding(heard, ({ row }) => row.weighed.loudnessDifference, TELLING_LU);
  const hum = outstanding(heard, ({ row }) => row.weighed.humDifference, TELLING_HUM_DB);
  const upTo = heard.length > 1 ? "up to " : "";
  return [
    ...(loudness === undefined ? [] : [`; left as they are, the second is ${upTo}${loudnessWords(loudness)}`]),
    ...(hum === undefined ? [] : [`; equally loud, the second has ${upTo}${humWords(hum)}`]),
  ].join("");
}

function unheard(subject: string, isOne: boolean, groups: readonly Told[], count: number, level: string): string {
  const where = count === 1 ? "" : ` in any of ${count} settings`;
  const [lead] = groups;
  const figure = figureWords(dbOf(lead!), hzOf(lead!));
  return `${subject} ${isOne ? "is" : "are"} not heard${where}: ${figure.startsWith("less") ? figure : `at most ${figure}`}${level}`;
}

/**
 * The first sentence, without its full stop: what was changed, whether it is heard, with which pickups or at which dials and by how much,
 * what the question is about first, then the most different.
 */
export function answerWords(
  changes: readonly Change[],
  heard: readonly HeardRow[],
  places: Places,
  aside = "",
): string {
  const { words, isOne } = subjectOf(changes);
  const subject = capitalised(words);
  const sounding = heard.filter(({ silent }) => !silent.includes(true));
  const muted = heard.filter(({ silent }) => silent[0] !== silent[1]);
  const groups = places.groupsAsAsked;
  if (heard.every(({ silent }) => silent[0] && silent[1])) return "Both are silent";
  const level = levelWords(sounding);
  const silences = silenceClause(muted, places);
  const [lead, ...rest] = groups.filter(({ rows }) => rows.some((row) => sounding.includes(row)));
  if (!lead) return `${subject} ${isOne ? "decides" : "decide"} whether there is any sound: ${silences}`;
  const ending = silences === "" ? "" : `; ${silences}`;
  const audible = classOf(lead);
  if (audible === "none") return `${unheard(subject, isOne, [lead], sounding.length, level)}${ending}`;
  const predicate = PREDICATES[audible][isOne ? 0 : 1];
  const also = rest.filter((group) => !["none", "edge"].includes(classOf(group)));
  const figure = `${figureOf(lead)}, ${lead.most.row.weighed.character}`;
  const start = `${subject} ${aside}${predicate} ${places.where([lead])}${places.besides(lead)}: ${figure}`;
  return `${start}${alsoWords(also, lead, places)}${quietWords(rest, places)}${level}${ending}`;
}

function silenceClause(muted: readonly HeardRow[], places: Places): string {
  if (muted.length === 0) return "";
  const of = (which: 0 | 1) => muted.filter(({ silent }) => silent[which]);
  return ([0, 1] as const)
    .filter((which) => of(which).length > 0)
    .map((which) => {
      const where = of(which).map((row) => places.rowWords(row));
      const others = which === 0 ? ["first", "second"] : ["second", "first"];
      return `with ${where[0]}${where.length > 1 ? ` and ${where.length - 1} more` : ""} the ${others[0]} is silent and the ${others[1]} is not`;
    })
    .join("; ");
}

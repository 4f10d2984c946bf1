import { partWords } from "../../../build-file/words/part-words.ts";
import { listed } from "../../../english.ts";
import { withArticle } from "../changes/few-names.ts";
import { type HeardRow, type Side, sizeOf } from "../comparison-row.ts";
import { audibility } from "../verdict.ts";
import { type Axis, dialWords, type Group, groupsAlong } from "./axes.ts";
import { dialAt, settingWords } from "./setting-words.ts";
import { Sounding } from "./sounding.ts";

/** Rows at one value of the axis that the answer is told by, and the row that differs most of those that sound in both. */
export interface Told extends Group {
  readonly most: HeardRow;
}

/** Differences this near are written as one figure. */
const SAME_DB = 0.05;

/** Says where in a comparison something is heard: with which pickups, in which position, at which dial. */
export class Places {
  readonly #axis: Axis | undefined;
  readonly #others: readonly Axis[];
  readonly #heard: readonly HeardRow[];
  readonly #sounding: readonly string[];
  readonly #settings: readonly string[];
  readonly #question: string;

  /** @param question what somebody asks about the two, in words; empty where nothing is asked */
  constructor(
    heard: readonly HeardRow[],
    sides: readonly [Side, Side],
    axes: readonly Axis[],
    axis: Axis | undefined,
    question = "",
  ) {
    this.#heard = heard;
    this.#question = question.toLowerCase();
    this.#axis = axis;
    this.#others = axes.filter((other) => other !== axis);
    const words = sides.map(({ guard, settings }) => {
      const [called, sounding] = [partWords(guard.build.parts), new Sounding(guard.build)];
      return settings.map((each) => {
        const name = sounding.in(each);
        return { sounding: name, setting: settingWords(guard.controls, each, called, name) };
      });
    });
    const both = heard.map((_, index) => words.map((of) => of[index]!));
    this.#sounding = both.map(([a, b]) => (a!.sounding === b!.sounding ? a!.sounding : ""));
    this.#settings = both.map(([a, b]) => (a!.setting === b!.setting ? a!.setting : `${a!.setting} / ${b!.setting}`));
  }

  /** Groups along the axis, or all rows as one, those that differ most first. */
  get groups(): Told[] {
    const all = this.#axis ? groupsAlong(this.#axis, this.#heard) : [{ value: "", rows: this.#heard }];
    const largest = (row: HeardRow) => Math.abs(row.row.weighed.largest.difference);
    return all
      .map((group) => ({
        ...group,
        most: group.rows.reduce((most, row) => (largest(row) > largest(most) ? row : most)),
      }))
      .sort((x, y) => largest(y.most) - largest(x.most));
  }

  /** Those groups, the one first that the question speaks of first, by its pickup or its position; unless nobody hears anything there. */
  get groupsAsAsked(): Told[] {
    const { groups } = this;
    const asked = groups
      .map((group) => ({ group, at: this.#askedAt(group) }))
      .filter(({ at, group }) => at >= 0 && audibility(group.most.row.weighed.largest.difference) !== "none")
      .sort((x, y) => x.at - y.at)[0]?.group;
    return asked ? [asked, ...groups.filter((group) => group !== asked)] : groups;
  }

  #askedAt({ value, most }: Told): number {
    if (this.#axis?.kind !== "position") return -1;
    const name = this.#soundingIn(most).toLowerCase();
    const words = [...(name === "" ? [] : [escaped(name)]), `positions? ${escaped(String(value))}`];
    return this.#question.search(new RegExp(`(?<![\\w+])(${words.join("|")})(?![\\w+])`));
  }

  /** Whether two rows stand in one position of the main switch. */
  isOnePosition(one: HeardRow, other: HeardRow): boolean {
    const position = [this.#axis, ...this.#others].find((axis) => axis?.kind === "position");
    return position === undefined || this.#at(position, one) === this.#at(position, other);
  }

  #at({ values }: Axis, heard: HeardRow): string | number {
    return values[this.#heard.indexOf(heard)]!;
  }

  /** "position 1 (bridge), tone 10, volume 10": a row as it is listed. */
  rowWords(heard: HeardRow): string {
    return this.#settings[this.#heard.indexOf(heard)]!;
  }

  /** "with the bridge", "with the tone at 0 and 2": where groups are, without what else is moved. */
  where(groups: readonly Told[]): string {
    const axis = this.#axis;
    if (!axis) return this.#whole(groups[0]!.most);
    const values = [...groups].map(({ value }) => value);
    if (axis.kind !== "position") return `with ${dialWords(axis, sorted(values))}`;
    const names = groups.map(({ most }) => this.#soundingIn(most));
    if (names.some((name) => name === "" || this.#isTwice(name)))
      return `in position${values.length === 1 ? "" : "s"} ${listed(sorted(values))}`;
    return `with ${listed(names.map((name) => (name.includes(" + ") ? name : withArticle(name))))}`;
  }

  /** What else stands where the group's largest difference is: " (volume 6)". */
  besides({ most, rows }: Told): string {
    const index = this.#heard.indexOf(most);
    const told = this.#others.filter((axis) => this.#tells(axis, rows));
    if (told.length === 0) return "";
    const words = told.map(({ kind, name, values }) =>
      kind === "position" ? this.#soundingIn(most) || `position ${values[index]}` : dialAt(name, values[index]!),
    );
    return ` (${words.join(", ")})`;
  }

  /** Whether what is heard changes along an axis: a tone control that the position leaves out has no part in it. */
  #tells(axis: Axis, rows: readonly HeardRow[]): boolean {
    const values = [...new Set(rows.map((row) => this.#at(axis, row)))];
    const sizes = values.map((value) => Math.max(...rows.filter((row) => this.#at(axis, row) === value).map(sizeOf)));
    return Math.max(...sizes) - Math.min(...sizes) > SAME_DB;
  }

  /** Whether the groups are told as the most of several rows each. */
  get isUpTo(): boolean {
    return this.#others.length > 0;
  }

  #whole(heard: HeardRow): string {
    return this.#heard.length > 1 ? "in all settings" : `in ${this.rowWords(heard)}`;
  }

  #soundingIn(heard: HeardRow): string {
    return this.#sounding[this.#heard.indexOf(heard)] ?? "";
  }

  /** Two positions in which the same pickups sound are told apart by their numbers. */
  #isTwice(name: string): boolean {
    const axis = this.#axis!;
    const positions = new Set(this.#heard.flatMap((_, i) => (this.#sounding[i] === name ? [axis.values[i]] : [])));
    return positions.size > 1;
  }
}

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

function sorted(values: readonly (string | number)[]): (string | number)[] {
  return [...values].sort((a, b) => (typeof a === "number" && typeof b === "number" ? a - b : 0));
}

/** Rows by how much they differ, the most different first. */
export function byDifference(heard: readonly HeardRow[]): HeardRow[] {
  return [...heard].sort((a, b) => {
    const [first, second] = [sizeOf(a), sizeOf(b)];
    return first === second ? 0 : second - first;
  });
}

import { LugTable } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { LugWords } from "../../build-file/words/lug-words.ts";
import { capitalised } from "../../english.ts";
import { type Child, h } from "../dom/element.ts";

function escaped(text: string): string {
  return text.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

/** Says texts that name lugs and parts as the build file does in a person's words. */
export class LugSpeech {
  readonly words: LugWords;
  readonly #byCode: ReadonlyMap<string, string>;
  readonly #pattern: RegExp;

  constructor(build: Build) {
    this.words = new LugWords(build);
    const table = new LugTable(build.parts);
    // A name without digits or capitals, such as "volume", is a word of its own already.
    const isCode = (name: string) => /[\d_.A-Z-]/.test(name);
    const parts = [...this.words.parts];
    this.#byCode = new Map([
      ...table.names().map((name) => [name, this.words.of(name)] as const),
      ...parts.map(([name, words]) => [name, words] as const),
      ...parts.map(([name, words]) => [`${name}.s`, `${words}'s push-pull`] as const),
    ]);
    const codes = [...this.#byCode.keys()].filter(isCode).sort((a, b) => b.length - a.length);
    this.#pattern = new RegExp(`(?<![\\w.-])(${codes.map(escaped).join("|") || "$^"})(?![\\w-]|\\.\\w)`, "g");
  }

  /** A lug's words, its code small beside them. */
  lug(code: string): Child[] {
    const words = this.words.of(code);
    return words === code ? [code] : [words, " ", h("small", { class: "lug-code" }, code)];
  }

  /** A text with every code in words and the code small beside it. */
  say(text: string): Child[] {
    return this.#pieces(text).map(({ piece, words, atStart }) => {
      if (words === undefined || words === piece) return piece;
      const said = atStart ? capitalised(words) : words;
      // A part's name beside its words would say nothing more.
      return piece.includes(".") ? [said, " ", h("small", { class: "lug-code" }, piece)] : said;
    });
  }

  /** The same where only text can stand. */
  plain(text: string): string {
    return this.#pieces(text)
      .map(({ piece, words, atStart }) => {
        if (words === undefined || words === piece) return piece;
        const said = atStart ? capitalised(words) : words;
        return piece.includes(".") ? `${said} [${piece}]` : said;
      })
      .join("");
  }

  /** A sentence that begins with a part called by a plain word, with its capital. */
  #begun(text: string): string {
    const [first] = /^[a-z]+(?= )/.exec(text) ?? [];
    return first !== undefined && this.words.parts.has(first) && /[.!?]$/.test(text) ? capitalised(text) : text;
  }

  #pieces(written: string): { piece: string; words: string | undefined; atStart: boolean }[] {
    let at = 0;
    const text = this.#begun(written);
    return text.split(this.#pattern).map((piece, index) => {
      const isCode = index % 2 === 1;
      const before = text.slice(0, at);
      at += piece.length;
      const atStart = isCode && /(^|[.:!?]\s)$/.test(before) && !before.endsWith(": ");
      return { piece, words: isCode ? this.#byCode.get(piece) : undefined, atStart };
    });
  }
}

const known = new WeakMap<Build, LugSpeech>();

/** How a guard's lugs are called; worked out once a guard. */
export function speechOf({ build }: { readonly build: Build }): LugSpeech {
  const there = known.get(build);
  if (there) return there;
  const speech = new LugSpeech(build);
  known.set(build, speech);
  return speech;
}

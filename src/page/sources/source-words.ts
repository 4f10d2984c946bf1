import type { SourceRule } from "../../build-file/sources/rule.ts";
import { WORDS } from "../../build-file/sources/words.ts";
import { h } from "../dom/element.ts";

/** "usualPot" as it is read. */
const spoken = (name: string) => name.replace(/([a-z])([A-Z])/g, "$1 $2").toLowerCase();

/** What the basis has said already is not said twice: "From memory: no published table". */
function afterBasis(basis: string, names: string, words: string): string {
  return words.startsWith(basis) ? `${names}${words.slice(basis.length)}` : `${names}: ${words}`;
}

/** How sure a value is and what it rests on; of an entry as a whole, value by value. */
export function sourceWords(rules: ReadonlyMap<SourceRule, readonly string[]>): HTMLElement {
  const said = new Map<string, { rule: SourceRule; names: string[] }>();
  for (const [rule, names] of rules) {
    const key = `${rule.basis} ${rule.words}`;
    said.set(key, { rule, names: [...(said.get(key)?.names ?? []), ...names.map(spoken)] });
  }
  return h(
    "ul",
    {},
    [...said.values()].map(({ rule: { basis, words }, names }) => {
      const title = `${basis[0]!.toUpperCase()}${basis.slice(1)}`;
      const of = names.length > 0 ? ` (${names.join(", ")})` : "";
      return h("li", {}, h("b", {}, title), afterBasis(title, of, WORDS[words]));
    }),
  );
}

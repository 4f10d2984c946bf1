import { DIELECTRICS } from "../../build-file/catalogue/dielectrics.ts";
import { CATALOGUE } from "../../build-file/catalogue.ts";
import type { SourceRule } from "../../build-file/sources/rule.ts";
import { ruleOf } from "../../build-file/sources/source-of.ts";
import { valuePaths } from "../../build-file/sources/value-paths.ts";

const { pickups, metals, loads } = CATALOGUE;
/** Lists whose entries are asked for as wholes. */
const PATHS = valuePaths({ pickups, metals, loads, dielectrics: DIELECTRICS });

/** What is said of one value, or of all values of an entry: each rule with the values it is of, as the entry calls them. */
export function rulesUnder(of: string): Map<SourceRule, string[]> {
  const within = PATHS.filter((path) => path.startsWith(`${of}.`));
  const rules = new Map<SourceRule, string[]>();
  for (const path of within.length === 0 ? [of] : within) {
    const rule = ruleOf(path);
    if (!rule) continue;
    const name = path.slice(of.length + 1).replace(/\.\d+(?=\.|$)/g, "");
    const names = rules.get(rule) ?? [];
    // The coils of a pickup are alike in what is known of them.
    const plain = name.replace(/^coils\.[^.]+\./, "").replaceAll(".", " ");
    rules.set(rule, names.includes(plain) || plain === "" ? names : [...names, plain]);
  }
  return rules;
}

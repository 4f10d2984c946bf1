import type { Controls, SettingValue } from "../../../build-file/settings.ts";
import type { ComparisonRow } from "../comparison-row.ts";
import type { Change } from "./changes.ts";
import { withArticle } from "./few-names.ts";

type Named = ReadonlyMap<string, string>;

/** "position 2", "the tone at 5", "the lower tone up". */
export function controlWords(controls: Controls, words: Named, name: string, value: SettingValue): string {
  if (name === controls.main?.name) return `position ${value}`;
  const said = words.get(name.replace(/\.s$/, "")) ?? name;
  const named = withArticle(said);
  return controls.pots.includes(name)
    ? `${named} at ${value}`
    : `${named} ${typeof value === "number" ? `in ${value}` : value}`;
}

/** The setting of every row that the second side alone stands in; nothing where it is another from row to row. */
export function settingChanges(rows: readonly ComparisonRow[], controls: Controls, words: Named): Change[] {
  const [first] = rows;
  if (!first) return [];
  const names = Object.keys(first.settings[0]).filter((name) => name in first.settings[1]);
  const apart = names.filter((name) => rows.some(({ settings: [a, b] }) => a[name] !== b[name]));
  return apart.flatMap((name): Change[] => {
    const isConstant = rows.every(
      ({ settings: [a, b] }) => a[name] === first.settings[0][name] && b[name] === first.settings[1][name],
    );
    if (!isConstant)
      return [{ words: `another setting of ${words.get(name) ?? name}`, parts: [name], isOfPickups: false }];
    const [from, to] = first.settings.map((settings) => controlWords(controls, words, name, settings[name]!));
    return [{ words: `${to} instead of ${/ at (\S+)$/.exec(from!)?.[1] ?? from}`, parts: [name], isOfPickups: false }];
  });
}

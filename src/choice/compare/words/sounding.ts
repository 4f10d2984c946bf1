import type { Build } from "../../../build-file/schema.ts";
import type { Settings } from "../../../build-file/settings.ts";
import { pickupPlace } from "../../../build-file/words/part-words.ts";
import { SettingDescriber } from "../../../response/labels/setting-describer.ts";

/** Names the pickups that sound in a setting: "bridge + middle"; "" where none does, or the guard has but one. */
export class Sounding {
  readonly #build: Build;
  readonly #describer: SettingDescriber;
  readonly #isOne: boolean;

  constructor(build: Build) {
    this.#build = build;
    this.#describer = new SettingDescriber(build);
    this.#isOne = Object.values(build.parts).filter(({ kind }) => kind === "pickup").length < 2;
  }

  in(settings: Settings): string {
    if (this.#isOne) return "";
    const names = this.#describer.describe(settings).pickups.map(({ pickup }) => pickup);
    return [...new Set(names)].map((name) => pickupPlace([name, this.#build.parts[name]!])).join(" + ");
  }
}

import { METAL_TYPES } from "../../build-file/catalogue/shieldings.ts";
import { hasRoomForCover, isCovered, withCover, withoutCover } from "../../build-file/cover.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { setAt } from "../state/paths.ts";
import type { BuildSource, PartSource } from "../state/reading.ts";

type Coils = Readonly<Record<string, Parameters<typeof withCover>[0]>>;

/** Measured with the cover they always have, so that it does not come off in numbers. */
const WITH_THEIRS = METAL_TYPES.filter(({ name }) => ["neck-cover", "plain-cover", "closed-can"].includes(name)).map(
  ({ shielding }) => JSON.stringify(shielding),
);

const coilsOf = (part: PartSource | undefined) => Object.values((part?.coils ?? {}) as Coils);

function isOn(part: PartSource | undefined): boolean {
  return coilsOf(part).every(isCovered);
}

function canBeTried(part: PartSource | undefined): boolean {
  try {
    for (const coil of coilsOf(part)) withCover(withoutCover(coil));
  } catch {
    // A value that is not one yet.
    return false;
  }
  return coilsOf(part).every((coil) => hasRoomForCover(coil) && !WITH_THEIRS.includes(JSON.stringify(coil.shielding)));
}

/** A guard with the cover of a pickup on or off; its coils' values are then its own. */
function toggled(source: BuildSource, name: string): BuildSource {
  const part = source.parts[name]!;
  const change = isOn(part) ? withoutCover : withCover;
  const coils = Object.entries((part.coils ?? {}) as Coils).map(([coil, values]) => [coil, change(values)]);
  return setAt(setAt(source, ["parts", name, "coils"], Object.fromEntries(coils)), ["parts", name, "type"], undefined);
}

const HINT =
  "As one humbucker was measured with its cover on and off: in a guitar some 0.8 dB less from 2 to 4 kHz. A cover of plain make takes" +
  " several times that; choose it under the metal of a coil. A cover also kept the strings farther from the coil, by 1.5 dB of level," +
  " which is not in here. Above 8 kHz nothing was measured. A metal cover has to be grounded; one of plastic takes nothing.";

async function verdictOn({ state }: AppStore): Promise<string> {
  const [{ postJson }, { named }, { fitSettings }] = await Promise.all([
    import("../server/client.ts"),
    import("../builds/difference-words.ts"),
    import("../state/fit-settings.ts"),
  ]);
  const { reading, other, settings, signal } = state;
  if (!reading || !other) return "";
  // The pickup need not sound in the position that stands.
  const { main } = reading.controls;
  const positions = main && { [main.name]: main.table.positions.map((_, index) => index + 1) };
  const answer = await postJson("/api/compare", {
    builds: [reading.source, other.source],
    settings: [settings, fitSettings(other, settings)],
    ...(positions ? { sweep: positions } : {}),
    tolerance: false,
    ...(signal ? { signal } : {}),
  });
  return `${named(answer.verdict, "A", "B")}.`.replace(/\.\.$/, ".");
}

/** Puts a cover on or takes it off, keeps the guard as it was as B, and says whether anybody hears it. */
export function createCoverToggle(name: string, store: AppStore, editor: Editor) {
  const button = h("button", { type: "button" });
  const answer = h("div", { "aria-live": "polite" });
  button.addEventListener("click", async () => {
    const was = store.state.source?.parts[name];
    button.disabled = true;
    try {
      store.set({ other: store.state.reading, family: "builds" });
      await editor.edit((source) => toggled(source, name));
      const [a, b] = isOn(was) ? ["off", "on"] : ["on", "off"];
      replaceContent(answer, h("p", {}, h("b", {}, `A: cover ${a}. B: cover ${b}. `), await verdictOn(store)));
    } catch (error) {
      replaceContent(answer, h("p", { class: "fault-text" }, (error as Error).message));
    } finally {
      button.disabled = false;
    }
  });
  const element = h(
    "div",
    { class: "stack" },
    h("div", { class: "buttons" }, button),
    answer,
    h("p", { class: "hint" }, HINT),
  );
  return {
    element,
    show: (source: BuildSource) => {
      const part = source.parts[name];
      element.hidden = !canBeTried(part);
      if (!element.hidden) button.textContent = isOn(part) ? "Compare with the cover off" : "Compare with a cover on";
    },
  };
}

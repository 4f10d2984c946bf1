import { h } from "../dom/element.ts";
import { formChoice } from "../fields/form-fields.ts";
import { createFormRun } from "../fields/form-run.ts";
import { saveFile } from "../server/save-file.ts";
import { createInputChoice } from "./input-choice.ts";
import { fetchSignal, RATES_HZ, type SignalKind } from "./measuring-signal.ts";
import { createSignalPlayer } from "./signal-player.ts";

const KINDS = [
  { value: "sweep", label: "a sweep: best against hiss" },
  { value: "multitone", label: "many tones: best against hum" },
] as const;

/** The first is the quietest: one turns it up, never down from a bang. */
const LEVELS = ["-30", "-20", "-10", "0"].map((value, i) => ({
  value,
  label: `${value.replace("-", "−")} dB${i === 0 ? ", to begin with" : ""}`,
}));

/** What is played, how loud, and into which input. */
export function createSoundFields() {
  const kind = formChoice<SignalKind>("signal", "Signal", KINDS);
  const level = formChoice("level", "Output level, the same for all", LEVELS);
  const input = createInputChoice();
  const rate = formChoice(
    "rate",
    "Rate of the file",
    RATES_HZ.map((hertz) => ({ value: String(hertz), label: `${hertz / 1000} kHz` })),
  );
  rate.element.querySelector("select")!.value = "48000";
  const save = async (): Promise<undefined> => {
    const content = await fetchSignal(kind.read(), Number(rate.read()));
    saveFile(`measuring-signal-${kind.read()}-${rate.read()}.wav`, new Blob([content], { type: "audio/wav" }));
  };
  const wanted = () => ({ kind: kind.read(), decibels: Number(level.read()), deviceId: input.read() });
  const player = createSignalPlayer(wanted);
  return {
    player,
    /** A button that saves the signal as a file, and a place for what comes of it. */
    createSave: (label: string) => {
      const { button, answer } = createFormRun(label, () => [], save);
      button.className = "";
      return { button, answer };
    },
    played: h("div", { class: "field-row" }, kind.element, level.element, input.element),
    rate: rate.element,
    wanted,
    kind: () => kind.read(),
    fields: [kind],
    listInputs: input.list,
  };
}

export type SoundFields = ReturnType<typeof createSoundFields>;

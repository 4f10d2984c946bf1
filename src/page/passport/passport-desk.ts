import type { Passport } from "../../bench/passport/passport.ts";
import type { PassportRequest } from "../../contract/bench/passport.ts";
import { capitalised } from "../../english.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { bringMeter, meterInUse, meterTold } from "../bench/meter/kept-meter.ts";
import { h, replaceContent } from "../dom/element.ts";
import { later, latestOnly } from "../dom/later.ts";
import { drawGuard } from "../drawing/guard-drawing.ts";
import type { PassportQuestion } from "../engine/bench-desk.ts";
import { formText } from "../fields/form-fields.ts";
import { postForBytes, postJson } from "../server/client.ts";
import { fileStem, saveFile } from "../server/save-file.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { speechOf } from "../words/lug-speech.ts";
import { codePicture } from "./code-picture.ts";
import { createDetailFields, type DetailFields } from "./detail-fields.ts";
import { type Details, heightsIn } from "./details.ts";
import { flatDrawing } from "./flat-drawing.ts";
import { passportView } from "./passport-view.ts";

/** Long enough that a word being typed is not laid out letter by letter. */
const WAIT_MS = 300;

const isOwnMachine = (address: string) => /\/\/(localhost|127\.|\[::1\])/.test(address);

const HERE_ONLY =
  "Only this computer reaches the service under this address: write the one under which a phone would, or the code on the paper opens nothing there.";

const NO_CODE = "The code that opens this guard comes from the service, which is not reached.";

/** What a drawing has for pointing at it and for walking along it. */
const FOR_HANDS = /^(data-|aria-|role$|tabindex$)/;

/** The guard as it is drawn, with nothing lit. */
function pictureOf(store: AppStore): SVGSVGElement | undefined {
  const { view } = store.state;
  if (!view?.path) return undefined;
  const { reading, settings, path } = view;
  const { element } = drawGuard({ reading, settings, path, side: "back" });
  element.classList.remove("guard");
  for (const each of element.querySelectorAll("*"))
    for (const name of each.getAttributeNames()) if (FOR_HANDS.test(name)) each.removeAttribute(name);
  element.setAttribute("role", "img");
  element.setAttribute("aria-label", "The guard from the back");
  return element;
}

interface Shown {
  readonly reading: Reading;
  readonly fields: DetailFields;
  drawing?: SVGSVGElement | undefined;
}

/** What is asked for whatever the person wrote. */
function questionOf(store: AppStore, { build }: Reading): PassportQuestion {
  const { temperature, drawer } = store.state.benchOptions;
  return { build, temperature, meter: meterInUse(store), drawer, noted: {}, heights: {} };
}

function written(details: Details) {
  const { guitar, date, notes, noted } = details;
  return {
    ...(guitar ? { guitar } : {}),
    ...(date ? { date } : {}),
    ...(notes ? { notes } : {}),
    noted,
    heights: heightsIn(details),
  };
}

function fieldsFor(reading: Reading, { readings }: Passport, changed: () => void): DetailFields {
  const { words } = speechOf(reading);
  const pickups = Object.entries(reading.build.parts).flatMap(([name, part]) =>
    part.kind === "pickup" ? [{ name, words: capitalised(words.parts.get(name) ?? name) }] : [],
  );
  return createDetailFields({ title: reading.source.title ?? "", pickups, readings }, changed);
}

/** What the code on the paper holds; without the service there is none. */
async function codeFor(reading: Reading, address: string): Promise<SVGElement> {
  const { code } = await postJson("/api/link", { build: reading.source });
  return codePicture(`${address.replace(/\/+$/, "")}/b/${code}`);
}

/** What the panel shows: fields and paper of one guard, and the code for it. */
export class PassportDesk {
  readonly form = h("div", {});
  readonly paper = h("div", {});
  readonly fault = h("p", { class: "fault-text", role: "alert", hidden: true });
  readonly address = formText("address", "Address in the code", location.origin);
  readonly addressHint = h("p", { class: "hint" }, HERE_ONLY);
  readonly #store: AppStore;
  readonly #code = h("div", { class: "paper-code" });
  /** A guard being read must not be given up because the one before it is drawn anew. */
  readonly #latestGuard = latestOnly();
  readonly #latestPaper = latestOnly();
  #shown: Shown | undefined;

  constructor(store: AppStore) {
    this.#store = store;
    bringMeter(store);
    this.address.element.addEventListener(
      "input",
      later(WAIT_MS, () => this.#showCode()),
    );
  }

  /** Fields and paper for the guard that is on the bench now. */
  renew(): Promise<void> {
    const { reading, faults } = this.#store.state;
    if (!reading || faults.length > 0) return Promise.resolve();
    return this.#tellingOf(this.#latestGuard(), async (isLatest) => {
      const passport = await benchEngineOf(this.#store).passport(questionOf(this.#store, reading));
      if (!isLatest()) return;
      const fields = fieldsFor(
        reading,
        passport,
        later(WAIT_MS, () => this.show()),
      );
      this.#shown = { reading, fields };
      replaceContent(this.form, fields.element);
      await Promise.all([this.show(), this.#showCode()]);
    });
  }

  /** The paper with what is written now. */
  show(): Promise<void> {
    const shown = this.#shown;
    if (!shown) return Promise.resolve();
    return this.#tellingOf(this.#latestPaper(), async (isLatest) => {
      const question = { ...questionOf(this.#store, shown.reading), ...written(shown.fields.read()) };
      const passport = await benchEngineOf(this.#store).passport(question);
      if (!isLatest() || this.#shown !== shown) return;
      shown.drawing = pictureOf(this.#store);
      replaceContent(this.paper, passportView(passport, shown.drawing, this.#code));
      this.#tell("");
    });
  }

  /** Hands the person the page or the label as a file. */
  async save(format: "pdf" | "label"): Promise<void> {
    const shown = this.#shown;
    if (!shown) return;
    try {
      const bytes = await postForBytes("/api/passport", this.#bodyOf(shown, format));
      const name = `${fileStem(shown.reading.source.title)}-${format === "pdf" ? "passport" : "label"}.pdf`;
      saveFile(name, new Blob([bytes], { type: "application/pdf" }));
      this.#tell("");
    } catch (error) {
      this.#tell((error as Error).message);
    }
  }

  #bodyOf({ reading, fields, drawing }: Shown, format: "pdf" | "label"): PassportRequest {
    const { temperature, meter, drawer } = this.#store.state.benchOptions;
    const address = this.address.read();
    return {
      build: reading.source,
      format,
      temperature,
      ...(meter ? { meter: meterTold(meter) } : {}),
      drawer,
      ...written(fields.read()),
      ...(address ? { address } : {}),
      ...(format === "pdf" && drawing ? { drawing: flatDrawing(drawing) } : {}),
    };
  }

  async #tellingOf(isLatest: () => boolean, work: (isLatest: () => boolean) => Promise<void>): Promise<void> {
    try {
      await work(isLatest);
    } catch (error) {
      if (isLatest()) this.#tell((error as Error).message);
    }
  }

  async #showCode(): Promise<void> {
    const reading = this.#shown?.reading;
    this.addressHint.hidden = !isOwnMachine(this.address.read());
    if (!reading) return;
    const picture = await codeFor(reading, this.address.read()).catch(() => undefined);
    if (this.#shown?.reading === reading) replaceContent(this.#code, picture ?? h("p", { class: "hint" }, NO_CODE));
  }

  #tell(message: string): void {
    this.fault.textContent = message;
    this.fault.hidden = message === "";
  }
}

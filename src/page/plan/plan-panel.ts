import type { PlanInput } from "../../build-file/plans/plan-schema.ts";
import type { PlanFieldAnswer } from "../../contract/recognise.ts";
import { h, replaceContent } from "../dom/element.ts";
import { keepingFocus } from "../dom/keeping-focus.ts";
import { latestOnly } from "../dom/later.ts";
import type { PlanAnswer, PlanChange } from "../engine/plan-reader.ts";
import type { Bench } from "../start/bench.ts";
import { createChangeLine } from "../state/change-line.ts";
import { type LugSpeech, speechOf } from "../words/lug-speech.ts";
import { drawPlanField } from "./plan-field.ts";
import { fieldsIn, PLAN_GROUPS } from "./plan-groups.ts";
import { byHandView, dropQuestion, noPlanView } from "./plan-told.ts";

type Known = Extract<PlanAnswer, { fields: unknown }>;
type Changed = Extract<PlanChange, { source: unknown }>;

/** The guard as a plan: every option of it, and what was done by hand beyond it. */
class PlanPanel {
  readonly element: HTMLElement;
  readonly #bench: Bench;
  readonly #form = h("div", { class: "plan-form" });
  readonly #told = h("div", { class: "stack", role: "alert" });
  readonly #byHand = h("div", {});
  readonly #latest = latestOnly();
  /** The plan that was last shown of each guard, which of several that are equally near is the one meant. */
  readonly #hints = new WeakMap<object, PlanInput>();
  readonly #openGroups = new Map(PLAN_GROUPS.map(({ title, isOpen }) => [title, isOpen]));
  #asked: unknown;
  #lastChange: Promise<void> = Promise.resolve();
  #pending = 0;

  constructor(bench: Bench) {
    this.#bench = bench;
    this.element = h("div", { class: "stack" }, createChangeLine(bench.store), this.#told, this.#byHand, this.#form);
    bench.store.watch(
      (state) => [state.reading, state.faults.length > 0],
      (_reading, _isUnreadable) => this.#follow(),
    );
    // A panel that is not shown asks for nothing; shown again, it catches up.
    this.element.addEventListener("shown", () => this.#follow());
  }

  #follow(): void {
    const { reading, faults } = this.#bench.store.state;
    if (!reading) return;
    if (faults.length > 0) {
      this.#asked = undefined;
      this.#latest();
      const hint = "The guard as it is written cannot be read, so no plan can be told. Mend what is listed first.";
      replaceContent(this.#form, h("p", { class: "hint" }, hint));
      replaceContent(this.#told);
      replaceContent(this.#byHand);
      return;
    }
    if (this.#asked === reading || this.element.closest("[hidden]")) return;
    this.#asked = reading;
    void this.#whileBusy(this.#ask());
  }

  async #whileBusy(work: Promise<void>): Promise<void> {
    this.#pending += 1;
    this.element.setAttribute("aria-busy", "true");
    await work.finally(() => {
      this.#pending -= 1;
      this.element.setAttribute("aria-busy", String(this.#pending > 0));
    });
  }

  async #ask(): Promise<void> {
    const { reading, guard } = this.#bench.store.state;
    const isLatest = this.#latest();
    try {
      const answer = await this.#bench.engine.planOf(reading!.source, this.#hints.get(guard));
      if (!isLatest()) return;
      if (answer.plan === null) this.#tellWhyNone(answer.why);
      else this.#show(answer, guard);
    } catch (error) {
      if (isLatest()) this.#tellWhyNone((error as Error).message);
    }
  }

  #tellWhyNone(why: string): void {
    replaceContent(this.#told);
    replaceContent(this.#byHand);
    replaceContent(this.#form, noPlanView(why));
  }

  get #speech(): LugSpeech | undefined {
    const { reading } = this.#bench.store.state;
    return reading && speechOf(reading);
  }

  #show(answer: Known, guard: object): void {
    this.#hints.set(guard, answer.plan);
    replaceContent(this.#told);
    replaceContent(this.#byHand, answer.edits.length > 0 && byHandView(answer.edits, this.#speech));
    // Somebody quicker than the answer loses nothing: a change waits for the one before it.
    const choose = (field: string, value: string | undefined) => {
      if (value === undefined) return replaceContent(this.#told);
      const change = this.#lastChange.then(() => this.#choose(answer, guard, field, value));
      // Whatever came of it, the next one has its turn.
      this.#lastChange = change.catch(() => undefined);
      void this.#whileBusy(change);
    };
    const drawn = new Map<string, HTMLElement>();
    const draw = (field: PlanFieldAnswer) => {
      const element = drawPlanField(field, choose);
      drawn.set(field.id, element);
      return element;
    };
    keepingFocus(this.#form, "plan", () =>
      replaceContent(
        this.#form,
        PLAN_GROUPS.map((group) => {
          const fields = fieldsIn(group, answer.fields);
          if (fields.length === 0) return false;
          const fold = h(
            "details",
            { class: "plan-group", open: this.#openGroups.get(group.title) === true },
            h("summary", {}, group.title),
            h("div", { class: "field-grid" }, fields.map(draw)),
          );
          fold.addEventListener("toggle", () => this.#openGroups.set(group.title, fold.open));
          return fold;
        }),
      ),
    );
    void import("./plan-origins.ts").then(({ markPlan }) => markPlan(answer.fields, drawn));
  }

  async #choose(shown: Known, of: object, field: string, value: string): Promise<void> {
    const { reading, guard } = this.#bench.store.state;
    if (!reading || guard !== of) return;
    const isLatest = this.#latest();
    const plan = this.#hints.get(guard) ?? shown.plan;
    const change = await this.#bench.engine
      .changedPlan({ source: reading.source, plan, field, value })
      .catch((error: Error) => ({ refusal: error.message }));
    if (!isLatest()) return;
    if ("refusal" in change) this.#refuse(shown, change.refusal);
    else if (change.dropped.length > 0) this.#confirm(shown, change);
    else await this.#take(change);
  }

  #refuse(shown: Known, refusal: string): void {
    this.#show(shown, this.#bench.store.state.guard);
    replaceContent(this.#told, h("p", { class: "fault-text" }, `Not changed: ${refusal}.`));
  }

  #confirm(shown: Known, change: Changed): void {
    const keep = () => this.#show(shown, this.#bench.store.state.guard);
    replaceContent(
      this.#told,
      dropQuestion(change.dropped, this.#speech, () => void this.#take(change), keep),
    );
  }

  #take({ source, plan, besides }: Changed): Promise<void> {
    const { store, editor } = this.#bench;
    this.#hints.set(store.state.guard, plan);
    replaceContent(this.#told);
    return editor.rework(() => source, besides);
  }
}

/** The guard as a plan, every option of which may be changed; each change wires the guard anew at once. */
export function createPlanPanel(bench: Bench): HTMLElement {
  return new PlanPanel(bench).element;
}

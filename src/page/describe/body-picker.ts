import { bodiesOf, shaftBodiesOf } from "../../build-file/bodies/bodies-of.ts";
import type { BodyKind } from "../../build-file/bodies/body-kind.ts";
import type { Part } from "../../build-file/schema.ts";
import { h, replaceContent } from "../dom/element.ts";
import { bodyPicture } from "../drawing/bodies/body-picture.ts";
import type { Commit } from "../fields/field.ts";
import type { BuildSource, PartSource } from "../state/reading.ts";

/** A part as far as its body goes: bodies ask for no quantity, so that those may be text still. */
function bodyPart(part: PartSource): Part {
  const { drives } = part;
  return { ...part, drives: typeof drives === "string" ? { type: drives } : drives } as unknown as Part;
}

interface Choice {
  readonly legend: string;
  readonly bodies: readonly BodyKind[];
  readonly chosen: unknown;
  with(name: string): Part;
  choose(name: string): void;
}

const FROM_MEMORY =
  "Sizes of bodies and places of lugs are from memory, no source. Wires run in the drawing and are cut by them; the sound takes nothing from them.";

const CHECK = "Common practice: makes differ. Check yours with the meter before you solder.";

function choices(name: string, source: PartSource, commit: Commit): Choice[] {
  const part = bodyPart(source);
  const drives = part.kind === "pot" ? part.drives : undefined;
  return [
    {
      legend: "Body, seen from the back",
      bodies: bodiesOf(part),
      chosen: source.body,
      with: (body) => ({ ...part, body }) as Part,
      choose: (body) => commit(["parts", name, "body"], body),
    },
    {
      legend: "Lugs of the switch on the shaft",
      bodies: shaftBodiesOf(part),
      chosen: drives?.body,
      with: (body) => ({ ...part, drives: { ...drives, body } }) as Part,
      choose: (body) => commit(["parts", name, "drives"], { ...drives, body }),
    },
  ];
}

function option(group: string, choice: Choice, body: BodyKind): HTMLElement {
  const isChosen = (choice.chosen ?? choice.bodies[0]!.name) === body.name;
  const radio = h("input", {
    type: "radio",
    name: group,
    value: body.name,
    checked: isChosen,
    onchange: () => choice.choose(body.name),
  });
  return h(
    "label",
    { class: "body-option" },
    radio,
    bodyPicture(choice.with(body.name)),
    h("span", {}, h("b", {}, body.title), ` ${body.lugs}`),
  );
}

/** The bodies that a part can have, each with a picture; none where there is nothing to choose between. */
export function createBodyPicker(name: string, commit: Commit) {
  const element = h("div", { class: "body-picker" });
  let shown = "";
  const show = (source: BuildSource) => {
    const part = source.parts[name];
    if (!part) return;
    const all = choices(name, part, commit).filter(({ bodies }) => bodies.length > 1);
    const key = JSON.stringify([part.kind, part.type, part.drives, part.gangs, part.stereo, part.body, part.lugRows]);
    if (key === shown) return;
    shown = key;
    const held = element.contains(document.activeElement) ? (document.activeElement as HTMLInputElement) : undefined;
    const again = held && { name: held.name, value: held.value };
    replaceContent(
      element,
      all.length > 0 && h("p", { class: "hint" }, FROM_MEMORY),
      all.map((choice, index) => {
        const group = `body-${name}-${index}`;
        return h(
          "fieldset",
          {},
          h("legend", {}, choice.legend),
          h(
            "div",
            { class: "body-options" },
            choice.bodies.map((body) => option(group, choice, body)),
          ),
          choice.bodies.some(({ checkByMeter }) => checkByMeter) && h("p", { class: "hint" }, CHECK),
        );
      }),
    );
    // Drawn anew, it stays where a person was in it.
    if (again) element.querySelector<HTMLInputElement>(`[name="${again.name}"][value="${again.value}"]`)?.focus();
  };
  return { element, show };
}

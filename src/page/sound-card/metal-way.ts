import { type FormField, formChoice, formText } from "../fields/form-fields.ts";
import { loadOf } from "./load-of.ts";
import { metalPicture } from "./rig-picture.ts";
import type { Way } from "./way.ts";

/** Turns, loads and levels are common practice, no source. */
const NEEDS = [
  "An audio interface with an instrument input (1 MΩ; its manual says), and a lead into it with two clips.",
  "A small exciter coil: some 100 turns of thin enamelled wire on a bobbin as wide as the pickup, with 100 Ω in series, on a line or headphone output.",
  "A reference coil with no steel, cover or base plate about it: an air coil of thin wire, or a single coil on alnico rods alone. Measure it first as “a pickup, by an exciter and a load”, and type its values in here.",
  "A load to clip across the pickup: a resistor and a cap, say 200 kΩ and 470 pF, of 1 % or measured. And a meter.",
  "Or, in place of the reference coil: an integrator, a first-order low-pass of some 10 to 50 Hz whose corner you know, between pickup and input.",
];

const STEPS = [
  "Take the pickup out of the circuit, or unsolder its hot lead. Leave its cover and base plate on. Read its DC resistance with the meter, then take the meter off.",
  "Lay the exciter coil on the pickup and hold it there with tape. Plug the output to the exciter, the pickup to the instrument input.",
  "Record the pickup alone. Set levels now: the loudest pass should peak between −12 and −3 dB.",
  "Clip the load across the pickup's leads, touch neither the gain nor the output, and record again.",
  "Take the load off, lay the exciter on the reference coil at about the same height, and record that with the same lead and input. Its level may be another; its slope is what counts.",
  "With an integrator, record the first two through it and leave the reference coil out.",
];

const BUDGET =
  "The exciter's own inductance rises over steel: up to 0.15 dB at 1 kHz and 1 dB above 3 kHz of what is found may be the exciter's" +
  " (reckoned from measured coils, open data). That is most of the error, and no standard error holds it: a step of less than 1 dB may be" +
  " nothing. The coils' values are fitted along within 2 % and widen the standard errors; a reference coil with wrong values is refused or" +
  " told. A string is no exciter coil, but metal shields from both alike.";

const REFERENCES = [
  { value: "coil", label: "a coil without metal" },
  { value: "integrator", label: "an integrator of known corner" },
] as const;

const given = (fields: Readonly<Record<string, FormField>>) =>
  Object.fromEntries(Object.entries(fields).flatMap(([name, field]) => (field.read() ? [[name, field.read()]] : [])));

/** What the exciter's slope is taken out by; of its fields those that suit it are seen. */
function createReference() {
  const kind = formChoice("reference.kind", "The exciter's own slope is told by", REFERENCES);
  const needed = {
    resistance: formText("reference.coil.resistance", "Reference coil's DC resistance", "", "6.2k"),
    inductance: formText("reference.coil.inductance", "Its inductance", "", "2.6"),
  };
  const optional = {
    capacitance: formText("reference.coil.capacitance", "Its own capacitance", "", "120p"),
    loss: formText("reference.coil.loss", "Its loss resistor, if it has one", "", "700k"),
  };
  const corner = formText("reference.corner", "The integrator's corner", "", "30");
  const exciterCorner = formText("reference.exciterCorner", "The exciter's R/(2πL), if known", "", "16k");
  const ofCoil = [...Object.values(needed), ...Object.values(optional)];
  const ofIntegrator = [corner, exciterCorner];
  const show = () => {
    for (const { element } of ofCoil) element.hidden = kind.read() !== "coil";
    for (const { element } of ofIntegrator) element.hidden = kind.read() !== "integrator";
  };
  kind.element.addEventListener("change", show);
  show();
  const { resistance, inductance } = needed;
  const read = () => {
    if (kind.read() === "integrator")
      return { kind: "integrator" as const, corner: corner.read(), ...given({ exciterCorner }) };
    const coil = { resistance: resistance.read(), inductance: inductance.read(), ...given(optional) };
    return { kind: "coil" as const, coil };
  };
  return { fields: [kind, ...ofCoil, ...ofIntegrator], read };
}

/** What metal about a pickup takes of its EMF. */
export function metalWay(): Way {
  const load = formText("load.resistance", "Load resistor", "200k");
  const loadCap = formText("load.capacitance", "Load cap", "470p");
  const input = formText("across.resistance", "The input's resistance", "1M");
  const inputCap = formText("across.capacitance", "Its capacitance with the lead's", "150p");
  const resistance = formText("resistance", "The pickup's DC resistance", "", "7.2k");
  const reference = createReference();
  return {
    picture: metalPicture(),
    needs: NEEDS,
    steps: STEPS,
    budget: BUDGET,
    recordings: [
      { name: "unloaded", label: "The pickup with its metal, alone" },
      { name: "loaded", label: "The same with the load" },
      { name: "referenceCoil", label: "The reference coil in its place", isOptional: true },
    ],
    fields: [load, loadCap, input, inputCap, resistance, ...reference.fields],
    body: (signal) => ({
      method: "exciter",
      signal,
      load: loadOf(load.read(), loadCap.read()),
      across: loadOf(input.read(), inputCap.read()),
      reference: reference.read(),
      ...given({ resistance }),
    }),
  };
}

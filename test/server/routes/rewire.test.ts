import { describe, expect, it } from "vitest";
import { parseLongForm } from "../../../src/build-file/build-file.ts";
import { rewireAnswerSchema } from "../../../src/contract/rewire.ts";
import { onePickup } from "../../fixtures/circuits.ts";
import { useService } from "../service.ts";

const service = useService();
const post = (payload: object) => service.app.inject({ method: "POST", url: "/api/rewire", payload });

const WIRES = (onePickup() as { wires: [string, string][] }).wires;

describe("POST /api/rewire", () => {
  it("moves the one end that is on the wrong lug, says where all else stays, and tells the way home", async () => {
    const onLugOne = WIRES.map((wire, index) => (index === 5 ? ["tone.2", "volume.2"] : wire));
    const reply = await post({ from: onePickup({ wires: onLugOne }), to: onePickup() });
    expect(reply.statusCode).toBe(200);
    const { steps, home, kept, parts, leaving } = rewireAnswerSchema.parse(reply.json());
    expect(steps).toEqual([
      {
        do: "open",
        at: "volume.2",
        from: "tone.2",
        to: "volume.2",
        means: "wire",
        wire: 5,
        fate: "moves",
        partner: 1,
        text: "Open the joint at the volume, lug 2 (wiper): this end of the wire moves to the volume, lug 3 (clockwise end); the other stays on the tone, lug 2 (wiper).",
      },
      {
        do: "make",
        at: "volume.3",
        from: "tone.2",
        to: "volume.3",
        means: "wire",
        wire: 5,
        fate: "moves",
        partner: 0,
        text: "Solder to the volume, lug 3 (clockwise end): the wire from the tone, lug 2 (wiper), until now at the volume, lug 2 (wiper).",
      },
    ]);
    expect(home.map((step) => [step.do, step.at])).toEqual([
      ["open", "volume.3"],
      ["make", "volume.2"],
    ]);
    expect(kept.map(({ wire }) => wire)).toEqual([0, 1, 2, 3, 4, 6, 7, 8]);
    expect(leaving).toEqual([]);
    expect(parts).toMatchObject({ comeIn: [], goOut: [] });
  });

  it("exchanges a cap at its two legs, and gives the long form that stands then", async () => {
    const wanted = onePickup({ parts: { cap: { kind: "cap", capacitance: "47n" } } });
    const { steps, parts, result } = (await post({ from: onePickup(), to: wanted })).json();
    expect(steps.map((step: { do: string; at: string }) => `${step.do} ${step.at}`)).toEqual([
      "open tone.1",
      "make tone.1",
      "open tone.case",
      "make tone.case",
    ]);
    expect(steps[0].text).toBe(
      "Open the joint at the tone, lug 1 (counter-clockwise end): one leg of the old cap goes out with its part.",
    );
    expect(parts.comeIn).toEqual([{ name: "cap", replaces: "cap" }]);
    expect(parts.goOut).toEqual([{ name: "cap", replacedBy: "cap" }]);
    expect(parseLongForm(result).parts.cap).toMatchObject({ capacitance: 4.7e-8 });
  });

  it("has nothing to do where both guards are one, whether plan or long form", async () => {
    const plan = { layout: "volume-tone-one", pickups: { bridge: "p90" } };
    const { plans } = (await service.app.inject({ url: "/api/catalogue" })).json();
    const build = { presolder: 1, plan: plans[0]?.plan ?? plan };
    const { build: long } = (
      await service.app.inject({ method: "POST", url: "/api/expand", payload: { build } })
    ).json();
    expect((await post({ from: build, to: long })).json()).toMatchObject({ steps: [], home: [] });
  });

  it("names the field at fault in whichever guard it is", async () => {
    const wires = [["pickup.hot", "volume.9"]];
    for (const [payload, path] of [
      [{ from: onePickup({ wires }), to: onePickup() }, "from.wires.0.to"],
      [{ from: onePickup(), to: onePickup({ wires }) }, "to.wires.0.to"],
      [{ from: onePickup(), to: 7 }, "to"],
      [{ from: onePickup() }, "to"],
      [{ from: { presolder: 1, plan: {} }, to: onePickup() }, "from.plan.layout"],
    ] as const) {
      const reply = await post(payload);
      expect(reply.statusCode).toBe(400);
      expect(reply.json().errors[0].path).toBe(path);
    }
  });
});

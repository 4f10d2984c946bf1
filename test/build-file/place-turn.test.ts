import { expect, test } from "vitest";
import * as z from "zod";
import { readBuild } from "../../src/build-file/read-build.ts";
import { partSchema } from "../../src/build-file/schema.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { faultsFrom } from "./refusals.ts";

function turned(turn: unknown): unknown {
  const build = structuredClone(onePickup()) as { parts: Record<string, object> };
  build.parts.volume = { ...build.parts.volume, place: { x: 0.05, y: "75mm", turn } };
  return build;
}

test.each([0, 15, -90, 345, -345])("a part turned by %i degrees is read as it is written", (turn) => {
  expect(readBuild(turned(turn)).parts.volume!.place).toEqual({ x: 0.05, y: 0.075, turn });
});

test("a part need not say how it is turned", () => {
  expect(readBuild(turned(undefined)).parts.volume!.place!.turn).toBeUndefined();
});

test.each([7, 14.5, 360, -360, "15", null, Number.NaN])("a turn of %j is refused in words", (turn) => {
  const [fault] = faultsFrom(() => readBuild(turned(turn)));
  expect(fault!.path).toBe("build.parts.volume.place.turn");
  expect(fault!.message).toBe("expected whole steps of 15 degrees, from -345 to 345");
});

test("the reference tells the step and the bounds", () => {
  const text = JSON.stringify(z.toJSONSchema(partSchema, { io: "input", unrepresentable: "any" }));
  const [turn] = /"turn":\{[^}]*\}/.exec(text)!;
  expect(JSON.parse(`{${turn}}`).turn).toMatchObject({ type: "integer", multipleOf: 15, minimum: -345, maximum: 345 });
});

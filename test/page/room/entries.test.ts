import { expect, test } from "vitest";
import { NO_ENTRIES, nextCavity } from "../../../src/page/room/entries.ts";

test("another cavity has a name that none has, also where one before it was removed", () => {
  const [first] = NO_ENTRIES.cavities;
  const second = nextCavity([first!]);
  const third = nextCavity([first!, second]);
  expect([second.name, third.name]).toEqual(["cavity 2", "cavity 3"]);
  expect(nextCavity([first!, third]).name).not.toBe("cavity 3");
  expect(nextCavity([third, second]).name).not.toBe("cavity 3");
});

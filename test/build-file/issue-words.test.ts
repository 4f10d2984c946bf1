import { describe, expect, test } from "vitest";
import * as z from "zod";
import { faultsOf, parsed, quantity, strict } from "../../src/build-file/zod-tools.ts";

const schema = strict({
  points: z.int().min(2).max(9).optional(),
  share: z.number().gt(0).optional(),
  between: z.tuple([z.number(), z.number()]).optional(),
  names: z.array(z.string().max(4)).min(1).optional(),
  own: z.string("expected a name").optional(),
  metal: z.union([z.string(), z.array(z.string()).max(2)], "expected a metal or a list of them").optional(),
  loss: z.union([quantity("resistance", { max: 1e9 }, "ohms"), z.array(z.string()).min(1).max(2)]).optional(),
  needed: z.boolean(),
});

function faults(sent: object): string[] {
  const { error } = parsed(schema, { needed: true, ...sent });
  return error ? faultsOf(error).map(({ path, message }) => `${path} ${message}`) : [];
}

describe("a fault that no schema has words for", () => {
  test.each([
    [{ points: "x" }, 'points is "x"; expected a number'],
    [{ points: 1 }, "points is 1; expected at least 2"],
    [{ points: 2.5 }, "points is 2.5; expected a whole number"],
    [{ share: 0 }, "share is 0; expected more than 0"],
    [{ points: 40 }, "points is 40; expected at most 9"],
    [{ between: 900 }, "between is 900; expected a list"],
    [{ between: [20] }, "between has 1 entries; expected at least 2"],
    [{ between: [1, null] }, "between.1 is null; expected a number"],
    [{ names: [] }, "names has 0 entries; expected at least 1"],
    [{ names: ["bridge"] }, "names.0 has 6 characters; expected at most 4"],
    [{ needed: undefined }, "needed is missing; expected true or false"],
    [{ metal: ["a", "b", "c"] }, "metal has 3 entries; expected at most 2"],
    [{ loss: ["a", "b", "c"] }, "loss has 3 entries; expected at most 2"],
    [{ loss: [] }, "loss has 0 entries; expected at least 1"],
    [{ loss: "q" }, 'loss "q" cannot be read; expected a quantity such as "250k", "4k7" or 250000'],
    [{ metal: 5 }, "metal expected a metal or a list of them"],
    [{ own: "a".repeat(9), names: "b".repeat(99) }, `names is "${"b".repeat(39)}…; expected a list`],
  ])("%j is told with the field, the value and what was expected", (sent, told) => {
    expect(faults(sent)).toEqual([told]);
  });

  test("leaves a schema's own words as they are", () => {
    expect(faults({ own: 3 })).toEqual(["own expected a name"]);
  });
});

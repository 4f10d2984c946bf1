import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkGuard } from "../../src/shelf/file/check-guard.ts";
import { packed, unpacked } from "../../src/shelf/packed.ts";
import { anyGuard } from "./any-guard.ts";

describe("a guard in a link", () => {
  it("comes out as it went in, build file byte for byte, without its history", () => {
    fc.assert(
      fc.property(anyGuard, (guard) => {
        const sent = JSON.parse(JSON.stringify(packed(guard)));
        expect(checkGuard(unpacked(sent))).toEqual({ ...guard, history: [] });
      }),
    );
  });

  it.each([[null], [7], ["guard"], [[]], [{}], [{ build: 1 }]])("that is %j is refused as an entry", (value) => {
    expect(() => checkGuard(unpacked(value))).toThrow(/expected/);
  });
});

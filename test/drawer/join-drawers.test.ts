import fc from "fast-check";
import { expect, test } from "vitest";
import { joinDrawers } from "../../src/drawer/join-drawers.ts";
import { anyDrawer } from "../shelf/any-drawer.ts";

test("a drawer joined with another keeps its own entries as they are and in their places", () => {
  fc.assert(
    fc.property(anyDrawer, anyDrawer, (here, come) => {
      const joined = joinDrawers(here, come);
      expect(joined.items.slice(0, here.items.length)).toEqual(here.items);
      const ids = joined.items.map(({ id }) => id);
      expect(new Set(ids)).toEqual(new Set([...here.items, ...come.items].map(({ id }) => id)));
      expect(ids).toHaveLength(new Set(ids).size);
      expect(joined.counted).toMatchObject(here.counted);
    }),
  );
});

test("a drawer joined with itself is itself, and twice is once", () => {
  fc.assert(
    fc.property(anyDrawer, anyDrawer, (here, come) => {
      expect(joinDrawers(here, here)).toEqual(here);
      const once = joinDrawers(here, come);
      expect(joinDrawers(once, come)).toEqual(once);
    }),
  );
});

import { expect, it } from "vitest";
import { buildSheet } from "../../src/bench/sheet/build-sheet.ts";
import { builds, jointsIn } from "../bench/sheet/guards.ts";
import { describeWith } from "../tools.ts";
import { usePage } from "./browser.ts";
import { bringModules } from "./in-browser.ts";
import { scheduled } from "./scheduled.ts";

const MODULES = `
  export { picturing } from "./drawing/joint/picturing.ts";
  export { sceneOf } from "./drawing/joint/scene.ts";
  export { drawPicture } from "./drawing/joint/draw-picture.ts";
`;

interface Asked {
  readonly build: object;
  readonly sheet: object;
  readonly made: readonly { readonly first: number; readonly last: number; readonly of: string }[];
}

/** Runs in the page: what each picture's own attributes say is drawn. */
function drawnIn({ build, sheet, made }: Asked) {
  // biome-ignore lint/suspicious/noExplicitAny: the modules as they are bundled for the page.
  const { picturing, sceneOf, drawPicture } = (globalThis as any).modules;
  const input = picturing(build, sheet);
  return made.map(({ of, ...range }) => {
    const picture: SVGElement = drawPicture(build, input, sceneOf(input, range, of), "");
    const lines = [...picture.querySelectorAll<SVGElement>("[data-soldered]")];
    const endsOf = (all: SVGElement[]) => [...new Set(all.flatMap((line) => line.dataset.soldered!.split(" ")))].sort();
    return {
      ends: endsOf(lines),
      nowOf: endsOf(lines.filter((line) => line.dataset.when === "now")),
      hanging: lines.filter((line) => line.dataset.takenBy).map((line) => Number(line.dataset.takenBy)),
      free: picture.querySelectorAll(".free-end").length,
      heated: [...picture.querySelectorAll<SVGElement>("[data-heated]")].map(
        ({ dataset }) => `${dataset.kind} ${dataset.heated}`,
      ),
    };
  });
}

describeWith("chromium", "the drawn pictures of joints and stages", () => {
  const site = usePage();

  it("show the schedule's ends, free ends and places to heat, in every example and plan", async () => {
    const { page } = await site.visit({ path: "/healthz" });
    await bringModules(page, MODULES);
    for (const { name, build } of builds) {
      const sheet = buildSheet(build);
      const stages = sheet.sittings.flatMap((sitting) => sitting.stages);
      const made = [
        ...jointsIn(sheet.sittings).map(({ number }) => ({ first: number, last: number, of: "joint" })),
        ...stages.map(({ joints }) => ({ first: joints[0]!.number, last: joints.at(-1)!.number, of: "stage" })),
      ];
      const drawn = await page.evaluate(drawnIn, { build, sheet: JSON.parse(JSON.stringify(sheet)), made });
      for (const [index, { first, last }] of made.entries()) {
        const told = scheduled(sheet, first, last);
        const said = `${name}, joints ${first} to ${last}`;
        const { ends, nowOf, hanging, free, heated } = drawn[index]!;
        expect(ends, said).toEqual(told.ends);
        expect(nowOf, said).toEqual(expect.arrayContaining(told.now));
        expect(hanging.sort(), said).toEqual(told.hanging.map((text) => Number(text.split(" ").at(-1))).sort());
        expect(free, said).toBe(told.hanging.length);
        expect(heated, said).toEqual(told.heated);
      }
    }
  });
});

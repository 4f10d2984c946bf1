import { expect, it } from "vitest";
import { pickupType } from "../../../src/build-file/catalogue/pickup-types.ts";
import type { PickupInput } from "../../../src/build-file/plans/plan-pickups.ts";
import { mergedPart } from "../../../src/build-file/recognise/merged-part.ts";

const { coils } = pickupType("humbucker-medium")!;
const planned: PickupInput = { kind: "pickup", type: "humbucker-medium", coils, conductors: 4 };
const owned: PickupInput = { ...planned, leads: { "slug.start": "red", shield: "bare" } };

it("keeps what a pickup's leads are called under another plan, for as long as the same leads come out of it", () => {
  expect(mergedPart(owned, planned, { ...planned, metal: "cover" })).toMatchObject({ leads: owned.leads });
  expect(mergedPart(owned, planned, { ...planned, conductors: 2 })).not.toHaveProperty("leads");
});

import { describe, expect, test } from "vitest";
import { PLAN } from "../plan.ts";
import { useService, withFile } from "../service.ts";
import { BENCH_CASES } from "./limit-cases/bench-cases.ts";
import { BUILD_CASES } from "./limit-cases/build-cases.ts";
import { DRAWER_CASES } from "./limit-cases/drawer-cases.ts";
import type { Asking } from "./limit-cases/limit-case.ts";
import { SOUND_CASES } from "./limit-cases/sound-cases.ts";
import { WISH_CASES } from "./limit-cases/wish-cases.ts";

const service = useService();

const asking: Asking = {
  post: (url, payload) => service.app.inject({ method: "POST", url, payload }),
  upload: (file) => service.app.inject({ method: "POST", url: "/api/preview", ...withFile({ build: PLAN }, file) }),
  inject: (request) => service.app.inject(request),
};

const CASES = [...BUILD_CASES, ...DRAWER_CASES, ...WISH_CASES, ...SOUND_CASES, ...BENCH_CASES];

describe("beyond a limit, a request is refused with the field and the limit named", () => {
  test.each(CASES)("$limit", async ({ send, status, path, names }) => {
    const answer = await send(asking);
    expect(answer.headers["content-type"]).toContain("application/problem+json");
    const problem = answer.json();
    expect([problem.status, answer.statusCode, problem.errors?.[0]?.path]).toEqual([status, status, path]);
    expect(problem.detail.replaceAll(/[,\s]/g, "")).toContain(String(names));
  });
});

import type { FastifyInstance } from "fastify";

interface Route {
  readonly method: string;
  /** Null stands for any. */
  readonly segments: readonly (string | null)[];
}

const segmentsOf = (path: string) => path.split("/");

function matches({ segments }: Route, path: readonly string[]): boolean {
  return (
    segments.length === path.length && segments.every((segment, index) => segment === null || segment === path[index])
  );
}

/** Which methods the routes registered from now on answer at a path; routes for any path whatever are left out. */
export function collectMethods(app: FastifyInstance): (path: string) => string[] {
  const routes: Route[] = [];
  app.addHook("onRoute", ({ method, url }) => {
    if (url.includes("*")) return;
    const segments = segmentsOf(url).map((segment) => (segment.startsWith(":") ? null : segment));
    for (const each of [method].flat()) routes.push({ method: each, segments });
  });
  return (path) => {
    const wanted = segmentsOf(path);
    return [...new Set(routes.filter((route) => matches(route, wanted)).map(({ method }) => method))].sort();
  };
}

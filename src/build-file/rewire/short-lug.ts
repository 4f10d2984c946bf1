import type { Build } from "../schema.ts";

/** "volume lug 3", "lever A2", "cap leg a", "bridge slug finish": a lug as one says it at the bench. */
export function shortLug({ parts }: Build, lug: string): string {
  const [name = "", ...local] = lug.split(".");
  switch (parts[name]?.kind) {
    case "pot":
      if (local[0] === "case") return `${name} case`;
      return local[0] === "s" ? `${name} switch ${local[1]}` : `${name} lug ${local[0]}`;
    case "cap":
    case "resistor":
      return `${name} leg ${local[0]}`;
    default:
      return [name, ...local].join(" ");
  }
}

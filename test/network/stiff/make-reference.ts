import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { STIFF_NETWORKS, stiffNetwork } from "./stiff-networks.ts";

// npm run exact:reference makes stiff-networks.json anew, with Debian's python3-mpmath; python3-gmpy2 makes it a matter of seconds.
const lines = Array.from({ length: STIFF_NETWORKS }, (_, seed) => {
  const { network, output, frequenciesHz } = stiffNetwork(seed);
  return JSON.stringify({ network, output, frequencies: Array.from(frequenciesHz) });
});
const answers = execFileSync("/usr/bin/python3", ["test/network/stiff/solve_networks.py"], {
  input: lines.join("\n"),
  encoding: "utf8",
  maxBuffer: 1 << 28,
});
const rows = answers
  .trim()
  .split("\n")
  .map((line) =>
    (JSON.parse(line) as number[][]).map((values) => values.map((value) => Number(value.toPrecision(12)))),
  );
writeFileSync(
  "test/network/stiff/stiff-networks.json",
  `[\n${rows.map((row) => JSON.stringify(row)).join(",\n")}\n]\n`,
);

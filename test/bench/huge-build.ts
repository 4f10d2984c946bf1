import { readBuild } from "../../src/build-file/read-build.ts";
import { MAX_PARTS, MAX_WIRES } from "../../src/limits.ts";

/** As large as the door lets in: pickups in a chain across a bank of rotary switches, every wire used. */
export function hugeBuild() {
  const pickups = 50;
  const parts: Record<string, object> = { jack: { kind: "jack" } };
  const wires: [string, string][] = [["p0.hot", "jack.tip"]];
  for (let i = 0; i < pickups; i++) {
    parts[`p${i}`] = { kind: "pickup", coils: { coil: { resistance: "5k", inductance: "2H" } } };
    if (i > 0) wires.push([`p${i - 1}.ground`, `p${i}.hot`]);
  }
  wires.push([`p${pickups - 1}.ground`, "jack.sleeve"]);
  for (let i = 0; i < MAX_PARTS - pickups - 1; i++) {
    const kind =
      i % 2 === 0
        ? { kind: "pot", role: "volume", resistance: "250k" }
        : { kind: "switch", type: "rotary", poles: 8, throws: 12 };
    parts[`x${i}`] = kind;
    const lugs = i % 2 === 0 ? ["1", "3"] : ["A0", "B0"];
    wires.push([`x${i}.${lugs[0]}`, `p${i}.hot`], [`x${i}.${lugs[1]}`, `p${i}.ground`]);
  }
  for (let i = 0; wires.length < MAX_WIRES; i++)
    wires.push([`x${1 + 2 * (i % 20)}.C${i % 13}`, `x${1 + 2 * (i % 20)}.D${i % 13}`]);
  return readBuild({ presolder: 1, parts, wires });
}

import { contactLug } from "../../build-file/lug-names.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import { Wiring } from "../../wiring/nets.ts";

/**
 * Switches beside the selector of which nobody can tell yet what they do, as a split before its pickup is there: some of their
 * lugs have nothing on them but jumpers to each other.
 */
export function waitingSwitches(build: Build): ReadonlySet<string> {
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const controls = new Controls(build);
  const ownersOf = (net: number) => wiring.lugs.lugs.filter((_, index) => netOfLug[index] === net);
  const waits = controls.switches.filter(({ name, part, table }) => {
    if (name === controls.main?.name) return false;
    const nets = new Set(table.lugs.map((lug) => netOfLug[wiring.lugs.indexOf(contactLug(name, lug))]!));
    return [...nets].some((net) => ownersOf(net).every((lug) => lug.part === part && lug.local !== "case"));
  });
  return new Set(waits.map(({ name }) => name));
}

import type { Build } from "../../src/build-file/schema.ts";
import { Controls, parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { DirectCurrent } from "../../src/network/direct-current.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { magnitudeDb } from "../../src/response/level-and-phase.ts";

/** What an ohmmeter between two lugs reads with nothing plugged in; null where open. */
export function ohmsBetween(build: Build, a: string, b: string, raw: RawSettings = {}): number | null {
  const maker = new CircuitMaker(build);
  const settings = parseSettings(new Controls(build), raw);
  const { network, nodeOfLug } = maker.circuitIn(settings, { withCableAndLoad: false });
  const node = (lug: string) => nodeOfLug(maker.wiring.lugs.indexOf(lug));
  return new DirectCurrent(network).resistanceBetween(node(a), node(b));
}

/** Levels in dB of all coils together at the given frequencies in Hz. */
export function levelsAt(build: Build, frequenciesHz: readonly number[], raw: RawSettings = {}): number[] {
  const settings = parseSettings(new Controls(build), raw);
  const transfers = new ResponseEngine(build).transfersIn(settings);
  return [...magnitudeDb(transfers.total(Float64Array.from(frequenciesHz)))];
}

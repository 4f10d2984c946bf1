import type { NoiseWish } from "./noise-maker.ts";

const short = (value: number) => String(Number(value.toPrecision(3)));

/** What of a guitar's noise is in a sound, in words that go into a header: ASCII. */
export function noiseWords({ mainsHz, isCoilsOnly, isHissing, room, amplifier }: NoiseWish): string {
  const of = isCoilsOnly ? "the coils" : "coils, loops and open wires";
  const electric = isCoilsOnly ? "" : ` and ${short(room.electricField)} V/m`;
  const hum = mainsHz === null ? [] : [`hum of ${mainsHz} Hz in ${of}, ${short(room.fluxDensity * 1e6)} uT${electric}`];
  const own = `${short(amplifier.voltage * 1e9)} nV/rtHz and ${short(amplifier.current * 1e12)} pA/rtHz`;
  return [...hum, ...(isHissing ? [`hiss of the circuit and an input of ${own}`] : [])].join("; ");
}

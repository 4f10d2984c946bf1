declare module "@echogarden/pffft-wasm/simd" {
  import type { Pffft } from "./pffft.ts";

  export default function create(): Promise<Pffft>;
}

const FIRST_BYTES = 1 << 14;
/** Of UTF-8 for one of a string's units (RFC 3629, 3). */
const MAX_BYTES_PER_UNIT = 3;
/** A sign, sixteen digits before the point, the point and six behind it, and a comma; the places are at most six. */
const MAX_BYTES_PER_NUMBER = 25;
/** Fifteen digits are told apart by a double, so that the number with them is the shortest that stands for it. */
const MOST_STEPS = 1e15;
const ZERO = "0".charCodeAt(0);
const MINUS = "-".charCodeAt(0);
const POINT = ".".charCodeAt(0);
const COMMA = ",".charCodeAt(0);

/** Text that grows, as UTF-8: curves are mostly numbers, which take half as long to write here as by way of a string. */
export class TextBytes {
  readonly #encoder = new TextEncoder();
  #bytes = new Uint8Array(FIRST_BYTES);
  #length = 0;

  text(text: string): this {
    this.#makeRoom(text.length * MAX_BYTES_PER_UNIT);
    this.#length += this.#encoder.encodeInto(text, this.#bytes.subarray(this.#length)).written;
    return this;
  }

  bytes(bytes: Uint8Array): this {
    this.#makeRoom(bytes.length);
    this.#bytes.set(bytes, this.#length);
    this.#length += bytes.length;
    return this;
  }

  /**
   * Numbers with a comma between them, as JSON writes them (RFC 8259, 6; what is not finite as null).
   * @param places after the point to which they are rounded, up to 6
   */
  numbers(values: Float64Array, places: number): this {
    const steps = 10 ** places;
    for (let index = 0; index < values.length; index++) {
      this.#makeRoom(MAX_BYTES_PER_NUMBER);
      if (index > 0) this.#bytes[this.#length++] = COMMA;
      const count = Math.round(values[index]! * steps);
      if (Math.abs(count) < MOST_STEPS) this.#count(count, steps, places);
      else this.text(JSON.stringify(count / steps));
    }
    return this;
  }

  #count(count: number, steps: number, mostPlaces: number): void {
    const size = Math.abs(count);
    if (count < 0) this.#bytes[this.#length++] = MINUS;
    const whole = Math.floor(size / steps);
    this.#digits(whole, whole < 10 ? 1 : whole < 100 ? 2 : whole < 1000 ? 3 : String(whole).length);
    let rest = size - whole * steps;
    if (rest === 0) return;
    let places = mostPlaces;
    for (; rest % 10 === 0; rest /= 10) places--;
    this.#bytes[this.#length++] = POINT;
    this.#digits(rest, places);
  }

  #digits(value: number, places: number): void {
    let left = value;
    for (let at = this.#length + places - 1; at >= this.#length; at--) {
      const tenth = Math.floor(left / 10);
      this.#bytes[at] = ZERO + (left - 10 * tenth);
      left = tenth;
    }
    this.#length += places;
  }

  /** What was written, in bytes of its own, which may change hands. */
  whole(): Uint8Array<ArrayBuffer> {
    return this.#bytes.slice(0, this.#length);
  }

  #makeRoom(count: number): void {
    if (this.#length + count <= this.#bytes.length) return;
    const larger = new Uint8Array(2 * (this.#length + count));
    larger.set(this.#bytes.subarray(0, this.#length));
    this.#bytes = larger;
  }
}

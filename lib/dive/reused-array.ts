/**
 * Room for `length` numbers: the memory of an array no longer needed where it is large enough, else new memory with an
 * eighth to spare. While a dive is dragged its length changes all the time, and asking the system for fresh memory costs
 * more than the arithmetic that fills it. What the array holds is left over from before; the caller writes over all of it.
 */
export function reusedFloats(used: Float64Array | undefined, length: number): Float64Array {
  if (used?.length === length) return used;
  return new Float64Array(memory(used, length, Float64Array.BYTES_PER_ELEMENT), 0, length);
}

/** The same for indexes. */
export function reusedIndexes(used: Int32Array | undefined, length: number): Int32Array {
  if (used?.length === length) return used;
  return new Int32Array(memory(used, length, Int32Array.BYTES_PER_ELEMENT), 0, length);
}

/** The same for small counts, such as the number of a compartment. */
export function reusedBytes(used: Uint8Array | undefined, length: number): Uint8Array {
  if (used?.length === length) return used;
  return new Uint8Array(memory(used, length, Uint8Array.BYTES_PER_ELEMENT), 0, length);
}

function memory(
  used: { readonly buffer: ArrayBufferLike; readonly byteOffset: number } | undefined,
  length: number,
  bytesEach: number,
) {
  if (used && used.byteOffset === 0 && used.buffer.byteLength >= length * bytesEach) return used.buffer;
  return new ArrayBuffer((length + (length >> 3)) * bytesEach);
}

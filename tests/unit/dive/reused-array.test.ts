import { describe, expect, it } from 'vitest';
import { reusedBytes, reusedFloats, reusedIndexes } from '@/lib/dive/reused-array';

/** Any of the three, for any of their kinds. */
type Room = (used: Float64Array | undefined, length: number) => Float64Array;

describe.each([
  ['numbers', reusedFloats, Float64Array],
  ['indexes', reusedIndexes, Int32Array],
  ['small counts', reusedBytes, Uint8Array],
] as const)('room for %s', (_, reused, Kind) => {
  const room = reused as unknown as Room;
  const used = (length: number) => room(undefined, length);

  it('is new where there was none, and an eighth is to spare', () => {
    const first = used(80);
    expect(first).toBeInstanceOf(Kind);
    expect(first).toHaveLength(80);
    expect(first.buffer.byteLength).toBe(90 * Kind.BYTES_PER_ELEMENT);
  });

  it('is the very same where it is as long', () => {
    const first = used(80);
    expect(room(first, 80)).toBe(first);
  });

  it.each([79, 81, 90])('is the same memory for %i in place of 80', (length) => {
    const first = used(80);
    const second = room(first, length);
    expect(second).toHaveLength(length);
    expect(second.buffer).toBe(first.buffer);
  });

  it('is other memory where more is asked for than there is, or what is used is a part of more', () => {
    const first = used(80);
    expect(room(first, 91).buffer).not.toBe(first.buffer);
    expect(room(first.subarray(1), 10).buffer).not.toBe(first.buffer);
  });
});

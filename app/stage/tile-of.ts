import type { Saying } from '@/lib/sayings/saying';

/** What a tile shows of a reading. */
export function tileOf({ name, value, unit, note, tone }: Saying) {
  return { label: name, value, unit, note, tone };
}

import { seeded, shuffled } from '@/lib/quantity/seeded';
import { LONG, SEED } from '@/tests/laws/law';

/** So many of a list, others in every run; all of them where there is time. */
export function drawn<Item>(items: readonly Item[], count: number): readonly Item[] {
  if (LONG) return items;
  const taken = new Set(shuffled(items, seeded(SEED)).slice(0, count));
  return items.filter((item) => taken.has(item));
}

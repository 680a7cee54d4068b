import { create } from 'zustand';
import { TARGETS, type Target } from '@/lib/ways-out/trouble';

/** How many panels are about that answer what would have avoided it. */
export const useWaysOutHere = create<{ panels: number }>()(() => ({ panels: 0 }));

const ID = 'ways-out ';

/** The question as one of those that are asked one at a time. */
export function waysOutId(target: Target): string {
  return `${ID}${target}`;
}

/** What such a question asks after; undefined for any other question. */
export function targetOf(asked: string | undefined): Target | undefined {
  return TARGETS.find((target) => asked === waysOutId(target));
}

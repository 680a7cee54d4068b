import { ourFault } from '../parts/our-fault';
import { CHECK_GROUPS } from '@/lib/evidence/all';
import type { Check } from '@/lib/evidence/check';
import { ENGINE } from '@/lib/evidence/engine';

/** What the worker tells: one message a group, as soon as it is worked out. */
export type GroupResult = { id: string; checks: readonly Check[] } | { id: string; failure: string };

async function runAll() {
  for (const group of CHECK_GROUPS) {
    try {
      postMessage({ id: group.id, checks: await group.run(ENGINE) } satisfies GroupResult);
    } catch (error) {
      postMessage({
        id: group.id,
        failure: ourFault(error),
      } satisfies GroupResult);
    }
  }
}

void runAll();

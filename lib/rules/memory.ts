import { eventKind } from './event';

/** Not a rule's doing: the unit was swapped for another, or lost its battery, before a dive. */
export const memoryLost = eventKind({
  kind: 'memory-lost',
  rule: 'setup',
  meaning: 'The unit starts the dive with an empty memory: it has forgotten the dives before, or was not on them.',
  say: ({ forgotten }: { forgotten: number }) =>
    `the unit starts with fresh tissues. It knows nothing of the ${forgotten === 1 ? 'dive' : `${forgotten} dives`} before.`,
});

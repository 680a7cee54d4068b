import { eventKind } from './event';
import { rule } from './rule';
import { onOff, oneOf } from './settings/setting';

const LOCK_HOURS = [24, 48] as const;

const settings = {
  on: onOff(true),
  hours: oneOf(LOCK_HOURS, 48),
};

const locked = eventKind({
  kind: 'locked-out',
  rule: 'lockOut',
  meaning:
    'You stayed at the surface with a required stop left out: the unit shows depth and time only. It comes first: no missed imposed stop is told beside it.',
  say: ({ hours }: { hours: number }) =>
    `you are at the surface with a required stop left out. The unit locks: for ${hours} h it shows depth and time only.`,
});
const unlocked = eventKind({
  kind: 'lock-over',
  rule: 'lockOut',
  meaning: 'The lock has run out; the unit works as before.',
  say: () => 'the lock is over. The unit works again.',
});

/** After a stop left out the unit gives no figures for a day or two. */
export const lockOut = rule({
  id: 'lockOut',
  title: 'Lock-out after a stop left out',
  reason:
    'A diver who has broken the model’s limit is outside what its figures are made for, so the unit gives none and nobody dives by them. Follow your training for an omitted stop.',
  standing: 'common practice',
  settings,
  events: [locked, unlocked],
  changesLessons: [6, 17, 21],
  begin: () => ({}),
  step(_state, now, own, unit) {
    if (unit.lockedUntilS > 0) {
      if (now.timeS < unit.lockedUntilS) return;
      unit.lockedUntilS = 0;
      unit.tell(unlocked, now.timeS, {});
    } else if (now.atSurface && unit.graceOver) {
      unit.lockedUntilS = now.timeS + own.hours * 3600;
      unit.tell(locked, now.timeS, { hours: own.hours });
    }
  },
});

import atmosphere from '../../../content/published/atmosphere.json';
import flying from '../../../content/published/flying.json';
import { altitudeWait } from './altitude-wait';
import { eventKind } from '../event';
import { flyingGuideline } from './flying-guideline';
import { rule } from '../rule';
import { sayWait } from '../say';
import { amount, onOff } from '../settings/setting';

const settings = {
  on: onOff(true),
  /** The pressure in the aeroplane, told as an altitude, m. */
  cabinM: amount(atmosphere.cabin.altitudeM, 0, 6000),
  /** Wait after dives with required stops, h, for which the guideline gives no figure. */
  requiredStopsH: amount(24, 18, 72),
};

/** What the hours rest on, by number. */
const BASES = [
  'which is what its own tissues need',
  'as the published guideline has it',
  'which it is set to after required stops, where the guideline gives no figure',
];

const began = eventKind({
  kind: 'flying-wait-began',
  rule: 'flyingWait',
  meaning: 'You surfaced, and the count of hours until flying begins.',
  say: ({ hours, basis }: { hours: number; basis: number }) =>
    `you surfaced. The unit counts ${sayWait(hours)} until flying, ${BASES[basis]!}.`,
});

/** Counts the hours until flying: the published guideline or the model's own time, whichever is longer. */
export const flyingWait = rule({
  id: 'flyingWait',
  title: 'Waiting before flying',
  reason:
    'An aeroplane’s cabin is at a lower pressure than the ground, so gas that was tolerated there can be too much. Trials found cases after waits the model would allow, so the published waits hold where they are longer.',
  standing: 'published guidance',
  source: flying.source,
  settings,
  events: [began],
  changesLessons: 'all',
  begin: () => ({}),
  step(_state, now, own, unit) {
    if (!now.surfaces || !unit.dive) return;
    const guideline = flyingGuideline(unit.remembered, own.requiredStopsH);
    const wait = altitudeWait(unit.timeline, unit.ownHigh, now.sample, own.cabinM, guideline, 0);
    unit.tell(began, now.timeS, {
      hours: wait.hoursLeft,
      basis: wait.longer === 'model' ? 0 : guideline?.standIn ? 2 : 1,
    });
  },
});

'use client';

import { useMemo } from 'react';
import { eventText } from '@/lib/rules/all';
import type { RuleEvent } from '@/lib/rules/event';
import { sampleAt } from '@/lib/dive/timeline';
import type { Watch } from '@/lib/rules/watch';
import type { PictureProps } from '../../pictures/picture-props';
import type { ProfileScales } from '../../pictures/profile/profile-scales';
import { useDesk } from '../desk-context';
import { saidBy } from './event-voice';
import { chosenWatch } from '../../pictures/scene-watches';
import styles from './units.module.css';

const TOO_FAST = 2;

interface EventMarksProps {
  scales: ProfileScales;
  units: PictureProps['units'];
  onCursor: (timeS: number) => void;
}

/** What the chosen unit's rules say of the dive, drawn on it: too fast stretches by weight, events by mark and sentence. */
export function EventMarks({ scales, units, onCursor }: EventMarksProps) {
  const { x, y } = scales;
  const watch = useDesk(chosenWatch);
  const { timeline, events, tracks } = watch;
  const fast = useMemo(() => fastStretches(watch, scales), [watch, scales]);
  return (
    <g clipPath="url(#dive-frame)">
      {tracks.rateLevel.length > 0 && <path d={fast} className={styles.tooFast} aria-hidden="true" />}
      {events.map((event, index) => {
        const depthM = timeline.depthM[sampleAt(timeline, event.timeS)]!;
        const text = eventText(event, units);
        return (
          <g
            key={index}
            transform={`translate(${x(event.timeS).toFixed(1)},${(y(depthM) - 16).toFixed(1)})`}
            className={styles[saidBy(event)]}
            onClick={() => onCursor(event.timeS)}
          >
            <title>{text}</title>
            <EventMark event={event} />
          </g>
        );
      })}
    </g>
  );
}

/** A bar for what the model demands, a flag for what a rule does, a ring for advice, a chevron for speed. */
function EventMark({ event }: { event: RuleEvent }) {
  if (event.rule === 'rateWatch') return <path d="M-6,3L0,-4L6,3M-6,9L0,2L6,9" className={styles.chevron} />;
  if (event.rule === 'safetyStop' || event.rule === 'longerSafetyStop')
    return <circle r="5" className={styles.openMark} />;
  if (saidBy(event) === 'byModel') return <rect x="-7" y="-3.5" width="14" height="7" className={styles.solidMark} />;
  return <path d="M-4,9V-7H6L3,-3.5L6,0H-4" className={styles.flag} />;
}

/** The stretches in which the unit found the rise too fast, as one path along the dive. */
function fastStretches({ timeline, tracks }: Watch, { x, y }: ProfileScales): string {
  const parts: string[] = [];
  let drawing = false;
  for (let i = 1; i < timeline.length; i += 1) {
    const fast = tracks.rateLevel[i]! >= TOO_FAST;
    if (fast && !drawing)
      parts.push(`M${x(timeline.timeS[i - 1]!).toFixed(1)},${y(timeline.depthM[i - 1]!).toFixed(1)}`);
    if (fast || drawing) parts.push(`L${x(timeline.timeS[i]!).toFixed(1)},${y(timeline.depthM[i]!).toFixed(1)}`);
    drawing = fast;
  }
  return parts.join('');
}

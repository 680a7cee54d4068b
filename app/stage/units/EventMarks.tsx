'use client';

import { memo, useDeferredValue, useMemo } from 'react';
import { sampleAt } from '@/lib/dive/timeline';
import { EventMark } from '../../pictures/profile/EventMark';
import { fastStretches } from '../../pictures/profile/fast-stretches';
import { eventLane, roomForWords } from '../../pictures/profile/event-lane';
import type { PictureProps } from '../../pictures/picture-props';
import { EVENT_LANE_Y, type ProfileScales } from '../../pictures/profile/profile-scales';
import { useDesk } from '../desk-context';
import { SOMETHING_HAPPENS } from '../moments';
import { useCourse } from '../use-course';
import { logEntriesOf } from './log-entries';
import lane from '../../pictures/profile/event-lane.module.css';

/** From the middle of a mark to its foot. */
const HALF_MARK = 9;

interface EventMarksProps {
  scales: ProfileScales;
  units: PictureProps['units'];
  onCursor: (timeS: number) => void;
}

/** What happens on the dive, drawn on it. */
export function EventMarks({ scales, ...props }: EventMarksProps) {
  return <Marks {...props} {...useCourse()} scales={useDeferredValue(scales)} />;
}

/**
 * What the chosen unit's rules say of the dive: too fast stretches by weight, and in a lane above the surface each event
 * by the number and the word it has in the log, tied to its moment.
 */
const Marks = memo(function Marks({
  scene,
  watch,
  scales,
  units,
  onCursor,
}: EventMarksProps & ReturnType<typeof useCourse>) {
  const { x, y, inner } = scales;
  const covered = useDesk((state) => state.covered.length > 0);
  const fast = useMemo(() => fastStretches(watch, scales), [watch, scales]);
  const entries = useMemo(() => logEntriesOf(scene, watch, units), [scene, watch, units]);
  const shown = entries.flatMap((entry) => {
    const at = x(entry.timeS);
    return at >= -1 && at <= inner.width + 1 ? [{ ...entry, x: at }] : [];
  });
  // Zoomed in, the first in sight keeps the number it has in the log.
  const before = shown.length > 0 ? entries.findIndex(({ timeS }) => timeS === shown[0]!.timeS) : 0;
  const marks = eventLane(shown, inner.width, before);
  const words = marks.map(({ from }) => entries[from - 1]!.word);
  const worded = roomForWords(marks, words, inner.width);
  return (
    <>
      <g clipPath="url(#dive-frame)">
        {watch.tracks.rateLevel.length > 0 && <path d={fast} className={lane.tooFast} aria-hidden="true" />}
      </g>
      {marks.map(({ from, to, x: middle, width, label, voice }, index) => {
        const { timeS } = entries[from - 1]!;
        const depthM = scene.timeline.depthM[sampleAt(scene.timeline, timeS)]!;
        const tie = `M${middle.toFixed(1)},${EVENT_LANE_Y + HALF_MARK}L${x(timeS).toFixed(1)},0V${y(depthM).toFixed(1)}`;
        return (
          <g key={from} role="img" className={lane.mark} onClick={() => onCursor(timeS)}>
            <title>
              {covered
                ? SOMETHING_HAPPENS
                : entries
                    .slice(from - 1, to)
                    .map(({ text }) => text)
                    .join(' ')}
            </title>
            <path d={tie} className={lane.tie} />
            <g transform={`translate(${middle.toFixed(1)},${EVENT_LANE_Y})`}>
              <EventMark voice={voice} label={label} width={width} />
              {worded[index] && !covered && (
                <text x={width / 2 + 4} dy="0.35em" className={lane.word}>
                  {words[index]}
                </text>
              )}
            </g>
          </g>
        );
      })}
    </>
  );
});

import { ascentPlanner, type AscentStart } from '@/lib/ascent/plan/schedule';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline, gasAt, tissuesAt, type Timeline } from '@/lib/dive/timeline';
import type { Workload } from './workload';
import { diveOf } from '../unit/read';

function bottom(script: string): { dive: Dive; timeline: Timeline; start: AscentStart } {
  const dive = diveOf(`${script}ascend to surface at 9 m/min\n`);
  const timeline = computeTimeline({ ...dive, steps: dive.steps.slice(0, -1) }, 600);
  const last = timeline.length - 1;
  const start = {
    depthM: timeline.depthM[last]!,
    gas: gasAt(timeline, last),
    ...tissuesAt(timeline, last),
    at: 0,
    anchorM: 0,
  };
  return { dive, timeline, start };
}

export const scheduleTrimix: Workload = {
  name: 'schedule-trimix',
  about: 'the stops after 25 min at 75 m on 18/45 with 50% and oxygen, whole minutes, limits 30/80',
  samples: 200,
  prepare() {
    const { dive, timeline, start } = bottom(
      'gradient factors: 30/80\ngas: 18/45\ncarry: 50% from 21 m, oxygen from 6 m\ndescend to 75 m at 18 m/min\nstay 25 min\n',
    );
    const plan = ascentPlanner(dive.settings, timeline);
    return () => {
      const schedule = plan(start);
      if (schedule.stops.length === 0) throw new Error('such a dive has stops');
      return schedule;
    };
  },
};

const SIDE = 60;

export const gfContour: Workload = {
  name: 'gf-contour',
  about: `${SIDE} × ${SIDE} schedules over low and high gradient factors, 30 min at 45 m on air`,
  samples: 9,
  prepare() {
    const { dive, timeline, start } = bottom('gas: air\ndescend to 45 m at 18 m/min\nstay 30 min\n');
    return () => {
      let minutes = 0;
      for (let column = 0; column < SIDE; column += 1) {
        for (let row = 0; row < SIDE; row += 1) {
          const high = 0.4 + (0.6 * column) / (SIDE - 1);
          const low = Math.min(high, 0.1 + (0.9 * row) / (SIDE - 1));
          minutes += ascentPlanner(
            { ...dive.settings, gradientFactors: { low, high } },
            timeline,
          )(start).timeToSurfaceMin;
        }
      }
      return minutes;
    };
  },
};

import { figuresOf, type Figures } from '@/lib/ascent/figures';
import { parseScript } from '@/lib/dive/script';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import type { Workload } from './workload';

const ONE_DIVE =
  'descend to 30 m in 2 min\nstay 20 min\nascend to 5 m in 4 min\nstay 3 min\nascend to surface in 1 min\n';

/** Three dives and two intervals, three hours to the second. */
const SCRIPT = `gas: air\n${[ONE_DIVE, ONE_DIVE, ONE_DIVE].join('interval 45 min\n')}`;

export const timeline3h: Workload = {
  name: 'timeline-3h-1s',
  about: 'a three-hour day of three air dives, each second: tensions, ceiling, no-stop time and leading compartment',
  samples: 60,
  prepare() {
    const parsed = parseScript(SCRIPT);
    if (!parsed.ok) throw new Error(parsed.errors[0]?.message);
    const { dive } = parsed;
    // As while dragging: the arrays of the scene before last are written over.
    let reuse: Timeline | undefined;
    let figures: Figures | undefined;
    return () => {
      reuse = computeTimeline(dive, 1, { reuse });
      figures = figuresOf(reuse, dive.settings, figures);
      if (reuse.timeS.at(-1) !== 3 * 3600) throw new Error('the day is not three hours long');
      return figures;
    };
  },
};

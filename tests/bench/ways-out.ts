import { waysOut } from '@/lib/ways-out/ways-out';
import type { Workload } from './workload';

/** An hour under water with a stop that a wall at 24 m, after a while at 34 m, has made. */
const HOUR = `gas: air
descend to 34 m at 18 m/min
stay 8 min
ascend to 24 m at 9 m/min
stay 22 min
ascend to 12 m at 9 m/min
stay 12 min
ascend to 5 m at 9 m/min
stay 8 min
ascend to surface at 9 m/min
`;

const dive = (depth: number, minutes: number) =>
  `descend to ${depth} m at 18 m/min\nstay ${minutes} min\nascend to 5 m at 9 m/min\nstay 3 min\nascend to surface at 9 m/min\n`;
const DAY = `gas: air\n${[dive(22, 30), dive(20, 35), dive(26, 22)].join('interval 60 min\n')}`;

function asked(name: string, about: string, script: string): Workload {
  return {
    name,
    about,
    samples: 15,
    prepare() {
      return () => {
        const ways = waysOut(script, { target: 'stop', system: 'metric' });
        if (ways.length === 0) throw new Error('such a dive has a stop');
        return ways;
      };
    },
  };
}

export const waysOutOfHour = asked('ways-out', 'every lever against the stop of an hour’s dive in levels', HOUR);
export const waysOutOfDay = asked('ways-out-day', 'every lever against the stop of the third dive of a day', DAY);

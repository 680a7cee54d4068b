import type { Watch } from '@/lib/rules/watch';
import type { ProfileScales } from './profile-scales';

const TOO_FAST = 2;

/** The stretches in which the unit found the rise too fast, as one path along the dive. */
export function fastStretches({ timeline, tracks }: Watch, { x, y }: Pick<ProfileScales, 'x' | 'y'>): string {
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

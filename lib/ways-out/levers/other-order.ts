import { reorderDives } from '../changes';
import type { Lever, Try } from '../lever';

/** A day of more dives has too many orders to go through. */
const MOST_DIVES = 5;

/** The same dives, in another order. */
export const otherOrder: Lever = {
  id: 'other-order',
  title: 'Make the dives in the other order',
  avoids: ['stop', 'ceiling'],
  wholeDay: true,
  keepsRates: true,
  range({ day }) {
    const count = day.dives.length;
    if (count < 2) return { none: 'There is one dive, and so no other order.' };
    if (count > MOST_DIVES) return { none: `The orders of ${count} dives are too many to try.` };
    const tries = orders(count).map((order, index): Try => ({
      to: index + 2,
      doing:
        count === 2
          ? 'Making the two dives in the other order'
          : `Making the dives in the order ${order.map((dive) => dive + 1).join(', ')}`,
      cost: 'nothing but the order',
      script: () => reorderDives(day.script, order),
    }));
    return { from: 1, unit: '', tries, even: count === 2 ? 'Even in the other order' : 'Even in any other order' };
  },
};

/** Every other order of so many dives, those that move the fewest first. */
function orders(count: number): number[][] {
  let all: number[][] = [[]];
  for (let place = 0; place < count; place += 1)
    all = all.flatMap((begun) =>
      Array.from({ length: count }, (_, dive) => dive)
        .filter((dive) => !begun.includes(dive))
        .map((dive) => [...begun, dive]),
    );
  const moved = (order: readonly number[]) => order.filter((dive, place) => dive !== place).length;
  return all.filter((order) => moved(order) > 0).sort((one, other) => moved(one) - moved(other));
}

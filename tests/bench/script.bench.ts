import { bench, describe } from 'vitest';
import { setStepDepth, setStepDuration } from '@/lib/dive/edit/edit-steps';
import { parseScript } from '@/lib/dive/script';

const DAY = `# two dives
water: reference
altitude: 0 m
gradient factors: 85/85
gas: air
carry: 50% from 21 m
descend to 30 m at 18 m/min
stay 20 min
ascend to 21 m at 9 m/min
switch to 50%
ascend to 6 m at 9 m/min
stay 3 min  # stop
ascend to surface at 9 m/min
interval 60 min
descend to 20 m at 18 m/min
stay 30 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min`;

// Dragging on the chart does one of these for each frame: they want to take well under a millisecond.
describe('a script of twenty lines', () => {
  let turn = 0;
  bench('is read', () => void parseScript(DAY));
  bench('has a depth dragged', () => void setStepDepth(DAY, 0, 22 + (turn++ % 200) / 10));
  bench('has a time dragged', () => void setStepDuration(DAY, 1, 600 + (turn++ % 900)));
});

describe('a script of five thousand lines', () => {
  const long = Array.from({ length: 5000 }, (_, i) => `stay ${i + 1} s`).join('\n');
  const wrong = Array.from({ length: 5000 }, (_, i) => `stya ${i + 1} s`).join('\n');
  bench('is read', () => void parseScript(long));
  bench('is read when every line is wrong', () => void parseScript(wrong));
});

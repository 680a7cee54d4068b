import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { RunStage } from '@/app/lessons/player/stage/RunStage';
import { WorkingStage } from '@/app/lessons/player/stage/WorkingStage';
import type { RunStep } from '@/app/lessons/prepared';

const LONG = { timeout: 30_000 };

/** Two dives, the second of which begins 63:00 into the day. */
const TWO_DIVES = {
  title: 'Two dives',
  script: ['descend to 18 m at 18 m/min', 'ascend to surface at 9 m/min', 'interval 60 min']
    .concat(['descend to 30 m at 18 m/min', 'stay 20 min', 'ascend to surface at 9 m/min'])
    .join('\n'),
};

const RUN_OF_TWO: RunStep = {
  kind: 'run',
  id: 'run',
  title: 'Run',
  script: 'main',
  show: ['profile'],
  readings: ['time'],
  fromS: 0,
  toS: 86 * 60,
  untilS: undefined,
} as unknown as RunStep;

describe('the clock of a lesson’s dive', () => {
  it('counts each dive of a day by its own: where a working is open, and where the dive is run', async () => {
    const { unmount } = render(<WorkingStage script={TWO_DIVES} reading="ceiling" atS={83 * 60} />);
    expect(await screen.findByRole('heading', { name: 'Why? Ceiling, on dive 2, at 20:00' }, LONG)).toBeVisible();
    unmount();
    render(<RunStage script={TWO_DIVES} step={{ ...RUN_OF_TWO, watch: [{ atS: 83 * 60, html: 'Look.' }] }} />);
    await userEvent.click(await screen.findByRole('button', { name: 'Next moment' }, LONG));
    const told = 'Dive 2, 20:00';
    const slider = await screen.findByRole('slider', { name: 'Time cursor' });
    expect(slider).toHaveAttribute('aria-valuetext', told);
    expect(slider.nextElementSibling).toHaveTextContent(told);
    expect(screen.getByText('Look.').closest('p')).toHaveTextContent(`${told} Look.`);
  });
});

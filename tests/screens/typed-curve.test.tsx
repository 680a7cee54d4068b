import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { RunStage } from '@/app/lessons/player/stage/RunStage';
import type { RunStep } from '@/app/lessons/prepared';
import { SketchPad } from '@/app/parts/answers/SketchPad';
import { usePreferences } from '@/app/parts/preferences';
import { overstayed } from '@/content/scenarios/overstayed';
import type { DrawAsked, Sketch } from '@/lib/lesson/questions/sketch';

const ASKED: DrawAsked = {
  fromS: 0,
  toS: 1200,
  dimension: 'time',
  upTo: 60,
  within: 3,
  noun: 'the no-stop time',
  format: undefined,
  zeroS: 0,
  since: undefined,
  boxesS: [0, 100, 1200],
  truth: [],
};

let drawn: Sketch = [];
function Asking({ begun = [] }: { begun?: Sketch }) {
  const [sketch, draw] = useState<Sketch>(begun);
  const take = (next: Sketch) => {
    drawn = next;
    draw(next);
  };
  return <SketchPad asked={ASKED} sketch={sketch} onSketch={take} />;
}
const boxAt = (clock: string) => screen.getByRole('textbox', { name: `at ${clock}` });

beforeEach(() => usePreferences.setState({ units: 'metric' }));

describe('a curve predicted without drawing', () => {
  it('has the range of its paper with its boxes, and is read back once typing has paused', async () => {
    render(<Asking />);
    expect(screen.getByRole('group', { name: 'The no-stop time, in min, from 0 to 60' })).toBeInTheDocument();
    await userEvent.type(boxAt('0:00'), '60');
    await userEvent.type(boxAt('1:40'), '11');
    await userEvent.type(boxAt('20:00'), '0');
    const back = screen.getByRole('status');
    expect(back).toBeEmptyDOMElement();
    expect(await within(back).findByText(/Your curve/)).toHaveTextContent(
      'Your curve: 60 min at 0:00, down to 11 min at 1:40, down to 0 min at 20:00.',
    );
  });

  it('is not bent by a value the paper does not reach: the box says so, and nothing is drawn there', async () => {
    render(<Asking />);
    await userEvent.type(boxAt('0:00'), '6');
    expect(drawn).toEqual([{ timeS: 0, value: 6 }]);
    await userEvent.type(boxAt('0:00'), '1');
    expect(drawn).toEqual([]);
    expect(boxAt('0:00')).toBeInvalid();
    expect(boxAt('0:00')).toHaveAccessibleDescription(
      'The paper goes from 0 to 60 min: write 60 where you think it is more.',
    );
    await userEvent.type(boxAt('1:40'), '-1');
    expect(boxAt('1:40')).toBeInvalid();
  });

  it('takes a moment more where the one who answers wants a bend, and goes there', async () => {
    render(<Asking />);
    await userEvent.click(screen.getByRole('button', { name: 'Add a moment' }));
    const another = screen.getByRole('textbox', { name: 'Another moment' });
    expect(another).toBeInvalid();
    await screen.findByRole('alert');
    expect(another).toHaveFocus();
    await userEvent.type(another, '5:30{Enter}');
    expect(boxAt('5:30')).toHaveFocus();
    await userEvent.type(boxAt('1:40'), '11');
    await userEvent.type(boxAt('5:30'), '9');
    await userEvent.type(boxAt('20:00'), '0');
    expect(drawn).toEqual([
      { timeS: 100, value: 11 },
      { timeS: 330, value: 9 },
      { timeS: 1200, value: 0 },
    ]);
    expect(screen.getAllByRole('textbox', { name: /^at / })).toHaveLength(4);
  });

  it('shows a box for each moment typed before, and rubs it all out with the focus kept', async () => {
    render(<Asking begun={[0, 330, 1200].map((timeS) => ({ timeS, value: 5 }))} />);
    expect(boxAt('5:30')).toHaveValue('5');
    await userEvent.click(screen.getByRole('button', { name: 'Rub it out' }));
    expect(boxAt('5:30')).toHaveValue('');
    expect(screen.getByRole('button', { name: 'Rub it out' })).toHaveFocus();
  });
});

it('in a lesson’s run the clock is silent, one key says where the diver is, and only what stands there is said', async () => {
  const step = {
    kind: 'run',
    id: 'run',
    title: 'Run',
    script: 'main',
    show: ['profile'],
    readings: ['time', 'no-stop'],
  };
  const run = { ...step, fromS: 0, toS: 1200, untilS: undefined, watch: [{ atS: 300, html: 'Look.' }] };
  const { container } = render(
    <RunStage script={{ title: 'Main', script: overstayed.script }} step={run as unknown as RunStep} />,
  );
  await userEvent.click(await screen.findByRole('button', { name: 'Next moment' }));
  const clock = await screen.findAllByText('5:00');
  expect(clock.filter((one) => one.closest('output, [aria-live]'))).toEqual([]);
  // Its voice comes after the dive.
  await vi.waitFor(
    async () => {
      await userEvent.keyboard('{F2}');
      expect(container.querySelector('[data-part="announced"]')).toHaveTextContent(
        /^Time: 5:00\. No-stop time: 8 min\.$/,
      );
    },
    { timeout: 10_000 },
  );
});

import { act, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { BenchScreen } from '@/app/bench/BenchScreen';
import { useStatus } from '@/app/parts/status';
import { usePreferences } from '@/app/parts/preferences';
import { cautions } from '@/content/cautions';

/** Types a value into a box and leaves it. */
function put(box: HTMLElement, value: string) {
  fireEvent.change(box, { target: { value } });
  fireEvent.blur(box);
}
const entry = (name: string) => within(screen.getByRole('group', { name }));
const script = (text: string) => put(screen.getByLabelText(/^The run as a script/), text);
const SHORT =
  'descend to 10 m at 10 m/min\nstay 1 min # check: ten\ndescend to 16 m at 10 m/min\nstay 1 min # check: sixteen\nascend to surface at 10 m/min\n';

describe('the bench sheet', () => {
  beforeEach(() => usePreferences.getState().setUnits('metric'));

  it('takes a run that is written before the rest of it is fetched', async () => {
    render(<BenchScreen />);
    expect(screen.queryByRole('region', { name: 'The sheet' })).toBeNull();
    script(SHORT);
    expect(await screen.findByRole('group', { name: 'Unit 1 at sixteen' })).toBeVisible();
    expect(screen.getByRole('button', { name: 'Undo' })).not.toHaveAttribute('aria-disabled');
  });

  it('shows the cautions of its own and what a correct unit shows in its own water', () => {
    render(<BenchScreen />);
    expect(screen.getByRole('note')).toHaveTextContent(cautions.chamber);
    script(SHORT);
    expect(screen.getByRole('group', { name: 'Unit 1 at ten' })).toHaveTextContent('should show 9.71 m');
  });

  it('stops the run for a unit that shows no depth, and names the depths', async () => {
    const user = userEvent.setup();
    render(<BenchScreen />);
    script(SHORT);
    await user.click(entry('Unit 1 at ten').getByRole('checkbox', { name: 'shows no depth' }));
    await user.click(entry('Unit 1 at sixteen').getByRole('checkbox', { name: 'shows no depth' }));
    const verdict = screen.getByRole('article', { name: 'Unit 1' });
    expect(verdict).toHaveTextContent('Stop the run. Do not return this unit to service.');
    expect(verdict).toHaveTextContent('No depth reading at 10 m and 16 m.');
  });

  it('judges nothing until a tolerance is stated, then each reading of several units by it', async () => {
    const user = userEvent.setup();
    render(<BenchScreen />);
    script(SHORT);
    await user.click(screen.getByRole('button', { name: 'Add a unit' }));
    expect(useStatus.getState().message?.text).toBe('Unit 2 is added.');
    for (const [unit, ten, sixteen] of [
      ['Unit 1', '9.8', '15.6'],
      ['Unit 2', '9.8', '17.0'],
    ] as const) {
      put(entry(`${unit} at ten`).getByLabelText('Depth shown, m'), ten);
      put(entry(`${unit} at sixteen`).getByLabelText('Depth shown, m'), sixteen);
    }
    expect(screen.getByRole('article', { name: 'Unit 1' })).toHaveTextContent('not judged');
    put(screen.getByLabelText('Depth may be off by, m'), '0.5');
    expect(screen.getByRole('article', { name: 'Unit 1' })).toHaveTextContent(
      'Every reading is within what you stated',
    );
    expect(screen.getByRole('article', { name: 'Unit 2' })).toHaveTextContent(
      'At “sixteen” it is off by +1.47 m; 0.5 m is allowed.',
    );
    expect(screen.getByRole('group', { name: 'Unit 2 at sixteen' })).toHaveTextContent('✗ out, +1.47 m of ±0.5 m');
  });

  it('keeps the sheet over a reload, and takes changes back', async () => {
    const user = userEvent.setup();
    const { unmount } = render(<BenchScreen />);
    script(SHORT);
    put(entry('Unit 1 at ten').getByLabelText('Depth shown, m'), '9.8');
    unmount();
    render(<BenchScreen />);
    expect(entry('Unit 1 at ten').getByLabelText('Depth shown, m')).toHaveValue('9.8');
    put(entry('Unit 1 at ten').getByLabelText('Depth shown, m'), '5');
    await user.click(screen.getByRole('button', { name: 'Undo' }));
    expect(entry('Unit 1 at ten').getByLabelText('Depth shown, m')).toHaveValue('9.8');
  });

  it('takes no negative depth, and a fault that was seen', async () => {
    const user = userEvent.setup();
    render(<BenchScreen />);
    script(SHORT);
    put(entry('Unit 1 at ten').getByLabelText('Depth shown, m'), '-3');
    expect(screen.getByText(/No display shows a depth of -3\./)).toBeVisible();
    await user.selectOptions(entry('Unit 1 at ten').getByLabelText('Fault seen'), 'button stuck');
    expect(screen.getByRole('article', { name: 'Unit 1' })).toHaveTextContent('At “ten”: button stuck.');
    put(screen.getByLabelText('Who runs it'), 'The one at the valve');
    const printed = await screen.findByText('The one at the valve', { selector: 'li strong' });
    expect(printed.parentElement).toHaveTextContent('Who runs it: The one at the valve');
  });

  it('keeps a finished sheet, begins the next with the same units, and tells their history', async () => {
    const user = userEvent.setup();
    render(<BenchScreen />);
    script(SHORT);
    expect(screen.getByRole('button', { name: 'Keep it, and begin the next' })).toHaveAttribute(
      'aria-disabled',
      'true',
    );
    put(screen.getByLabelText('Depth may be off by, m'), '0.5');
    put(screen.getByLabelText('Date'), '2026-04-01');
    put(entry('Unit 1 at ten').getByLabelText('Depth shown, m'), '9.8');
    put(entry('Unit 1 at sixteen').getByLabelText('Depth shown, m'), '17.0');
    await user.click(screen.getByRole('button', { name: 'Keep it, and begin the next' }));
    const history = within(await screen.findByRole('table', { name: 'Unit 1 on earlier sheets' }));
    expect(entry('Unit 1 at ten').getByLabelText('Depth shown, m')).toHaveValue('');
    // A correct unit set to salt water shows 15.53 m at 16 m of fresh water.
    expect(history.getByRole('row', { name: /2026-04-01/ })).toHaveTextContent('outside what was stated+1.47 mnone');

    await user.selectOptions(entry('Unit 1 at ten').getByLabelText('Fault seen'), 'water inside');
    put(screen.getByLabelText('Date'), '2026-05-01');
    await user.click(screen.getByRole('button', { name: 'Keep it, and begin the next' }));
    await waitFor(() =>
      expect(history.getAllByRole('row').map((row) => row.textContent)[1]).toMatch(
        /^2026-05-01a fault was seennot readwater inside/,
      ),
    );

    const list = within(screen.getByRole('table', { name: 'Sheets kept' }));
    await user.click(
      within(list.getByRole('row', { name: /2026-04-01/ })).getByRole('button', { name: /^Show /, hidden: true }),
    );
    expect(entry('Unit 1 at sixteen').getByLabelText('Depth shown, m')).toHaveValue('17');
    await user.click(
      within(list.getByRole('row', { name: /2026-05-01/ })).getByRole('button', { name: /^Delete /, hidden: true }),
    );
    expect(history.queryByRole('row', { name: /2026-05-01/ })).toBeNull();
  });

  it('reads feet where the screen is in feet', () => {
    usePreferences.getState().setUnits('imperial');
    render(<BenchScreen />);
    script(SHORT);
    put(entry('Unit 1 at ten').getByLabelText('Depth shown, ft'), '33');
    expect(screen.getByRole('group', { name: 'Unit 1 at ten' })).toHaveTextContent('+1.1 ft');
  });

  it('says where a run goes wrong and keeps the text', async () => {
    render(<BenchScreen />);
    script('descend to 10 m at 10 m/min\nascend to surface at 10 m/min');
    expect(screen.getByText(/Line 1: This run has no checkpoint\./)).toBeVisible();
    // It stands there at once, tied to its box, and is said when typing pauses.
    const box = screen.getByRole('textbox', { name: /^The run as a script/ });
    expect(box).toBeInvalid();
    expect(box).toHaveAccessibleDescription(/no checkpoint/);
    expect(screen.queryByRole('alert')).toBeNull();
    expect(await screen.findByRole('alert')).toHaveTextContent(/^The run: Line 1:/);
    expect(screen.queryByRole('region', { name: 'The sheet' })).toBeNull();
  });
});

it('keeps no sheet and starts no clock with a box that cannot be read: the press leads there and has it said again', async () => {
  render(<BenchScreen />);
  script(SHORT);
  await screen.findByRole('button', { name: 'Start the clock' });
  await screen.findByRole('button', { name: 'Keep it, and begin the next' });
  put(entry('Unit 1 at ten').getByLabelText('Depth shown, m'), '9.7');
  const box = screen.getByRole('textbox', { name: 'Surface pressure today' });
  put(box, '5 hPa');
  expect(box).toBeInvalid();
  for (const name of ['Start the clock', 'Keep it, and begin the next']) {
    box.blur();
    const before = screen.queryByText('No place on land', { exact: false })!;
    fireEvent.click(screen.getByRole('button', { name }));
    expect(box).toHaveFocus();
    // Made anew, so that it is read out once more.
    expect(before).not.toBeInTheDocument();
    const said = screen.getAllByRole('alert').map((alert) => alert.textContent);
    expect(said).toContainEqual(expect.stringMatching(/^Surface pressure today: No place on land has such a pressure/));
  }
  expect(screen.getByRole('button', { name: 'Start the clock' })).toBeVisible();
  expect(entry('Unit 1 at ten').getByLabelText('Depth shown, m')).toHaveValue('9.7');
  put(box, '1000 hPa');
  fireEvent.click(screen.getByRole('button', { name: 'Start the clock' }));
  expect(screen.getByRole('button', { name: 'The gauge is at 10 m' })).toBeVisible();
  fireEvent.click(screen.getByRole('button', { name: 'Put the clock back' }));
});

describe('a run against the clock', () => {
  beforeEach(() => void vi.useFakeTimers({ now: 1_800_000_000_000 }));
  afterEach(() => void vi.useRealTimers());

  it('says what to do next, and warns when the pressure rose faster than stated', () => {
    render(<BenchScreen />);
    script(SHORT);
    put(screen.getByLabelText('The pressure may change at most at, m/min'), '12');
    const live = within(screen.getByRole('region', { name: 'Run it against the clock' }));
    fireEvent.click(live.getByRole('button', { name: 'Start the clock' }));
    const [todo, over] = live.getAllByRole('status');
    expect(todo).toHaveTextContent('Raise the pressure to 10 m on the gauge in 1:00, which is 10 m/min.');
    act(() => void vi.advanceTimersByTime(30_000));
    expect(over).toBeEmptyDOMElement();
    fireEvent.click(live.getByRole('button', { name: 'The gauge is at 10 m' }));
    expect(live.getByRole('alert')).toHaveTextContent(
      'The pressure changed at 20 m/min, faster than the 12 m/min you state.',
    );
    expect(todo).toHaveTextContent('Hold 10 m on the gauge for 1:00. Then read the units: ten.');
    // Nobody has to look at the clock to know that it has passed the step's end.
    act(() => void vi.advanceTimersByTime(59_000));
    expect(over).toBeEmptyDOMElement();
    act(() => void vi.advanceTimersByTime(2000));
    expect(over).toHaveTextContent('The hold is over. Read the units now, then go on.');
  });
});

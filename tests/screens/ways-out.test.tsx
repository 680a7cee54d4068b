import { act, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { WaysOutPanel } from '@/app/working/ways-out/WaysOutPanel';
import { cautions } from '@/content/cautions';
import { waysOut, type WayOut } from '@/lib/ways-out/ways-out';
import { usePreferences } from '@/app/parts/preferences';
import { useOpenWhy } from '@/app/parts/working/open-why';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';
import { ChaseFigure } from '@/app/stage/figures/ChaseFigure';
import { ProfileFigure } from '@/app/stage/figures/ProfileFigure';
import { UnitInsists } from '@/app/stage/units/UnitInsists';
import { targetOf, useWaysOutHere } from '@/app/working/ways-out/ways-out-here';
import { setCursor } from './set-cursor';
import { onDesk } from './on-desk';

const SCRIPT = 'gas: air\ndescend to 30 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n';
const question = { target: 'stop', system: 'metric' } as const;
const ways = waysOut(SCRIPT, question);

function show(props: Partial<Parameters<typeof WaysOutPanel>[0]> = {}) {
  const told = { onTarget: vi.fn(), onShow: vi.fn(), onUse: vi.fn() };
  render(
    <WaysOutPanel
      target="stop"
      answer={{ asked: { script: SCRIPT, question }, found: { ways, more: [] } }}
      shown={[]}
      beside={{ when: 'At 12:30', ways: props.shown ?? [], rows: [{ reading: 'Ceiling', values: ['1.2 m', 'none'] }] }}
      deep={false}
      {...told}
      {...props}
    />,
  );
  return told;
}

describe('the panel of what would have avoided it', () => {
  it('tells each change with its cost, under the general caution, and offers to show and to use it', async () => {
    const { onShow, onUse } = show();
    expect(screen.getByText(new RegExp(cautions.general.slice(0, 40)))).toBeInTheDocument();
    const earlier = screen.getByRole('heading', { name: 'Leave the bottom earlier' }).closest('li')!;
    expect(
      within(earlier).getByText('Leaving the bottom 6 min earlier would have avoided the stop.'),
    ).toBeInTheDocument();
    expect(within(earlier).getByText('Its cost: 6 min less at the bottom.')).toBeInTheDocument();
    await userEvent.click(within(earlier).getByRole('button', { name: 'Show it' }));
    await userEvent.click(within(earlier).getByRole('button', { name: 'Use it' }));
    expect(onShow).toHaveBeenCalledWith(ways[0]);
    expect(onUse).toHaveBeenCalledWith(ways[0]);
  });

  it('says why the others would not have been enough', () => {
    show();
    expect(screen.getByText('No dive came before it: there is no interval to lengthen.')).toBeInTheDocument();
  });

  it('lays readings beside those of the dive as soon as a way is shown, and marks it as shown', () => {
    show({ shown: [ways[0] as WayOut] });
    expect(screen.getAllByRole('button', { name: 'Show it', pressed: true })).toHaveLength(1);
    expect(screen.getByRole('cell', { name: 'none' })).toBeInTheDocument();
    expect(screen.getByRole('columnheader', { name: 'Leave the bottom earlier' })).toBeInTheDocument();
    expect(screen.getByText('Drawn dashed; rings in the chase.')).toBeInTheDocument();
  });

  it('says of two ways which is drawn how', () => {
    const [first, second] = ways.filter((way): way is WayOut => !('none' in way));
    show({ shown: [second!, first!] });
    const drawn = (title: string) => screen.getAllByRole('heading', { name: title })[0]!.closest('li')!;
    expect(within(drawn(second!.title)).getByText('Drawn dashed; rings in the chase.')).toBeInTheDocument();
    expect(within(drawn(first!.title)).getByText('Drawn dotted; triangles in the chase.')).toBeInTheDocument();
  });

  it('asks the other way about where there is nothing to be avoided', () => {
    show({ answer: { asked: { script: SCRIPT, question }, found: { ways: [], more: [] } } });
    expect(screen.getByText('How much more would it have taken?')).toBeInTheDocument();
  });

  it('gives a deep dive its own caution', () => {
    show({ deep: true });
    expect(screen.getByText(cautions.deepCourse)).toBeInTheDocument();
  });
});

describe('two ways drawn beside the dive', () => {
  it('are told apart in the chase by the shape of their marks', () => {
    const store = createDeskStore({ script: SCRIPT, pictures: [], covered: [] });
    store.setState({ shownWays: ways.filter((way): way is WayOut => !('none' in way)).slice(0, 2), cursorS: 1500 });
    const { container } = render(
      <DeskContext value={store}>
        <ChaseFigure />
      </DeskContext>,
    );
    const [rings, triangles] = [...container.querySelectorAll('[data-way]')].map((path) => path.getAttribute('d')!);
    expect(rings!.match(/a[^ ]+,/g)).toHaveLength(2 * 16);
    expect(triangles).not.toContain('a');
    expect(triangles!.match(/M[^L]+L[^h]+h[^Z]+Z/g)).toHaveLength(16);
  });
});

describe('where a unit insists, and at the mark of an event', () => {
  const TOO_FAST = SCRIPT.replace('at 9 m/min', 'at 25 m/min');
  const QUESTION = /^What would have avoided the /;

  function showLine(script: string) {
    useWaysOutHere.setState({ panels: 1 });
    usePreferences.setState({ units: 'metric' });
    const { store } = onDesk(
      <>
        <ProfileFigure />
        <UnitInsists />
      </>,
      script,
      ['profile'],
    );
    return store;
  }

  it('asks what would have avoided a “slow down” while the unit says so', async () => {
    const store = showLine(TOO_FAST);
    await setCursor(store, store.getState().scene.timeline.timeS.at(-1)! - 12);
    expect(screen.getByText('Slow down.')).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: QUESTION }));
    expect(targetOf(useOpenWhy.getState().id)).toBe('slow-down');
  });

  it('asks after the stop where the mark of a stop is pressed, and not beside it', async () => {
    const store = showLine(SCRIPT);
    await screen.findByRole('slider', { name: /^Point 1$/ });
    const mark = [...document.querySelectorAll('title')].find(({ textContent }) => /a stop is owed/.test(textContent));
    expect(screen.queryByRole('button', { name: QUESTION })).toBeNull();
    await userEvent.click(mark!.parentElement!);
    expect(screen.getByRole('button', { name: 'What would have avoided the stop?' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: QUESTION }));
    expect(targetOf(useOpenWhy.getState().id)).toBe('stop');
    await setCursor(store, store.getState().cursorS - 30);
    expect(screen.queryByRole('button', { name: QUESTION })).toBeNull();
  });

  it('does not ask before a class has guessed what happens there', async () => {
    const store = showLine(SCRIPT);
    await screen.findByRole('slider', { name: /^Point 1$/ });
    const mark = [...document.querySelectorAll('title')].find(({ textContent }) => /a stop is owed/.test(textContent));
    act(() => store.getState().change({ covered: ['no-stop'] }));
    await userEvent.click(mark!.parentElement!);
    expect(screen.queryByRole('button', { name: QUESTION })).toBeNull();
  });
});

describe('a way out that is used', () => {
  it('is one change of the script, taken back by one undo', () => {
    const store = createDeskStore({ script: SCRIPT, pictures: [], covered: [] });
    store.getState().change({ script: (ways[0] as WayOut).script });
    expect(store.getState().script).toContain('stay 14 min');
    store.getState().undo();
    expect(store.getState().script).toBe(SCRIPT);
  });
});

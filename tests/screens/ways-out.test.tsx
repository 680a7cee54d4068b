import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { WaysOutPanel } from '@/app/working/ways-out/WaysOutPanel';
import { cautions } from '@/content/cautions';
import { waysOut, type WayOut } from '@/lib/ways-out/ways-out';
import { createDeskStore } from '@/app/stage/desk-store';

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
      beside={{ when: 'At 12:30', rows: [{ reading: 'Ceiling', values: ['1.2 m', 'none'] }] }}
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

describe('a way out that is used', () => {
  it('is one change of the script, taken back by one undo', () => {
    const store = createDeskStore({ script: SCRIPT, pictures: [], covered: [] });
    store.getState().change({ script: (ways[0] as WayOut).script });
    expect(store.getState().script).toContain('stay 14 min');
    store.getState().undo();
    expect(store.getState().script).toBe(SCRIPT);
  });
});

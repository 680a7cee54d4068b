import { act, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { DeskSheet } from '@/app/desk/keep/DeskSheet';
import { usePrintChoice } from '@/app/desk/keep/print-times';
import { overlaidDive, sayOverlaid } from '@/app/pictures/profile/overlaid-dive';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';

const SCRIPT = 'gas: air\ndescend to 30 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n';
const SECOND = { title: 'Longer', script: SCRIPT.replace('20 min', '40 min') };

beforeEach(() => {
  const store = createDeskStore({ script: SCRIPT, pictures: ['profile', 'chase'], covered: [], overlay: SECOND });
  render(
    <DeskContext value={store}>
      <DeskSheet />
    </DeskContext>,
  );
  expect(screen.queryByRole('article')).toBeNull();
  act(() => void window.dispatchEvent(new Event('beforeprint')));
});

afterEach(() => {
  act(() => void window.dispatchEvent(new Event('afterprint')));
  usePrintChoice.setState(usePrintChoice.getInitialState());
});

const sheet = () => screen.getByRole('article', { name: 'Printed sheet' });

it('a second dive is on the printed sheet in a sentence and as a line, whole though it is longer', () => {
  const second = overlaidDive(SECOND.title, SECOND.script)!;
  const said = sayOverlaid(
    second,
    createDeskStore({ script: SCRIPT, pictures: [], covered: [] }).getState().scene,
    'metric',
  );
  expect(sheet()).toHaveTextContent(said.replace(/\s+/g, ' '));
  const plot = within(sheet()).getByRole('group', { name: 'The dive, point by point' });
  const minutes = [...plot.querySelectorAll('text')].map(({ textContent }) => parseInt(textContent, 10));
  expect(Math.max(...minutes)).toBeGreaterThanOrEqual(40);
});

it('the other pictures on the desk follow it where that is asked', async () => {
  expect(within(sheet()).queryByRole('figure', { name: 'The chase' })).toBeNull();
  act(() => usePrintChoice.setState({ others: true }));
  const chase = await within(sheet()).findByRole('figure', { name: 'The chase' });
  expect(chase.querySelector('svg')).not.toBeNull();
  expect(within(sheet()).queryByRole('figure', { name: 'The dive' })).toBeNull();
});

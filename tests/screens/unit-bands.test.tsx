import { screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { expect, it } from 'vitest';
import { watchesOf } from '@/app/pictures/scene-watches';
import { UnitsFigure } from '@/app/stage/units/UnitsFigure';
import { setCursor } from './set-cursor';
import { onDesk } from './on-desk';

const SCRIPT = `gradient factors: 85/85
gas: 32%
setup: Air unit, gas air
setup: Gauge unit, gauge mode
descend to 30 m at 18 m/min
stay 25 min
ascend to 5 m at 9 m/min
stay 8 min
ascend to surface at 9 m/min
`;

it('units side by side hatch when each asks for a stop, on the dive’s own time, and fold away what they all show alike', async () => {
  const { store } = onDesk(<UnitsFigure />, SCRIPT, ['units']);
  const lanes = [...document.querySelectorAll('svg rect[class*="band"]')].map((band) => band.parentElement!);
  const names = [...document.querySelectorAll('svg text[class*="name"]')];
  expect(names.map(({ textContent }) => textContent)).toEqual([
    'Set right',
    'Air unit',
    'Gauge unit – gauge mode: asks for nothing',
  ]);
  const asking = lanes.map((lane) => [...lane.querySelectorAll('rect[fill^="url"]')]);
  expect(asking.map(({ length }) => length)).toEqual([1, 1, 0]);
  // No name is struck by the cursor, wherever it stands.
  const cursor = document.querySelector('svg g[class*="cursor"]')!;
  for (const name of names)
    expect(cursor.compareDocumentPosition(name) & Node.DOCUMENT_POSITION_FOLLOWING, name.textContent!).toBeTruthy();
  // The unit set to air asks first, as its own events say.
  const from = asking.slice(0, 2).map(([one]) => Number(one!.getAttribute('x')));
  const owedS = watchesOf(store.getState().scene).map(
    ({ events }) => events.find(({ kind }) => kind === 'stop-owed')?.timeS,
  );
  expect(owedS[2]).toBeUndefined();
  const endS = store.getState().scene.timeline.timeS.at(-1)!;
  expect(from[0]! / from[1]!).toBeCloseTo(owedS[0]! / owedS[1]!, 6);
  expect(owedS[1]).toBeLessThan(owedS[0]!);
  expect(owedS[0]).toBeLessThan(endS);

  await setCursor(store, 1500);
  const rows = within(screen.getByRole('region', { name: 'What each unit shows now' }))
    .getAllByRole('rowheader')
    .map(({ textContent }) => textContent);
  expect(rows).toContain('Gas');
  expect(rows).not.toContain('Depth');
  await userEvent.click(screen.getByText(/^The same on all of them now/));
  expect(screen.getByText('Depth')).toBeVisible();
  expect(screen.getByText('Depth').nextElementSibling).toHaveTextContent('30.0 m');
});

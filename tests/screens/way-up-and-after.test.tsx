import { act, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { expect, it } from 'vitest';
import { sceneOf } from '@/app/pictures/scene';
import { watchesOf } from '@/app/pictures/scene-watches';
import { AscentFigure } from '@/app/stage/units/AscentFigure';
import { SurfaceFigure } from '@/app/stage/units/SurfaceFigure';
import { lostWashout, withClimbsAtMost } from '@/lib/rules/body/lost-washout';
import { afterDiveAt } from '@/lib/rules/surface/after-dive';
import { AIR } from '@/lib/physics/gas';
import { printAs } from '@/lib/sayings/measures';
import { onDesk } from './on-desk';

/** A bounce to 36 m, up three times as fast as is taught. */
const FAST = `water: reference
gradient factors: 85/85
gas: air
descend to 36 m at 18 m/min
stay 8 min 50 s
ascend to surface at 30 m/min
stay 10 min
`;

function drawn(Figure: typeof AscentFigure, picture: 'ascent' | 'surface') {
  const { store } = onDesk(<Figure />, FAST, [picture]);
  return store;
}

const texts = () => [...document.querySelectorAll('svg text')].map(({ textContent }) => textContent);
/** The numbers of a path, as places. */
const placesOf = (path: Element) =>
  [...path.getAttribute('d')!.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));

it('the way up is drawn four ways over one time: as dived, slower, what rules add on a rail, and a held breath that widens as Boyle has it', () => {
  const { dive, timeline } = drawn(AscentFigure, 'ascent').getState().scene;
  const [lost] = lostWashout(dive);
  const share = (value: number) => printAs('supersaturation', value, 'metric');
  const [asDived, slower, rules, breath] = texts().filter((text) =>
    /^(As dived|No faster|What rules|A breath)/.test(text),
  );
  expect(asDived).toContain(`${share(lost!.asDived.supersaturation.value)} at the surface, ceiling `);
  expect(slower).toContain(`9 m/min${share(lost!.asTaught.supersaturation.value)} at the surface, no ceiling`);

  // What is drawn as dived and slower ends at the surface when each of them does, on one and the same axis.
  const [own, dashed] = [...document.querySelectorAll('path[class*="profile"], path[class*="slower"]')].map(placesOf);
  const surfacedS = (from: typeof timeline) => from.legs.find(({ toM }) => toM === 0)!;
  const bottomX = own![2]!.x;
  const slowly = surfacedS(sceneOf(withClimbsAtMost(dive, 9)).timeline);
  expect(dashed![2]!.x).toBeCloseTo(bottomX, 0);
  expect((dashed![3]!.x - bottomX) / (own![3]!.x - bottomX)).toBeCloseTo(
    (slowly.endS - slowly.startS) / (surfacedS(timeline).endS - surfacedS(timeline).startS),
    1,
  );

  // Boyle: 4.61325 bar at 36 m (10 m to the bar) and 1.01325 bar above it.
  const ratio = 4.61325 / 1.01325;
  expect(breath).toContain(`× ${ratio.toFixed(2)} from 36 m to the surface`);
  const band = placesOf(document.querySelector('path[class*="breath"]')!);
  const half = band.length / 2;
  const wide = (at: number) => band[band.length - 1 - at]!.y - band[at]!.y;
  expect(wide(half - 1) / wide(0)).toBeCloseTo(ratio, 1);

  // The rail has the number and the word of the log.
  const { events } = watchesOf(sceneOf(dive))[0]!;
  const longer = events.findIndex(({ rule }) => rule === 'longerSafetyStop');
  expect(rules).toContain('1 penalty');
  expect(texts()).toContain(`${longer + 1}`);
  expect(texts()).toContain('safety stop lengthened');
});

it('the imagined slowing of washout stays out of the picture until it is asked for', async () => {
  drawn(AscentFigure, 'ascent');
  const before = document.querySelector('svg')!.innerHTML;
  await userEvent.click(screen.getByText('What sets them apart, and a what-if'));
  await userEvent.click(screen.getByRole('checkbox', { name: 'Imagine it' }));
  expect(screen.getByText(/At surfacing the ceiling would be/)).toBeVisible();
  expect(document.querySelector('svg')!.innerHTML).toBe(before);
});

it('after the dive is one logarithmic axis to two days: what lets go when, and the next dive’s no-stop time rising to a rested diver’s', async () => {
  const store = drawn(SurfaceFigure, 'surface');
  act(() => store.getState().setCursor(1200));
  // Pictures follow the cursor by a frame.
  await screen.findByText('now:', { exact: false });
  const { scene } = store.getState();
  const watch = watchesOf(scene)[0]!;
  const sample = watch.timeline.timeS.findIndex((timeS) => timeS >= 1200);
  const after = afterDiveAt(watch, sample, { next: { depthM: 18, gas: AIR }, driveToM: 700 })!;
  const bars = Object.fromEntries(
    [...document.querySelectorAll('svg g')]
      .filter((lane) => lane.querySelector(':scope > rect'))
      .map((lane) => [
        lane.querySelector('text')!.firstChild!.textContent,
        [...lane.querySelectorAll(':scope > rect')].map((bar) => Number(bar.getAttribute('width'))),
      ]),
  );
  const part = (hours: number) => Math.log(hours * 12) / Math.log(48 * 12);
  const expectBar = (name: string, hours: number) => {
    const [whole, bar] = bars[name]!;
    expect(bar! / whole!, name).toBeCloseTo(part(hours), 3);
  };
  // DAN/UHMS: a dive that owed a stop has no figure, so the unit's own setting stands in for it, from surfacing on.
  expectBar('Flying, by the guideline', 24 - after.sinceSurfacedS / 3600);
  expectBar('Drive to 700 m, by the guideline', 24 - after.sinceSurfacedS / 3600);
  expectBar('Desaturated', after.desaturation.minutes / 60);
  expect(after.flying.model.minutes).toBe(0);
  expect(bars['Flying, by the model']).toHaveLength(1);

  const curve = placesOf(document.querySelector('path[class*="profile"]')!);
  const rested = placesOf(document.querySelector('path[class*="rested"]')!)[0]!;
  expect(curve[0]!.y).toBeGreaterThan(rested.y + 5);
  expect(curve.at(-1)!.y).toBeCloseTo(rested.y, 0);
  curve.slice(1).forEach(({ y }, index) => expect(y).toBeLessThanOrEqual(curve[index]!.y));
  expect(texts()).toContain(`now: ${printAs('noStopMin', after.recovery!.nowMin, 'metric')}`);
  expect(texts()).toContain(`a rested diver: ${printAs('noStopMin', after.recovery!.freshMin, 'metric')}`);
});

import { act, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { RunStage } from '@/app/lessons/player/stage/RunStage';
import { deskSampling } from '@/app/pictures/scene';
import { DeskContext } from '@/app/stage/desk-context';
import { createDeskStore } from '@/app/stage/desk-store';
import { RunTimeSheet } from '@/app/stage/gas/RunTimeSheet';
import { StagedFigure } from '@/app/stage/gas/StagedFigure';
import { ReadingsPanel } from '@/app/stage/ReadingsPanel';
import { figuresAt, figuresOf } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { ascentPlanOf } from '@/lib/exposure/ascent-plan';
import { stopDistributions } from '@/lib/exposure/stop-distribution';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { printAs } from '@/lib/sayings/measures';
import { modelSayings, type ModelReadingId } from '@/lib/sayings/model-readings';
import type { Saying } from '@/lib/sayings/saying';
import { FRESH_RUN, steered, stepsAsSteered } from '@/lib/steer/run';
import { inUnits, rowsOf, SYSTEMS } from './told-in-rows';
import { followed, setCursor } from './set-cursor';
import { diveOf } from '../unit/read';
import { onDesk } from './on-desk';

/*
 * Surfaces beside the one table of sayings, figure by figure, in both systems of units: what each shows is worked out here
 * from the engine and said by the table, and no more of it is taken from the surface than where it stands.
 */

afterEach(() => inUnits('metric'));

const TILES: readonly ModelReadingId[] = [
  'depth',
  'no-stop',
  'ceiling',
  'required-stop',
  'time-to-surface',
  'supersaturation',
  'surfacing-supersaturation',
];

/** What the table says of a dive at a moment, sampled as a desk samples it. */
function saidAt(dive: Dive, timeS: number, units: UnitSystem): Readonly<Record<ModelReadingId, Saying>> {
  const { everyS, intervalEveryS } = deskSampling(dive);
  const timeline = computeTimeline(dive, everyS, { intervalEveryS });
  const sample = sampleAt(timeline, timeS);
  return modelSayings(
    { timeline, sample, now: figuresAt(timeline, figuresOf(timeline, dive.settings), sample) },
    units,
  );
}

function expectTiles(said: Readonly<Record<ModelReadingId, Saying>>, where: string) {
  for (const id of TILES) {
    const { name, value, unit, note } = said[id];
    const tile = screen.getByRole('group', { name });
    const shown = tile.querySelector('[data-room]')!;
    expect([shown.textContent, shown.nextElementSibling?.textContent ?? ''], `${name} ${where}`).toEqual([value, unit]);
    expect(shown.parentElement!.nextElementSibling?.textContent?.startsWith(note), `under ${name} ${where}`).toBe(true);
  }
}

describe('steered by hand', () => {
  it('the readings say what the table says of the dive so far, at its end and at any moment gone back to', async () => {
    const store = createDeskStore({ script: 'gradient factors: 35/75\nstay 1 min\n', pictures: [], covered: [] });
    const { settings } = store.getState().scene.dive;
    const run = (
      [
        [18, 107],
        [0, 23 * 60],
        [-9, 131],
        [0, 47],
        [-14, 20],
      ] as const
    ).reduce((gone, [rate, seconds]) => steered(gone, rate, seconds, 0.1), FRESH_RUN);
    act(() => store.getState().startRun(run));
    render(
      <DeskContext value={store}>
        <ReadingsPanel />
      </DeskContext>,
    );
    const dive: Dive = { settings, steps: stepsAsSteered(run), lines: [] };
    for (const units of SYSTEMS) {
      inUnits(units);
      for (const timeS of [1685, 300, 900, 1487, 1610]) {
        await setCursor(store, timeS);
        expectTiles(saidAt(dive, timeS, units), `at ${timeS} s`);
      }
    }
  });
});

describe('a run in a lesson', () => {
  const script =
    'gas: 28%\ngradient factors: 35/75\ndescend to 33 m at 18 m/min\nstay 24 min\nascend to surface at 9 m/min\n';

  it('shows what the table says at each moment', async () => {
    render(
      <RunStage
        script={{ title: 'Thirty-three metres', script }}
        step={{
          kind: 'run',
          id: 'run',
          title: 'Run',
          html: '',
          more: undefined,
          notes: undefined,
          script: 'main',
          show: [],
          readings: undefined,
          fromS: 0,
          toS: 1700,
          untilS: undefined,
          watch: [],
        }}
      />,
    );
    for (const units of SYSTEMS) {
      inUnits(units);
      for (const timeS of [200, 1000, 1540, 1660]) {
        fireEvent.change(screen.getByRole('slider', { name: 'Time cursor' }), { target: { value: `${timeS}` } });
        await followed();
        expectTiles(saidAt(diveOf(script), timeS, units), `at ${timeS} s`);
      }
    }
  });
});

describe('the way up as it is planned', () => {
  // Stops of no whole seconds and climbs that take none, so that each shows which way it is rounded.
  const script = `gas: 21/20
gradient factors: 35/80
carried: 50% from 21 m
stop rounding: 0.11 min
ascent rate: 8.7 m/min
descend to 48 m at 20 m/min
stay 22 min
ascend to surface at 9 m/min
`;
  const dive = diveOf(script);
  const plan = ascentPlanOf(dive);
  const { stops, timeToSurfaceMin } = plan.schedule;

  it.each(SYSTEMS)(
    'as a run-time sheet has each stop as the table says it, and none left early, in %s units',
    (units) => {
      inUnits(units);
      render(<RunTimeSheet plan={plan} diveNumber={0} />);
      const rows = rowsOf(screen.getByRole('table', { name: 'Run-time table' }));
      const held = rows.filter(([what]) => what === 'stop');
      expect(held.length).toBeGreaterThan(4);
      expect(held.map(([, depth, length]) => [depth, length])).toEqual(
        stops
          .filter(({ minutes }) => minutes > 0)
          .map(({ depthM, minutes }) => [printAs('stopM', depthM, units), printAs('plannedS', minutes * 60, units)]),
      );
      let endS = plan.ascentFromS;
      const ends = plan.schedule.parts.flatMap(({ fromM, toM, minutes }) => {
        endS += minutes * 60;
        return fromM === toM ? [printAs('plannedS', endS, units)] : [];
      });
      expect(held.map(([, , , until]) => until)).toEqual(ends);
      expect(rows.at(-1)![3]).toBe(printAs('plannedS', plan.ascentFromS + timeToSurfaceMin * 60, units));
    },
  );

  it.each(SYSTEMS)('beside what else may become of it says what the table says, in %s units', async (units) => {
    inUnits(units);
    onDesk(<StagedFigure />, script);
    const own = (table: HTMLElement, column: number) =>
      new Map(rowsOf(table).map((cells) => [cells[0]!, cells[column]!] as const));
    const planned = own(screen.getByRole('table', { name: 'As planned' }), 1);
    for (const { depthM, minutes } of stops)
      expect(planned.get(printAs('stopM', depthM, units))).toContain(`${printAs('stopMin', minutes, units)}, `);
    expect(planned.get('Whole way up')).toBe(printAs('timeToSurfaceMin', timeToSurfaceMin, units));
    const details = screen.getByText('Deeper or shallower stops, in the same time').closest('details')!;
    details.open = true;
    fireEvent(details, new Event('toggle'));
    const spreads = stopDistributions(dive, { diveNumber: 0 });
    const spread = await screen.findByRole('table', { name: 'Stops timed to the second' });
    spreads.forEach((one, index) => {
      const cells = own(spread, index + 1);
      for (const { depthM, minutes } of one.stops)
        expect(cells.get(printAs('stopM', depthM, units))).toBe(printAs('plannedS', minutes * 60, units));
      expect(cells.get('Whole way up')).toBe(printAs('plannedS', one.timeToSurfaceMin * 60, units));
      expect(cells.get('On surfacing')).toBe(
        `${printAs('supersaturation', one.surfacing.value, units)}, compartment ${one.surfacing.leader}`,
      );
    });
  });
});

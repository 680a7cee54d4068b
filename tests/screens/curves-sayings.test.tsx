import { fireEvent, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { AscentRateSection } from '@/app/curves/plates/AscentRateSection';
import { useAtlas } from '@/app/curves/chosen/atlas-store';
import { ModelsSection } from '@/app/curves/plates/ModelsSection';
import { NoStopSection } from '@/app/curves/plates/NoStopSection';
import { TablesBeside } from '@/app/curves/plates/TablesBeside';
import { NO_HISTORY } from '@/app/keep/history';
import { ascentRateCurve } from '@/lib/curves/ascent-rate-curve';
import { bottomOf } from '@/lib/curves/bottom-phase';
import { curveSite, rested } from '@/lib/curves/curve-site';
import { modelNoStopCurve } from '@/lib/curves/model-curves';
import { noStopCurve } from '@/lib/curves/no-stop-curve';
import { PUBLISHED_TABLES } from '@/lib/curves/published-no-stop';
import { whyTheyDiffer } from '@/lib/curves/table-differences';
import { defaultSettings } from '@/lib/dive/default-settings';
import { siteOf } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { printAs } from '@/lib/sayings/measures';
import { sayStop } from '@/lib/sayings/stop-state';
import { LIMIT_MODELS } from '@/lib/tissue/models/all';
import { inUnits, rowsOf, SYSTEMS } from './told-in-rows';

/* The curves beside the one table of sayings, figure by figure, in both systems of units. */

beforeEach(() => useAtlas.setState({ plate: 'no-stop', chosen: {}, history: NO_HISTORY }));
afterEach(() => inUnits('metric'));

/** Opens the table behind a figure of the curves. */
function tableBehind(name: string): HTMLElement {
  const frame = screen.getByRole('figure', { name });
  const details = frame.querySelector('details')!;
  details.open = true;
  fireEvent(details, new Event('toggle'));
  return within(frame).getByRole('table', { name });
}

describe('the curves', () => {
  const settings = defaultSettings();
  const atSea = { site: curveSite(settings), tissues: rested(settings), gas: AIR, gf: 0.85 };
  /** The depth that heads a row, in metres. */
  const depthOf = (row: readonly string[]) => Number.parseFloat(row[0]!) * (row[0]!.endsWith('ft') ? 0.3048 : 1);

  it.each(SYSTEMS)('of no-stop times have the limit of each depth as the table says it, in %s units', (units) => {
    inUnits(units);
    render(<NoStopSection />);
    const rows = rowsOf(tableBehind('No-stop time against depth'));
    expect(rows.length).toBeGreaterThan(10);
    const limits = noStopCurve(atSea, rows.map(depthOf)).minutes;
    expect(rows.map(([, air]) => air)).toEqual(
      Array.from(limits, (minutes) => printAs('noStopLimitMin', minutes, units)),
    );
  });

  it.each(SYSTEMS)(
    'of models beside each other have the limits of each to a tenth, never rounded up, in %s units',
    (units) => {
      inUnits(units);
      render(<ModelsSection />);
      const table = tableBehind('No-stop times by each model');
      const rows = rowsOf(table);
      const site = siteOf({ settings, steps: [], lines: [] });
      const heads = within(table)
        .getAllByRole('columnheader')
        .map(({ textContent }) => textContent);
      const shown = heads.slice(1).map((name) => LIMIT_MODELS.find((model) => model.name === name)!);
      expect(shown.length).toBeGreaterThan(2);
      shown.forEach((model, i) => {
        const { minutes } = modelNoStopCurve(model, site, rows.map(depthOf));
        expect(rows.map((row) => row[i + 1])).toEqual(
          Array.from(minutes, (limit) => printAs('noStopExactMin', limit, units)),
        );
      });
    },
  );

  it('beside a published table tell the model’s minutes cut to a tenth', () => {
    for (const table of PUBLISHED_TABLES) {
      const row = table.rows[3]!;
      const { unmount } = render(<TablesBeside tables={[table]} depthM={row.depthM} gf={0.85} />);
      expect(rowsOf(screen.getByRole('table')).map(([, minutes]) => `${minutes} min`)).toEqual(
        whyTheyDiffer(table, row, 0.85).map(({ minutes }) => printAs('noStopExactMin', minutes, 'metric')),
      );
      unmount();
    }
  });

  it.each(SYSTEMS)('of the rate of ascent tell the way up with its stops as the table does, in %s units', (units) => {
    inUnits(units);
    render(<AscentRateSection />);
    const rows = rowsOf(tableBehind('As the model asks: time to surface'));
    const own = { ...settings, gradientFactors: { low: 0.4, high: 0.85 } };
    const rates = rows.map((row) => Number.parseFloat(row[0]!) * (units === 'imperial' ? 0.3048 : 1));
    const times = screen
      .getAllByRole('columnheader', { name: /^After \d+ min$/ })
      .map(({ textContent }) => Number.parseFloat(textContent.replace('After ', '')));
    const columns = [...new Set(times)].map((minutes) => {
      const { site, end } = bottomOf({ settings: own, depthM: 36, minutes, descentMMin: 18 });
      return ascentRateCurve(own, site, end, rates);
    });
    rows.forEach((row, i) => {
      expect(row.slice(1)).toEqual(
        columns.map((each) => {
          const { timeToSurfaceMin, stops, deepestStopM, stopMin } = each[i]!.required;
          const up = `${printAs('timeToSurfaceMin', timeToSurfaceMin, units)} up`;
          const told = sayStop({ depthM: deepestStopM, minutes: stopMin }, units).split(' at ');
          return stops === 0
            ? `${up}, no stops`
            : `${up}, ${stops} ${stops === 1 ? 'stop' : 'stops'} from ${told[1]}, ${told[0]}`;
        }),
      );
    });
  });
});

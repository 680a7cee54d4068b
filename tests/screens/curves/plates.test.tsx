import { fireEvent, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { AscentRateSection } from '@/app/curves/plates/AscentRateSection';
import { HalfTimesSection } from '@/app/curves/plates/HalfTimesSection';
import { HowSureSection } from '@/app/curves/plates/HowSureSection';
import { LimitsSection } from '@/app/curves/plates/LimitsSection';
import { ModelsSection } from '@/app/curves/plates/ModelsSection';
import zhl16 from '@/content/published/zhl16.json';
import { ascentRateCurve } from '@/lib/curves/ascent-rate-curve';
import { bottomOf } from '@/lib/curves/bottom-phase';
import { noStopBand } from '@/lib/curves/how-sure';
import { USUAL_VARIATION } from '@/lib/curves/variation';
import { LIMIT_MODELS } from '@/lib/tissue/models/all';
import { type, slide, openTable, cells, settings, atSea, whole, atTheAtlas } from './at-the-plates';

atTheAtlas();

describe('limits', () => {
  it('have the published coefficients in the table, all sixteen', () => {
    render(<LimitsSection />);
    const table = openTable('What each compartment tolerates');
    expect(within(table).getAllByRole('row')).toHaveLength(17);
    const five = zhl16.values.find(({ compartment }) => compartment === '5')!;
    expect(cells(table, /^5 /).slice(1, 3)).toEqual([five.nitrogen.aC.toFixed(4), five.nitrogen.b.toFixed(4)]);
  });

  it('say what a compartment chosen may hold at the depth of the cursor', async () => {
    render(<LimitsSection />);
    await userEvent.click(screen.getByRole('checkbox', { name: '1' }));
    slide('Depth to read', 0);
    const five = zhl16.values.find(({ compartment }) => compartment === '5')!;
    // Under 85% at the surface: p + 0.85 · (a + p/b − p).
    const may = 1.01325 + 0.85 * (five.nitrogen.aC + 1.01325 / five.nitrogen.b - 1.01325);
    const figure = screen.getByRole('figure', { name: 'What each compartment tolerates' });
    expect(figure).toHaveAccessibleDescription(new RegExp(`compartment 5 may hold ${may.toFixed(2)} bar`));
    expect(figure).not.toHaveAccessibleDescription(/compartment 1 may/);
  });
});

describe('half-times', () => {
  it('close half of what is left in each, 98.4% after six', () => {
    render(<HalfTimesSection />);
    const table = screen.getByRole('table', { name: /^After six half-times: compartment 5/ });
    expect(cells(table, /^1 /)).toEqual(['27 min', '50%', '50%']);
    expect(cells(table, /^6 /)).toEqual(['2 h 42 min', '98.4%', '1.6%']);
  });

  it('have sixteen answers at the cursor', () => {
    render(<HalfTimesSection />);
    type('Then at once at', '20 m');
    slide('Time to read', 9);
    // 9/80 of 240 min is 27 min, one half-time of compartment 5.
    const table = openTable('A step in pressure, sixteen answers');
    expect(within(table).getAllByRole('row')).toHaveLength(17);
    expect(cells(table, /^5 /)[1]).toBe('50%');
  });
});

describe('ascent rate', () => {
  it('reads surfacing supersaturation and stops at a rate as the engine works them out', () => {
    render(<AscentRateSection />);
    const own = { ...settings, gradientFactors: { low: 0.4, high: 0.85 } };
    const { site, end } = bottomOf({ settings: own, depthM: 36, minutes: 20, descentMMin: 18 });
    const [one] = ascentRateCurve(own, site, end, [9]);
    expect(screen.getByRole('figure', { name: /^Straight up/ })).toHaveAccessibleDescription(
      new RegExp(`${Math.round(one!.direct.surfacingSupersaturation * 100)}% after 20 min`),
    );
    expect(screen.getByRole('figure', { name: /^As the model asks/ })).toHaveAccessibleDescription(
      new RegExp(`${Math.ceil(one!.required.timeToSurfaceMin)} min up after 20 min, ${one!.required.stops} stops`),
    );
  });

  it('lays as many times at depth over each other as are asked for, and refuses more than can be told apart', () => {
    render(<AscentRateSection />);
    type('Times at depth', '15, 40 min');
    expect(screen.getByRole('figure', { name: /^Straight up/ })).toHaveAccessibleDescription(
      /after 15 min.*after 40 min/,
    );
    fireEvent.change(screen.getByLabelText('Times at depth'), { target: { value: '1, 2, 3, 4, 5, 6 min' } });
    expect(screen.getByLabelText('Times at depth')).toHaveAccessibleDescription(/at most 5/);
    fireEvent.change(screen.getByLabelText('Depth'), { target: { value: '0 m' } });
    expect(screen.getByLabelText('Depth')).toHaveAccessibleDescription(/surface is no depth/);
  });
});

describe('models side by side', () => {
  it('have Haldane’s and Workman’s no-stop times at 30 m, worked by hand', () => {
    render(<ModelsSection />);
    // Haldane, 5 min: 1.58·1.01325 is tolerated; −5·log2(1 − (1.58 − 0.79)·1.01325/(0.79·3)) = 2.97 min.
    const byHand = -5 * Math.log2(1 - ((1.58 - 0.79) * 1.01325) / (0.79 * 3));
    const row = cells(openTable('No-stop times by each model'), /^30 m/);
    // To a tenth and never longer than it is.
    expect(row[0]).toBe(`${(Math.floor(byHand * 10) / 10).toFixed(1)} min`);
    expect(row[1]).toBe('22.7 min');
    expect(row).toHaveLength(LIMIT_MODELS.length);
  });

  it('are taken off and laid on again', async () => {
    render(<ModelsSection />);
    await userEvent.click(screen.getByRole('checkbox', { name: 'Haldane 1908' }));
    expect(screen.getByRole('figure', { name: 'No-stop times by each model' })).not.toHaveAccessibleDescription(
      /Haldane/,
    );
    expect(screen.getByRole('figure', { name: 'Ceilings over the same dive' })).toHaveAccessibleDescription(
      /Workman 1965/,
    );
  });
});

describe('how sure it is', () => {
  it('is told as a band, never a figure alone', async () => {
    render(<HowSureSection />);
    const figure = await screen.findByRole('figure', { name: 'No-stop time, as a band' });
    const band = noStopBand(atSea, [30], USUAL_VARIATION);
    expect(figure).toHaveAccessibleDescription(
      new RegExp(
        `model says ${whole(band.middle[0]!)}, and anything from ${whole(band.low[0]!)} to ${whole(band.high[0]!)}`,
      ),
    );
    expect(screen.getByRole('figure', { name: 'Ceiling of a dive, as a band' })).toHaveAccessibleDescription(
      /anything from [\d.]+ m to [\d.]+ m/,
    );
    expect(screen.getByText(/It is not a margin of safety/)).toBeInTheDocument();
  });

  it('refuses more than ten per cent', () => {
    render(<HowSureSection />);
    fireEvent.change(screen.getByLabelText('Half-times off by'), { target: { value: '20%' } });
    expect(screen.getByLabelText('Half-times off by')).toHaveAccessibleDescription(/0% to 10%/);
  });
});

import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { ReactElement } from 'react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { AscentRateSection } from '@/app/curves/plates/AscentRateSection';
import { GradientFactorSection } from '@/app/curves/plates/GradientFactorSection';
import { HalfTimesSection } from '@/app/curves/plates/HalfTimesSection';
import { HowSureSection } from '@/app/curves/plates/HowSureSection';
import { LimitsSection } from '@/app/curves/plates/LimitsSection';
import { ModelsSection } from '@/app/curves/plates/ModelsSection';
import { heavyWork, type HeavyJob } from '@/app/curves/slow-work/heavy-work';

/** A worker that works in the page's thread, at once. */
class WorkerHere {
  onmessage: ((event: { data: unknown }) => void) | undefined;
  postMessage(job: HeavyJob) {
    const work = heavyWork(job);
    for (;;) {
      const step = work.next();
      this.onmessage?.({ data: step.done ? { result: step.value } : { progress: step.value } });
      if (step.done) return;
    }
  }
  terminate() {}
}

afterEach(() => {
  // What is still to be asked of a worker goes before the worker.
  cleanup();
  vi.unstubAllGlobals();
});

interface Case {
  section: ReactElement;
  /** The list that has the figure. */
  readings: string | RegExp;
  asks: string | RegExp;
  titled: string | RegExp;
  /** Where the sheet gives its result. */
  result: RegExp;
  /** How the curve prints that result. */
  /** How the reading has what the working comes to; `shown` is what it has. */
  printed: (result: number, shown: string) => string;
}

const wholeMinutes = (minutes: number) => String(Math.ceil(minutes));
const sections: readonly Case[] = [
  {
    section: <HalfTimesSection />,
    readings: /^After /,
    asks: 'Why this tension?',
    titled: /^Why\? Tension in compartment 5/,
    result: /([\d.]+) bar/,
    printed: (bar) => bar.toFixed(2),
  },
  {
    section: <AscentRateSection />,
    readings: 'On surfacing at 9 m/min',
    asks: /^Why this supersaturation on surfacing after \d+ min\?$/,
    titled: /^Why\? Supersaturation if you surfaced/,
    result: /([\d.]+)\s?%/,
    // The working has a decimal more, rounded from the same figure.
    printed: (percent, shown) => (Math.abs(percent - Number(shown)) <= 0.55 ? shown : percent.toFixed(0)),
  },
  {
    section: <AscentRateSection />,
    readings: 'Time to surface at 9 m/min',
    asks: /^Why this time to surface after \d+ min\?$/,
    titled: 'Why? Time to surface',
    result: /([\d.]+) min\./,
    printed: wholeMinutes,
  },
  {
    section: <GradientFactorSection />,
    readings: 'Where the map is read',
    asks: 'Why this time to surface?',
    titled: 'Why? Time to surface',
    result: /([\d.]+) min\./,
    printed: wholeMinutes,
  },
  {
    section: <LimitsSection />,
    readings: /^Tolerated at/,
    asks: 'Why what compartment 1 tolerates?',
    titled: /^Why\? What compartment 1b? tolerates/,
    result: /([\d.]+) bar/,
    printed: (bar) => bar.toFixed(2),
  },
  {
    section: <ModelsSection />,
    readings: /^By each model/,
    asks: 'Why the time by Haldane 1908?',
    titled: 'Why? No-stop time by Haldane 1908',
    result: /([\d.]+) min /,
    printed: (minutes) => String(Math.floor(minutes)),
  },
  {
    section: <HowSureSection />,
    readings: /^In the band at/,
    asks: 'Why this no-stop time?',
    titled: 'Why? No-stop time',
    result: /([\d.]+) min /,
    printed: (minutes) => String(Math.floor(minutes)),
  },
  {
    section: <HowSureSection />,
    readings: /^In the band 25 min in/,
    asks: 'Why this ceiling?',
    titled: 'Why? Ceiling',
    result: /([\d.]+) m /,
    printed: (metres) => metres.toFixed(1),
  },
];

describe('a curve answers why where it is read', () => {
  it.each(sections)('$asks in $readings', async ({ section, readings, asks, titled, result, printed }) => {
    vi.stubGlobal('Worker', WorkerHere);
    render(section);
    const list = await screen.findByRole('list', { name: readings });
    const first = within(list).getAllByRole('listitem')[0]!;
    const [shown] = /[\d.]+/.exec(first.querySelector('b')!.textContent!)!;
    await userEvent.click(within(first).getByRole('button', { name: asks }));
    const sheet = await screen.findByRole('dialog', { name: titled });
    const says = await within(sheet).findAllByText(
      (_, element) => element?.tagName === 'P' && result.test(element.textContent!),
    );
    const { textContent } = says[0]!;
    expect(printed(Number(result.exec(textContent!)![1]), shown)).toBe(shown);
  });
});

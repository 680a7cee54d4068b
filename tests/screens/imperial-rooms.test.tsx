import { readFileSync } from 'node:fs';
import { act, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { BenchScreen } from '@/app/bench/BenchScreen';
import { BringScreen } from '@/app/bring/BringScreen';
import { BringSession } from '@/app/bring/bring-session';
import { AscentRateSection } from '@/app/curves/AscentRateSection';
import { GradientFactorSection } from '@/app/curves/GradientFactorSection';
import { HalfTimesSection } from '@/app/curves/HalfTimesSection';
import { HowSureSection } from '@/app/curves/HowSureSection';
import { LimitsSection } from '@/app/curves/LimitsSection';
import { ModelsSection } from '@/app/curves/ModelsSection';
import { NoStopSection } from '@/app/curves/NoStopSection';
import { CylinderSum } from '@/app/gases/CylinderSum';
import { GasBoard } from '@/app/gases/GasBoard';
import { MixFinder } from '@/app/gases/MixFinder';
import { SiteControls } from '@/app/gases/SiteControls';
import { LessonPlayer } from '@/app/lessons/player/LessonPlayer';
import { TryStage } from '@/app/lessons/player/TryStage';
import { StudentSheet } from '@/app/lessons/StudentSheet';
import { usePreferences } from '@/app/parts/preferences';
import { prepared, TO_TRY } from './lesson-parts';
import { metricLeft } from './metric-left';

const openAll = () => {
  for (const details of document.querySelectorAll('details')) act(() => details.setAttribute('open', ''));
};

beforeEach(() => act(() => usePreferences.setState({ units: 'imperial' })));
afterEach(() => act(() => usePreferences.setState({ units: 'metric' })));

describe('with feet chosen, no metric figure is left over', () => {
  it.each(Object.entries({ SiteControls, GasBoard, MixFinder, CylinderSum }))('among the gases: %s', (_, Part) => {
    render(<Part />);
    openAll();
    expect(metricLeft()).toEqual([]);
  });

  it.each(
    Object.entries({
      NoStopSection,
      LimitsSection,
      HalfTimesSection,
      ModelsSection,
      HowSureSection,
      AscentRateSection,
      GradientFactorSection,
    }),
  )('among the curves: %s', (_, Part) => {
    render(<Part />);
    openAll();
    expect(metricLeft()).toEqual([]);
  });

  it('on the bench sheet', () => {
    render(<BenchScreen />);
    openAll();
    expect(metricLeft()).toEqual([]);
  });

  it.each(['by-number', 'by-choice', 'by-curve', 'check'])('at the step of a lesson that asks %s', async (step) => {
    const lesson = prepared();
    const { title } = lesson.steps.find(({ id }) => id === step)!;
    window.location.hash = `#${step}`;
    render(<LessonPlayer lesson={lesson} />);
    await screen.findByRole('heading', { name: title });
    openAll();
    await waitFor(() => expect(metricLeft()).toEqual([]));
    window.location.hash = '';
  });

  it('where a lesson’s dive is to be changed', async () => {
    const lesson = prepared(TO_TRY);
    render(<TryStage lesson={lesson} step={lesson.steps.find((one) => one.kind === 'try')!} />);
    const script = await screen.findByRole('textbox', { name: 'Dive script' });
    expect((script as HTMLTextAreaElement).value).toContain('98 ft');
    openAll();
    await waitFor(() => expect(metricLeft()).toEqual([]));
  });

  it('on a student’s sheet', () => {
    render(<StudentSheet lesson={prepared()} />);
    expect(metricLeft()).toEqual([]);
  });

  it('where a recorded dive is brought', async () => {
    const text = readFileSync('content/records/quarry-clean.csv', 'utf8');
    render(<BringScreen samples={[{ name: 'quarry.csv', title: 'Try it', text }]} session={new BringSession()} />);
    await userEvent.click(screen.getByRole('button', { name: 'Try it' }));
    await screen.findByRole('button', { name: 'Open on the desk' }, { timeout: 20_000 });
    openAll();
    await waitFor(() => expect(metricLeft()).toEqual([]));
  });
});

import { readFileSync } from 'node:fs';
import { act, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { BenchScreen } from '@/app/bench/BenchScreen';
import { BringScreen } from '@/app/bring/BringScreen';
import { BringSession } from '@/app/bring/bring-session';
import { AscentRateSection } from '@/app/curves/plates/AscentRateSection';
import { GradientFactorSection } from '@/app/curves/plates/GradientFactorSection';
import { HalfTimesSection } from '@/app/curves/plates/HalfTimesSection';
import { HowSureSection } from '@/app/curves/plates/HowSureSection';
import { LimitsSection } from '@/app/curves/plates/LimitsSection';
import { ModelsSection } from '@/app/curves/plates/ModelsSection';
import { NoStopSection } from '@/app/curves/plates/NoStopSection';
import { CylinderSum } from '@/app/gases/CylinderSum';
import { GasBoard } from '@/app/gases/GasBoard';
import { MixFinder } from '@/app/gases/MixFinder';
import { SiteControls } from '@/app/gases/SiteControls';
import { lessonIn } from '@/app/lessons/in-units';
import { LessonPlayer } from '@/app/lessons/player/LessonPlayer';
import { TryStage } from '@/app/lessons/player/stage/TryStage';
import { useProgress } from '@/app/lessons/player/progress-store';
import { ResultsSheet } from '@/app/lessons/player/ResultsSheet';
import { StudentSheet } from '@/app/lessons/paper/StudentSheet';
import { WholeText } from '@/app/lessons/paper/WholeText';
import { usePreferences } from '@/app/parts/preferences';
import { NO_PROGRESS, NOT_PREDICTED, NOTHING_YET, type Answer, type Predicted } from '@/lib/lesson/progress';
import { EVERY_WAY, prepared, TO_TRY } from './lesson-parts';
import { metricLeft } from './metric-left';

const openAll = () => {
  for (const details of document.querySelectorAll('details')) act(() => details.setAttribute('open', ''));
};

beforeEach(() => {
  act(() => usePreferences.setState({ units: 'imperial' }));
  useProgress.setState({ progress: NO_PROGRESS });
});
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

  it('on the bench sheet', async () => {
    render(<BenchScreen />);
    await screen.findByRole('region', { name: 'The sheet' });
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

  it('on the answer key and in the whole text, which hold the figures of both', () => {
    const lesson = prepared(EVERY_WAY.replace('scripts:', 'inFeet: {}\nscripts:'));
    render(<WholeText lesson={lesson} notes />);
    expect(metricLeft()).toEqual([]);
    const begun = document.getElementById('begin')!.textContent;
    expect(begun).toContain('30\u00a0m100\u00a0ft');
    // 100 ft, and not 30 m said in feet: 101325 Pa and 0.1 bar for each of 30.48 m are 4.061 bar, or 58.9 psi.
    expect(begun).toContain('4.01\u00a0bar58.9\u00a0psi');
  });

  it('on the way to a goal as it is printed', () => {
    render(<WholeText lesson={prepared(TO_TRY)} notes={false} />);
    expect(metricLeft()).toEqual([]);
    expect(document.querySelector('pre[data-in=imperial]')!.textContent).toContain('98 ft');
  });

  it('on the sheet of results', async () => {
    const lesson = lessonIn(prepared(EVERY_WAY.replace('scripts:', 'inFeet: {}\nscripts:')), 'imperial');
    const foretold = (answer: Answer): Predicted => ({
      ...NOT_PREDICTED,
      given: [{ answer, reason: '', confidence: 'sure', right: false, knowing: false }],
    });
    const predictions = {
      'by-number': foretold({ by: 'number', value: 12 }),
      'by-choice': foretold({ by: 'choice', option: 1 }),
      'by-curve': foretold({ by: 'draw', sketch: [{ timeS: 100, value: 12 }] }),
    };
    useProgress.setState({ progress: { lessons: { [lesson.slug]: { ...NOTHING_YET, predictions } } } });
    render(<ResultsSheet lesson={lesson} handsIn />);
    await screen.findByRole('table');
    expect(metricLeft()).toEqual([]);
  });

  it('where a recorded dive is brought', async () => {
    const text = readFileSync('content/records/quarry-clean.csv', 'utf8');
    render(<BringScreen samples={[{ name: 'quarry.csv', title: 'Try it', text }]} session={new BringSession()} />);
    await userEvent.click(screen.getByRole('button', { name: 'Try it' }));
    await screen.findByRole('button', { name: 'Open on the desk' });
    openAll();
    await waitFor(() => expect(metricLeft()).toEqual([]));
  });
});

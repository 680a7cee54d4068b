import { act, cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { LessonPlayer } from '@/app/lessons/player/LessonPlayer';
import { progressKind } from '@/app/keep/lesson-progress';
import { TryStage } from '@/app/lessons/player/stage/TryStage';
import { restoreProgress, useProgress } from '@/app/lessons/player/progress-store';
import { usePreferences } from '@/app/parts/preferences';
import { NO_PROGRESS, progressIn } from '@/lib/lesson/progress';
import { prepared, TO_TRY } from './lesson-parts';

const lesson = prepared();
const LEAVE_IN_TIME = prepared(TO_TRY);
const LONG = { timeout: 30_000 };

beforeEach(() => {
  useProgress.setState({ progress: NO_PROGRESS });
  usePreferences.setState({ units: 'metric' });
  window.location.hash = '';
});

async function openAt(step: string) {
  window.location.hash = `#${step}`;
  render(<LessonPlayer lesson={lesson} />);
  await screen.findByRole('heading', { name: lesson.steps.find(({ id }) => id === step)!.title });
}

const press = async (name: string | RegExp) => userEvent.click(await screen.findByRole('button', { name }, LONG));

describe('a lesson', () => {
  it('goes on step by step, puts the focus on the new heading and remembers the place', async () => {
    render(<LessonPlayer lesson={lesson} />);
    await press('Go on');
    const heading = screen.getByRole('heading', { name: 'By number' });
    expect(heading).toHaveFocus();
    expect(window.location.hash).toBe('#by-number');
    await press('Back');
    expect(screen.getByRole('heading', { name: 'To begin' })).toHaveFocus();
    expect(
      within(screen.getByRole('navigation', { name: 'Steps' })).getByRole('button', { name: 'To begin, seen' }),
    ).toHaveAttribute('aria-current', 'step');
    expect(progressIn(useProgress.getState().progress, 'every-way').at).toBe('begin');
  });

  it('opens at the step its address names', async () => {
    await openAt('by-choice');
    expect(screen.getByRole('heading', { name: 'By choice' })).toBeInTheDocument();
  });

  it('reads in the units of the reader', async () => {
    const { container } = render(<LessonPlayer lesson={lesson} />);
    expect(container.querySelector('[data-units="metric"]')).toBeInTheDocument();
    act(() => usePreferences.setState({ units: 'imperial' }));
    expect(container.querySelector('[data-units="imperial"] [data-in="imperial"]')).toHaveTextContent('98 ft');
  });

  it('shows nothing before an answer, how sure one is and a reason are given', async () => {
    await openAt('by-number');
    await press('Show what the model says');
    expect(screen.getByText('Answer the question first.')).toBeInTheDocument();
    // Nothing is said of what comes next while the answer is typed; one that can't be read says so itself.
    const answer = screen.getByRole('textbox', { name: 'Your answer' });
    await userEvent.type(answer, 'x');
    await press('Show what the model says');
    expect(screen.queryByText('Answer the question first.')).not.toBeInTheDocument();
    expect(answer).toHaveFocus();
    expect(screen.getByRole('alert')).toHaveTextContent(/^Your answer: “x” is not a number\./);
    await userEvent.clear(answer);
    await userEvent.type(answer, '20');
    expect(screen.queryByText('Say how sure you are first.')).not.toBeInTheDocument();
    await press('Show what the model says');
    expect(screen.getByText('Say how sure you are first.')).toBeInTheDocument();
    await userEvent.click(screen.getByRole('radio', { name: 'Sure' }));
    await press('Show what the model says');
    expect(screen.getByText('Say in a few words why, or call it a guess.')).toBeInTheDocument();
    expect(screen.queryByText(/It is 11/)).not.toBeInTheDocument();
    await userEvent.type(screen.getByRole('textbox', { name: /Why\?/ }), 'a table');
    await press('Show what the model says');
    expect(await screen.findByText(/The model says something else/)).toBeInTheDocument();
    expect(screen.getByText(/because “a table”/)).toBeInTheDocument();
  });

  it('says to a wrong number what fits it, worked out from the number given', async () => {
    await openAt('by-number');
    await userEvent.type(screen.getByRole('textbox', { name: 'Your answer' }), '20');
    await userEvent.click(screen.getByRole('radio', { name: 'A guess' }));
    await press('Show what the model says');
    expect(await screen.findByText(/Too long by/, undefined, LONG)).toHaveTextContent(/Too long by\s9\smin\./);
    expect(progressIn(useProgress.getState().progress, 'every-way').predictions['by-number']!.given).toHaveLength(1);
    await press('Answer it again');
    expect(screen.getByRole('textbox', { name: 'Your answer' })).toHaveFocus();
    await userEvent.type(screen.getByRole('textbox', { name: 'Your answer' }), '3');
    await userEvent.click(screen.getByRole('radio', { name: 'A guess' }));
    await press('Show what the model says');
    expect(await screen.findByText('Too short.', undefined, LONG)).toBeInTheDocument();
    expect(screen.getByText(/Your first answer was another, and it is kept; this is answer 2\./)).toBeInTheDocument();
  });

  it('asks one question of a check at a time, and takes a number in imperial units', async () => {
    usePreferences.setState({ units: 'imperial' });
    await openAt('check');
    await userEvent.click(await screen.findByRole('radio', { name: '2' }, LONG));
    expect(document.querySelectorAll('ol > li:not([hidden]) form')).toHaveLength(1);
    const question = (await screen.findByText('How deep is it?', undefined, LONG)).closest('form')!;
    await userEvent.type(within(question).getByRole('textbox'), '98');
    await userEvent.click(within(question).getByRole('button', { name: 'Check' }));
    expect(within(question).getByText(/Right\./)).toHaveFocus();
  });

  it('marks a chosen answer beside the right one, each with its reason', async () => {
    await openAt('by-choice');
    await userEvent.click(screen.getByRole('radio', { name: 'No stop is needed.' }));
    await userEvent.click(screen.getByRole('radio', { name: 'A guess' }));
    await press('Show what the model says');
    expect(await screen.findByText('Twenty minutes are too long for that.')).toBeInTheDocument();
    expect(screen.getByText('The time ran out.')).toBeInTheDocument();
    expect(screen.getByText('A stop.')).toBeInTheDocument();
    expect(screen.getByText('The model says something else.', { exact: false })).toHaveFocus();
  });

  it('lets a curve be drawn by five numbers, and lays the true one over it in words too', async () => {
    await openAt('by-curve');
    const boxes = within(
      await screen.findByRole('group', { name: /The no-stop time, in min, from 0 to \d+$/ }),
    ).getAllByRole('textbox');
    expect(boxes).toHaveLength(5);
    await press('Show what the model says');
    expect(
      screen.getByText('Draw the whole curve first, from edge to edge, or fill its first and last box.'),
    ).toBeInTheDocument();
    for (const [index, value] of ['40', '30', '20', '10', '0'].entries()) await userEvent.type(boxes[index]!, value);
    await userEvent.click(screen.getByRole('radio', { name: 'A guess' }));
    await press('Show what the model says');
    expect(
      await screen.findByText(
        /You drew it too high most of the way\. You are furthest off at \d+:\d\d: you drew 40 min/,
        undefined,
        LONG,
      ),
    ).toBeInTheDocument();
    expect(screen.getByText('You began too high.')).toBeInTheDocument();
    await userEvent.click(screen.getByText('Table of what you drew and what the model says'));
    expect(screen.getAllByRole('row').length).toBeGreaterThanOrEqual(12);
  });

  it('keeps what is half given as it was left, through a page that is loaded anew', async () => {
    await openAt('by-number');
    await userEvent.type(screen.getByRole('textbox', { name: 'Your answer' }), '1x');
    await userEvent.type(screen.getByRole('textbox', { name: /Why\?/ }), 'hm');
    await userEvent.click(screen.getByRole('radio', { name: 'Fairly sure' }));
    cleanup();
    useProgress.setState({ progress: NO_PROGRESS });
    restoreProgress();
    await openAt('by-number');
    expect(screen.getByRole('textbox', { name: 'Your answer' })).toHaveValue('1x');
    expect(screen.getByRole('textbox', { name: /Why\?/ })).toHaveValue('hm');
    expect(screen.getByRole('radio', { name: 'Fairly sure' })).toBeChecked();
  });

  it('keeps looking apart from answering', async () => {
    await openAt('by-number');
    await press('Look without answering');
    expect(screen.getByText(/You looked without answering\./)).toBeInTheDocument();
    await press('Your results');
    const table = await screen.findByRole('table', undefined, LONG);
    expect(within(table).getByRole('row', { name: /By number.*looked without answering/ })).toBeInTheDocument();
  });

  it('asks its questions with fresh numbers and counts the answers', async () => {
    await openAt('check');
    const question = (await screen.findByText(/What is left at/, undefined, LONG)).closest('form')!;
    const options = within(question).getAllByRole('radio');
    expect(options).toHaveLength(2);
    await userEvent.click(within(question).getByRole('button', { name: 'Check' }));
    expect(within(question).getByText('Answer the question first.')).toBeInTheDocument();
    await userEvent.click(options[0]!);
    await userEvent.click(within(question).getByRole('button', { name: 'Check' }));
    expect(within(question).getByText(/[01] of 1 right so far/)).toBeInTheDocument();
    await userEvent.click(within(question).getByRole('button', { name: 'Ask me again, with other numbers' }));
    const again = (await screen.findByText(/What is left at/)).closest('form')!;
    expect(within(again).getByRole('button', { name: 'Check' })).toBeInTheDocument();
  });

  it('keeps what was answered on this machine, and sums it up', async () => {
    await openAt('by-choice');
    await userEvent.click(screen.getByRole('radio', { name: 'A stop is needed.' }));
    await userEvent.click(screen.getByRole('radio', { name: 'A guess' }));
    await press('Show what the model says');
    await waitFor(() => expect(localStorage.getItem(progressKind.name)).toContain('by-choice'));
    await press('Your results');
    const table = await screen.findByRole('table', undefined, LONG);
    expect(
      within(table).getByRole('row', { name: /By choice A stop is needed \(a guess\).*✓ A stop is needed$/ }),
    ).toBeInTheDocument();
    expect(within(table).getByRole('row', { name: /By number.*not answered/ })).toBeInTheDocument();
    await press('Start this lesson over');
    await waitFor(() => expect(progressIn(useProgress.getState().progress, 'every-way').predictions).toEqual({}));
  });
});

describe('a lesson before a class', () => {
  async function present(step: string) {
    await openAt(step);
    await press('Tools of this lesson');
    await press('Present to a class');
    await screen.findByRole('region', { name: /before a class/ }, LONG);
  }

  it('covers the answer until it is uncovered, and counts hands', async () => {
    await present('by-choice');
    expect(screen.queryByText('The time ran out.')).not.toBeInTheDocument();
    const hands = screen.getByRole('group', { name: 'Hands for A' });
    await userEvent.click(within(hands).getByRole('button', { name: 'One hand more' }));
    await userEvent.click(within(hands).getByRole('button', { name: 'One hand more' }));
    expect(within(hands).getByText('2')).toBeInTheDocument();
    await press('Uncover the answer');
    expect(screen.getByText('The time ran out.')).toBeInTheDocument();
    expect(within(screen.getByRole('group', { name: 'Hands for A' })).getByText('2')).toBeInTheDocument();
  });

  it('turns by a clicker’s keys and shows the notes on N', async () => {
    await present('begin');
    await userEvent.keyboard('n');
    expect(screen.getByRole('note', { name: 'Notes for the instructor' })).toHaveTextContent('Who knows?');
    await userEvent.keyboard('{PageDown}');
    expect(screen.getByRole('heading', { name: 'By number' })).toBeInTheDocument();
    await userEvent.keyboard('{PageDown}');
    expect(screen.getByText(/The model says/)).toBeInTheDocument();
    await userEvent.keyboard('{PageUp}{PageUp}');
    expect(screen.getByRole('heading', { name: 'To begin' })).toBeInTheDocument();
    await userEvent.keyboard('{Escape}');
    expect(await screen.findByRole('navigation', { name: 'Steps' })).toBeInTheDocument();
  });

  it('asks for the full screen once, and stays in it while pages are turned', async () => {
    const [request, exit] = [vi.fn(() => Promise.resolve()), vi.fn(() => Promise.resolve())];
    Object.defineProperties(document.documentElement, { requestFullscreen: { value: request, configurable: true } });
    Object.defineProperties(document, {
      fullscreenElement: { value: document.documentElement, configurable: true },
      exitFullscreen: { value: exit, configurable: true },
    });
    try {
      await present('begin');
      await userEvent.keyboard('{PageDown}{PageDown}{PageDown}');
      expect(request).toHaveBeenCalledTimes(1);
      expect(exit).not.toHaveBeenCalled();
      await userEvent.keyboard('{Escape}');
      await screen.findByRole('navigation', { name: 'Steps' });
      expect(exit).toHaveBeenCalledTimes(1);
    } finally {
      for (const name of ['fullscreenElement', 'exitFullscreen']) Reflect.deleteProperty(document, name);
      Reflect.deleteProperty(document.documentElement, 'requestFullscreen');
    }
  });

  it('takes numbers as a class calls them', async () => {
    await present('by-number');
    for (const number of ['12', '20', '12']) {
      await userEvent.type(screen.getByRole('textbox', { name: 'A number from the class' }), `${number}{Enter}`);
    }
    expect(
      within(screen.getByRole('list', { name: 'Numbers called' }))
        .getAllByRole('listitem')
        .map(({ textContent }) => textContent),
    ).toEqual(['12 min × 2', '20 min']);
    (document.activeElement as HTMLElement).blur();
    await userEvent.keyboard('{PageDown}{PageDown}');
    expect(screen.getByRole('heading', { name: 'By choice' })).toBeInTheDocument();
    await userEvent.keyboard('{PageUp}');
    expect(within(screen.getByRole('list', { name: 'Numbers called' })).getAllByRole('listitem')).toHaveLength(2);
  });
});

describe('a step to try', () => {
  const OVER = LEAVE_IN_TIME.scripts['main']!.script;
  const step = LEAVE_IN_TIME.steps.find((one) => one.kind === 'try')!;
  const OFFER = { name: 'What would have avoided it?' };

  it('offers after two dives that did not do it, and not after one, to ask what would have', async () => {
    vi.useFakeTimers({ shouldAdvanceTime: true });
    try {
      render(<TryStage lesson={LEAVE_IN_TIME} step={step} />);
      const script = await screen.findByRole('textbox', { name: 'Dive script' });
      const miss = async (text: string) => {
        fireEvent.change(script, { target: { value: text } });
        await act(() => vi.advanceTimersByTimeAsync(2000));
      };
      await miss(OVER.replace('20 min', '19 min'));
      expect(screen.queryByText(/A stop is owed on this dive/)).toBeNull();
      await miss(OVER.replace('20 min', '18 min'));
      expect(await screen.findByRole('button', OFFER)).toBeInTheDocument();
      expect(screen.getByText(/A stop is owed on this dive/)).toBeInTheDocument();
      await miss(OVER.replace('20 min', '5 min'));
      expect(screen.queryByRole('button', OFFER)).toBeNull();
      expect(screen.getByText('You have done it.')).toBeInTheDocument();
    } finally {
      vi.useRealTimers();
    }
  });
});

import { fireEvent, render, screen, within } from '@testing-library/react';
import { beforeEach, describe, expect, it } from 'vitest';
import { openShelf } from '@/app/keep/open-shelf';
import { DESK } from '@/app/keep/dive-on-desk';
import { put } from '@/app/keep/shelf';
import { beenHere } from '@/app/front/been-here';
import { doors } from '@/app/front/doors';
import { loadLessons } from '@/app/lessons/load-lessons';
import { PromiseFigure } from '@/app/front/PromiseFigure';
import { WhereYouWere } from '@/app/front/WhereYouWere';
import { askedToPlay, readyDive } from '@/app/parts/ready-dives';
import { overstayed } from '@/content/scenarios/overstayed';
import { figuresOf } from '@/lib/ascent/figures';
import { computeTimeline } from '@/lib/dive/timeline';
import { printClock } from '@/lib/quantity/duration';
import { progressKind } from '@/app/keep/lesson-progress';
import { diveOf } from '../unit/read';

const LESSONS = [
  { slug: '01-one', title: 'One', steps: ['a', 'b', 'c'] },
  { slug: '02-two', title: 'Two', steps: ['a', 'b'] },
];

const withProgress = (lessons: Record<string, unknown>) =>
  localStorage.setItem(progressKind.name, JSON.stringify({ state: { progress: { lessons } }, version: 1 }));

beforeEach(() => localStorage.clear());

describe('the doors', () => {
  it('lead to ready dives that exist, wherever they ask for one to be played', () => {
    const asked = doors(loadLessons()).flatMap(({ ways }) =>
      ways.flatMap(({ path }) => askedToPlay(path.split('#')[1] ?? '') ?? []),
    );
    expect(asked.length).toBeGreaterThan(2);
    for (const id of asked) expect(readyDive(id)?.id).toBe(id);
  });

  it('lead a student straight to the page of the first lesson, and a diver to one before a deep course', () => {
    const [, learn, alone] = doors(loadLessons());
    expect(learn.ways[0].path).toBe('/lessons/01-pressure/');
    expect(alone.ways[0].path).toMatch(/^\/lessons\/\d\d-.*deep-course\/$/);
  });
});

describe('the plate of the front page', () => {
  const chases = () => [...document.querySelectorAll('[data-chase]')].map(({ textContent }) => textContent);
  const hand = () => screen.getByRole('slider', { name: 'Time' });

  it('shows the minute at which the first compartment reaches its limit, as the engine finds it', () => {
    render(<PromiseFigure />);
    const dive = diveOf(overstayed.script);
    const timeline = computeTimeline(dive, 1);
    const { ceilingM } = figuresOf(timeline, dive.settings);
    const firstS = timeline.timeS[ceilingM.findIndex((depthM) => depthM > 0)]!;
    const row = within(screen.getByRole('table', { hidden: true })).getByRole('row', {
      name: /one at its limit/,
      hidden: true,
    });
    const [minutes, seconds] = row.querySelector('th, td')!.textContent.split(':').map(Number);
    expect(Math.abs(minutes! * 60 + seconds! - firstS)).toBeLessThanOrEqual(10);
    expect(chases().join(' ')).toContain(printClock(minutes! * 60 + seconds!));
  });

  it('says how the diver stands where the hand is, and the nearest chase follows it', () => {
    render(<PromiseFigure />);
    expect(hand()).toHaveAttribute(
      'aria-valuetext',
      expect.stringMatching(/^At 22:45, 3.0 m. You need to stop at 3 m/),
    );
    fireEvent.change(hand(), { target: { value: '120' } });
    expect(hand()).toHaveAttribute(
      'aria-valuetext',
      expect.stringMatching(/^At 2:00, 30.0 m. Nothing is owed; you may stay/),
    );
    expect(chases().filter((text) => text.includes('2:00at your hand'))).not.toHaveLength(0);
    expect(chases().join(' ')).toContain('22:45a stop is owed');
  });

  it('plays the same dive on the desk', () => {
    render(<PromiseFigure />);
    const link = screen.getByRole('link', { name: 'Play this dive' });
    expect(askedToPlay(link.getAttribute('href')!.split('#')[1]!)).toBe(overstayed.id);
  });
});

describe('where you were', () => {
  it('says nothing of the kind to someone new', async () => {
    render(<WhereYouWere lessons={LESSONS} />);
    await openShelf();
    expect(screen.getByText(/with no account/)).toBeInTheDocument();
    expect(screen.queryByRole('link')).not.toBeInTheDocument();
  });

  it('leads on to the lesson under way, not to one that is done or one this version does not have', async () => {
    withProgress({ '01-one': { done: ['a'] }, '02-two': { done: ['a', 'b'] }, '99-gone': { done: ['a'] } });
    render(<WhereYouWere lessons={LESSONS} />);
    expect(await screen.findByRole('link', { name: 'One, 1 of 3 steps seen' })).toHaveAttribute(
      'href',
      '/lessons/01-one/',
    );
    expect(screen.getAllByRole('link')).toHaveLength(1);
  });

  it.each(['{', '[]', '{"state":7}'])('is as for someone new where the record is %s', async (record) => {
    localStorage.setItem(progressKind.name, record);
    expect(await beenHere(LESSONS)).toEqual({ lesson: undefined, dive: undefined });
  });

  it('leads back to the desk by the name of the dive on it', async () => {
    await put(await openShelf(), DESK, { script: '# A reef\ndescend to 18 m at 18 m/min\n' });
    render(<WhereYouWere lessons={LESSONS} />);
    expect(await screen.findByRole('link', { name: 'your desk, “A reef”' })).toHaveAttribute('href', '/desk/');
  });
});

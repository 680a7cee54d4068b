import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { TermFinder } from '@/app/lessons/glossary/TermFinder';
import { TermsInPlace } from '@/app/lessons/player/TermsInPlace';
import { taughtIn } from '@/app/lessons/glossary/taught-in';
import { MARKS } from '@/app/pictures/marks/marks';
import { glossaryPath, termsPath } from '@/app/parts/lesson-paths';
import { readGlossary } from '@/app/lessons/read-content';
import { scenarios } from '@/content/scenarios/scenarios';

describe('the glossary', () => {
  it('finds a term by its own word, by another word for it and by what it means', async () => {
    render(
      <>
        <TermFinder count={3} />
        <section data-letter="A">
          <div data-term="age">arterial gas embolism, also AGE: gas in the arteries</div>
        </section>
        <section data-letter="N">
          <div data-term="nst">no-stop time, also NDL: minutes you may still stay</div>
          <div data-term="nitrox">nitrox, also EANx: air with more oxygen, each gas by Dalton’s law</div>
        </section>
      </>,
    );
    const box = screen.getByRole('searchbox', { name: 'Find a term' });
    expect(screen.getByRole('status')).toHaveTextContent('3 terms.');
    await userEvent.type(box, 'ndl');
    expect(screen.getByRole('status')).toHaveTextContent('One term.');
    expect(screen.getByText(/no-stop time/)).toBeVisible();
    expect(screen.getByText(/^nitrox/)).not.toBeVisible();
    expect(screen.getByText(/arterial/)).not.toBeVisible();
    await userEvent.clear(box);
    await userEvent.type(box, 'arteries gas');
    expect(screen.getByText(/arterial/)).toBeVisible();
    await userEvent.clear(box);
    await userEvent.type(box, "dalton's");
    expect(screen.getByText(/^nitrox/)).toBeVisible();
    await userEvent.clear(box);
    await userEvent.type(box, 'zzz');
    expect(screen.getByRole('status')).toHaveTextContent('No term has that in it.');
  });

  it('has the picture of a term where the pictures have a mark for it', () => {
    const known = readGlossary().map(({ id }) => id);
    const pictured = MARKS.flatMap(({ terms = [] }) => terms);
    expect(pictured).toContain('ceiling');
    expect(pictured.filter((id) => !known.includes(id))).toEqual([]);
  });

  it('leads to a ready dive that shows the term, where one helps', () => {
    const dives = new Map(readGlossary().map(({ id, dive }) => [id, dive]));
    expect(dives.get('gas-switch')).toBe('staged');
    expect(dives.get('surface-interval')).toBe('two-reefs');
    expect(dives.get('fast-ascent')).toBe('too-fast');
    // Every ready dive shows something that has a word.
    expect(new Set(dives.values())).toEqual(new Set([undefined, ...scenarios.map(({ id }) => id)]));
  });

  it('has what a student looks up, under the words a student has for it', () => {
    const words = readGlossary().flatMap(({ term, also }) => [term, ...also]);
    expect(words).toEqual(
      expect.arrayContaining([
        'NDL',
        'AGE',
        'arterial gas embolism',
        'DCI',
        'DCS',
        'PFO',
        'ppO2',
        'EANx',
        'off-gassing',
        'run time',
        'reference water',
        'deep stop',
        'Bühlmann’s model',
      ]),
    );
    expect(readGlossary().find(({ id }) => id === 'decompression-sickness')!.also).not.toContain('DCI');
  });

  it('names the first lessons that lead to a term', () => {
    const lesson = (slug: string, text: string) => ({ slug, text, lesson: {} as never });
    const shelf = [lesson('01-a', 'no'), lesson('02-b', 'the [x](term:ceiling)'), lesson('03-c', '[x](term:ceiling)')];
    expect(taughtIn('ceiling', shelf).map(({ slug }) => slug)).toEqual(['02-b', '03-c']);
    expect(taughtIn('ceil', shelf)).toEqual([]);
  });
});

describe('a term in a lesson', () => {
  beforeEach(() => {
    vi.stubGlobal(
      'fetch',
      vi.fn(async (path: string) => {
        expect(path).toBe(termsPath);
        return Response.json({
          ceiling: { term: 'ceiling', also: ['roof'], html: `See <a href="${glossaryPath}#m-value">M-value</a>.` },
          'm-value': { term: 'M-value', also: [], html: 'The most.' },
        });
      }),
    );
  });

  it('opens over the lesson and leaves what is half answered as it is', async () => {
    render(
      <TermsInPlace>
        <input aria-label="Your answer" />
        <a href={`${glossaryPath}#ceiling`}>ceiling</a>
      </TermsInPlace>,
    );
    await userEvent.type(screen.getByRole('textbox'), '12');
    await userEvent.click(screen.getByRole('link', { name: 'ceiling' }));
    const dialog = await screen.findByRole('dialog', { name: 'Ceiling' });
    expect(dialog).toHaveTextContent('Also roof.');
    await userEvent.click(screen.getByRole('link', { name: 'M-value' }));
    expect(await screen.findByRole('dialog', { name: 'M-value' })).toHaveTextContent('The most.');
    await userEvent.click(screen.getByRole('button', { name: 'Close' }));
    expect(screen.queryByRole('dialog')).not.toBeInTheDocument();
    expect(screen.getByRole('textbox')).toHaveValue('12');
  });
});

import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { HandIn } from '@/app/lessons/player/HandIn';
import { useProgress } from '@/app/lessons/player/progress-store';
import { ClassResults } from '@/app/lessons/results/ClassResults';
import { decodeAnswers, encodeAnswers } from '@/lib/files/links/answers-link';
import { encodeLesson } from '@/lib/files/links/lesson-link';
import { ownSlug } from '@/lib/files/links/own-lesson';
import { readHandedIn, writeHandedIn } from '@/lib/files/handed-in';
import { NO_PROGRESS, withPrediction, type Answer } from '@/lib/lesson/progress';
import { EVERY_WAY } from './lesson-parts';
import { valueOf } from '../unit/read';

const LONG = { timeout: 30_000 };
const SLUG = 'every-way';

function paper(name: string, byNumber: number, reason: string, option: number, slug = SLUG): string {
  const given = (answer: Answer, right: boolean, why: string) => ({
    answer,
    right,
    reason: why,
    confidence: 'sure' as const,
  });
  // What a paper says of itself is turned round: the lesson judges, whatever copy of it the paper comes from.
  const first = withPrediction(NO_PROGRESS, slug, 'by-number', given({ by: 'number', value: byNumber }, true, reason));
  const second = withPrediction(first, slug, 'by-choice', given({ by: 'choice', option }, option !== 0, ''));
  return writeHandedIn(second, name);
}

const linkOf = (text: string) => {
  return `https://halftime.example/lessons/results/#${valueOf(encodeAnswers(text))}`;
};

describe('the results of a class', () => {
  it('puts links that learners handed in together by question, and says which of them can’t be read', async () => {
    vi.stubGlobal('fetch', () => Promise.resolve(new Response(EVERY_WAY)));
    render(
      <ClassResults
        terms={[{ id: 'ceiling' }, { id: 'no-stop-time' }]}
        lessons={[{ slug: SLUG, title: 'Every way' }]}
      />,
    );
    const box = screen.getByRole('textbox', { name: /links/ });
    await userEvent.click(screen.getByRole('button', { name: 'Open the links' }));
    expect(box).toHaveFocus();
    expect(box).toHaveAccessibleDescription(/^No link is here yet/);
    await userEvent.paste(
      [
        linkOf(paper('', 20, 'the table', 1)),
        linkOf(paper('Kim', 20, 'my friend', 0)),
        linkOf(paper('', 15, '', 1)),
        'https://halftime.example/',
      ].join('\n'),
    );
    await userEvent.click(screen.getByRole('button', { name: 'Open the links' }));
    expect(screen.getByText(/3 papers open/)).toBeInTheDocument();
    expect(screen.getByRole('alert')).toHaveTextContent('Link 4: This is not a link to answers.');
    const number = within(await screen.findByRole('region', { name: 'By number' }, LONG));
    expect(number.getByText(/3 of 3 answered, 0 of them right at first/)).toBeInTheDocument();
    expect(number.getByText(/, from 15 to 20 min, the middle one 20 min/)).toBeInTheDocument();
    expect(number.getByRole('row', { name: /20 min 2 “my friend” “the table”/ })).toBeInTheDocument();
    expect(number.getByText(/The commonest wrong answer/)).toHaveTextContent(
      'by 2: 20 min – the lesson replies: Too long by',
    );
    // At a glance: whoever teaches sees where to begin.
    expect(screen.getByRole('row', { name: /^By number 0 of 3 0 “my friend”, 1$/ })).toBeInTheDocument();
    expect(screen.getByRole('row', { name: /^By choice 1 of 3 1$/ })).toBeInTheDocument();
    const choice = within(screen.getByRole('region', { name: 'By choice' }));
    expect(choice.getByText(/3 of 3 answered, 1 of them right at first/)).toBeInTheDocument();
    vi.unstubAllGlobals();
  });
});

describe('papers about a lesson that is not on the shelf', () => {
  it('wait for it, and are put together once its link is opened too', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new Error('no lesson of the shelf is wanted')));
    render(<ClassResults terms={[{ id: 'ceiling' }, { id: 'no-stop-time' }]} lessons={[]} />);
    const box = screen.getByRole('textbox', { name: /links/ });
    const open = async (link: string) => {
      await userEvent.click(box);
      await userEvent.paste(link);
      await userEvent.click(screen.getByRole('button', { name: 'Open the links' }));
    };
    await open(linkOf(paper('', 20, 'the table', 1, ownSlug(EVERY_WAY))));
    expect(
      screen.getByText(/not on the shelf\. Open the link or the file of that lesson here too/),
    ).toBeInTheDocument();
    const lesson = encodeLesson(EVERY_WAY);
    await open(`https://halftime.example/lessons/workshop/#${lesson.ok ? lesson.value : ''}`);
    const number = within(await screen.findByRole('region', { name: 'By number' }, LONG));
    expect(number.getByText(/1 of 1 answered, 0 of them right at first/)).toBeInTheDocument();
    expect(screen.queryByText(/not on the shelf/)).toBeNull();
    vi.unstubAllGlobals();
  });
});

describe('handing in', () => {
  it('puts the answers to this lesson, or to all, and no name but one that was typed, into the link', async () => {
    const both = withPrediction(NO_PROGRESS, 'one', 'a', {
      answer: { by: 'number', value: 3 },
      reason: 'so',
      confidence: 'sure',
      right: true,
    });
    useProgress.setState({
      progress: withPrediction(both, 'two', 'b', {
        answer: { by: 'choice', option: 1 },
        reason: '',
        confidence: 'a guess',
        right: false,
      }),
    });
    render(<HandIn slug="one" title="One" onClose={() => undefined} />);
    const handed = () => {
      const link = screen.getByRole<HTMLInputElement>('textbox', { name: 'Link' }).value;
      const text = decodeAnswers(link);
      const read = valueOf(text.ok ? readHandedIn(text.value) : text);
      return { name: read.name, lessons: Object.keys(read.lessons) };
    };
    expect(handed()).toEqual({ name: '', lessons: ['one'] });
    expect(screen.getByRole('img', { name: 'QR code of the link' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('radio', { name: 'All I have begun' }));
    await userEvent.type(screen.getByRole('textbox', { name: /Your name/ }), 'Kim');
    expect(handed()).toEqual({ name: 'Kim', lessons: ['one', 'two'] });
  });
});

import { act, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { PhoneClass } from '@/app/class/phone/PhoneClass';
import { PhoneQuestion } from '@/app/class/phone/PhoneQuestion';
import { AskPanel } from '@/app/class/teach/AskPanel';
import { TeachClass } from '@/app/class/teach/TeachClass';
import { usePhone } from '@/app/class/phone/phone-line';
import { shelfPath } from '@/app/parts/lesson-paths';
import { viewOf } from '@/lib/class/view';
import { after, currentOf, EMPTY_CLASS, type ClassState } from '@/lib/class/class-state';
import { QuestionBoard } from '@/app/class/teach/QuestionBoard';
import { choiceAsk, choiceTruth } from '../unit/class/asks';

afterEach(() => {
  vi.unstubAllGlobals();
  usePhone.setState({ standing: 'out', kept: undefined, view: undefined, answerState: 'none', told: undefined });
});

describe('a phone in a class', () => {
  const asking = after(EMPTY_CLASS, { kind: 'asked', ask: choiceAsk, truth: choiceTruth });

  it('keeps an answer that could not be sent, and says it is on its way', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new Error('no network')));
    const view = viewOf(asking, 1);
    usePhone.setState({
      standing: 'waiting',
      view,
      kept: { code: 'K7M2QX', phone: 'phone-001', token: 'token', name: '', nth: 0, answers: {} },
    });
    render(<PhoneQuestion question={view.question!} />);
    await userEvent.click(screen.getByRole('radio', { name: 'two' }));
    expect(screen.getByRole('radio', { name: 'two' })).toBeChecked();
    expect(screen.getByText('Your answer is on its way.')).toBeInTheDocument();
    expect(localStorage.getItem('halftime.class.phone')).toContain('"option":1');
  });

  it('says that an answer came too late, and not that it counts', async () => {
    vi.stubGlobal('fetch', () => new Promise(() => undefined));
    const closed = after(
      after(asking, {
        kind: 'answered',
        phone: 'phone-001',
        ask: choiceAsk.id,
        round: 0,
        nth: 1,
        answer: { by: 'choice', option: 1 },
      }),
      { kind: 'closed' },
    );
    const view = viewOf(closed, 2);
    const sent = { ask: choiceAsk.id, round: 0, nth: 2, answer: { by: 'choice' as const, option: 2 } };
    const kept = { code: 'K7M2QX', phone: 'phone-001', token: 't', name: '', nth: 2, answers: { 'a1 0': sent } };
    usePhone.setState({ standing: 'in', view, kept, answerState: 'taken' });
    render(<PhoneQuestion question={view.question!} />);
    expect(screen.getByText('The question is closed. Look at the wall.')).toBeInTheDocument();
    act(() => usePhone.setState({ answerState: 'refused' }));
    expect(screen.getByText('The question is closed. Your last answer came too late to count.')).toBeInTheDocument();
  });

  it('that comes back and finds no class says so, and how to leave it', () => {
    usePhone.setState({
      standing: 'missing',
      kept: { code: 'K7M2QX', phone: 'phone-001', token: 't', name: '', nth: 0, answers: {} },
    });
    render(<PhoneClass />);
    expect(screen.getByText(/There is no class K7M 2QX now.*the class is over/)).toBeInTheDocument();
    expect(screen.getByRole('button', { name: 'Leave the class' })).toBeInTheDocument();
  });

  it('shows options that look like markup as they were written', () => {
    const view = viewOf(
      after(EMPTY_CLASS, {
        kind: 'asked',
        ask: { ...choiceAsk, text: '<b>bold</b>', options: ['<img src=x>', 'two'] },
        truth: choiceTruth,
      }),
      1,
    );
    usePhone.setState({ view });
    render(<PhoneQuestion question={view.question!} />);
    expect(screen.getByRole('radio', { name: '<img src=x>' })).toBeInTheDocument();
    expect(screen.getByText('<b>bold</b>')).toBeInTheDocument();
    expect(document.querySelector('img')).toBeNull();
  });
});

describe('the question on the wall', () => {
  const closed = (count: number): ClassState =>
    [
      {
        kind: 'asked' as const,
        ask: choiceAsk,
        truth: { ...choiceTruth, because: ['It is not one.', '', 'Nor three.'] },
      },
      ...[1, 2, 3].slice(0, count).map((n) => ({
        kind: 'answered' as const,
        phone: `phone-00${n}`,
        ask: choiceAsk.id,
        round: 0,
        nth: 1,
        answer: { by: 'choice' as const, option: 0 },
      })),
      { kind: 'closed' as const },
    ].reduce<ClassState>(after, EMPTY_CLASS);

  it('shows one or two answers only to a teacher who asks for them all the same', () => {
    const { rerender } = render(<QuestionBoard asked={currentOf(closed(2))!} />);
    expect(screen.getByText(/3 or more answers hide whose is whose; these are easily told/)).toBeInTheDocument();
    expect(screen.getByRole('button', { name: 'Show the answers all the same' })).toBeInTheDocument();
    rerender(<QuestionBoard asked={currentOf(closed(3))!} />);
    expect(screen.queryByText(/hide whose is whose/)).toBeNull();
    expect(screen.getByRole('button', { name: 'Show how the answers lie' })).toBeInTheDocument();
  });

  it('says why the commonest wrong answer is wrong, in the words that came with the question', () => {
    render(<QuestionBoard asked={currentOf(after(closed(3), { kind: 'truth shown' }))!} />);
    expect(screen.getByText('3 ×').closest('li')).toHaveTextContent('3 × oneIt is not one.');
  });
});

describe('the teacher’s page', () => {
  it('offers the show of hands where no server can hold a class', async () => {
    vi.stubGlobal('fetch', () => Promise.resolve(new Response('<!doctype html>', { status: 404 })));
    render(<TeachClass />);
    expect(await screen.findByText(/show of hands/)).toBeInTheDocument();
    expect(screen.getByRole('link', { name: 'To the lessons' })).toHaveAttribute('href', '/lessons/');
    expect(screen.queryByRole('button', { name: 'Open a class' })).toBeNull();
  });
});

describe('a class its teacher forgot to end', () => {
  const kept = (hoursAgo: number) =>
    JSON.stringify({
      version: 1,
      secret: 'a'.repeat(32),
      code: 'K7M2QX',
      shown: 3,
      born: '',
      seq: 0,
      atMs: Date.now() - hoursAgo * 3600_000,
      state: { ...after(EMPTY_CLASS, { kind: 'asked', ask: choiceAsk, truth: choiceTruth }), here: ['phone-001'] },
    });

  it.each([
    [7, false],
    [9, true],
  ])('%i hours ago: over is %s, and its results are there', async (hours, isOver) => {
    localStorage.setItem('halftime.class.held', kept(hours));
    const asked: string[] = [];
    vi.stubGlobal('fetch', (address: string) => {
      asked.push(address);
      return address === '/here.json'
        ? Promise.resolve(Response.json({ inNetwork: [] }))
        : new Promise(() => undefined);
    });
    render(<TeachClass />);
    if (isOver) {
      expect(await screen.findByRole('alert')).toHaveTextContent(/^Your class is over: for eight hours/);
      expect(screen.getByRole('button', { name: 'Open a class' })).toBeInTheDocument();
      expect(screen.getByText('Results so far (1)')).toBeInTheDocument();
    } else expect(await screen.findByText('Opening the class…')).toBeInTheDocument();
    expect(asked.some((address) => address.startsWith('/class/'))).toBe(!isOver);
    localStorage.clear();
  });
});

it('the lesson a teacher has chosen is there again when the next question is looked for', async () => {
  const shelf = [
    { slug: '01-one', title: 'One' },
    { slug: '02-two', title: 'Two' },
  ];
  vi.stubGlobal('fetch', (address: string) =>
    Promise.resolve(Response.json(address === shelfPath ? shelf : { asks: [], answers: [], scripts: {} })),
  );
  const { unmount } = render(<AskPanel hidden={false} />);
  await userEvent.selectOptions(
    await screen.findByRole('combobox', { name: 'Lesson' }),
    await screen.findByRole('option', { name: 'Two' }),
  );
  unmount();
  render(<AskPanel hidden={false} />);
  await waitFor(() => expect(screen.getByRole('combobox', { name: 'Lesson' })).toHaveDisplayValue('Two'));
  history.replaceState(null, '', '/');
});

it('half a question of one’s own is still there after another was asked, and gone once it was asked itself', async () => {
  vi.stubGlobal('fetch', () => new Promise(() => undefined));
  const user = userEvent.setup();
  const { rerender } = render(<AskPanel hidden={false} />);
  await user.click(screen.getByRole('radio', { name: 'Your own' }));
  await user.type(screen.getByRole('textbox', { name: 'Your question' }), 'Who leads?');
  rerender(<AskPanel hidden />);
  expect(screen.queryByRole('textbox', { name: 'Your question' })).toBeNull();
  rerender(<AskPanel hidden={false} />);
  expect(screen.getByRole('textbox', { name: 'Your question' })).toHaveValue('Who leads?');
  await user.type(screen.getByRole('textbox', { name: 'Answer A' }), 'one');
  await user.type(screen.getByRole('textbox', { name: 'Answer B' }), 'sixteen');
  await user.click(screen.getByRole('button', { name: 'Ask it' }));
  for (const field of screen.getAllByRole('textbox')) expect(field).toHaveValue('');
});

describe('a form of the class with something wrong in it', () => {
  it('joining: each press leads to the code and says again what a code is', async () => {
    const user = userEvent.setup();
    render(<PhoneClass />);
    const code = screen.getByRole('textbox', { name: 'The code on the wall' });
    await user.type(code, 'K7M');
    let before: HTMLElement | undefined;
    for (let press = 0; press < 2; press += 1) {
      await user.click(screen.getByRole('button', { name: 'Join the class' }));
      expect(code).toHaveFocus();
      expect(code).toBeInvalid();
      const said = screen.getByRole('alert');
      expect(said).toHaveTextContent(/^The code on the wall: A code has six letters and digits/);
      expect(said).not.toBe(before);
      before = said;
    }
  });

  it('a question of one’s own: each press leads to what is still to be written', async () => {
    vi.stubGlobal('fetch', () => new Promise(() => undefined));
    const user = userEvent.setup();
    render(<AskPanel hidden={false} />);
    await user.click(screen.getByRole('radio', { name: 'Your own' }));
    const ask = screen.getByRole('button', { name: 'Ask it' });
    const question = screen.getByRole('textbox', { name: 'Your question' });
    await user.click(ask);
    expect(question).toHaveFocus();
    expect(screen.getByRole('alert')).toHaveTextContent('Your question: Write the question first.');
    await user.type(question, 'Who leads?');
    await user.type(screen.getByRole('textbox', { name: 'Answer A' }), 'one');
    await user.click(ask);
    expect(question).toBeValid();
    expect(screen.getByRole('textbox', { name: 'Answer B' })).toHaveFocus();
    expect(screen.getByRole('alert')).toHaveTextContent('Answer B: Write at least two answers to choose from.');
  });
});

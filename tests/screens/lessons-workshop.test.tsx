import { readFileSync } from 'node:fs';
import { act, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { TryOut } from '@/app/lessons/workshop/looks/TryOut';
import { Workshop } from '@/app/lessons/workshop/Workshop';
import { useStatus } from '@/app/parts/status';
import { cautions } from '@/content/cautions';
import { encodeLesson } from '@/lib/files/links/lesson-link';
import { readLesson } from '@/lib/lesson/read-lesson';
import { EVERY_WAY, known } from './lesson-parts';
import { memoryShelf } from './memory-shelf';

const LONG = { timeout: 30_000 };
const shelf = vi.hoisted(() => ({ current: undefined as unknown }));
vi.mock('@/app/keep/open-shelf', () => ({ openShelf: () => Promise.resolve(shelf.current) }));
const saved = vi.hoisted(() => ({ files: [] as { name: string; text: string }[] }));
vi.mock('@/app/parts/save-file', async (original) => ({
  ...(await original<typeof import('@/app/parts/save-file')>()),
  saveFile: (name: string, text: string) => saved.files.push({ name, text }),
}));

const terms = [{ id: 'ceiling' }, { id: 'no-stop-time' }];

beforeEach(() => {
  shelf.current = memoryShelf();
  saved.files = [];
  window.location.hash = '';
});

function open() {
  return render(<Workshop terms={terms} lessons={[{ slug: '04-no-stop-time', title: 'The no-stop time' }]} />);
}

async function importLesson(text: string) {
  await userEvent.upload(
    screen.getByLabelText('Import a file'),
    new File([text], 'lesson.yaml', { type: 'application/yaml' }),
  );
  await screen.findByRole('navigation', { name: 'Parts of the lesson' }, LONG);
}

const sound = () => screen.findByText(/The lesson is sound/, undefined, LONG);

describe('the workshop', () => {
  it('begins a lesson that is sound, and adds a step of each kind that is', async () => {
    open();
    await userEvent.click(await screen.findByRole('button', { name: 'Take its dive' }));
    const link = screen.getByRole('textbox', { name: 'Link to a desk' });
    expect(await screen.findByText('Paste the link of a desk here first.')).toBeInTheDocument();
    expect(link).toHaveFocus();
    expect(link).toBeInvalid();
    await userEvent.click(screen.getByRole('button', { name: 'New lesson' }));
    await sound();
    for (const kind of ['predict', 'run', 'try', 'check']) {
      await userEvent.selectOptions(screen.getByRole('combobox', { name: 'A new step' }), kind);
      await userEvent.click(screen.getByRole('button', { name: 'Add a new step' }));
    }
    expect(
      within(screen.getByRole('navigation', { name: 'Parts of the lesson' })).getAllByRole('listitem'),
    ).toHaveLength(6);
    await waitFor(() => expect(screen.getByText(/The lesson is sound[^…]*$/)).toBeInTheDocument(), LONG);
  });

  it('makes a lesson without a word of YAML, in the presses the guide names', async () => {
    let [presses, boxes] = [0, 0];
    const press = async (name: string | RegExp) => {
      presses += 1;
      await userEvent.click(await screen.findByRole('button', { name }, LONG));
    };
    const write = (label: string, value: string) => {
      boxes += 1;
      fireEvent.change(screen.getByRole('textbox', { name: label }), { target: { value } });
    };
    const add = async (kind: string) => {
      presses += 1;
      await userEvent.selectOptions(screen.getByRole('combobox', { name: 'A new step' }), kind);
      await press('Add a new step');
    };
    open();
    await press('New lesson');
    write('Title', 'A wall at thirty-three metres');
    write('In one line', 'How soon the time on a deep wall runs out.');
    write('Objective 1', 'You can say how much time a deep wall leaves.');
    await press('Its dives');
    write(
      'Script',
      'gas: air\ngradient factors: 85/85\ndescend to 33 m at 18 m/min\nstay 12 min\nascend to surface at 9 m/min\n',
    );
    await press(/^1\. Something to read/);
    write('Title', 'The wall');
    write('Text', 'You drop down a wall on air, and the ledge is deep.');
    await add('predict');
    write('Title', 'How long on the ledge?');
    await add('run');
    await add('try');
    await press(/^5\. What to take along/);
    write('Text', 'Deep is short.');
    write('Point 1', 'On a deep wall the time is gone before you have looked round.');
    await screen.findByText(/^The lesson is sound[^…]*$/, undefined, LONG);
    expect(screen.queryByText(/Not finished/)).not.toBeInTheDocument();
    await press('Pass on');
    await screen.findByRole('dialog', { name: 'Pass this lesson on' });
    const told = /takes (\d+) presses, and (\d+) boxes written in/.exec(
      readFileSync('content/lessons/README.md', 'utf8'),
    );
    expect(told?.slice(1).map(Number)).toEqual([presses, boxes]);
  });

  it('says what is wrong where it is written, and leads there', async () => {
    open();
    await importLesson(EVERY_WAY);
    await sound();
    await userEvent.click(screen.getByRole('button', { name: /^2\. By number/ }));
    const answer = screen.getByRole('textbox', { name: 'The answer' });
    await userEvent.clear(answer);
    await userEvent.type(answer, 'noStopsMin at arrival');
    expect(await screen.findByText('One thing to mend.', undefined, LONG)).toBeInTheDocument();
    expect(answer).toBeInvalid();
    expect(answer).toHaveAccessibleDescription(/Did you mean noStopMin\?/);
    expect(screen.getByRole('button', { name: /^2\. By number.*1 to mend/ })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'About the lesson' }));
    await userEvent.click(screen.getByRole('button', { name: /^Line \d+$/ }));
    expect(screen.getByRole('textbox', { name: 'The answer' })).toHaveValue('noStopsMin at arrival');
    await waitFor(() => expect(screen.getByRole('textbox', { name: 'The answer' })).toHaveFocus());
    await userEvent.click(screen.getByRole('button', { name: 'About the lesson' }));
    await userEvent.click(screen.getByRole('button', { name: 'Teach it to a class with phones' }));
    await waitFor(() => expect(screen.getByRole('textbox', { name: 'The answer' })).toHaveFocus());
    expect(useStatus.getState().message?.text).toMatch(/^Mend this first\. Line \d+: .*Did you mean noStopMin\?/);
  });

  it('exports the very text it was given under the caution, and changed, a text that reads back', async () => {
    open();
    const remarked = `# By hand\n${EVERY_WAY}`;
    await importLesson(remarked);
    await userEvent.click(screen.getByRole('button', { name: 'Export' }));
    expect(saved.files).toEqual([{ name: 'every-way.yaml', text: `# ${cautions.general}\n${remarked}` }]);
    const title = screen.getByRole('textbox', { name: 'Title' });
    await userEvent.clear(title);
    await userEvent.type(title, 'Mine');
    await userEvent.click(screen.getByRole('button', { name: 'Export' }));
    const { text } = saved.files[1]!;
    expect(text).toContain('# By hand');
    const read = readLesson(text, { known });
    expect(read.ok && read.lesson.title).toBe('Mine');
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    await userEvent.click(screen.getByRole('button', { name: 'Export' }));
    expect(saved.files[2]!.text).toContain('title: Every way');
  });

  it('orders, copies and removes steps', async () => {
    open();
    await importLesson(EVERY_WAY);
    const titles = () =>
      within(screen.getByRole('navigation', { name: 'Parts of the lesson' }))
        .getAllByRole('listitem')
        .map(({ textContent }) => /^\d+\. (By (?:number|choice|curve)|To begin|Check|In short)/.exec(textContent)?.[1]);
    await userEvent.click(screen.getByRole('button', { name: /^1\. To begin/ }));
    await userEvent.click(screen.getByRole('button', { name: 'Move down step 1' }));
    expect(titles()).toEqual(['By number', 'To begin', 'By choice', 'By curve', 'Check', 'In short']);
    await userEvent.click(screen.getByRole('button', { name: 'Copy step 2' }));
    expect(titles()).toEqual(['By number', 'To begin', 'To begin', 'By choice', 'By curve', 'Check', 'In short']);
    await userEvent.click(
      within(screen.getByRole('group', { name: 'Step 3' })).getByRole('button', { name: 'Remove step 3' }),
    );
    expect(titles()).toEqual(['By number', 'To begin', 'By choice', 'By curve', 'Check', 'In short']);
  });

  it('lets the writer meet the lesson as a student', async () => {
    open();
    await importLesson(EVERY_WAY);
    await sound();
    await userEvent.click(screen.getByRole('radio', { name: 'Try it as a student' }));
    await userEvent.click(await screen.findByRole('button', { name: 'Go on' }, LONG));
    expect(screen.getByRole('heading', { name: 'By number' })).toBeInTheDocument();
    expect(window.location.hash).toBe('');
  });

  it('has the lesson beside the form as others will see it, at the step that is written, and follows what is typed', async () => {
    open();
    await importLesson(EVERY_WAY);
    await sound();
    await userEvent.click(screen.getByRole('button', { name: /^2\. By number/ }));
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Beside the form' }), 'phone');
    const look = within(await screen.findByRole('region', { name: 'As it looks' }, LONG));
    expect(await look.findByRole('heading', { name: 'By number' }, LONG)).toBeInTheDocument();
    const title = screen.getByRole('textbox', { name: 'Title' });
    await userEvent.clear(title);
    await userEvent.type(title, 'In numbers');
    expect(await look.findByRole('heading', { name: 'In numbers' }, LONG)).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: /^3\. By choice/ }));
    expect(await look.findByRole('heading', { name: 'By choice' }, LONG)).toBeInTheDocument();
  });

  it('has a student sheet, which gives no answer away, and a key, which has them and the notes', async () => {
    open();
    await importLesson(EVERY_WAY);
    await sound();
    await userEvent.click(screen.getByRole('radio', { name: 'On paper' }));
    const title = await screen.findByRole('heading', { name: 'By number' }, LONG);
    const paper = title.closest('[data-units]')!;
    expect(paper).toHaveTextContent('How long?');
    expect(paper).toHaveTextContent(cautions.general);
    expect(paper.textContent).not.toMatch(/It is\s+1[12]|Who knows|The time ran out/);
    await userEvent.click(screen.getByRole('radio', { name: 'Answer key' }));
    const key = screen.getByRole('heading', { name: 'By number' }).closest('[data-units]')!;
    expect(key).toHaveTextContent(/It is\s+11\smin/);
    expect(key).toHaveTextContent('The time ran out.');
    expect(key).toHaveTextContent('Who knows?');
    expect(screen.getByRole('button', { name: 'Print it' })).toBeInTheDocument();
  });

  it('says so where what works a lesson out cannot be fetched', async () => {
    class Unfetched {
      onerror: (() => void) | undefined;
      postMessage() {
        setTimeout(() => this.onerror?.());
      }
      terminate() {}
    }
    vi.stubGlobal('Worker', Unfetched);
    try {
      render(<TryOut text={EVERY_WAY} known={known} />);
      expect(await screen.findByRole('alert')).toHaveTextContent(
        'could not be fetched; you may be offline. Nothing is lost',
      );
    } finally {
      vi.unstubAllGlobals();
    }
  });

  it('keeps a lesson on this machine, and brings back one deleted by mistake', async () => {
    const first = open();
    await importLesson(EVERY_WAY);
    first.unmount();
    open();
    await userEvent.click(await screen.findByRole('button', { name: 'Open Every way' }, LONG));
    expect(screen.getByRole('heading', { name: 'Every way' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'All your lessons' }));
    await userEvent.click(screen.getByRole('button', { name: 'Delete Every way' }));
    expect(screen.queryByRole('button', { name: 'Open Every way' })).not.toBeInTheDocument();
    act(() => useStatus.getState().message?.action?.run());
    expect(screen.getByRole('button', { name: 'Open Every way' })).toBeInTheDocument();
  });

  it('holds back a lesson that came in a link until one takes it, and keeps nothing of it unasked', async () => {
    const packed = encodeLesson(EVERY_WAY);
    window.location.hash = packed.ok ? packed.value : '';
    open();
    expect(await screen.findByRole('heading', { name: 'A lesson came with this link: Every way' })).toBeInTheDocument();
    // A reload in the middle of it finds the lesson again.
    expect(window.location.hash).not.toBe('');
    await userEvent.click(await screen.findByRole('button', { name: 'Take the lesson' }, LONG));
    expect(await screen.findByRole('heading', { name: 'To begin' }, LONG)).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Leave it' }));
    expect(window.location.hash).toBe('');
    expect(await screen.findByText(/None yet/)).toBeInTheDocument();
  });

  it('tells what is wrong with a hostile one and runs none of it', async () => {
    const hostile = EVERY_WAY.replace(
      'text: At {{30 m}} the pressure is {{ambientBar at arrival}}.',
      'text: "<img src=x onerror=alert(1)> [x](javascript:alert(1)) {{constructor}}"',
    );
    const packed = encodeLesson(hostile);
    window.location.hash = packed.ok ? packed.value : '';
    const { container } = open();
    await screen.findByText('It cannot be run as it stands:', undefined, LONG);
    expect(screen.getByText(/looks like HTML/)).toBeInTheDocument();
    expect(screen.getByText(/is not a link that is followed here/)).toBeInTheDocument();
    expect(screen.queryByRole('button', { name: 'Take the lesson' })).not.toBeInTheDocument();
    expect(container.querySelector('img')).toBeNull();
  });

  it('says what is wrong with a link that was cut', async () => {
    const packed = encodeLesson(EVERY_WAY);
    window.location.hash = packed.ok ? packed.value.slice(0, -9) : '';
    open();
    expect(await screen.findByText(/Ask for the link again/)).toBeInTheDocument();
  });

  it('refuses a file that is too large for a lesson', async () => {
    open();
    await userEvent.upload(await screen.findByLabelText('Import a file'), new File(['x'.repeat(130_000)], 'big.yaml'));
    expect(await screen.findByText(/“big\.yaml” is too large for a lesson/)).toBeInTheDocument();
  });
});

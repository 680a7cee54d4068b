import { describe, expect, it } from 'vitest';
import { openStep } from '@/app/lessons/own-page/opened-step';
import { packStep, type PackedStep } from '@/app/lessons/own-page/pack-step';
import { setHtml } from '@/app/lessons/own-page/set-html';
import { lessonIn } from '@/app/lessons/in-units';
import { loadLesson, loadPrepared } from '@/app/lessons/load-lessons';
import type { PredictStep, PreparedLesson, PreparedStep } from '@/app/lessons/prepared';
import { decodeStep, encodeStep } from '@/lib/files/links/step-link';
import type { StepPage } from '@/lib/lesson/step-page';
import { valueOf } from '../unit/read';

const SITE = 'https://example.org';

/** One of each way to answer, with figures of its own in feet, a formula, and a run that is cut short. */
const QUESTIONS = [
  ['06-stop-or-ceiling', 'left-out'],
  ['07-overstaying', 'how-much'],
  ['03-sixteen-tissues', 'the-slowest'],
  ['05-limits-and-ceiling', 'draw-the-ceiling'],
  ['12-enriched-air', 'how-deep'],
] as const;

function packed(slug: string, step: string, run = true): PackedStep {
  return valueOf(packStep(loadLesson(slug).lesson, slug, { step, run, site: SITE, units: 'metric' }));
}

/** A text as it is read: without links, which lead nowhere or out of a page of its own. */
function read(html: string | undefined): string {
  const made = document.createElement('div');
  made.innerHTML = html ?? '';
  return made.textContent;
}

/** All that a question says and takes for right, as it is read. */
function told({ steps }: PreparedLesson, id: string) {
  const { title, html, more, after, choice, number, draw } = steps.find((step) => step.id === id) as PredictStep;
  return {
    title,
    texts: [html, more, after, ...(choice ?? []).flatMap((option) => [option.html, option.because])].map(read),
    right: choice?.map(({ right }) => right),
    number: number && { answer: number.answer, within: number.within, printed: number.printed },
    draw: draw && { ...draw, features: draw.features.length, wrong: draw.wrong.length },
  };
}

/** What a run says, and when; which pictures come along is another matter. */
function run(step: PreparedStep) {
  if (step.kind !== 'run') throw new Error(`${step.title} is no run`);
  const { html, more, watch, script, readings, fromS, toS, untilS } = step;
  const said = watch.map(({ atS, html }) => [atS, read(html)]);
  return { texts: [read(html), read(more)], said, script, readings, fromS, toS, untilS };
}

/** The data of a page, to be spoilt. */
function dataOf(slug: string, step: string): StepPage {
  return valueOf(decodeStep(packed(slug, step).fragment));
}

function reopened(data: StepPage) {
  return openStep(valueOf(encodeStep(data)), undefined);
}

describe('a question of a lesson on a page of its own', () => {
  it.each(QUESTIONS)(
    'says and takes for right what the lesson does, in either system of units: %s, %s',
    (slug, step) => {
      const opened = valueOf(openStep(packed(slug, step).fragment, undefined));
      expect(opened.site).toBe(SITE);
      expect(opened.lesson.slug).toBe(slug);
      for (const units of ['metric', 'imperial'] as const) {
        const lesson = lessonIn(loadPrepared(slug), units);
        const own = lessonIn(opened.lesson, units);
        expect(told(own, step)).toEqual(told(lesson, step));
        expect(run(own.steps[1]!)).toEqual(run(lesson.steps.find(({ id }) => id === own.steps[1]!.id)!));
      }
    },
  );

  it('carries the question alone where the run is not wanted, and nothing for the teacher', () => {
    const alone = decodeStep(packed('06-stop-or-ceiling', 'left-out', false).fragment);
    expect(alone.ok && alone.value.lesson.steps.map(({ id, notes, claims }) => [id, notes, claims])).toEqual([
      ['left-out', undefined, []],
    ]);
  });

  it('names what else its run would tell, and says in words no more than the question and its dive', () => {
    const { run, words } = packed('06-stop-or-ceiling', 'left-out');
    expect(run).toMatchObject({ title: 'See the debt paid', between: ['Which is counted first?'] });
    expect(words).toContain('What does the unit do?');
    expect(words).toContain('ascend');
    expect(words).not.toMatch(/asks for nothing|2:40/);
  });

  it('is refused where it was changed, carries another step, or can’t be worked out', () => {
    const { fragment } = packed('06-stop-or-ceiling', 'left-out');
    const spoilt = `${fragment.slice(0, 40)}${fragment[40] === 'A' ? 'B' : 'A'}${fragment.slice(41)}`;
    expect(openStep(spoilt, undefined)).toMatchObject({
      what: expect.stringContaining('not as it was saved') as string,
    });
    const data = dataOf('06-stop-or-ceiling', 'left-out');
    const [question, run] = data.lesson.steps;
    for (const steps of [[run!], [question!, question!], [question!, run!, run!]])
      expect(reopened({ ...data, lesson: { ...data.lesson, steps } })).toMatchObject({
        what: 'What this page carries is no question of a lesson.',
      });
    const worldless = { ...question!, text: 'How much? {{noStopMin at 900 min}}' };
    for (const steps of [
      [worldless],
      [
        { ...question!, script: 'elsewhere' },
        { ...run!, from: 'nonsense(3)' },
      ],
    ])
      expect(reopened({ ...data, lesson: { ...data.lesson, steps } as never })).toMatchObject({
        what: expect.stringMatching(/can’t be worked out|no question/) as string,
      });
    expect(openStep('step-2.abc', undefined)).toMatchObject({ what: 'This question was made by a newer version.' });
  });

  it('leads to the site it was saved from and nowhere else', () => {
    const html = `<p>A <a href="/lessons/glossary/#ceiling">ceiling</a> and <a href="https://elsewhere.example/">more</a></p>`;
    expect(setHtml(html, SITE)).toBe(
      `<p>A <a href="${SITE}/lessons/glossary/#ceiling" target="_blank" rel="noreferrer">ceiling</a> and more</p>`,
    );
    expect(setHtml(html, undefined)).toBe('<p>A ceiling and more</p>');
    expect(dataOf('06-stop-or-ceiling', 'left-out').site).toBe(SITE);
    const from = (site: string) => reopened({ ...dataOf('06-stop-or-ceiling', 'left-out'), site });
    expect(from('javascript:alert(1)//').ok).toBe(false);
  });

  it('sets nothing but words, emphasis, lists, tables and formulas, whatever came in their place', () => {
    for (const hostile of [
      '<img src="x" onerror="window.ran = true">',
      '<script>window.ran = true</script>',
      '<a href="javascript:window.ran=true">a</a>',
      '<a href="//elsewhere.example/">a</a>',
      '<svg onload="window.ran = true"><a href="javascript:1"><text>a</text></a></svg>',
      '<iframe srcdoc="<script>parent.ran = true</script>"></iframe>',
      '<form action="https://elsewhere.example"><input name="password"><button>Go</button></form>',
      '<math><mtext><table><mglyph><style><!--</style><img title="--&gt;&lt;img src=1 onerror=alert(1)&gt;">',
      '<math href="javascript:1"><mi xlink:href="javascript:1">x</mi></math>',
      '<p style="position:fixed;inset:0" class="verdict" onclick="ran = true" id="dive">a</p>',
      '<style>* { display: none }</style>',
      '<template><img src=x></template><object data="x"></object><base href="https://elsewhere.example/">',
    ]) {
      const made = document.createElement('div');
      made.innerHTML = setHtml(`before ${hostile} after`, SITE);
      expect(made.textContent, hostile).toContain('before');
      const names = [...made.querySelectorAll('*')].flatMap((element) => [
        element.localName,
        ...element.getAttributeNames(),
      ]);
      expect(
        names.filter((name) => !/^(p|a|div|span|table|tbody|tr|td|math|mtext|mi)$/.test(name)),
        hostile,
      ).toEqual([]);
    }
  });
});

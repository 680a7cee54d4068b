import { describe, expect, it } from 'vitest';
import { LONGEST_LESSON } from '@/lib/lesson/lesson';
import { readLesson } from '@/lib/lesson/read-lesson';
import { seeded } from '@/lib/quantity/seeded';
import { SEED } from '@/tests/laws/law';
import { KNOWN, SOUND, told } from './made-lessons';

const without = (text: string, instead: string) => {
  if (!SOUND.includes(text)) throw new Error(`the made lesson does not say ${text}`);
  return SOUND.replace(text, instead);
};
const lineOf = (text: string) => SOUND.slice(0, SOUND.indexOf(text)).split('\n').length;

describe('reading a lesson', () => {
  it('takes a sound one', () => {
    expect(told(SOUND)).toEqual(['sound']);
  });

  it.each([
    [
      'a key misspelt',
      'summary: For tests.',
      'sumary: For tests.',
      'summary: For tests.',
      ['“sumary” is not known here. Did you mean summary?', '“summary” is missing. Add summary, a text.'],
    ],
    [
      'a kind of step there is not',
      'kind: read',
      'kind: watch',
      'kind: read',
      ['This is not a kind of step. Write kind: and one of read, predict, run, explain, try, check, recap.'],
    ],
    [
      'a text where a number belongs',
      'minutes: 5',
      'minutes: five',
      'minutes: 5',
      ['“minutes” is not a number. Write digits without quotation marks.'],
    ],
    [
      'a level there is not',
      'level: first steps',
      'level: easy',
      'level: first steps',
      ['“level” is not one of the values there are. Write one of first steps, further, instruments, deep course.'],
    ],
    [
      'a script that does not parse',
      '      stay 20 min\n',
      '      stay 20 mni\n',
      '      stay 20 min\n',
      [expect.stringContaining('mni')],
    ],
    [
      'a fact misspelt in a text',
      '{{noStopMin at leaving}} are',
      '{{noStopsMin at leaving}} are',
      'On leaving',
      ['In “{{noStopsMin at leaving}}”: “noStopsMin” is not a fact that is known here. Did you mean noStopMin?'],
    ],
    [
      'a link to a term there is not',
      'term:ceiling',
      'term:celing',
      'On leaving',
      ['“celing” is not a term of the glossary. Did you mean ceiling?'],
    ],
    [
      'a link to elsewhere',
      'term:ceiling',
      'https://example.org',
      'On leaving',
      ['“https://example.org” is not a link that is followed here. Link to term:ceiling, lesson:4 or page:desk.'],
    ],
    ['HTML', 'See the', 'See <b>the</b>', 'On leaving', ['“<b>” looks like HTML, which is not shown. Write Markdown.']],
    [
      'a claim that is not so',
      'ceilingM at leaving > 0',
      'ceilingM at leaving > 9',
      '- ceilingM at leaving > 0',
      ['This is not so: ceilingM at leaving > 9. Change the text, or the dive.'],
    ],
    [
      'a picture there is not',
      'show: [profile]',
      'show: [profil]',
      'show: [profile]',
      ['“profil” is not a picture. Did you mean profile?'],
    ],
    [
      'a goal the beginning meets',
      'maxDepthM >= 30 and',
      'maxDepthM >= 30 or',
      'goal:',
      ['The script the learner begins with meets this goal already. Begin with another script, or ask for more.'],
    ],
    [
      'a goal its own script does not reach',
      '      stay 5 min\n',
      '      stay 25 min\n',
      'reach:',
      [expect.stringContaining('This script does not meet the goal. Deepest ceiling: 3.8 m, asked none.')],
    ],
    [
      'a question without a wrong number left',
      'freshNoStopMin(depth - 6 m)',
      'noStopMin at arrival',
      'pick:',
      ['No wrong number is left to pick: all read like the right one. Add a mistake that leads to another number.'],
    ],
    [
      'a drawn value the script asks for and nobody draws',
      'descend to {depth}',
      'descend to {deep}',
      '        script: |',
      [expect.stringContaining('asks for “deep”, which is not drawn')],
    ],
    [
      'two steps of one name',
      'id: foretell',
      'id: begin',
      'id: foretell',
      ['Two steps are called “begin”. Give each a name of its own.'],
    ],
    [
      'no way to answer',
      '    number:\n      answer: noStopMin at arrival\n      within: 2 min\n      wrong:\n        - when: given > answer\n          because: That is {{given - answer}} too long.\n      otherwise: Not so.\n',
      '',
      '- kind: predict',
      ['There is no way to answer this. Write exactly one of choice, number, draw.'],
    ],
    [
      'a condition on what is not known',
      'when: given > answer',
      'when: guess > answer',
      '        - when',
      [expect.stringContaining('“guess” is not a fact')],
    ],
  ])('tells the line of %s', (_, text, instead, place, expected) => {
    const line = lineOf(place);
    const faults = told(without(text, instead));
    expect(faults).toHaveLength(expected.length);
    const lines = faults.map((fault) => Number(/^\d+/.exec(fault)![0]));
    // A mistake inside a block of text is told by its own line, one below the line that opens the block or more.
    expect(lines).toContain(line);
    expect(faults.map((fault) => fault.replace(/^\d+: /, ''))).toEqual(expect.arrayContaining([...expected]));
  });

  describe('opening a working', () => {
    const opening = (reading: string, at: string) =>
      told(
        `${SOUND}  - kind: explain\n    id: open\n    title: Open it\n    text: Why?\n    reading: ${reading}\n    at: ${at}\n`,
      );

    it.each([
      ['no-stop', 'arrival'],
      ['tension-8', 'end'],
      ['rate', 'arrival'],
      ['no-fly', 'surfacing'],
      ['desaturation', 'end'],
    ])('takes %s at %s', (reading, at) => {
      expect(opening(reading, at)).toEqual(['sound']);
    });

    it('refuses what a unit does not show at that moment, and a reading there is not', () => {
      expect(opening('no-fly', 'arrival')).toEqual([
        expect.stringContaining('A unit that is set right does not show “no-fly” at this moment. Choose a moment'),
      ]);
      expect(opening('no-flying', 'surfacing')).toEqual([
        expect.stringContaining('“no-flying” is not a reading whose working can be opened. Did you mean no-fly?'),
      ]);
    });
  });

  it('asks a question with each of the values that are drawn for it, the shallowest of five among them', () => {
    const text = without('Too shallow.', 'At {{freshNoStopMin(depth - 20 m)}}.');
    const read = readLesson(text, { known: KNOWN, draws: 12 });
    expect(read).toMatchObject({
      ok: false,
      faults: [{ what: expect.stringContaining('This depth is out of reach.') }],
    });
  });

  it('tells what is not YAML at all', () => {
    expect(told('steps: [')).toEqual([expect.stringMatching(/^\d+: This is not YAML: /)]);
    expect(told('')).toEqual([expect.stringContaining('The lesson')]);
    expect(told('just words')).toEqual([expect.stringContaining('The lesson is not a group of lines.')]);
  });
});

describe('a lesson from a stranger', () => {
  it('is read no further than its bounds', () => {
    expect(told(SOUND + '#'.repeat(LONGEST_LESSON))[0]).toMatch(
      /^1: This lesson has \d+ characters; 120000 are read\./,
    );
    expect(told(SOUND.replace('For tests.', 'x'.repeat(300)))).toEqual([
      expect.stringContaining('“summary” is too long: at most 200 characters.'),
    ]);
  });

  it('cannot swell by references', () => {
    const bomb = `a: &a [x, x, x]\nb: &b [*a, *a, *a]\nc: [*b, *b, *b]\n`;
    expect(told(bomb)).toEqual([
      '1: This lesson refers from one place to another with * or &. Write everything out where it is needed.',
    ]);
  });

  it('cannot reach into objects by its names', () => {
    const steps = SOUND.replace(
      'scripts:\n  main:',
      'scripts:\n  __proto__:\n    title: x\n    script: "gas: air"\n  main:',
    );
    const read = readLesson(steps, { known: KNOWN });
    expect(read.ok && Object.keys(read.lesson.scripts)).toEqual(['main']);
    expect(told(SOUND.replace('ceilingM at leaving > 0', 'constructor > 0'))).toEqual([
      expect.stringContaining('“constructor” is not a fact'),
    ]);
    expect(
      told(SOUND.replace('title: A made lesson', '"__proto__": { "polluted": true }\ntitle: A made lesson')).join(),
    ).toContain('__proto__');
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  it('cannot make types of its own in YAML', () => {
    for (const tag of ['!!js/function "() => 1"', '!!binary aGVsbG8=', '!!set {a, b}', '!custom x']) {
      expect(() => told(SOUND.replace('For tests.', tag))).not.toThrow();
    }
  });

  it('cannot hold things up: the longest expressions are still answered at once', () => {
    const heavy = Array.from(
      { length: 12 },
      () => `      - ${Array.from({ length: 12 }, (_, i) => `(highest tensionBar(${i + 1})) > 0`).join(' and ')}`,
    ).join('\n');
    const before = process.cpuUsage();
    expect(told(SOUND.replace('      - ceilingM at leaving > 0', heavy))).toEqual(['sound']);
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(20);
  });

  it('never makes reading throw, whatever is cut, doubled or put in its place', () => {
    const spoilers = [
      '',
      ' ',
      '{{',
      '}}',
      ': ',
      '- ',
      '"',
      '|',
      '\u0000',
      '\ud800',
      '<script>',
      '[[',
      '*x',
      '&x y',
      '!!str',
      '{a: 1}',
      '9e999',
      '-1',
      'null',
      '~',
    ];
    const lines = SOUND.split('\n');
    const chance = seeded(SEED);
    const next = (below: number) => Math.floor(chance() * below);
    for (let i = 0; i < 150; i += 1) {
      const spoilt = [...lines];
      const at = next(lines.length);
      const line = lines[at]!;
      const cut = next(line.length + 1);
      spoilt[at] =
        line.slice(0, cut) + spoilers[next(spoilers.length)]! + line.slice(next(2) === 0 ? cut : line.length);
      expect(() => readLesson(spoilt.join('\n'), { known: KNOWN, draws: 1 })).not.toThrow();
    }
  });
});

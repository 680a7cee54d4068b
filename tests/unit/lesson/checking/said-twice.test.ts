import { describe, expect, it } from 'vitest';
import { SOUND, told } from '../made-lessons';

/** The made lesson with one mistake in it: what reading it comes to, and the line of a text in it. */
function spoilt(text: string, instead: string): string[] {
  if (!SOUND.includes(text)) throw new Error(`the made lesson does not say ${text}`);
  return told(SOUND.replace(text, instead));
}
const lineOf = (text: string, whole = SOUND) => whole.slice(0, whole.indexOf(text)).split('\n').length;

const REPLY = `        - when: given > answer
          because: That is {{given - answer}} too long.
      otherwise: Not so.
`;
const replies = (written: string) => SOUND.replace(REPLY, written);

const CHOICE = `      - id: which
        ask: Which is it?
        choice:
          - { text: This., right: true, because: So it is. }
          - { text: That., because: It only looks so. }
`;

describe('what a lesson says twice is held against itself', () => {
  it.each([
    [
      'an answer that is another value than what is said after it',
      'answer: noStopMin at arrival\n      within',
      'answer: noStopMin at 5 min\n      within',
      'id: foretell',
    ],
    [
      'a number to pick that is not what its reason says',
      'pick:\n          answer: noStopMin at arrival',
      'pick:\n          answer: freshNoStopMin(depth + 6 m)',
      'id: left',
    ],
  ])('%s', (_, text, instead, place) => {
    const [fault, ...more] = spoilt(text, instead);
    expect(more).toEqual([]);
    expect(fault).toContain('Nothing that is said after this question is its answer.');
    expect(Number(fault!.split(':')[0])).toBeGreaterThanOrEqual(lineOf(place) - 1);
  });

  it.each([
    [
      'a goal turned round',
      'maxDepthM >= 30 and',
      'maxDepthM <= 30 and',
      '“at least 30 m” stands in the text, and the goal does not ask for it.',
    ],
    [
      'a part of a goal left out',
      'maxDepthM >= 30 and ',
      '',
      '“at least 30 m” stands in the text, and the goal does not ask for it.',
    ],
    [
      'a goal with another amount',
      'maxDepthM >= 30 and',
      'maxDepthM >= 25 and',
      'The goal asks for maxDepthM >= 25, and the text does not say so.',
    ],
    [
      'a goal that asks what nobody was told',
      'goal: maxDepthM',
      'goal: bottomMin <= 7 min and maxDepthM',
      'The goal asks for bottomMin <= 7 min, and the text does not say so.',
    ],
    [
      'a text that asks what the goal does not',
      'meet no ceiling.',
      'meet no ceiling. Make a safety stop.',
      'The text speaks of a safety stop, and the goal does not.',
    ],
    [
      'a goal with a stop nobody was told of',
      ', and meet no ceiling.',
      '.',
      'The goal asks about a ceiling or a required stop, and the text does not say so.',
    ],
  ])('%s', (_, text, instead, expected) => {
    expect(spoilt(text, instead)).toContainEqual(expect.stringContaining(expected));
  });

  it.each([
    ['a hint turned round', 'deepestCeilingM == 0', 'This hint holds for the dive that meets the goal'],
    [
      'a hint that can never hold',
      'deepestCeilingM < 0',
      'Nothing here can be less than 0, so this never holds. Turn the sign round.',
    ],
  ])('%s', (_, when, expected) => {
    const text = SOUND.replace(
      '    reach: |',
      `    hints:\n      - { when: ${when}, because: Leave sooner. }\n    reach: |`,
    );
    expect(told(text)).toEqual([expect.stringContaining(expected)]);
    expect(told(text.replace(`when: ${when}`, 'when: deepestCeilingM > 0'))).toEqual(['sound']);
  });
});

describe('an answer to choose', () => {
  const compared = (less: string, more: string) =>
    `${SOUND}      - id: which
        ask: What does it do?
        choice:
          - { text: Less. It fills., holds: ${less}, because: So it is. }
          - { text: More. It empties., holds: ${more}, because: It only looks so. }
`;
  const [falls, grows] = [
    '(noStopMin at leaving) < (noStopMin at arrival)',
    '(noStopMin at leaving) >= (noStopMin at arrival)',
  ] as const;

  it('says in words which way its condition points', () => {
    expect(told(compared(falls, grows))).toEqual(['sound']);
  });

  it('is found where its condition has been exchanged with another’s', () => {
    expect(told(compared(grows, falls))).toEqual(
      expect.arrayContaining([
        expect.stringContaining('begins with “Less”, and its condition is one for a larger value.'),
        expect.stringContaining('begins with “More”, and its condition is one for a smaller value.'),
      ]),
    );
  });
});

describe('a reply to a wrong number', () => {
  const both = `        - { when: given > answer + 5 min, because: Much less. }
        - { when: given > answer, because: A little less. }
      otherwise: More than that.
`;
  it('is heard where it should be', () => {
    expect(told(replies(both))).toEqual(['sound']);
  });

  it.each([
    [
      'turned round',
      both.replace('given > answer,', 'given < answer,'),
      'This asks for a lower number, and is said to answers that are too low.',
    ],
    [
      'with the words of the other side',
      both.replace('A little less.', 'A little more.'),
      'This asks for a higher number, and is said to answers that are too high.',
    ],
    [
      'left to both sides',
      both.replace(/^.*A little less.*\n/m, ''),
      'This asks for a higher number, and is said to answers that are too high.',
    ],
    ['behind one that takes all', both.replace('answer + 5 min', 'answer - 1 min'), 'No wrong answer is told this'],
  ])('is told of when it is %s', (_, written, expected) => {
    const text = replies(written);
    const faults = told(text);
    expect(faults).toContainEqual(expect.stringContaining(expected));
    const lines = faults.map((fault) => Number(fault.split(':')[0]));
    const from = lineOf('- { when: given > answer', text);
    expect(lines.every((line) => line >= from && line <= from + 3)).toBe(true);
  });
});

describe('the right one of a few answers', () => {
  it('stands first in a check, where answers are mixed for whoever is asked', () => {
    expect(told(SOUND + CHOICE)).toEqual(['sound']);
    const moved = CHOICE.replace('right: true, ', '').replace('That., ', 'That., right: true, ');
    expect(told(SOUND + moved)).toEqual([expect.stringContaining('This answer is right, and is not the first.')]);
    expect(Number(told(SOUND + moved)[0]!.split(':')[0])).toBe(lineOf('That.', SOUND + moved));
  });

  it('is not asked for where it is given', () => {
    const given = SOUND.replace('    text: How long?\n', '    text: How long?\n    given: [noStopMin at arrival]\n');
    expect(told(given)).toEqual([
      expect.stringContaining('What is named here as given is what the question asks for.'),
    ]);
  });
});

describe('an amount written by hand', () => {
  it('reads as it is: a quarter of a minute is not 0 min', () => {
    expect(spoilt('On leaving {{', 'After {{15 s}}, on leaving {{')).toEqual([
      expect.stringContaining('“{{15 s}}” reads “0 min”. Write a finer format'),
    ]);
    expect(spoilt('On leaving {{', 'After {{15 s | seconds}}, on leaving {{')).toEqual(['sound']);
    expect(spoilt('On leaving {{', 'At {{30 ft/min}}, on leaving {{')).toEqual(['sound']);
  });
});

describe('a no-stop time in a text', () => {
  it('is one that a screen shows: none, while the way up itself will need a stop', () => {
    const slow = (moment: string) => `title: Slow
summary: For tests.
level: first steps
minutes: 5
objectives: [You can read it.]
scripts:
  main:
    title: Deep, with a slow way up
    script: |
      plan ascent: 3 m/min
      descend to 60 m at 18 m/min
      stay 10 min
      ascend to surface at 3 m/min
steps:
  - { kind: read, id: begin, title: To begin, text: "{{noStopMin at ${moment}}} are left." }
`;
    expect(told(slow('4 min'))).toEqual([
      expect.stringContaining('15: At the moment of “{{noStopMin at 4 min}}” screens show none'),
    ]);
    expect(told(slow('30 s'))).toEqual(['sound']);
  });
});

import { describe, expect, it } from 'vitest';
import { TELLS } from '@/app/stage/what-tells';
import { PICTURE_IDS } from '@/app/pictures/picture-ids';
import { READING_IDS } from '@/app/stage/reading-ids';
import { cutsOf } from '@/lib/lesson/checking/given-away';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import { FACT_NAMES } from '@/lib/lesson/facts/facts';
import { readLesson } from '@/lib/lesson/read-lesson';
import { UNIT_READING_IDS } from '@/lib/working/rules/unit-all';
import { KNOWN, THIRTY_METRES, told } from '../made-lessons';

const NUMBER = `  - kind: predict
    id: foretell
    title: How long?
    text: How many minutes are left on arrival?
    number: { answer: noStopMin at arrival, within: 2 min, otherwise: Not so. }
    after: It is {{noStopMin at arrival}}.
`;
const CURVE = `  - kind: predict
    id: foretell
    title: Draw it
    text: Draw the no-stop time.
    draw: { curve: noStopMin, from: arrival, to: leaving, upTo: 60 min, within: 3 min }
    after: So it falls.
`;
const CULPRIT = `  - kind: predict
    id: foretell
    title: Who leads?
    text: Which compartment leads on arrival?
    choice:
      - { text: The first., holds: noStopLeader at arrival == 1, because: It is fastest. }
      - { text: Another., holds: noStopLeader at arrival > 1, because: Not so. }
    after: The first.
`;

/** A lesson whose question comes after some steps. */
function lesson(before: string, question = NUMBER): string {
  return `title: A made lesson
summary: For tests.
level: first steps
minutes: 5
objectives: [You can read it.]
${THIRTY_METRES}
${before}${question}`;
}

const read = (text: string) => `  - { kind: read, id: begin, title: To begin, text: "${text}" }\n`;
const look = (show: string, at: string) =>
  `  - { kind: read, id: begin, title: To begin, text: Look., look: { show: [${show}], at: ${at} } }\n`;

const telling = /tells what “(How long\?|Draw it|Who leads\?)” asks for before it is answered\./;

describe('a lesson that gives its answer away is refused, and told where', () => {
  it.each([
    ['the value in an earlier text', lesson(read('There are {{noStopMin at arrival}}.')), 16],
    ['the value read on the same dive a moment away', lesson(read('See {{noStopMin at 3 min}}.')), 16],
    ['the value typed by hand', lesson(read('You will find 11 min there.')), 16],
    ['a picture that can’t be cut', lesson(look('no-stop', 'arrival')), 16],
    [
      'the working behind it',
      lesson('  - { kind: explain, id: open, title: Open, text: Why?, reading: no-stop, at: arrival }\n'),
      16,
    ],
    [
      'a run that passes it',
      lesson('  - { kind: run, id: see, title: See, text: Run., show: [no-stop], readings: [depth] }\n'),
      16,
    ],
    [
      'a reading beside a run',
      lesson('  - { kind: run, id: see, title: See, text: Run., show: [profile], readings: [no-stop] }\n'),
      16,
    ],
    [
      'a caption of a run',
      lesson(
        '  - { kind: run, id: see, title: See, text: Run., show: [profile], readings: [depth], watch: [{ at: arrival, text: "Now {{noStopMin at arrival}}." }] }\n',
      ),
      16,
    ],
    [
      'a dive to try that shows it',
      lesson(
        '  - { kind: try, id: own, title: Own, text: Go to more than 31 m., show: [no-stop], goal: maxDepthM > 31, reach: "descend to 32 m at 18 m/min\\nascend to surface at 9 m/min\\n" }\n',
      ),
      16,
    ],
    [
      'what an earlier answer says',
      lesson(
        CULPRIT.replace('id: foretell', 'id: first').replace('after: The first.', 'after: "{{noStopMin at arrival}}."'),
      ),
      23,
    ],
    ['a point of the curve', lesson(read('At ten minutes it is {{noStopMin at 10 min}}.'), CURVE), 16],
    ['the curve in a picture', lesson(look('no-stop', '8 min'), CURVE), 16],
    ['the culprit by its number', lesson(read('Compartment {{noStopLeader at arrival}} leads.'), CULPRIT), 16],
    ['the culprit in a picture', lesson(look('chase', 'arrival'), CULPRIT), 16],
  ])('%s', (_, text, line) => {
    const faults = told(text);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(telling);
    expect(Number(faults[0]!.split(':')[0])).toBe(line);
  });

  it('in the question’s own text', () => {
    const faults = told(
      lesson(
        '',
        NUMBER.replace(
          'text: How many minutes are left on arrival?',
          'text: There are {{noStopMin at arrival}}, so how many?',
        ),
      ),
    );
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(telling);
  });
});

describe('a lesson that keeps its answer is let be', () => {
  it.each([
    ['another value', lesson(read('On leaving {{noStopMin at leaving}} are left, at {{30 m}}.'))],
    [
      'the value said after the answer',
      lesson('', NUMBER + '  - { kind: read, id: later, title: Later, text: "{{noStopMin at arrival}}." }\n'),
    ],
    ['a picture that tells another thing', lesson(look('profile', 'leaving'))],
    [
      'a point of the curve that the question names',
      lesson(
        read('It is {{noStopMin at 8 min}}.'),
        CURVE.replace('    draw:', '    given: [noStopMin at 8 min]\n    draw:'),
      ),
    ],
    ['where the curve begins', lesson(read('It is {{noStopMin at arrival}}.'), CURVE)],
  ])('%s', (_, text) => {
    expect(told(text)).toEqual(['sound']);
  });
});

describe('a picture before a question', () => {
  it('is cut where the question begins', () => {
    const made = readLesson(lesson(look('no-stop', 'start'), CURVE), { known: KNOWN });
    if (!made.ok) throw new Error(made.faults.map(({ what }) => what).join());
    expect([...cutsOf(made.lesson, lessonWorld(made.lesson), KNOWN.tells)]).toEqual([[0, 100]]);
  });

  it('has its facts listed, and none that is not one', () => {
    expect(Object.keys(TELLS)).toEqual(expect.arrayContaining([...PICTURE_IDS, ...READING_IDS]));
    const facts = new Set(Object.values(TELLS).flat());
    expect([...facts].filter((name) => !(FACT_NAMES as readonly string[]).includes(name))).toEqual([]);
    // Readings of oxygen, waits and rules whose working opens no fact of its own.
    const untold = UNIT_READING_IDS.filter((id) => !Object.hasOwn(TELLS, id));
    expect(untold).toEqual([]);
  });
});

import { knownNames } from '@/app/stage/known-names';
import { prepareLesson } from '@/app/lessons/prepare-lesson';
import type { PreparedLesson } from '@/app/lessons/prepared';
import { readLesson } from '@/lib/lesson/read-lesson';
import { THIRTY_METRES } from '../unit/lesson/made-lessons';

export const known = knownNames([{ id: 'ceiling' }, { id: 'no-stop-time' }]);

/** A short lesson with every way to answer. */
export const EVERY_WAY = `title: Every way
summary: For tests.
level: first steps
minutes: 5
objectives: [You can answer.]
${THIRTY_METRES}
  - kind: read
    id: begin
    title: To begin
    text: At {{30 m}} the pressure is {{ambientBar at arrival}}.
    notes:
      ask: [Who knows?]
      tip: Wait a while.
  - kind: predict
    id: by-number
    title: By number
    text: How long?
    number:
      answer: noStopMin at arrival
      within: 1 min
      wrong:
        - { when: given > answer, because: "Too long by {{given - answer | min}}." }
      otherwise: Too short.
    after: It is {{noStopMin at arrival}}.
  - kind: predict
    id: by-choice
    title: By choice
    text: Which?
    choice:
      - { text: A stop is needed., holds: ceilingM at leaving > 0, because: The time ran out. }
      - { text: No stop is needed., holds: ceilingM at leaving == 0, because: Twenty minutes are too long for that. }
    after: A stop.
  - kind: predict
    id: by-curve
    title: By curve
    text: Draw it.
    draw: { curve: noStopMin, from: arrival, to: leaving, upTo: 60 min, within: 3 min, wrong: [{ when: drawn at arrival > 30 min, because: You began too high. }] }
    after: A straight line.
  - kind: check
    id: check
    title: Check
    text: Two questions.
    questions:
      - id: pick
        draws: { depth: { from: 21 m, to: 39 m, step: 3 m } }
        script: |
          descend to {depth} at 18 m/min
          stay 30 min
          ascend to surface at 9 m/min
        ask: What is left at {{depth}}?
        pick: { answer: noStopMin at arrival, because: "{{noStopMin at arrival}}, the shortest of sixteen.", others: [{ value: freshNoStopMin(depth - 6 m), because: Too shallow. }] }
      - id: number
        ask: How deep is it?
        number: { answer: maxDepthM, within: 1 m, otherwise: "It is {{maxDepthM}}." }
  - kind: recap
    id: recap
    title: In short
    text: That was it.
    points: [One point.]
`;

/** A lesson with one dive to change. */
export const TO_TRY = `title: Leave in time
summary: For tests.
level: first steps
minutes: 5
objectives: [You can leave in time.]
${THIRTY_METRES}
  - kind: try
    id: in-time
    title: In time
    text: Leave with at least {{1 min}} left.
    script: main
    show: [profile]
    goal: noStopMin at leaving >= 1
    hints:
      - { when: noStopMin at leaving < 1, because: Leave sooner. }
    reach: |
      gas: air
      gradient factors: 85/85
      descend to 30 m at 18 m/min
      stay 10 min
      ascend to surface at 9 m/min
`;

export function prepared(text: string = EVERY_WAY): PreparedLesson {
  const read = readLesson(text, { known });
  if (!read.ok) throw new Error(read.faults.map(({ line, what, mend }) => `${line}: ${what} ${mend}`).join('\n'));
  return prepareLesson(read.lesson, 'every-way', () => undefined);
}

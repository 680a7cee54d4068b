import { lessonWorld, type LessonWorld } from '@/lib/lesson/expression/lesson-world';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { readLesson } from '@/lib/lesson/read-lesson';
import type { World } from '@/lib/lesson/expression/world';

export const KNOWN: KnownNames = {
  pictures: ['profile', 'chase', 'no-stop'],
  readings: ['depth', 'no-stop'],
  tells: { profile: ['ceilingM'], chase: ['tensionBar', 'noStopLeader'], 'no-stop': ['noStopMin', 'noStopLeader'] },
  cautions: ['general', 'unknown'],
  terms: ['ceiling', 'no-stop-time'],
  pages: ['desk'],
};

/** Twenty minutes at 30 m on air, with a safety stop: the model asks for a stop. */
export const THIRTY = `gas: air
gradient factors: 85/85
descend to 30 m at 18 m/min
stay 20 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
`;

/** Two dives, the second within every limit, and an instrument set to the wrong gas. */
export const TWO_DIVES = `gas: air
gradient factors: 85/85
setup: Rental unit, gas 32%
descend to 18 m at 18 m/min
stay 20 min
ascend to surface at 9 m/min
interval 60 min
descend to 12 m at 12 m/min
stay 10 min
ascend to surface at 6 m/min
`;

export function worldsFor(scripts: Readonly<Record<string, string>>): LessonWorld {
  return lessonWorld({
    scripts: Object.fromEntries(Object.entries(scripts).map(([name, script]) => [name, { title: name, script }])),
  });
}

export function worldFor(script: string, others: Readonly<Record<string, string>> = {}): World {
  return worldsFor({ main: script, ...others }).about();
}

/** The part of a lesson between what it is for and its steps, with one dive in it. */
export const THIRTY_METRES = `scripts:
  main:
    title: Thirty metres
    script: |
      gas: air
      gradient factors: 85/85
      descend to 30 m at 18 m/min
      stay 20 min
      ascend to surface at 9 m/min
steps:`;

/** A sound lesson as YAML; a test spoils one line of it. */
export const SOUND = `title: A made lesson
summary: For tests.
level: first steps
minutes: 5
objectives:
  - You can read it.
${THIRTY_METRES}
  - kind: read
    id: begin
    title: To begin
    text: |
      On leaving {{noStopMin at leaving}} are left. See the [ceiling](term:ceiling).
    claims:
      - ceilingM at leaving > 0
  - kind: predict
    id: foretell
    title: Foretell
    text: How long?
    number:
      answer: noStopMin at arrival
      within: 2 min
      wrong:
        - when: given > answer
          because: That is {{given - answer}} too long.
      otherwise: Not so.
    after: It is {{noStopMin at arrival}}.
  - kind: try
    id: own-dive
    title: Your own dive
    text: Reach at least {{30 m}}, and meet no ceiling.
    show: [profile]
    goal: maxDepthM >= 30 and deepestCeilingM == 0
    reach: |
      descend to 30 m at 18 m/min
      stay 5 min
      ascend to surface at 9 m/min
  - kind: check
    id: check
    title: Check
    text: One question.
    questions:
      - id: left
        draws:
          depth: { from: 18 m, to: 30 m, step: 3 m }
        script: |
          descend to {depth} at 18 m/min
          stay 30 min
          ascend to surface at 9 m/min
        ask: What is left on arrival at {{depth}}?
        pick:
          answer: noStopMin at arrival
          because: The shortest of sixteen is {{noStopMin at arrival}}.
          others:
            - value: freshNoStopMin(depth - 6 m)
              because: Too shallow.
`;

/** What reading a lesson comes to, as "line: what mend", or "sound". */
export function told(text: string): string[] {
  const read = readLesson(text, { known: KNOWN });
  return read.ok ? ['sound'] : read.faults.map(({ line, what, mend }) => `${line}: ${what} ${mend}`);
}

import type { StepKind } from './step';
import type { Value } from './edit-lesson';

/** A step to begin from: it is sound for a dive that asks for a stop, and says what to write where. */
export function stepDraft(kind: StepKind, id: string): Value {
  return { kind, id, ...DRAFTS[kind] };
}

const TEXT = 'Write here what the class is to read. A value from the engine stands in double braces: {{maxDepthM}}.\n';

const DRAFTS: Readonly<Record<StepKind, { readonly [key: string]: Value }>> = {
  read: { title: 'Something to read', text: TEXT },
  predict: {
    title: 'Something to foretell',
    text: 'How many minutes of no-stop time are left on arrival?\n',
    number: { answer: 'noStopMin at arrival', within: '2 min', otherwise: 'The model says {{answer | min down}}.' },
    after: 'On arrival {{noStopMin at arrival}} are left.\n',
  },
  run: {
    title: 'See it happen',
    text: 'Run the dive.\n',
    show: ['profile', 'no-stop'],
    watch: [{ at: 'arrival', text: 'You are down: {{noStopMin at arrival}} are left.' }],
  },
  explain: { title: 'Open the number', text: 'Why is it what it is?\n', reading: 'no-stop', at: 'arrival' },
  try: {
    title: 'Your turn',
    text: 'Change the dive so that you reach at least {{18 m}}, meet no ceiling, have at most {{15 min}} of bottom time, and make {{3 min}} between {{3 m}} and {{6 m}} on the way up.\n',
    show: ['profile'],
    goal: 'maxDepthM >= 18 and safetyStopMin >= 3 and deepestCeilingM == 0 and bottomMin <= 15',
    reach:
      'gas: air\ndescend to 18 m at 18 m/min\nstay 10 min\nascend to 5 m at 9 m/min\nstay 3 min\nascend to surface at 9 m/min\n',
  },
  check: {
    title: 'Check yourself',
    text: 'The figures are drawn afresh every time.\n',
    questions: [
      {
        id: 'left-on-arrival',
        draws: { depth: { from: '21 m', to: '39 m', step: '3 m' } },
        script: 'gas: air\ndescend to {depth} at 18 m/min\nstay 60 min\nascend to surface at 9 m/min\n',
        ask: 'A rested diver goes down to {{depth}} on air. How much no-stop time is left on arrival?',
        pick: {
          answer: 'noStopMin at arrival',
          because: '{{noStopMin at arrival}} is the shortest of the sixteen waits at {{depth}}.',
          others: [{ value: 'freshNoStopMin(depth - 6 m)', because: 'That is what {{depth - 6 m}} would give.' }],
        },
      },
    ],
  },
  recap: { title: 'What to take along', text: 'In short.\n', points: ['The first thing to remember.'] },
};

/** A lesson to begin from, around one dive. */
export function lessonDraft(title: string, script: string): Value {
  return {
    title,
    summary: 'One line that says what it is about.',
    level: 'first steps',
    minutes: 15,
    objectives: ['You can say what the lesson is about.'],
    scripts: { main: { title: 'The dive', script } },
    steps: [stepDraft('read', 'begin'), stepDraft('recap', 'recap')],
  };
}

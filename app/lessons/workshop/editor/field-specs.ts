import type { Value } from '@/lib/lesson/edit-lesson';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { LEVELS } from '@/lib/lesson/lesson';
import { UNIT_READING_IDS } from '@/lib/working/rules/unit-all';
import type { StepKind } from '@/lib/lesson/step';
import { FREEDOMS } from '@/lib/lesson/questions/kept-settings';
import { cautionWords, pictureWords, readingWords } from './option-words';
import { capital } from '@/lib/quantity/capital';

/* Long because it is one table: every field a lesson has. */

interface Named {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  /** It may be left out; where it is left empty it is taken away. */
  readonly optional?: true;
}

/** What an option is called where it is chosen. */
type OptionWords = (name: string) => string;

type TextControl = 'line' | 'prose' | 'script' | 'expression' | 'number';

/** One part of a lesson as a form shows it. */
export type FieldSpec =
  | (Named & { readonly control: TextControl })
  | (Named & { readonly control: 'select'; readonly options: readonly string[]; readonly words?: OptionWords })
  /** Names from a list, any number of them. */
  | (Named & { readonly control: 'checks'; readonly options: readonly string[]; readonly words?: OptionWords })
  /** A list of lines. */
  | (Named & { readonly control: 'lines'; readonly item: string; readonly make?: string })
  /** A group of parts that may be there or not. */
  | (Named & { readonly control: 'group'; readonly fields: readonly FieldSpec[]; readonly make: Value })
  /** A list of such groups. */
  | (Named & {
      readonly control: 'groups';
      readonly item: string;
      readonly fields: readonly FieldSpec[];
      readonly make: Value;
    })
  /** Groups by name. */
  | (Named & {
      readonly control: 'named';
      readonly item: string;
      readonly fields: readonly FieldSpec[];
      readonly make: Value;
      readonly newName: string;
    })
  /** Exactly one of several parts. */
  | {
      readonly control: 'ways';
      readonly key: string;
      readonly label: string;
      readonly ways: readonly { readonly field: FieldSpec; readonly make: Value }[];
    };

const replies = (key: string, label: string, hint: string): FieldSpec => ({
  control: 'groups',
  key,
  label,
  hint,
  optional: true,
  item: 'answer',
  make: { when: 'given > answer', because: 'Why this answer tempts.' },
  fields: [
    { control: 'expression', key: 'when', label: 'When' },
    { control: 'prose', key: 'because', label: 'Say' },
  ],
});

const choice: FieldSpec = {
  control: 'groups',
  key: 'choice',
  label: 'Answers to choose from',
  hint: 'Exactly one may be right. Let a condition decide where a figure can; otherwise mark the right one.',
  item: 'answer',
  make: { text: 'An answer.', because: 'Why it is right, or why it tempts.' },
  fields: [
    { control: 'prose', key: 'text', label: 'Answer' },
    { control: 'expression', key: 'holds', label: 'Right when', optional: true },
    { control: 'select', key: 'right', label: 'Right', optional: true, options: ['true'] },
    { control: 'prose', key: 'because', label: 'Because' },
  ],
};

const FORMAT: FieldSpec = {
  control: 'line',
  key: 'as',
  label: 'Printed as',
  optional: true,
  hint: 'Such as min down, bar, m 1; leave it empty for the usual form.',
};

const number: FieldSpec = {
  control: 'group',
  key: 'number',
  label: 'A number to give',
  make: {},
  fields: [
    { control: 'expression', key: 'answer', label: 'The answer', hint: 'An expression: the engine works it out.' },
    { control: 'expression', key: 'within', label: 'How far off still counts' },
    FORMAT,
    replies('wrong', 'Wrong answers and what to say', 'Known in the conditions: given, answer, within.'),
    { control: 'prose', key: 'otherwise', label: 'To any other wrong answer' },
  ],
};

const draw: FieldSpec = {
  control: 'group',
  key: 'draw',
  label: 'A curve to draw',
  make: {},
  fields: [
    {
      control: 'expression',
      key: 'curve',
      label: 'The curve',
      hint: 'A fact with a value at every moment, such as noStopMin or tensionBar(1).',
    },
    { control: 'expression', key: 'from', label: 'From', optional: true },
    { control: 'expression', key: 'to', label: 'To', optional: true },
    { control: 'expression', key: 'upTo', label: 'The axis ends at', hint: 'Such as 60 min or 4 bar.' },
    { control: 'expression', key: 'within', label: 'How far off is still close' },
    {
      control: 'groups',
      key: 'features',
      label: 'What matters of it',
      hint: 'Right is three quarters of the weight. Known in the conditions: drawn at a moment, such as (drawn at start) - (drawn at arrival) >= 20 min.',
      optional: true,
      item: 'feature',
      make: {
        name: 'where it ends',
        holds: 'drawn at leaving <= 5 min',
        weight: 1,
        because: 'What it lacks, and why it is so.',
      },
      fields: [
        { control: 'line', key: 'name', label: 'In a few words, without the value' },
        { control: 'expression', key: 'holds', label: 'Met when' },
        { control: 'number', key: 'weight', label: 'Weight, 1 to 5', optional: true },
        { control: 'prose', key: 'because', label: 'Said where it is not met' },
      ],
    },
    {
      control: 'lines',
      key: 'boxes',
      label: 'Moments with a box to type the value into',
      hint: 'Three to nine, such as arrival or 5 min. Where the dive bends, if there are none.',
      optional: true,
      item: 'moment',
      make: 'arrival',
    },
    replies('wrong', 'What to say to a curve', 'Known in the conditions: drawn at a moment.'),
  ],
};

const pick: FieldSpec = {
  control: 'group',
  key: 'pick',
  label: 'Numbers to pick from',
  make: {},
  fields: [
    { control: 'expression', key: 'answer', label: 'The right number' },
    FORMAT,
    { control: 'prose', key: 'because', label: 'Because' },
    {
      control: 'groups',
      key: 'others',
      label: 'Wrong numbers',
      item: 'wrong number',
      make: { value: 'freshNoStopMin(30 m)', because: 'The mistake that leads to it.' },
      fields: [
        { control: 'expression', key: 'value', label: 'The number' },
        { control: 'prose', key: 'because', label: 'The mistake that leads to it' },
      ],
    },
  ],
};

const NUMBER_MADE: Value = {
  answer: 'noStopMin at arrival',
  within: '2 min',
  otherwise: 'The model says {{answer | min down}}.',
};
const CHOICE_MADE: Value = [
  { text: 'One answer.', right: true, because: 'Why it is right.' },
  { text: 'Another answer.', because: 'Why it tempts.' },
];
const DRAW_MADE: Value = { curve: 'noStopMin', from: 'start', to: 'leaving', upTo: '60 min', within: '3 min' };
const PICK_MADE: Value = {
  answer: 'noStopMin at arrival',
  because: 'Why.',
  others: [{ value: 'freshNoStopMin(18 m)', because: 'The mistake that leads to it.' }],
};

const notes: FieldSpec = {
  control: 'group',
  key: 'notes',
  label: 'Notes for the instructor',
  optional: true,
  make: { ask: ['What to ask the class.'] },
  fields: [
    { control: 'lines', key: 'ask', label: 'Ask', item: 'question', optional: true },
    {
      control: 'groups',
      key: 'wrong',
      label: 'You may hear',
      item: 'wrong answer',
      optional: true,
      make: { answer: 'A common wrong answer.', tempts: 'Why it tempts.' },
      fields: [
        { control: 'prose', key: 'answer', label: 'They say' },
        { control: 'prose', key: 'tempts', label: 'It tempts because' },
      ],
    },
    { control: 'prose', key: 'tip', label: 'Tip', optional: true },
  ],
};

const question: readonly FieldSpec[] = [
  { control: 'line', key: 'id', label: 'Name', hint: 'Small letters and dashes.' },
  {
    control: 'named',
    key: 'draws',
    label: 'Values drawn afresh',
    optional: true,
    item: 'value',
    newName: 'depth',
    make: { from: '18 m', to: '30 m', step: '3 m' },
    fields: [
      { control: 'expression', key: 'from', label: 'From', optional: true },
      { control: 'expression', key: 'to', label: 'To', optional: true },
      { control: 'expression', key: 'step', label: 'In steps of', optional: true },
      { control: 'lines', key: 'of', label: 'Or one of', item: 'value', optional: true },
    ],
  },
  {
    control: 'script',
    key: 'script',
    label: 'Its own dive',
    optional: true,
    hint: 'A drawn value stands in it as {depth}.',
  },
  { control: 'prose', key: 'ask', label: 'The question' },
  {
    control: 'ways',
    key: 'answering',
    label: 'How it is answered',
    ways: [
      { field: pick, make: PICK_MADE },
      { field: number, make: NUMBER_MADE },
      { field: choice, make: CHOICE_MADE },
    ],
  },
  { control: 'prose', key: 'after', label: 'Read after the answer', optional: true },
];

const SHOW_HINT = 'One to three.';

/** What the writer has called a dive. */
function titleOf(scripts: object, name: string): string | undefined {
  const dive: unknown = Object.entries(scripts).find(([one]) => one === name)?.[1];
  if (typeof dive !== 'object' || dive === null || !('title' in dive)) return undefined;
  return typeof dive.title === 'string' && dive.title.trim() !== '' ? dive.title : undefined;
}

/** What a form for a step asks for, by the step's kind; `scripts` are the dives of the lesson by name, as written. */
export function stepFields(kind: StepKind, known: KnownNames, scripts: object): readonly FieldSpec[] {
  const script: FieldSpec = {
    control: 'select',
    key: 'script',
    label: 'About the dive',
    optional: true,
    options: Object.keys(scripts),
    words: (name) => titleOf(scripts, name) ?? name,
  };
  const show: FieldSpec = {
    control: 'checks',
    key: 'show',
    label: 'Pictures',
    hint: SHOW_HINT,
    options: known.pictures,
    words: pictureWords,
  };
  const head: readonly FieldSpec[] = [
    { control: 'line', key: 'title', label: 'Title' },
    { control: 'line', key: 'id', label: 'Name in links', hint: 'Small letters and dashes.' },
    {
      control: 'prose',
      key: 'text',
      label: 'Text',
      hint: 'Markdown. A value stands in double braces, such as {{noStopMin at arrival}} or {{30 m}}.',
    },
    {
      control: 'prose',
      key: 'more',
      label: 'Folded away under it',
      optional: true,
      hint: 'For whoever wants more: what is not needed at once.',
    },
  ];
  const own: Readonly<Record<StepKind, readonly FieldSpec[]>> = {
    read: [
      {
        control: 'group',
        key: 'look',
        label: 'A dive to look at beside it',
        optional: true,
        make: { show: ['profile'], at: 'start' },
        fields: [script, show, { control: 'expression', key: 'at', label: 'At the moment', optional: true }],
      },
    ],
    predict: [
      script,
      {
        control: 'ways',
        key: 'answering',
        label: 'How it is answered',
        ways: [
          { field: number, make: NUMBER_MADE },
          { field: choice, make: CHOICE_MADE },
          { field: draw, make: DRAW_MADE },
        ],
      },
      {
        control: 'lines',
        key: 'given',
        label: 'What may be told before, because the question builds on it',
        hint: 'Such as noStopMin at arrival. Anything else that tells the answer too early is refused.',
        optional: true,
        item: 'value',
        make: 'depthM at arrival',
      },
      { control: 'prose', key: 'after', label: 'Read when the truth is shown' },
    ],
    run: [
      script,
      show,
      {
        control: 'checks',
        key: 'readings',
        label: 'Readings',
        optional: true,
        hint: 'All, where none is marked.',
        options: known.readings,
        words: readingWords,
      },
      { control: 'expression', key: 'from', label: 'From', optional: true },
      { control: 'expression', key: 'to', label: 'To', optional: true },
      {
        control: 'groups',
        key: 'watch',
        label: 'Moments to watch',
        item: 'moment',
        optional: true,
        make: { at: 'arrival', text: 'Look at the number now.' },
        fields: [
          { control: 'expression', key: 'at', label: 'At' },
          { control: 'prose', key: 'text', label: 'Say' },
        ],
      },
    ],
    explain: [
      script,
      { control: 'select', key: 'reading', label: 'The reading', options: UNIT_READING_IDS, words: readingWords },
      { control: 'expression', key: 'at', label: 'At the moment' },
    ],
    try: [
      script,
      show,
      {
        control: 'expression',
        key: 'goal',
        label: 'The goal',
        hint: 'Such as maxDepthM >= 30 and requiredStopMin == 0 and bottomMin >= 12.',
      },
      {
        control: 'checks',
        key: 'free',
        label: 'What else than its steps may be changed of the dive',
        optional: true,
        hint: 'Nothing, where none is marked: the rest has to stay as it was.',
        options: FREEDOMS,
        words: capital,
      },
      replies('hints', 'Hints', 'Said while the goal is not met and the condition holds.'),
      { control: 'script', key: 'reach', label: 'A dive that meets it' },
      { control: 'prose', key: 'after', label: 'Read when it is met', optional: true },
    ],
    check: [
      script,
      {
        control: 'groups',
        key: 'questions',
        label: 'Questions',
        item: 'question',
        fields: question,
        make: { id: 'question', ask: 'What is asked?', number: NUMBER_MADE },
      },
    ],
    recap: [{ control: 'lines', key: 'points', label: 'Points', item: 'point' }],
  };
  return [
    ...head,
    ...own[kind],
    {
      control: 'lines',
      key: 'claims',
      label: 'What must be true for the text to be true',
      item: 'condition',
      optional: true,
    },
    notes,
  ];
}

/** What the form for the lesson as a whole asks for. */
export function lessonFields(known: KnownNames): readonly FieldSpec[] {
  return [
    { control: 'line', key: 'title', label: 'Title' },
    { control: 'line', key: 'summary', label: 'In one line' },
    { control: 'select', key: 'level', label: 'Level', options: LEVELS, words: capital },
    { control: 'number', key: 'minutes', label: 'Minutes' },
    { control: 'lines', key: 'objectives', label: 'Afterwards', item: 'objective' },
    { control: 'lines', key: 'needs', label: 'Before', item: 'need', optional: true },
    {
      control: 'checks',
      key: 'cautions',
      label: 'Cautions besides the general one',
      optional: true,
      options: known.cautions.filter((name) => name !== 'general' && name !== 'watermark'),
      words: cautionWords,
    },
    { control: 'prose', key: 'opening', label: 'Opening', optional: true },
  ];
}

/** What the form for the dives asks for. */
export const DIVE_FIELDS: FieldSpec = {
  control: 'named',
  key: 'scripts',
  label: 'Dives',
  hint: 'The first is meant where a step names none. Another stands in an expression as “of” and its name.',
  item: 'dive',
  newName: 'other',
  make: {
    title: 'Another dive',
    script: 'gas: air\ndescend to 18 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n',
  },
  fields: [
    { control: 'line', key: 'title', label: 'Title' },
    { control: 'script', key: 'script', label: 'Script' },
  ],
};

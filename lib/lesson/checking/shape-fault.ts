import type * as z from 'zod';
import { nearest } from '../../dive/script/nearest';
import { quoted } from '../../quantity/parsed';
import type { PlacedFault } from './fault';
import { STEP_KINDS } from '../step';
import { capital } from '../../quantity/capital';

const KEYS = [
  'number',
  'title',
  'summary',
  'level',
  'minutes',
  'after',
  'needs',
  'objectives',
  'cautions',
  'scripts',
  'opening',
  'steps',
  'script',
  'rules',
  'id',
  'kind',
  'text',
  'claims',
  'notes',
  'ask',
  'wrong',
  'tip',
  'answer',
  'tempts',
  'look',
  'show',
  'at',
  'choice',
  'draw',
  'within',
  'given',
  'features',
  'boxes',
  'name',
  'weight',
  'as',
  'when',
  'because',
  'otherwise',
  'holds',
  'right',
  'curve',
  'from',
  'to',
  'upTo',
  'readings',
  'watch',
  'reading',
  'goal',
  'free',
  'hints',
  'reach',
  'questions',
  'draws',
  'pick',
  'others',
  'value',
  'points',
  'step',
  'of',
];

/** What is wrong with the shape of a lesson, in words a writer understands. */
export function shapeFault(issue: z.core.$ZodIssue): PlacedFault[] {
  const { path } = issue;
  const name = path.findLast((key) => typeof key === 'string');
  const subject = name === undefined ? 'The lesson' : quoted(String(name));
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => {
        const close = nearest(key, KEYS);
        return {
          path: [...path, key],
          what: `${quoted(key)} is not known here.`,
          mend: close && close !== key ? `Did you mean ${close}?` : 'Leave it out, or put it where it belongs.',
        };
      });
    case 'invalid_type':
      return issue.message.endsWith('received undefined')
        ? [
            {
              path,
              what: `${subject} is missing.`,
              mend: `Add ${name ?? 'it'}, ${KINDS[issue.expected] ?? 'with a value'}.`,
            },
          ]
        : [
            {
              path,
              what: `${subject} is not ${KINDS[issue.expected] ?? `of the kind ${issue.expected}`}.`,
              mend: MENDS[issue.expected] ?? 'Write it as in the other lessons.',
            },
          ];
    case 'too_small':
      return issue.origin === 'string'
        ? [{ path, what: `${subject} is empty.`, mend: 'Write something, or leave it out.' }]
        : [
            {
              path,
              what: `${subject} is too ${issue.origin === 'array' ? 'short' : 'small'}: at least ${issue.minimum}.`,
              mend: issue.origin === 'array' ? 'Add to it.' : 'Write a larger number.',
            },
          ];
    case 'too_big':
      return [
        {
          path,
          what: `${subject} is too ${issue.origin === 'number' ? 'large' : 'long'}: at most ${issue.maximum}${issue.origin === 'string' ? ' characters' : ''}.`,
          mend: issue.origin === 'number' ? 'Write a smaller number.' : 'Shorten it, or split it.',
        },
      ];
    case 'invalid_format':
      return [
        {
          path,
          what: `${subject} is not written as it has to be.`,
          mend: 'Use small letters, digits and dashes, beginning with a letter.',
        },
      ];
    case 'invalid_value':
      return [
        {
          path,
          what: `${subject} is not one of the values there are.`,
          mend: `Write one of ${issue.values.map(String).join(', ')}.`,
        },
      ];
    case 'invalid_union':
      return [
        {
          path,
          ...(issue.discriminator === 'kind' || name === 'kind'
            ? { what: 'This is not a kind of step.', mend: `Write kind: and one of ${STEP_KINDS.join(', ')}.` }
            : {
                what: `${subject} is not written as it has to be.`,
                mend: 'Write from, to and step, or of with a list.',
              }),
        },
      ];
    case 'invalid_key':
      return [
        {
          path,
          what: `A name under ${subject} is not written as it has to be.`,
          mend: 'Use small letters and digits, beginning with a letter.',
        },
      ];
    case 'custom':
      return [{ path, what: `${capital(issue.message)}.`, mend: 'Mend it here.' }];
    default:
      return [{ path, what: `${subject} does not fit.`, mend: 'Write it as in the other lessons.' }];
  }
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  array: 'a list',
  object: 'a group of lines',
  record: 'a group of lines',
  boolean: 'true or false',
};
const MENDS: Readonly<Record<string, string>> = {
  string: 'Write a text; put it in quotation marks if it begins with a number or a sign.',
  number: 'Write digits without quotation marks.',
  int: 'Write a whole number.',
  array: 'Write a list: one line beginning with - for each, or [one, other].',
  object: 'Write its parts on lines of their own, indented.',
  record: 'Write its parts on lines of their own, indented.',
};

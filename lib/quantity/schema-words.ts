import type { core } from 'zod';
import { quoted } from './parsed';

type Issue = core.$ZodIssue;

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  nan: 'a number',
  boolean: 'yes or no',
  array: 'a list',
  tuple: 'a list',
  object: 'a group of values',
  record: 'a group of values',
  map: 'a group of values',
  null: 'nothing',
  undefined: 'nothing',
  date: 'a date',
};

const FORMATS: Readonly<Record<string, string>> = {
  datetime: 'a date and a time of day such as 2026-05-01T10:00:00Z',
  date: 'a date such as 2026-05-01',
  url: 'an address',
  uuid: 'an identifier',
};

/** What is wrong with a value that a schema refused, in our own words, with the name of the value: no text of the library that found it. */
export function sayIssue(issue: Issue): string {
  const subject = issue.path.length === 0 ? 'It' : `“${issue.path.map(String).join(', ').slice(0, 120)}”`;
  return `${subject} ${predicate(issue)}`;
}

function predicate(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined && issue.message.endsWith('undefined')
        ? 'is missing'
        : `is not ${KINDS[issue.expected] ?? 'of the right kind'}`;
    case 'too_small':
      return sized(issue.origin, 'less', 'shorter', 'fewer', Number(issue.minimum), issue.inclusive !== false);
    case 'too_big':
      return sized(issue.origin, 'more', 'longer', 'more', Number(issue.maximum), issue.inclusive !== false);
    case 'invalid_format':
      return FORMATS[issue.format] ? `is not ${FORMATS[issue.format]}` : 'is not written as it should be';
    case 'not_multiple_of':
      return `is not a multiple of ${issue.divisor}`;
    case 'unrecognized_keys':
      return `has what is not known here: ${issue.keys.map((key) => quoted(key)).join(', ')}`;
    case 'invalid_value':
      return `is none of ${issue.values.map(String).join(', ')}`;
    case 'invalid_union':
      return 'is none of the kinds it may be';
    case 'invalid_key':
      return 'has a name in it that may not be there';
    case 'invalid_element':
      return 'holds something that may not be there';
    case 'custom':
      // Written beside the schema, by us.
      return `is not sound: ${issue.message}`;
  }
}

function sized(origin: string, number: string, text: string, list: string, limit: number, inclusive: boolean): string {
  if (origin === 'string') return `is ${text} than ${limit} ${limit === 1 ? 'character' : 'characters'}`;
  if (origin === 'array' || origin === 'set' || origin === 'map' || origin === 'object')
    return `has ${list} than ${limit} in it`;
  return inclusive ? `is ${number} than ${limit}` : `is not ${number === 'less' ? 'more' : 'less'} than ${limit}`;
}

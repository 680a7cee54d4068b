import type { Path } from './edit-lesson';

/** What stands in a new part of a lesson until something of the writer's own does. */
const PLACEHOLDERS: ReadonlySet<string> = new Set([
  'Write here what the class is to read. A value from the engine stands in double braces: {{maxDepthM}}.',
  'One line that says what it is about.',
  'You can say what the lesson is about.',
  'Something to read',
  'Something to foretell',
  'The first thing to remember.',
  'In short.',
  'An answer.',
  'One answer.',
  'Another answer.',
  'Why it is right.',
  'Why it tempts.',
  'Why it is right, or why it tempts.',
  'Why this answer tempts.',
  'The mistake that leads to it.',
  'Why.',
  'What is asked?',
  'What it lacks, and why it is so.',
  'Look at the number now.',
  'What to ask the class.',
  'A common wrong answer.',
  'A question.',
  'A point.',
  'A need.',
  'An objective.',
  'Another dive',
]);

/** Whether a text is what a part of a lesson begins with. */
export function isPlaceholder(text: string): boolean {
  return PLACEHOLDERS.has(text.trim());
}

/** Where a lesson still says what is to be written there, from its first part on; of any data. */
export function unfinishedIn(data: unknown, path: Path = []): Path[] {
  if (typeof data === 'string') return isPlaceholder(data) ? [path] : [];
  if (Array.isArray(data)) return data.flatMap((one, i) => unfinishedIn(one, [...path, i]));
  if (typeof data !== 'object' || data === null) return [];
  return Object.entries(data).flatMap(([key, one]) => unfinishedIn(one, [...path, key]));
}

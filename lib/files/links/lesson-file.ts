import { cautions } from '../../../content/cautions';

const REMARK = `# ${cautions.general}`;

/** A lesson as a file to be passed on: the caution is its first line, once. */
export function lessonFile(text: string): string {
  return text.includes(REMARK) ? text : `${REMARK}\n${text}`;
}

/** The text of a lesson without the caution it was passed on under. */
export function withoutCaution(text: string): string {
  return text.startsWith(REMARK) ? text.slice(REMARK.length) : text;
}

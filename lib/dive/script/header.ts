import { quoted } from '../../quantity/parsed';
import { defaultSettings } from '../default-settings';
import type { Settings } from '../dive';
import { insertedLine, type Mend } from './mend';
import { noticeAt, type Notice } from './notice';

import { instead, type LineRead, type Span } from './line';
import { SETTINGS } from './settings/settings';

type SettingRead = Extract<LineRead, { as: 'setting' }>;

interface Placed {
  readonly read: SettingRead;
  readonly lineIndex: number;
}

/** Gathers the settings of a script from its lines; what is wrong with them goes to the errors. */
export function readHeader(texts: readonly string[], lines: readonly LineRead[], errors: Notice[]): Settings {
  const firstStep = lines.findIndex(({ as }) => as === 'step');
  const kept: Placed[] = [];
  lines.forEach((read, lineIndex) => {
    if (read.as !== 'setting') return;
    errors.push(...read.troubles.map((trouble) => noticeAt(lineIndex, trouble)));
    const placed = { read, lineIndex };
    const text = texts[lineIndex]!;
    const misplaced = firstStep >= 0 && lineIndex > firstStep ? late(placed, text, firstStep) : clash(placed, kept);
    if (misplaced) {
      const { what, mend, mends } = misplaced;
      errors.push({ ...noticeAt(lineIndex, { span: read.name, what, mend }), mends });
    } else kept.push(placed);
  });
  return settle(kept, errors);
}

interface Misplaced {
  readonly what: string;
  readonly mend: string;
  readonly mends: readonly Mend[];
}

function late({ read: { setting, name, value }, lineIndex }: Placed, text: string, firstStep: number): Misplaced {
  const line = firstStep + 1;
  return {
    what: `Settings come before the first step, which is on line ${line}.`,
    mend: setting.inDive
      ? `Move this line above line ${line}, or write “${setting.inDive} …” to change it here.`
      : `Move this line above line ${line}.`,
    mends: [
      { label: `Move it above line ${line}`, edits: [insertedLine(line, text), { line: lineIndex + 1, remove: true }] },
      ...(setting.inDive ? [changedHere(setting.inDive, text.slice(...value.span), name, value.span, lineIndex)] : []),
    ],
  };
}

function changedHere(words: string, value: string, [from]: Span, [, to]: Span, lineIndex: number): Mend {
  const text = `${words} ${value}`;
  return { label: text, edits: [{ line: lineIndex + 1, column: from + 1, endColumn: to + 1, text }] };
}

function clash({ read: { setting }, lineIndex }: Placed, kept: readonly Placed[]): Misplaced | undefined {
  if (setting.repeats) return undefined;
  const other = kept.find(
    ({ read }) => read.setting === setting || (setting.topic !== undefined && read.setting.topic === setting.topic),
  );
  if (!other) return undefined;
  const line = other.lineIndex + 1;
  const mends: Mend[] = [line, lineIndex + 1].map((gone) => ({
    label: `Take out line ${gone}`,
    edits: [{ line: gone, remove: true }],
  }));
  return other.read.setting === setting
    ? { what: `${quoted(setting.name)} is already set on line ${line}.`, mend: 'Keep one of the two lines.', mends }
    : {
        what: `${quoted(setting.name)} and ${quoted(other.read.setting.name)} on line ${line} say the same thing two ways.`,
        mend: 'Keep one of the two lines.',
        mends,
      };
}

/** Applies the values in the order of the table, whatever order they were written in. */
function settle(kept: readonly Placed[], errors: Notice[]): Settings {
  const settings = defaultSettings();
  for (const setting of SETTINGS) {
    for (const { read, lineIndex } of kept) {
      if (read.setting !== setting) continue;
      const refusal = read.value.value?.(settings);
      if (!refusal) continue;
      const { span } = read.value;
      const fixes = instead(span, refusal.instead);
      errors.push(noticeAt(lineIndex, { span, what: refusal.what, mend: refusal.mend, fixes }));
    }
  }
  return settings;
}

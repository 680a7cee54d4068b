import { quoted } from '../../quantity/parsed';
import { defaultSettings } from '../default-settings';
import type { Settings } from '../dive';
import { noticeAt, type Notice } from './notice';
import type { LineRead } from './line';
import { SETTINGS } from './settings';

type SettingRead = Extract<LineRead, { as: 'setting' }>;

interface Placed {
  readonly read: SettingRead;
  readonly lineIndex: number;
}

/** Gathers the settings of a script from its lines; what is wrong with them goes to the errors. */
export function readHeader(lines: readonly LineRead[], errors: Notice[]): Settings {
  const firstStep = lines.findIndex(({ as }) => as === 'step');
  const kept: Placed[] = [];
  lines.forEach((read, lineIndex) => {
    if (read.as !== 'setting') return;
    errors.push(...read.troubles.map((trouble) => noticeAt(lineIndex, trouble)));
    const placed = { read, lineIndex };
    const misplaced = firstStep >= 0 && lineIndex > firstStep ? late(read, firstStep) : clash(placed, kept);
    if (misplaced) errors.push(noticeAt(lineIndex, { span: read.name, ...misplaced }));
    else kept.push(placed);
  });
  return settle(kept, errors);
}

function late({ setting }: SettingRead, firstStep: number) {
  const line = firstStep + 1;
  return {
    what: `Settings come before the first step, which is on line ${line}.`,
    mend: setting.inDive
      ? `Move this line above line ${line}, or write “${setting.inDive} …” to change it here.`
      : `Move this line above line ${line}.`,
  };
}

function clash({ read: { setting } }: Placed, kept: readonly Placed[]) {
  if (setting.repeats) return undefined;
  const other = kept.find(
    ({ read }) => read.setting === setting || (setting.topic !== undefined && read.setting.topic === setting.topic),
  );
  if (!other) return undefined;
  const line = other.lineIndex + 1;
  return other.read.setting === setting
    ? { what: `${quoted(setting.name)} is already set on line ${line}.`, mend: 'Keep one of the two lines.' }
    : {
        what: `${quoted(setting.name)} and ${quoted(other.read.setting.name)} on line ${line} say the same thing two ways.`,
        mend: 'Keep one of the two lines.',
      };
}

/** Applies the values in the order of the table, whatever order they were written in. */
function settle(kept: readonly Placed[], errors: Notice[]): Settings {
  const settings = defaultSettings();
  for (const setting of SETTINGS) {
    for (const { read, lineIndex } of kept) {
      if (read.setting !== setting) continue;
      const refusal = read.value.value?.(settings);
      if (refusal) errors.push(noticeAt(lineIndex, { span: read.value.span, what: refusal.what, mend: refusal.mend }));
    }
  }
  return settings;
}

import type { Setup } from '../setup';
import { ScriptPage, type Script } from '../script/page';
import { SETUP_SETTING } from '../script/settings/setup-setting';
import { readSetup, writeSetup } from '../script/settings/setup-text';
import { settingLine } from './edit-settings';

/**
 * Gives a script these setups, in this order. A line that already says one of them stays as it is typed; others are
 * rewritten, added or taken out, and the remarks on them stay.
 */
export function setSetups(script: Script, setups: readonly Setup[]): string {
  const page = new ScriptPage(script);
  const left = [...setups];
  let after = -1;
  for (let i = 0; i < page.length; i += 1) {
    const read = page.read(i);
    if (read.as !== 'setting' || read.setting !== SETUP_SETTING) continue;
    const next = left.shift();
    if (next) {
      if (!says(page.line(i).slice(...read.value.span), next)) page.replace(i, read.value.span, writeSetup(next));
      after = i;
      continue;
    }
    const before = page.length;
    page.remove(i);
    i -= before - page.length;
  }
  const from = after >= 0 ? after + 1 : settingLine(page);
  left.forEach((setup, index) => page.insert(from + index, `${SETUP_SETTING.name}: ${writeSetup(setup)}`));
  return page.edited();
}

function says(text: string, setup: Setup): boolean {
  const read = readSetup(text);
  return read.ok && writeSetup(read.value) === writeSetup(setup);
}

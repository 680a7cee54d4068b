import { ScriptPage, type Script } from '../script/page';
import { SETTINGS } from '../script/settings/settings';
import type { Setting } from '../script/settings/setting';

/**
 * Gives a setting a value, in the words it was written with if it was, else on a new line after the other settings.
 * Settings that say the same thing another way go, and so do repeated lines of it. With no value the setting is taken
 * out, and means what it usually means. The value is written as given, right or wrong: a wrong one is for the notices.
 */
export function setSetting(script: Script, name: string, value: string | undefined): string {
  const setting = SETTINGS.find((one) => one.name === name);
  if (!setting) throw new Error(`No setting is called ${name}.`);
  const page = new ScriptPage(script);
  const words = value?.replace(/[\s#]+/g, ' ').trim();
  let written = false;
  for (let i = 0; i < page.length; i++) {
    const read = page.read(i);
    if (read.as !== 'setting' || !saysSame(read.setting, setting)) continue;
    if (words && !written && read.setting === setting) {
      const empty = read.value.span[0] === read.value.span[1];
      const glue = empty && !/\s$/.test(page.line(i).slice(0, read.value.span[0])) ? ' ' : '';
      page.replace(i, read.value.span, glue + words);
      written = true;
      continue;
    }
    const before = page.length;
    page.remove(i);
    i -= before - page.length;
  }
  if (words && !written) page.insert(settingLine(page), `${setting.name}: ${words}`);
  return page.edited();
}

function saysSame(one: Setting, other: Setting): boolean {
  return one === other || (one.topic !== undefined && one.topic === other.topic);
}

/** Where a new setting goes: after the last one; with none, before the first step or at the end of the remarks. */
export function settingLine(page: ScriptPage): number {
  for (let i = page.length - 1; i >= 0; i--) if (page.read(i).as === 'setting') return i + 1;
  return page.firstStepLine();
}

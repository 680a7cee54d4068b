import type { Dive, ScriptLine } from '../dive/dive';
import { writeScript } from '../dive/script';
import { stepLines } from '../dive/script/plain-script';
import { plannedDive, type AscentPlan } from './ascent-plan';

/**
 * The script of a day with the planned ascent put in place of the one written for that dive. Everything else stays as it
 * is typed: settings, remarks on lines of their own, the way down, the dives after it.
 */
export function scriptWithPlan(dive: Dive, plan: AscentPlan): string {
  const planned = plannedDive(plan);
  const from = plan.bottom.steps.length;
  const next = dive.steps.findIndex((step, index) => index >= from && step.kind === 'interval');
  const until = next < 0 ? dive.steps.length : next;
  const steps = [...planned.steps, ...dive.steps.slice(until)];
  if (dive.lines.length === 0) return writeScript({ settings: dive.settings, steps, lines: [] });
  const lineEnd = dive.lines.some(({ text }) => text.endsWith('\r')) ? '\r' : '';
  const ascent = stepLines(planned.steps)
    .slice(from)
    .map((words) => words + lineEnd);
  const isReplaced = ({ stands }: ScriptLine) => stands.as === 'step' && stands.index >= from && stands.index < until;
  const lastKept = dive.lines.findLastIndex(({ stands }) => stands.as === 'step' && stands.index < from);
  const kept = (lines: readonly ScriptLine[]) => lines.filter((line) => !isReplaced(line)).map(({ text }) => text);
  return [...kept(dive.lines.slice(0, lastKept + 1)), ...ascent, ...kept(dive.lines.slice(lastKept + 1))].join('\n');
}

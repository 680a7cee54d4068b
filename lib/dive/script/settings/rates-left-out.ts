import type { UnitSystem } from '../../../quantity/unit-system';
import type { Settings } from '../../dive';
import type { LineRead } from '../line';
import type { MendEdit } from '../mend';
import { noticeAt, type Notice } from '../notice';
import { sayPlannedRate, writePlannedRate } from './plan-rates';
import type { WalkedStep } from '../walk';

/** Tells, once, of the steps that give no rate and so go at the plan's; the mend writes the rates out. */
export function ratesLeftOut(
  plan: Settings['plan'],
  steps: readonly WalkedStep[],
  lines: readonly LineRead[],
  system: UnitSystem,
): Notice[] {
  const silent = steps.flatMap(({ lineIndex }) => {
    const read = lines[lineIndex];
    if (read?.as !== 'step' || (read.step.kind !== 'descend' && read.step.kind !== 'ascend')) return [];
    const { kind, speed } = read.step;
    return speed ? [] : [{ kind, lineIndex, body: read.body }];
  });
  const [first] = silent;
  if (!first) return [];
  const kinds = (['descend', 'ascend'] as const).filter((kind) => silent.some((one) => one.kind === kind));
  const rates = kinds.map((kind) => `${kind === 'descend' ? 'down' : 'up'} at ${sayPlannedRate(kind, plan, system)}`);
  const edits = silent.map(({ kind, lineIndex, body: [, to] }): MendEdit => ({
    line: lineIndex + 1,
    column: to + 1,
    endColumn: to + 1,
    text: ` at ${writePlannedRate(kind, plan, system)}`,
  }));
  const alsoOn = silent.slice(1).map(({ lineIndex }) => lineIndex + 1);
  return [
    {
      ...noticeAt(first.lineIndex, {
        span: first.body,
        what: `A step that gives no rate goes at the plan’s: ${rates.join(', ')}.`,
        mend: `That may stay so; or write a rate, such as “at ${writePlannedRate('ascend', plan, system)}”, or a time, such as “in 2 min”.`,
      }),
      mends: [{ label: 'Write the rates out', edits }],
      ...(alsoOn.length > 0 && { alsoOn }),
    },
  ];
}

import { describe, expect, it } from 'vitest';
import { ascentPlanOf, plannedDive } from '@/lib/exposure/ascent-plan';
import { scriptWithPlan } from '@/lib/exposure/plan-script';
import { scripted } from './scripted';
import { diveOf } from '../read';

const DAY = `# a day of two dives
gradient factors: 30/80
carry: 50% from 21 m

descend to 45 m at 18 m/min   # down the line
stay 20 min
ascend to surface at 9 m/min  # with no stop at all
# tea
interval 2 h

descend to 20 m at 18 m/min
stay 15 min
ascend to surface at 9 m/min
`;
const read = (script: string) => {
  return diveOf(script);
};
const dive = read(DAY);

describe('a plan put into its script', () => {
  const script = scriptWithPlan(dive, ascentPlanOf(dive, 0));
  const after = read(script);

  it('reads back as the dive that was planned, with the dives after it as they were', () => {
    const planned = plannedDive(ascentPlanOf(dive, 0)).steps;
    expect(after.steps).toEqual([...planned, ...dive.steps.slice(3)]);
    expect(planned.some((step) => step.kind === 'switch')).toBe(true);
  });

  it('keeps settings and remarks as typed, and replaces no more than the ascent', () => {
    const kept = DAY.split('\n').filter((line) => !line.startsWith('ascend to surface at 9 m/min  #'));
    const lines = script.split('\n');
    expect(kept.every((line) => lines.includes(line))).toBe(true);
    expect(script).not.toContain('with no stop at all');
  });

  it('changes nothing more when put in again', () => {
    expect(scriptWithPlan(after, ascentPlanOf(after, 0))).toBe(script);
  });

  it('keeps Windows line ends, and writes a dive that has no lines in plain words', () => {
    const windows = read(DAY.replaceAll('\n', '\r\n'));
    expect(scriptWithPlan(windows, ascentPlanOf(windows, 0))).toBe(script.replaceAll('\n', '\r\n'));
    const bare = {
      ...scripted('descend to 45 m at 18 m/min', 'stay 20 min', 'ascend to surface at 9 m/min'),
      lines: [],
    };
    expect(read(scriptWithPlan(bare, ascentPlanOf(bare))).steps).toEqual(plannedDive(ascentPlanOf(bare)).steps);
  });
});

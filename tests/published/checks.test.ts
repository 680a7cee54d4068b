import { describe, expect, it } from 'vitest';
import { CHECK_GROUPS } from '@/lib/evidence/all';
import { ENGINE } from '@/lib/evidence/engine';

const groups = await Promise.all(CHECK_GROUPS.map(async (group) => ({ ...group, checks: await group.run(ENGINE) })));

/** How many checks each group has; a group that lost its rows would pass without this. */
const COUNTS: Record<string, number> = {
  relations: 17 * 3 + 2,
  'm-values': 17 * 4 + 17 * 2,
  mixtures: 2,
  'gradient-factors': 4 * 2,
  loading: 1 + 3 + 4 + 6,
  integration: 4 + 4 + 8 + 8 + 1 + 4,
  atmosphere: 8 + 10,
  water: 6,
  boyle: 5 + 4 + 2 + 2,
  'gas-depths': 8 + 4 + 3 + 4 + 3 * 2 + 3 + 2,
  'gas-density': 8 + 2,
  oxygen: 11 * 3,
  compressibility: 4 * 8 + 7,
  'no-stop-tables': 19 + 11 + 1,
  'common-practice': 3 * 2,
};

describe.each(groups)('$title', ({ id, checks }) => {
  it('has all its checks', () => {
    expect(checks.length, `rows of ${id}, as COUNTS has them`).toBe(COUNTS[id]);
  });

  it.each(checks.map((check) => [check.title, check] as const))('%s', (_, check) => {
    expect(check.group).toBe(id);
    expect(check.ours).toSatisfy(Number.isFinite);
    expect(check.difference).toSatisfy(Number.isFinite);
    expect(check.reason.length).toBeGreaterThan(10);
    expect(check.source.length).toBeGreaterThan(10);
    expect(Math.abs(check.difference), `${check.ours} against ${check.published} ${check.unit}`).toBeLessThanOrEqual(
      check.tolerance * (1 + 1e-9),
    );
    expect(check.holds).toBe(true);
  });
});

describe('the checks as a whole', () => {
  const all = groups.flatMap(({ checks }) => checks);

  it('counts every group', () => {
    expect(Object.keys(COUNTS).sort()).toEqual(CHECK_GROUPS.map(({ id }) => id).sort());
  });

  it('gives every check its own name and title', () => {
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    expect(new Set(all.map(({ title }) => title)).size).toBe(all.length);
  });

  it('calls a check common practice exactly where it has no source', () => {
    for (const check of all) expect(check.obtained === 'common practice').toBe(check.source.includes('no source'));
  });
});

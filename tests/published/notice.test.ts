// @module-tag in-turn
import { describe, expect, it } from 'vitest';
import { CHECK_GROUPS } from '@/lib/evidence/all';
import { compared, ranged, type Check } from '@/lib/evidence/check';
import { ENGINE, type Engine } from '@/lib/evidence/engine';
import { integrationChecks } from '@/lib/evidence/integration';
import { mValueChecks } from '@/lib/evidence/m-values';
import { relationChecks } from '@/lib/evidence/relations';
import { DIVE_DAMAGES, FORMULA_DAMAGES, withCoefficient } from './damage';

const SIXTEEN = Array.from({ length: 16 }, (_, index) => index);
const broken = (checks: readonly Check[]) => checks.filter(({ holds }) => !holds).map(({ id }) => id);
const quick = CHECK_GROUPS.filter(({ id }) => id !== 'integration');
const brokenBy = async (engine: Engine) => broken((await Promise.all(quick.map(({ run }) => run(engine)))).flat());

describe('a check', () => {
  const given = {
    id: 'x',
    title: 'x',
    group: 'x',
    unit: 'bar',
    tolerance: 0.5,
    reason: 'x',
    source: 'x',
    obtained: 'read',
  } as const;

  it('holds up to its tolerance and no further, on both sides', () => {
    expect([0.49, 0.5, 1.5, 1.51].map((ours) => compared({ ...given, published: 1, ours }).holds)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it('never holds for a figure that is not finite', () => {
    for (const ours of [Number.NaN, Infinity, -Infinity]) {
      expect(compared({ ...given, published: 1, ours, tolerance: Infinity }).holds).toBe(false);
      expect(ranged({ ...given, from: 0, to: Infinity, ours }).holds).toBe(false);
    }
  });

  it('of a range holds from its first to its last figure', () => {
    const held = [4.9, 5, 8, 8.1].map((ours) => ranged({ ...given, from: 5, to: 8, ours, tolerance: 0 }).holds);
    expect(held).toEqual([false, true, true, false]);
  });
});

describe.each([-1, 1])('a coefficient out by %d in its last printed digit', (sign) => {
  it.each(SIXTEEN)('is noticed: a of variant A, compartment index %d', (index) => {
    expect(broken(relationChecks(withCoefficient('nitrogenA', index, sign * 0.0001)))).not.toEqual([]);
  });

  it.each(SIXTEEN)('is noticed: nitrogen b, compartment index %d', (index) => {
    expect(broken(mValueChecks(withCoefficient('nitrogenB', index, sign * 0.0001)))).not.toEqual([]);
  });

  it.each(SIXTEEN)('is noticed: helium b, compartment index %d', (index) => {
    expect(broken(mValueChecks(withCoefficient('heliumB', index, sign * 0.0001)))).not.toEqual([]);
  });

  it.each(SIXTEEN)('is noticed: nitrogen half-time, compartment index %d', (index) => {
    const digit = index === 2 || (index >= 3 && index <= 6) ? 0.1 : 1;
    expect(broken(relationChecks(withCoefficient('nitrogenHalfTimeMin', index, sign * digit)))).not.toEqual([]);
  });
});

describe('values that are only printed roughly', () => {
  it.each(SIXTEEN)(
    'notices a of B and C out by what moves the print by a tenth of a metre, compartment index %d',
    (index) => {
      expect(broken(mValueChecks(withCoefficient('nitrogenA', index, 0.0101)))).not.toEqual([]);
      expect(broken(mValueChecks(withCoefficient('heliumA', index, 0.0101)))).not.toEqual([]);
    },
  );

  it.each(SIXTEEN)('notices a helium half-time out by one percent, compartment index %d', (index) => {
    const minutes = ENGINE.compartments('A', '1b').heliumHalfTimeMin[index]!;
    for (const by of [-0.01, 0.01]) {
      expect(broken(relationChecks(withCoefficient('heliumHalfTimeMin', index, minutes * by)))).not.toEqual([]);
    }
  });
});

describe('an engine with one thing wrong', () => {
  it.each(FORMULA_DAMAGES)('is noticed: $name', async ({ engine }) => {
    expect(await brokenBy(engine)).not.toEqual([]);
  });

  it.each(DIVE_DAMAGES)('is noticed by the numerical solution: $name', async ({ engine }) => {
    expect(broken(await integrationChecks(engine))).not.toEqual([]);
  });

  it('is noticed by the convergence check when the integration itself is coarse', async () => {
    const coarse = await integrationChecks(ENGINE, 1);
    expect(broken(coarse)).toContain('integration-convergence');
  });

  it('breaks every check in one way or another, so no check is idle', async () => {
    const engines = [
      ...[...FORMULA_DAMAGES, ...DIVE_DAMAGES].map(({ engine }) => engine),
      ...SIXTEEN.flatMap((index) =>
        (['1', '1b'] as const).flatMap((first) => [
          withCoefficient('nitrogenHalfTimeMin', index, 1, first),
          withCoefficient('nitrogenA', index, 0.0101, first),
          withCoefficient('heliumHalfTimeMin', index, 5, first),
          withCoefficient('heliumA', index, 0.0101, first),
          withCoefficient('heliumB', index, 0.0001, first),
          withCoefficient('nitrogenB', index, 0.0001, first),
        ]),
      ),
    ];
    const noticed = new Set<string>();
    for (const engine of engines) for (const id of await brokenBy(engine)) noticed.add(id);
    const all = (await Promise.all(quick.map(({ run }) => run(ENGINE)))).flat().map(({ id }) => id);
    expect(all.filter((id) => !noticed.has(id))).toEqual([]);
  });
});

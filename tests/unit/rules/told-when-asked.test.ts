import { afterAll, expect, it, vi } from 'vitest';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { diveOf } from '../read';

afterAll(() => vi.doUnmock('@/lib/ascent/stop-changes'));

it('changes of state are looked for only once somebody asks what was told, and then stand in their place', async () => {
  // Modules are shared between test files: here they are had anew, with the search watched.
  vi.resetModules();
  vi.doMock(import('@/lib/ascent/stop-changes'), { spy: true });
  const { watchDive } = await import('@/lib/rules/watch');
  const { stopChanges } = await import('@/lib/ascent/stop-changes');
  const watch = watchDive(
    diveOf('descend to 36 m at 18 m/min\nstay 20 min\nascend to surface at 18 m/min\n'),
    SET_RIGHT,
    DEFAULT_RULES,
  );
  expect(watch.toldOnTheWay.some(({ kind }) => kind === 'slow-down')).toBe(true);
  expect(stopChanges).not.toHaveBeenCalled();

  expect(watch.events.some(({ kind }) => kind === 'stop-owed')).toBe(true);
  expect(stopChanges).toHaveBeenCalled();
  const times = watch.events.map(({ timeS }) => timeS);
  expect(times).toEqual([...times].sort((one, other) => one - other));
  expect(watch.events.filter(({ rule }) => rule !== 'requiredStops')).toEqual(
    watch.toldOnTheWay.filter(({ rule }) => rule !== 'requiredStops'),
  );
});

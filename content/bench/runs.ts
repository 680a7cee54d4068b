import * as z from 'zod';
import type { UnitSystem } from '../../lib/quantity/unit-system';

/** A chamber run to begin with. All are invented; none is a standard's or a maker's procedure. */
const ReadyRun = z.object({
  id: z.string().regex(/^[a-z-]+$/),
  title: z.string().min(1),
  shows: z.string().min(1),
  script: z.string().min(1),
  /** The same run in feet, with round figures of its own. */
  scriptInFeet: z.string().min(1),
});
export type ReadyRun = z.infer<typeof ReadyRun>;

export const readyRuns: readonly [ReadyRun, ...ReadyRun[]] = z.tuple([ReadyRun], ReadyRun).parse([
  {
    id: 'depth-accuracy',
    title: 'Depth accuracy',
    shows:
      'The same depths on the way in and on the way out, with a long hold at the deepest: deviation, hysteresis and drift.',
    script: `# Depth accuracy
gas: air

descend to 3 m at 6 m/min
stay 1 min                 # check: 3 m in
descend to 10 m at 6 m/min
stay 1 min                 # check: 10 m in
descend to 16 m at 6 m/min
stay 1 min                 # check: 16 m in
descend to 30 m at 6 m/min
stay 30 s                  # check: 30 m, early
stay 5 min                 # check: 30 m, after the hold
ascend to 16 m at 6 m/min
stay 1 min                 # check: 16 m out
ascend to 10 m at 6 m/min
stay 1 min                 # check: 10 m out
ascend to 3 m at 6 m/min
stay 1 min                 # check: 3 m out
ascend to surface at 6 m/min
stay 1 min                 # check: surface
`,
    scriptInFeet: `# Depth accuracy
gas: air

descend to 10 ft at 20 ft/min
stay 1 min                    # check: 10 ft in
descend to 30 ft at 20 ft/min
stay 1 min                    # check: 30 ft in
descend to 50 ft at 20 ft/min
stay 1 min                    # check: 50 ft in
descend to 100 ft at 20 ft/min
stay 30 s                     # check: 100 ft, early
stay 5 min                    # check: 100 ft, after the hold
ascend to 50 ft at 20 ft/min
stay 1 min                    # check: 50 ft out
ascend to 30 ft at 20 ft/min
stay 1 min                    # check: 30 ft out
ascend to 10 ft at 20 ft/min
stay 1 min                    # check: 10 ft out
ascend to surface at 20 ft/min
stay 1 min                    # check: surface
`,
  },
  {
    id: 'no-stop-and-alarm',
    title: 'No-stop time and ascent alarm',
    shows: 'No-stop times at three depths, then a slow rise that should be quiet and a fast one that should not.',
    script: `# No-stop time and ascent alarm
gas: air

descend to 18 m at 9 m/min
stay 3 min                 # check: 18 m
descend to 30 m at 9 m/min
stay 2 min                 # check: 30 m
stay 3 min                 # check: 30 m, three minutes on
ascend to 20 m at 6 m/min  # check: slow rise to 20 m
stay 1 min                 # check: 20 m
ascend to 10 m at 20 m/min # check: fast rise to 10 m
stay 1 min                 # check: 10 m
ascend to 5 m at 6 m/min
stay 1 min                 # check: 5 m, safety stop
stay 3 min                 # check: 5 m, after it
ascend to surface at 6 m/min
stay 2 min                 # check: surface
`,
    scriptInFeet: `# No-stop time and ascent alarm
gas: air

descend to 60 ft at 30 ft/min
stay 3 min                    # check: 60 ft
descend to 100 ft at 30 ft/min
stay 2 min                    # check: 100 ft
stay 3 min                    # check: 100 ft, three minutes on
ascend to 65 ft at 20 ft/min  # check: slow rise to 65 ft
stay 1 min                    # check: 65 ft
ascend to 30 ft at 65 ft/min  # check: fast rise to 30 ft
stay 1 min                    # check: 30 ft
ascend to 15 ft at 20 ft/min
stay 1 min                    # check: 15 ft, safety stop
stay 3 min                    # check: 15 ft, after it
ascend to surface at 20 ft/min
stay 2 min                    # check: surface
`,
  },
  {
    id: 'stop-demonstration',
    title: 'Stop demonstration',
    shows:
      'Stay past the no-stop time, so that a required stop is asked for, and make it: what each unit shows on the way up.',
    script: `# Stop demonstration
gas: air

descend to 36 m at 12 m/min
stay 4 min                 # check: 36 m
stay 12 min                # check: 36 m, overstayed
ascend to 9 m at 9 m/min
stay 1 min                 # check: 9 m
ascend to 6 m at 9 m/min
stay 3 min                 # check: 6 m
ascend to 3 m at 6 m/min
stay 14 min                # check: 3 m, stop made
ascend to surface at 3 m/min
stay 2 min                 # check: surface
`,
    scriptInFeet: `# Stop demonstration
gas: air

descend to 120 ft at 40 ft/min
stay 4 min                    # check: 120 ft
stay 12 min                   # check: 120 ft, overstayed
ascend to 30 ft at 30 ft/min
stay 1 min                    # check: 30 ft
ascend to 20 ft at 30 ft/min
stay 3 min                    # check: 20 ft
ascend to 10 ft at 20 ft/min
stay 14 min                   # check: 10 ft, stop made
ascend to surface at 10 ft/min
stay 2 min                    # check: surface
`,
  },
]);

/** A ready run in the units chosen. */
export function runScript({ script, scriptInFeet }: ReadyRun, system: UnitSystem): string {
  return system === 'imperial' ? scriptInFeet : script;
}

/** The ready run a script is, in whichever units, as it came. */
export function readyRunOf(script: string): ReadyRun | undefined {
  return readyRuns.find((ready) => ready.script === script || ready.scriptInFeet === script);
}

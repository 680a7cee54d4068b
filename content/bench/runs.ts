import * as z from 'zod';

/** A chamber run to begin with. All are invented; none is a standard's or a maker's procedure. */
const ReadyRun = z.object({
  id: z.string().regex(/^[a-z-]+$/),
  title: z.string().min(1),
  shows: z.string().min(1),
  script: z.string().min(1),
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
  },
]);

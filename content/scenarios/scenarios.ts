import type { Scenario } from './scenario-schema';

export const scenarios: readonly [Scenario, ...Scenario[]] = [
  {
    id: 'overstayed',
    title: 'Six minutes too long',
    shows:
      'A 30 m dive on air that is stayed past its no-stop time: watch the ceiling come down and a stop be asked for.',
    script: `# Six minutes too long: a wreck at 30 m, and nobody looks at the time
water: reference
altitude: 0 m
gradient factors: 85/85
gas: air

descend to 30 m at 18 m/min
stay 17 min               # the no-stop time runs out on the way
ascend to 6 m at 9 m/min
stay 1 min                # the ceiling is just overhead
ascend to 3 m at 9 m/min
stay 5 min                # the stop the model asks for
ascend to surface at 9 m/min
`,
  },
  {
    id: 'two-reefs',
    title: 'Two reefs and an hour between',
    shows:
      'Two dives in a morning: the second begins with gas left over from the first, and its no-stop time is shorter for it.',
    script: `# Two reefs and an hour between
water: salt
altitude: 0 m
gradient factors: 85/85
gas: air

descend to 24 m at 18 m/min
stay 20 min
ascend to 5 m at 9 m/min
stay 3 min                # safety stop
ascend to surface at 9 m/min

interval 60 min

descend to 24 m at 18 m/min
stay 20 min               # the same dive again: look at the ceiling now
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
`,
  },
  {
    id: 'too-fast',
    title: 'Nine minutes at forty metres, two ways up',
    shows:
      'The same short deep dive twice, from rest each time: up at 9 m/min it surfaces free of stops, up at 30 m/min it does not.',
    script: `# Nine minutes at forty metres, two ways up.
# The day between them washes out what the first one left.
water: reference
altitude: 0 m
gradient factors: 85/85
gas: air

descend to 40 m at 18 m/min
stay 6 min 46 s           # nine minutes since leaving the surface
ascend to surface at 9 m/min

interval 48 h

descend to 40 m at 18 m/min
stay 6 min 46 s
ascend to surface at 30 m/min   # gas that had no time to leave
`,
  },
  {
    id: 'high-lake',
    title: 'A lake at two thousand metres',
    shows: 'Less air above the water: the same depth gives less no-stop time, and a ceiling comes sooner.',
    script: `# A lake at two thousand metres; the diver has lived up here for a week
water: fresh
altitude: 2000 m
gradient factors: 80/80
gas: air

descend to 26 m at 15 m/min
stay 16 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
`,
  },
  {
    id: 'staged',
    title: 'Staged stops on three gases',
    shows:
      'Helium and nitrogen load at their own speeds; two richer gases shorten the stops. For study only: such dives need training and a team.',
    script: `# Staged stops on three gases, to study how the stops come about
water: salt
altitude: 0 m
gradient factors: 30/80
gas: 18/45
carry: 50% from 21 m
carry: oxygen from 6 m

descend to 60 m at 18 m/min
stay 20 min
ascend to 27 m at 9 m/min
stay 1 min
ascend to 24 m at 9 m/min
stay 2 min
ascend to 21 m at 9 m/min
switch to 50%
stay 2 min
ascend to 18 m at 9 m/min
stay 2 min
ascend to 15 m at 9 m/min
stay 3 min
ascend to 12 m at 9 m/min
stay 5 min
ascend to 9 m at 9 m/min
stay 8 min
ascend to 6 m at 9 m/min
switch to oxygen
stay 22 min
ascend to surface at 3 m/min
`,
  },
  {
    id: 'four-settings',
    title: 'One dive, four settings',
    shows:
      'Four units on one arm, one of them set right: only what they were told differs, and so does what they ask for.',
    pictures: ['profile', 'units'],
    script: `# One dive, four settings: a wall at 27 m on air
water: reference
altitude: 0 m
gradient factors: 85/85
gas: air
setup: Set right
setup: Wrong gas, gas 32%
setup: Strict limits, gradient factors 40/70
setup: Bottom timer, gauge mode

descend to 27 m at 18 m/min
stay 20 min               # on air the no-stop time runs out on the way
ascend to 6 m at 9 m/min
stay 2 min
ascend to 3 m at 9 m/min
stay 4 min
ascend to surface at 9 m/min
`,
  },
];

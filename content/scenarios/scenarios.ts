import { overstayed } from './overstayed';
import type { Scenario } from './scenario-schema';

export const scenarios: readonly [Scenario, ...Scenario[]] = [
  overstayed,
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
    stillS: 6480,
    inFeet: {
      title: 'Two reefs and an hour between',
      shows:
        'Two dives in a morning: the second begins with gas left over from the first, and its no-stop time is shorter for it.',
      script: `# Two reefs and an hour between
water: salt
altitude: 0 ft
gradient factors: 85/85
gas: air

descend to 80 ft at 60 ft/min
stay 20 min
ascend to 15 ft at 30 ft/min
stay 3 min                # safety stop
ascend to surface at 30 ft/min

interval 60 min

descend to 80 ft at 60 ft/min
stay 20 min               # the same dive again: look at the ceiling now
ascend to 15 ft at 30 ft/min
stay 3 min
ascend to surface at 30 ft/min
`,
    },
  },
  {
    id: 'too-fast',
    title: 'A wreck at thirty-six metres, two ways up',
    shows:
      'The same short deep dive twice, from rest each time: up at 9 m/min it surfaces free of stops, up at 30 m/min it does not.',
    script: `# A wreck at thirty-six metres, two ways up.
# The day between them washes out what the first one left.
water: reference
altitude: 0 m
gradient factors: 85/85
gas: air

descend to 36 m at 18 m/min
stay 8 min 50 s           # along the deck and back to the line
ascend to surface at 9 m/min

interval 48 h

descend to 36 m at 18 m/min
stay 8 min 50 s
ascend to surface at 30 m/min   # gas that had no time to leave
`,
    stillS: 174390,
    inFeet: {
      title: 'A wreck at a hundred and twenty feet, two ways up',
      shows:
        'The same short deep dive twice, from rest each time: up at 30 ft/min it surfaces free of stops, up at 100 ft/min it does not.',
      script: `# A wreck at a hundred and twenty feet, two ways up.
# The day between them washes out what the first one left.
water: reference
altitude: 0 ft
gradient factors: 85/85
gas: air

descend to 120 ft at 60 ft/min
stay 8 min 50 s           # along the deck and back to the line
ascend to surface at 30 ft/min

interval 48 h

descend to 120 ft at 60 ft/min
stay 8 min 50 s
ascend to surface at 100 ft/min   # gas that had no time to leave
`,
    },
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
    stillS: 1215,
    inFeet: {
      title: 'A lake at six and a half thousand feet',
      shows: 'Less air above the water: the same depth gives less no-stop time, and a ceiling comes sooner.',
      script: `# A lake at six and a half thousand feet; the diver has lived up here for a week
water: fresh
altitude: 6500 ft
gradient factors: 80/80
gas: air

descend to 85 ft at 50 ft/min
stay 16 min
ascend to 15 ft at 30 ft/min
stay 3 min
ascend to surface at 30 ft/min
`,
    },
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
    stillS: 1900,
    inFeet: {
      title: 'Staged stops on three gases',
      shows:
        'Helium and nitrogen load at their own speeds; two richer gases shorten the stops. For study only: such dives need training and a team.',
      script: `# Staged stops on three gases, to study how the stops come about
water: salt
altitude: 0 ft
gradient factors: 30/80
gas: 18/45
carry: 50% from 70 ft
carry: oxygen from 20 ft

descend to 200 ft at 60 ft/min
stay 20 min
ascend to 90 ft at 30 ft/min
stay 1 min
ascend to 80 ft at 30 ft/min
stay 2 min
ascend to 70 ft at 30 ft/min
switch to 50%
stay 2 min
ascend to 60 ft at 30 ft/min
stay 2 min
ascend to 50 ft at 30 ft/min
stay 3 min
ascend to 40 ft at 30 ft/min
stay 5 min
ascend to 30 ft at 30 ft/min
stay 8 min
ascend to 20 ft at 30 ft/min
switch to oxygen
stay 23 min
ascend to surface at 10 ft/min
`,
    },
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
    stillS: 1450,
    inFeet: {
      title: 'One dive, four settings',
      shows:
        'Four units on one arm, one of them set right: only what they were told differs, and so does what they ask for.',
      script: `# One dive, four settings: a wall at 90 ft on air
water: reference
altitude: 0 ft
gradient factors: 85/85
gas: air
setup: Set right
setup: Wrong gas, gas 32%
setup: Strict limits, gradient factors 40/70
setup: Bottom timer, gauge mode

descend to 90 ft at 60 ft/min
stay 20 min               # on air the no-stop time runs out on the way
ascend to 20 ft at 30 ft/min
stay 2 min
ascend to 10 ft at 30 ft/min
stay 4 min
ascend to surface at 30 ft/min
`,
    },
  },
];

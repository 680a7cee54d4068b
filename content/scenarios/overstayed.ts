import type { Scenario } from './scenario-schema';

/** The dive the desk opens with; apart from the others, so that the desk opens without those. */
export const overstayed: Scenario = {
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
  stillS: 1365,
  inFeet: {
    title: 'Six minutes too long',
    shows:
      'A 100 ft dive on air that is stayed past its no-stop time: watch the ceiling come down and a stop be asked for.',
    script: `# Six minutes too long: a wreck at 100 ft, and nobody looks at the time
water: reference
altitude: 0 ft
gradient factors: 85/85
gas: air

descend to 100 ft at 60 ft/min
stay 17 min               # the no-stop time runs out on the way
ascend to 20 ft at 30 ft/min
stay 1 min                # the ceiling is just overhead
ascend to 10 ft at 30 ft/min
stay 5 min                # the stop the model asks for
ascend to surface at 30 ft/min
`,
  },
};

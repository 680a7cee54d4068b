/*
 * Long because it is one table. What a moment of a dive may be asked about, written as the questions of lessons are: the engine works out the answer and
 * what each usual mistake would come to, on the wall as at home. `T` is the moment, such as `at 720 s`.
 */

/** A value that is easily given in place of the right one. */
export interface Mistake {
  readonly value: string;
  /** How near to it an answer is taken to be it, in the unit of expressions. */
  readonly near: string;
  readonly because: string;
}

export interface NumberAsk {
  readonly by: 'number' | 'leader';
  readonly answer: string;
  readonly within: string;
  /** How it is printed, where not as its fact usually is. */
  readonly as?: string;
  readonly mistakes: readonly Mistake[];
  readonly tooLittle: string;
  readonly tooMuch: string;
}

interface ChoiceAsk {
  readonly by: 'choice';
  readonly options: readonly { readonly text: string; readonly holds: string }[];
  /** Why the others are wrong, by the option that is right. */
  readonly because: readonly string[];
}

export interface DiveAsk {
  readonly id: string;
  readonly words: string;
  /** The reading that is covered while it is asked. */
  readonly reading: string;
  readonly question: NumberAsk | ChoiceAsk;
  /** The line of the dive up to the moment would answer it, so it is asked without. */
  readonly unseen?: true;
  /** When it can't be asked, and what to do instead. */
  readonly unless?: readonly { readonly when: string; readonly why: string }[];
}

/** A text or an expression with its moment, s since the script began, put in. */
export function atMoment(text: string, atS: number): string {
  return text.replace(/\bT\b/g, `at ${atS} s`);
}

const LEADS = 'compartment {{noStopLeader T}}';

/** Everything that can be asked of a moment, each listed here once; what a diver looks at most comes first. */
export const DIVE_ASKS: readonly DiveAsk[] = [
  {
    id: 'no-stop',
    words: 'How long may you still stay here before you need a stop?',
    reading: 'no-stop',
    question: {
      by: 'number',
      answer: 'noStopMin T',
      within: '1.5 min',
      mistakes: [
        {
          value: 'freshNoStopMin(depthM T)',
          near: '1.5 min',
          because:
            'That is near what a rested diver set down here would have: {{freshNoStopMin(depthM T)}}. This one has taken up gas on the way here.',
        },
        {
          value: 'timeToSurfaceMin T',
          near: '1 min',
          because:
            'That is near the time the way up takes, {{timeToSurfaceMin T}}. Asked is how long you may still stay.',
        },
        {
          value: 'creditedNoStopMin T',
          near: '1 min',
          because:
            'That is near the figure with credit for gas lost on the way up, {{creditedNoStopMin T}}. The no-stop time counts none.',
        },
      ],
      tooLittle: `That is too strict. It is ${LEADS} that sets it, and it would be full for the surface only after {{noStopMin T}}.`,
      tooMuch: `By then ${LEADS} would be past its limit at the surface, and the way up would need a stop.`,
    },
    unless: [
      {
        when: 'noStopMin T > 99 min',
        why: 'The no-stop time is over 99 min or none here; move to a moment at which it runs.',
      },
      {
        when: 'noStopMin T > 0 min and stopCount T > 0',
        why: 'The way up itself needs a stop here, so no time is left to stay. Ask whether there will be a stop.',
      },
    ],
  },
  {
    id: 'stop',
    words: 'Going up now at the plan’s rate: will there be a stop?',
    reading: 'required-stop',
    question: {
      by: 'choice',
      options: [
        { text: 'No: straight up is open.', holds: 'stopCount T == 0 and timeToSurfaceMin T < 100 h' },
        { text: 'Yes: a stop has to be made on the way.', holds: 'stopCount T > 0 or timeToSurfaceMin T >= 100 h' },
      ],
      because: [
        'No stop is asked for: on the way up every compartment stays within its limit, and the climb takes {{timeToSurfaceMin T}}.',
        'The plan’s first stop is at {{stopM T | stop}} for {{stopMin T | min up}}; without it a compartment would pass its limit on the way.',
      ],
    },
  },
  {
    id: 'ceiling',
    words: 'How deep is the ceiling now? Nothing is 0.',
    reading: 'ceiling',
    question: {
      by: 'number',
      answer: 'ceilingM T',
      within: '1 m',
      mistakes: [
        {
          value: 'stopM T',
          near: '1 m',
          because:
            'That is near the depth of the first stop, {{stopM T | stop}}, which is a step at or below the ceiling. The ceiling itself is {{ceilingM T}}.',
        },
        {
          value: '0 m',
          near: '0.5 m',
          because:
            'There is one: a compartment holds more than it may hold at the surface, and the ceiling is {{ceilingM T}}.',
        },
        {
          value: 'depthM T',
          near: '1 m',
          because: 'That is where the diver is: {{depthM T}}. The ceiling is {{ceilingM T}}.',
        },
      ],
      tooLittle: 'Up there a compartment would be past its limit: the ceiling is {{ceilingM T}}.',
      tooMuch: 'That is deeper than any compartment asks for: the ceiling is {{ceilingM T}}.',
    },
  },
  {
    id: 'time-to-surface',
    words: 'How long does the way up take from here, stops and all?',
    reading: 'time-to-surface',
    question: {
      by: 'number',
      answer: 'timeToSurfaceMin T',
      within: '2 min',
      mistakes: [
        {
          value: '(timeToSurfaceMin T) - (stopsMin T)',
          near: '1 min',
          because:
            'That is near the climb alone, {{(timeToSurfaceMin T) - (stopsMin T) | min up}}. The stops take {{stopsMin T | min up}} more.',
        },
        {
          value: 'stopsMin T',
          near: '1 min',
          because: 'That is near the stops alone, {{stopsMin T | min up}}. The climb between them counts too.',
        },
        {
          value: 'noStopMin T',
          near: '1 min',
          because:
            'That is near the no-stop time, {{noStopMin T}}: how long you may stay, and not how long the way up takes.',
        },
      ],
      tooLittle: 'It takes longer: {{timeToSurfaceMin T}}, with {{stopsMin T | min up}} of stops in it.',
      tooMuch: 'It takes less: {{timeToSurfaceMin T}}, with {{stopsMin T | min up}} of stops in it.',
    },
  },
  {
    id: 'leader',
    words: 'Which compartment leads: which one sets the no-stop time now?',
    reading: 'no-stop',
    question: {
      by: 'leader',
      answer: 'noStopLeader T',
      within: '0',
      mistakes: [
        {
          value: 'surfacingSupersaturationLeader T',
          near: '0.1',
          because: `That one would be nearest its limit if you surfaced now. Staying here, ${LEADS} is the first to get there.`,
        },
      ],
      tooLittle: `That one is faster, and it may hold more at the surface: at this depth ${LEADS} is the first to reach its limit.`,
      tooMuch: `That one has a lower limit, and takes longer to get there: ${LEADS} is the first to reach its limit.`,
    },
  },
  {
    id: 'on-surfacing',
    words: 'If you were at the surface this instant: how much of its limit would the fullest compartment reach?',
    reading: 'surfacing-supersaturation',
    question: {
      by: 'number',
      answer: 'surfacingSupersaturationPercent T',
      within: '8%',
      mistakes: [
        {
          value: 'supersaturationPercent T',
          near: '5%',
          because:
            'That is near what it is down here, {{supersaturationPercent T}}. At the surface there is less pressure around the same gas.',
        },
      ],
      tooLittle:
        'It is more: {{surfacingSupersaturationPercent T}}, in compartment {{surfacingSupersaturationLeader T}}.',
      tooMuch:
        'It is less: {{surfacingSupersaturationPercent T}}, in compartment {{surfacingSupersaturationLeader T}}.',
    },
  },
  {
    id: 'supersaturation',
    words: 'How much of its limit does the fullest compartment reach now, down here?',
    reading: 'supersaturation',
    question: {
      by: 'number',
      answer: 'supersaturationPercent T',
      within: '8%',
      mistakes: [
        {
          value: 'surfacingSupersaturationPercent T',
          near: '5%',
          because:
            'That is near what it would be at the surface, {{surfacingSupersaturationPercent T}}. Down here there is more pressure around it.',
        },
      ],
      tooLittle: 'It is more: {{supersaturationPercent T}}.',
      tooMuch: 'It is less: {{supersaturationPercent T}}.',
    },
  },
  {
    id: 'safety-stop',
    words: 'How many minutes of the safety stop are left?',
    reading: 'safety-stop',
    question: {
      by: 'number',
      answer: 'safetyStopLeftMin T',
      within: '0.5 min',
      mistakes: [],
      tooLittle: 'More is left: {{safetyStopLeftMin T | seconds}}. Time outside the band does not count.',
      tooMuch: 'Less is left: {{safetyStopLeftMin T | seconds}}.',
    },
  },
  {
    id: 'imposed-stop',
    words: 'Does a rule of the unit ask for a stop of its own now?',
    reading: 'imposed-stop',
    question: {
      by: 'choice',
      options: [
        { text: 'No.', holds: 'imposedStopLeftMin T == 0' },
        { text: 'Yes: on top of what the model asks for.', holds: 'imposedStopLeftMin T > 0' },
      ],
      because: [
        'No rule of this unit asks for one at this moment.',
        'It asks for {{imposedStopLeftMin T | min up}} more at {{imposedStopM T | stop}}. It is a rule of the unit, and not the model.',
      ],
    },
  },
  {
    id: 'no-fly',
    words: 'How long does the unit say not to fly?',
    reading: 'no-fly',
    question: {
      by: 'choice',
      options: [
        { text: 'Less than 12 hours.', holds: 'noFlyMin T < 12 h' },
        { text: '12 hours or more, less than 18.', holds: 'noFlyMin T >= 12 h and noFlyMin T < 18 h' },
        { text: '18 hours or more, less than 24.', holds: 'noFlyMin T >= 18 h and noFlyMin T < 24 h' },
        { text: '24 hours or more.', holds: 'noFlyMin T >= 24 h' },
      ],
      because: Array.from(
        { length: 4 },
        () =>
          'It says {{noFlyMin T | hours}}: the guideline’s {{noFlyGuidelineMin T | hours}} or the model’s {{noFlyModelMin T | hours}}, whichever is longer.',
      ),
    },
  },
  {
    id: 'oxygen-pressure',
    words: 'What is the pressure of oxygen in what is breathed now, in bar?',
    reading: 'oxygen-pressure',
    question: {
      by: 'number',
      // In bar for everyone, as the reading is.
      answer: '(oxygenBar T) / (1 bar)',
      within: '0.06',
      as: 'number 2',
      mistakes: [
        {
          value: '((ambientBar T) - surfaceBar) / (ambientBar T) * ((oxygenBar T) / (1 bar))',
          near: '0.04',
          because:
            'That counts the water alone. The air above it presses too: {{(ambientBar T) / (1 bar) | number 2}} bar in all.',
        },
      ],
      tooLittle: 'It is more: the share of oxygen times {{(ambientBar T) / (1 bar) | number 2}} bar.',
      tooMuch: 'It is less: the share of oxygen times {{(ambientBar T) / (1 bar) | number 2}} bar.',
    },
  },
  {
    id: 'oxygen-single',
    words: 'How much of the oxygen limit for a single exposure has been used?',
    reading: 'oxygen-single',
    question: {
      by: 'number',
      answer: 'oxygenClockPercent T',
      within: '5%',
      mistakes: [],
      tooLittle: 'More of it is used: {{oxygenClockPercent T}}.',
      tooMuch: 'Less of it is used: {{oxygenClockPercent T}}.',
    },
  },
  {
    id: 'oxygen-daily',
    words: 'How much of the oxygen limit for a whole day has been used?',
    reading: 'oxygen-daily',
    question: {
      by: 'number',
      answer: 'oxygenDayPercent T',
      within: '5%',
      mistakes: [
        {
          value: 'oxygenClockPercent T',
          near: '4%',
          because:
            'That is near what is used of the limit for a single exposure, {{oxygenClockPercent T}}. A day has a limit of its own.',
        },
      ],
      tooLittle: 'More of it is used: {{oxygenDayPercent T}}.',
      tooMuch: 'Less of it is used: {{oxygenDayPercent T}}.',
    },
  },
  {
    id: 'oxygen-pulmonary',
    words: 'How many units of pulmonary oxygen dose have come together?',
    reading: 'oxygen-pulmonary',
    question: {
      by: 'number',
      answer: 'pulmonaryUnits T',
      within: '6',
      mistakes: [],
      tooLittle:
        'It is more: {{pulmonaryUnits T | number}}. Every minute above half an atmosphere of oxygen counts, and for more the higher it is.',
      tooMuch:
        'It is less: {{pulmonaryUnits T | number}}. A minute at one atmosphere of oxygen counts for one; at half of it none does.',
    },
  },
  {
    id: 'gas-density',
    words: 'How dense is what is breathed now?',
    reading: 'gas-density',
    question: {
      by: 'number',
      answer: 'gasDensityGL T',
      within: '0.4 g/L',
      mistakes: [
        {
          value: '(gasDensityGL T) * (surfaceBar / (ambientBar T))',
          near: '0.2 g/L',
          because:
            'That is near what it is at the surface. Down here it is pressed together {{(ambientBar T) / surfaceBar | number 1}} times.',
        },
      ],
      tooLittle: 'It is denser: {{gasDensityGL T}}.',
      tooMuch: 'It is lighter: {{gasDensityGL T}}.',
    },
  },
  {
    id: 'cylinder',
    words: 'What is left in the cylinder in use?',
    reading: 'cylinder',
    question: {
      by: 'number',
      answer: 'cylinderBar T',
      within: '15 bar',
      mistakes: [],
      tooLittle: 'More is left: {{cylinderBar T | cylinder}}.',
      tooMuch: 'Less is left: {{cylinderBar T | cylinder}}.',
    },
  },
  {
    id: 'rate',
    words: 'How fast does the diver go up or down now?',
    reading: 'rate',
    question: {
      by: 'number',
      answer: 'abs(rateMMin T)',
      within: '1.5 m/min',
      mistakes: [],
      tooLittle: 'It is faster: {{abs(rateMMin T)}}.',
      tooMuch: 'It is slower: {{abs(rateMMin T)}}.',
    },
  },
  {
    id: 'depth',
    words: 'How deep is the diver now?',
    reading: 'depth',
    unseen: true,
    question: {
      by: 'number',
      answer: 'depthM T',
      within: '1 m',
      as: 'm 1',
      mistakes: [],
      tooLittle: 'It is deeper: {{depthM T | m 1}}.',
      tooMuch: 'It is shallower: {{depthM T | m 1}}.',
    },
  },
];

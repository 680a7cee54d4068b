import type { ReactNode } from 'react';
import { markPath } from '../axes/mark-shapes';
import { Rock } from '../axes/Rock';
import { EventMark } from '../profile/EventMark';
import overlay from '../profile/overlay.module.css';
import chase from '../chase/chase.module.css';
import shared from '../pictures.module.css';
import styles from './marks.module.css';

interface Mark {
  readonly name: string;
  /** Terms of the glossary it is the picture of, by their ids. */
  readonly terms?: readonly string[];
  readonly means: string;
  /** Drawn in a box 72 wide and 30 tall. */
  readonly drawn: ReactNode;
}

const WIDTH = 72;
const HEIGHT = 30;
const MIDDLE = HEIGHT / 2;
const ROCK = 'marks-rock';

/** Every mark of the pictures with what it means, drawn by what draws it there. */
export const MARKS: readonly Mark[] = [
  {
    name: 'Hatched roof under a rust line',
    terms: ['ceiling'],
    means:
      'The model says stop: the ceiling, which you may not pass. In the chase, what each compartment tolerates here.',
    drawn: (
      <>
        <Rock id={ROCK} />
        <path d={`M4,2H68L52,22Q36,28 20,14Z`} fill={`url(#${ROCK})`} />
        <path d="M4,2L20,14Q36,28 52,22L68,2" className={shared.ceiling} />
      </>
    ),
  },
  {
    name: 'Broken rust line',
    terms: ['gradient-factor'],
    means: 'A limit the model keeps elsewhere: at the surface, or under the low gradient factor alone.',
    drawn: <path d={`M4,${MIDDLE}H68`} className={chase.surfaceLimit} />,
  },
  {
    name: 'Square with a number',
    terms: ['required-stop'],
    means: 'The model says so from this moment on; the log has the same number and words.',
    drawn: at(<EventMark voice="byModel" label="2" />),
  },
  {
    name: 'Circle with a number',
    terms: ['safety-stop', 'imposed-stop'],
    means: 'A rule says so, which an instrument adds to the model: a safety stop, a rate, an alarm.',
    drawn: at(<EventMark voice="byRule" label="1" />),
  },
  {
    name: 'Six sides with a number',
    terms: ['reserve'],
    means: 'The gas that is left says so.',
    drawn: at(<EventMark voice="bySupply" label="3" />),
  },
  {
    name: 'Heavy line',
    terms: ['multilevel-dive'],
    means: 'The dive as it is swum.',
    drawn: <path d="M4,4L16,24H46L60,8H68" className={shared.profile} />,
  },
  {
    name: 'Heavy broken line',
    terms: ['time-to-surface'],
    means: 'A way up that is planned from where the hand on time stands. Nobody has swum it.',
    drawn: (
      <g className={shared.wayUp}>
        <path d="M4,26L34,10H50L60,4" className={shared.withStops} />
      </g>
    ),
  },
  {
    name: 'Thin broken line',
    means: 'A second dive, laid under the first.',
    drawn: (
      <g className={overlay.overlay}>
        <path d="M4,4L16,24H46L60,8H68" className={overlay.depth} />
      </g>
    ),
  },
  {
    name: 'Thick blue-green line',
    terms: ['inert-gas'],
    means: 'The inert gas breathed, which every compartment runs after.',
    drawn: <path d={`M4,${MIDDLE}H68`} className={chase.breathed} />,
  },
  {
    name: 'Round mark',
    terms: ['compartment'],
    means: 'A compartment that the surface would tolerate. Filled with nitrogen from below; helium is left open.',
    drawn: <path d={markPath('round', WIDTH / 2, MIDDLE, 8)} className={`${chase.outline} ${chase.nitrogen}`} />,
  },
  {
    name: 'Lozenge in rust',
    terms: ['m-value'],
    means: 'A compartment past its limit at the surface: straight up, it would be over it.',
    drawn: (
      <path d={markPath('lozenge', WIDTH / 2, MIDDLE, 8)} className={`${chase.outlineOver} ${chase.nitrogenOver}`} />
    ),
  },
  {
    name: 'Rings in ink',
    means: 'What a unit or a record showed, sample by sample.',
    drawn: (
      <path
        d={[16, 28, 40, 52].map((x, index) => markPath('round', x, MIDDLE + (index % 2 ? 3 : -3), 3)).join('')}
        className={chase.second}
      />
    ),
  },
  {
    name: '≠ in bold',
    means: 'Differs: from the unit set right, from the model, from what was expected.',
    drawn: at(<text className={styles.sign}>≠</text>),
  },
  {
    name: '✕ with a word',
    means: 'An error, with what is wrong, where, and how to mend it.',
    drawn: at(<text className={styles.sign}>✕</text>),
  },
];

function at(mark: ReactNode) {
  return <g transform={`translate(${WIDTH / 2},${MIDDLE})`}>{mark}</g>;
}

/** A mark as it stands in the pictures. */
export function DrawnMark({ drawn }: Pick<Mark, 'drawn'>) {
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} aria-hidden="true">
      {drawn}
    </svg>
  );
}

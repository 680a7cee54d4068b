import { cautions } from '@/content/cautions';
import { PICTURE_IDS } from '../../../pictures/picture-ids';
import { pictures } from '../../../stage/figures/all';

/* What names in lesson files are called where a person chooses among them. A name that is not known says itself. */

const READINGS: Readonly<Record<string, string>> = {
  depth: 'Depth',
  time: 'Time',
  rate: 'Rate',
  'no-stop': 'No-stop time',
  'credited-no-stop': 'No-stop time with credit for the way up',
  ceiling: 'Ceiling',
  'required-stop': 'Required stop',
  'time-to-surface': 'Time to surface',
  supersaturation: 'Supersaturation',
  'surfacing-supersaturation': 'Supersaturation on surfacing',
  'safety-stop': 'Safety stop',
  'imposed-stop': 'Imposed stop',
  'no-fly': 'No flying for',
  desaturation: 'Desaturated in',
  'oxygen-pressure': 'Oxygen pressure',
  'oxygen-single': 'Oxygen: single exposure',
  'oxygen-daily': 'Oxygen: in 24 h',
  'oxygen-pulmonary': 'Oxygen: lung units',
  'gas-density': 'Gas density',
  cylinder: 'Cylinder',
  mod: 'Maximum operating depth',
  end: 'Equivalent narcotic depth, oxygen counted',
  'end-nitrogen': 'Equivalent narcotic depth, nitrogen alone',
  'tightened-limits': 'Limits a rule has tightened',
};

export function readingWords(name: string): string {
  const compartment = /^tension-(\d+)$/.exec(name)?.[1];
  return compartment === undefined ? (READINGS[name] ?? name) : `Gas in compartment ${compartment}`;
}

export function pictureWords(name: string): string {
  const id = PICTURE_IDS.find((one) => one === name);
  return id ? pictures[id].title : name;
}

/** A caution is chosen by what it says. */
export function cautionWords(name: string): string {
  return Object.hasOwn(cautions, name) ? cautions[name as keyof typeof cautions] : name;
}

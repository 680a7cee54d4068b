import { SETTINGS } from './script/settings/settings';
import { STEPS } from './script/step-words';

/** One thing a script can say, for the reference page and for completion. */
export interface ReferenceEntry {
  readonly kind: 'setting' | 'step';
  /** The words it begins with. */
  readonly name: string;
  /** Other words understood for it. */
  readonly also: readonly string[];
  readonly help: string;
  /** Whole lines; each of them reads. */
  readonly examples: readonly string[];
  /** What leaving it out means; settings only. */
  readonly unless?: string;
  /** Every value there is, when they can be listed. */
  readonly choices?: readonly string[];
}

/** The whole script language: the settings in the order they are written, then the steps. */
export const scriptReference: readonly ReferenceEntry[] = [
  ...SETTINGS.map(({ name, also, help, examples, unless, choices }): ReferenceEntry => ({
    kind: 'setting',
    name,
    also,
    help,
    examples: examples.map((value) => `${name}: ${value}`),
    unless,
    ...(choices && { choices }),
  })),
  ...STEPS.map(({ words: [name = '', ...also], help, examples }): ReferenceEntry => ({
    kind: 'step',
    name,
    also,
    help,
    examples,
  })),
];

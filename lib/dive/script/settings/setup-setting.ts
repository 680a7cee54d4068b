import { quoted, refused, accepted, type Parsed } from '../../../quantity/parsed';
import { MOST_SETUPS } from '../../bounds';
import type { Apply, Setting } from './setting';
import { readSetup, writeSetup } from './setup-text';

/** The instruments that watch the dive, one on a line. */
export const SETUP_SETTING: Setting = {
  name: 'setup',
  also: ['set up', 'unit', 'instrument'],
  help: 'An instrument that watches the dive: a name of your own, then what it is set to that differs from the dive: gauge mode, gas, altitude, water, gradient factors, a depth it reads wrongly, a memory lost before a dive.',
  unless: 'One unit, set as the dive is.',
  examples: [
    'Rental unit, gas 32%',
    'Shop unit, altitude 2000 m, gradient factors 40/85, water salt',
    'Old unit, depth +0.8 m, depth 103%',
    'Spare unit, gauge mode, fresh before dive 2',
  ],
  repeats: true,
  read: readOne,
  write: ({ setups }) => (setups && setups.length > 0 ? setups.map(writeSetup) : undefined),
};

function readOne(text: string): Parsed<Apply> {
  const read = readSetup(text);
  if (!read.ok) return read;
  return accepted((settings) => {
    const setups = (settings.setups ??= []);
    if (setups.some(({ name }) => name === read.value.name)) {
      return refused(`Two setups are called ${quoted(read.value.name)}.`, 'Give each a name of its own.');
    }
    if (setups.length === MOST_SETUPS) return refused(`There are more than ${MOST_SETUPS} setups.`, 'Leave some out.');
    setups.push(structuredClone(read.value));
    return undefined;
  });
}

import { SEA_LEVEL_BAR } from '../../../physics/atmosphere';
import type { Gas } from '../../../physics/gas';
import { plainNumber, plainText, readNumber, tidy } from '../../../quantity/number';
import { accepted, quoted, refused, type Parsed } from '../../../quantity/parsed';
import { parsePressure } from '../../../quantity/pressure';
import { parseVolume } from '../../../quantity/volume';
import { parseGas, writeGas } from '../../gas-text';
import { CYLINDER_RANGE_L, FILL_RANGE_BAR, LONGEST_CYLINDER_NAME } from '../../bounds';
import type { Cylinder } from '../../supply';
import { shifted, within } from './setting-values';

/** A cylinder as written: with no gas, it holds the one each dive begins on. */
export type CylinderRead = Omit<Cylinder, 'gas'> & { readonly gas: Gas | undefined };

const FORM = 'Write its name, volume, pressure and gas, such as back, 12 L, 200 bar, air.';

/** Reads `back, 12 L, 200 bar, air; stage, 80 cu ft at 3000 psi, 2800 psi, 50%`. */
export function readCylinders(text: string): Parsed<CylinderRead[]> {
  const cylinders: CylinderRead[] = [];
  for (const item of partsOf(text, /;/g)) {
    const read = shifted(readCylinder(item.text), item.from, item.text.length);
    if (!read.ok) return read;
    if (cylinders.some(({ name }) => name === read.value.name))
      return namedTwice(read.value.name, [item.from, item.from + item.text.length]);
    cylinders.push(read.value);
  }
  return accepted(cylinders);
}

function readCylinder(text: string): Parsed<CylinderRead> {
  // A comma between digits is a decimal comma, not the end of a part.
  const parts = partsOf(text, /(?<!\d),|,(?!\d)/g);
  const [name, volume, pressure, gas, more] = parts;
  if (!name || !volume || !pressure || more || parts.some((part) => part.text === '')) {
    return refused(
      text === '' ? 'A cylinder is missing here.' : `${quoted(text)} does not say what the cylinder is.`,
      FORM,
    );
  }
  if (name.text.length > LONGEST_CYLINDER_NAME)
    return refused(
      `${quoted(name.text)} is a long name.`,
      `Write at most ${LONGEST_CYLINDER_NAME} characters.`,
      spanOf(name),
    );
  const size = placed(readSize(volume.text), volume);
  if (!size.ok) return size;
  const start = placed(readFill(pressure.text), pressure);
  if (!start.ok) return start;
  const { waterL, workingBar = start.value } = size.value;
  if (start.value > workingBar) {
    return refused(
      `${quoted(pressure.text)} is more than the cylinder’s working pressure.`,
      'Write at most the pressure after “at”, or another one there.',
      spanOf(pressure),
    );
  }
  const held = gas ? placed(parseGas(gas.text), gas) : accepted(undefined);
  if (!held.ok) return held;
  return accepted({ name: name.text, waterL, workingBar, startBar: start.value, gas: held.value && { ...held.value } });
}

/**
 * `12 L`, `2 x 12 L`, `12 L at 232 bar`, `80 cu ft at 3000 psi`. Litres are what it holds of water; cubic feet are the gas
 * it holds at its working pressure, as the trade gives them, turned into water volume by Boyle's law.
 */
export function readSize(text: string): Parsed<{ waterL: number; workingBar?: number }> {
  const [sizeText = '', pressureText] = plainText(text).split(/\s+at\s+/);
  const working =
    pressureText === undefined
      ? undefined
      : shifted(readFill(pressureText), text.length - pressureText.length, pressureText.length);
  if (working && !working.ok) return working;
  const [, countText, oneText = sizeText] = /^(\d+)\s*[x×]\s*(.*)$/.exec(sizeText) ?? [];
  const count = countText === undefined ? 1 : readNumber(countText);
  const times = typeof count === 'number' ? count : count.ok ? count.value.value : 0;
  const volume = parseVolume(oneText);
  if (!volume.ok) return shifted(volume, sizeText.length - oneText.length, oneText.length);
  const inFeet = /f/.test(oneText);
  if (inFeet && !working) {
    return refused(
      `${quoted(text)} does not say at what pressure.`,
      `Add its working pressure, such as ${sizeText} at 3000 psi.`,
    );
  }
  const litres = times === 1 ? volume.value : tidy(times * volume.value);
  const waterL = inFeet && working ? tidy((litres * SEA_LEVEL_BAR) / working.value) : litres;
  const checked = within(waterL, text, ...CYLINDER_RANGE_L, ' L of water');
  if (!checked.ok) return checked;
  return accepted(working ? { waterL, workingBar: working.value } : { waterL });
}

function readFill(text: string): Parsed<number> {
  const read = parsePressure(text);
  return read.ok ? within(read.value, text, ...FILL_RANGE_BAR, ' bar') : read;
}

/** The refusal of a cylinder whose name another has; `at` is where in the value it stands, in characters. */
export function namedTwice(name: string, at?: readonly [number, number]) {
  return refused(`Two cylinders are called ${quoted(name)}.`, 'Give each a name of its own.', at);
}

/** Cylinders as the value of `cylinder`, in litres and bar; reads back as exactly the same. */
export function writeCylinders(cylinders: readonly Cylinder[]): string {
  return cylinders
    .map(({ name, waterL, workingBar, startBar, gas }) => {
      const size = `${plainNumber(waterL)} L${workingBar === startBar ? '' : ` at ${plainNumber(workingBar)} bar`}`;
      return `${name}, ${size}, ${plainNumber(startBar)} bar, ${writeGas(gas)}`;
    })
    .join('; ');
}

interface Piece {
  readonly text: string;
  readonly from: number;
}

function spanOf({ text, from }: Piece): readonly [number, number] {
  return [from, from + text.length];
}

function placed<T>(read: Parsed<T>, piece: Piece): Parsed<T> {
  return shifted(read, piece.from, piece.text.length);
}

/** A text cut at a separator, without the spaces around each piece. */
function partsOf(text: string, separator: RegExp): Piece[] {
  const cuts = [...text.matchAll(separator)].map(({ index }) => index);
  const starts = [0, ...cuts.map((at) => at + 1)];
  return starts.map((start, i) => {
    const whole = text.slice(start, cuts[i]);
    return { text: whole.trim(), from: start + whole.length - whole.trimStart().length };
  });
}

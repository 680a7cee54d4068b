import { atmosphereBar } from '../../physics/atmosphere';
import { type Gas } from '../../physics/gas';
import { maximumOperatingDepthM, minimumOperatingDepthM } from '../../physics/oxygen-depth';
import { barPerMetre } from '../../physics/water';
import { sayDepth } from '../../quantity/depth';
import { METRES_PER_FOOT } from '../../quantity/length';
import { fixed } from '../../quantity/number';
import type { UnitSystem } from '../../quantity/unit-system';
import type { Settings } from '../dive';
import { writeGas } from '../gas-text';
import { noticeAt, type Notice } from './notice';
import { leastPO2BarAt, PO2_SLACK_BAR, RESTING_PO2_BAR, WORKING_PO2_BAR } from '../../physics/oxygen-limits';
import type { LineRead, Span } from './line';
import type { WalkedStep } from './walk';

/** Pressures of the site, and the units the script is written in. */
interface Site {
  readonly surfaceBar: number;
  readonly barPerM: number;
  readonly system: UnitSystem;
}

/** Part of the dive spent on one gas, between two depths. */
interface Stretch {
  readonly gas: Gas;
  readonly shallowM: number;
  readonly deepM: number;
  readonly limitBar: number;
}

/** Warns of gases that are unwise to breathe where a script has them breathed: too much oxygen, or too little. */
export function gasCautions(
  settings: Settings,
  steps: readonly WalkedStep[],
  lines: readonly LineRead[],
  system: UnitSystem,
): Notice[] {
  const site = { surfaceBar: atmosphereBar(settings.altitudeM), barPerM: barPerMetre(settings.water), system };
  const notices = carriedCautions(settings, lines, site);
  let { gas } = settings;
  // Until the depth changes the diver is at the surface, where neither limit is near.
  let rising: boolean | undefined;
  for (const { step, lineIndex, fromM } of steps) {
    if (step.kind === 'switch') gas = step.gas;
    if (step.kind === 'interval') gas = settings.gas;
    if (step.kind === 'switch' || step.kind === 'interval') continue;
    if (step.kind !== 'stay') rising = step.kind === 'ascend';
    const toM = step.kind === 'stay' ? fromM : step.toM;
    const stretch = {
      gas,
      shallowM: Math.min(fromM, toM),
      deepM: Math.max(fromM, toM),
      limitBar: rising ? RESTING_PO2_BAR : WORKING_PO2_BAR,
    };
    const read = lines[lineIndex]!;
    const span: Span = read.as === 'step' ? read.body : [0, 1];
    for (const { what, mend } of stretchCautions(stretch, site))
      notices.push(noticeAt(lineIndex, { span, what, mend }));
  }
  return notices;
}

interface Caution {
  readonly what: string;
  readonly mend: string;
}

function stretchCautions(stretch: Stretch, site: Site): Caution[] {
  if (stretch.gas.o2 === 0)
    return [{ what: `There is no oxygen in ${writeGas(stretch.gas)}.`, mend: 'Breathe a gas with oxygen.' }];
  return [tooMuchOxygen(stretch, site), tooLittleOxygen(stretch, site)].filter((caution) => caution !== undefined);
}

function tooMuchOxygen({ gas, deepM, limitBar }: Stretch, site: Site): Caution | undefined {
  const oxygenBar = pO2(gas, deepM, site);
  if (oxygenBar <= limitBar + PO2_SLACK_BAR) return undefined;
  const name = writeGas(gas);
  const modM = maximumOperatingDepthM(gas.o2, limitBar + PO2_SLACK_BAR, site.surfaceBar, site.barPerM);
  const manner = limitBar === WORKING_PO2_BAR ? 'working' : 'at rest';
  const where = sayDepth(floorDepthM(modM, site.system), site.system);
  return {
    what:
      `On ${name} at ${sayDepth(deepM, site.system)} the oxygen pressure is ${fixed(oxygenBar, 2)} bar; ` +
      `the usual limit ${manner} is ${fixed(limitBar, 1)} bar.`,
    mend:
      modM < 0 ? 'Breathe a gas with less oxygen.' : `Keep ${name} above ${where}, or breathe a gas with less oxygen.`,
  };
}

function tooLittleOxygen({ gas, shallowM }: Stretch, site: Site): Caution | undefined {
  const oxygenBar = pO2(gas, shallowM, site);
  const leastBar = leastPO2BarAt(site.surfaceBar);
  // A hair below counts as enough: it is only the rounding of the arithmetic.
  if (oxygenBar >= leastBar - 1e-9) return undefined;
  const name = writeGas(gas);
  const where = shallowM === 0 ? 'at the surface' : `at ${sayDepth(shallowM, site.system)}`;
  const enoughM = minimumOperatingDepthM(gas.o2, leastBar, site.surfaceBar, site.barPerM);
  const below = sayDepth(-floorDepthM(-enoughM, site.system), site.system);
  return {
    what: `On ${name} ${where} the oxygen pressure is ${fixed(oxygenBar, 2)} bar, under the floor that is customary: consciousness goes without warning.`,
    mend: `Keep ${name} below ${below}, or breathe a gas with more oxygen.`,
  };
}

function carriedCautions(settings: Settings, lines: readonly LineRead[], site: Site): Notice[] {
  const lineIndex = lines.findIndex((read) => read.as === 'setting' && read.setting.name === 'carry');
  const read = lines[lineIndex];
  if (read?.as !== 'setting') return [];
  return settings.carried.flatMap(({ gas, fromM }) =>
    stretchCautions({ gas, shallowM: fromM, deepM: fromM, limitBar: RESTING_PO2_BAR }, site).map((caution) =>
      noticeAt(lineIndex, { span: read.value.span, ...caution }),
    ),
  );
}

function pO2(gas: Gas, depthM: number, { surfaceBar, barPerM }: Site): number {
  return gas.o2 * (surfaceBar + depthM * barPerM);
}

/** A depth rounded up towards the surface, to the step it is shown in. */
function floorDepthM(depthM: number, system: UnitSystem): number {
  const step = system === 'metric' ? 1 : METRES_PER_FOOT;
  return Math.floor(depthM / step + 1e-9) * step;
}

import { ALTITUDE_RANGE_M } from '../../physics/atmosphere';
import { AIR, gasName, sameGas, type Gas } from '../../physics/gas';
import type { Water } from '../../physics/water';
import { GrowingNumbers } from '../records/growing';
import {
  MAX_DIVES,
  MAX_SAMPLES,
  type FirstGas,
  type GasSwitch,
  type Recording,
  type UnitChannel,
  type Unread,
} from '../records/record';
import { plainNumber } from '../../quantity/number';
import { RefusedFile, tooManySamples } from '../refused-file';
import { xmlNumber } from './xml-number';
import { ZERO_CELSIUS_K } from '../../exposure/gas-density';

const MOST_UNREAD = 50;

export interface UddfSite {
  readonly altitudeM: number | undefined;
  readonly water: Water | undefined;
}

interface Waypoint {
  timeS: number;
  depthM: number;
  kelvin: number;
  noStopS: number;
  stopDepthM: number;
  stopTimeS: number;
  switchRef: string | undefined;
  unread: Unread[];
}

/**
 * One dive element of a UDDF file as it is being read. Of a waypoint's elements `depth`, `divetime`, `temperature`,
 * `switchmix`, `divemode` and `decostop` are named as the standard's pages describe them; `nodecotime` (s), and before
 * the dive `datetime`, `altitude` and `surfaceintervalbeforedive`, are named from memory.
 */
export class UddfDive {
  readonly name: string;
  readonly links: string[] = [];
  /** What this dive and its cylinders are linked to, each once: mixes are among it. */
  private readonly refs: string[] = [];
  altitudeM: number | undefined;
  /** A mode other than open circuit, if the dive has one. */
  refusedMode: string | undefined;
  private startedAt: string | undefined;
  private intervalBeforeS: number | undefined;
  private readonly time = new GrowingNumbers();
  private readonly depth = new GrowingNumbers();
  private readonly kelvin = new GrowingNumbers();
  private readonly unit: Readonly<Record<Exclude<UnitChannel, 'ceilingM'>, GrowingNumbers>> = {
    noStopS: new GrowingNumbers(),
    stopDepthM: new GrowingNumbers(),
    stopTimeS: new GrowingNumbers(),
  };
  private readonly switches: { timeS: number; ref: string; waypoint: number }[] = [];
  private readonly unread: Unread[] = [];
  private waypoint: Waypoint | undefined;

  constructor(readonly number: number) {
    if (number > MAX_DIVES)
      throw new RefusedFile(`The file holds more than ${MAX_DIVES} dives.`, 'Export fewer at a time.');
    this.name = `Dive ${number}`;
  }

  get length(): number {
    return this.time.length;
  }

  open(name: string, attributes: Readonly<Record<string, string>>, path: readonly string[]): void {
    const { waypoint } = this;
    if (name === 'waypoint' && path.includes('samples')) {
      this.waypoint = {
        timeS: NaN,
        depthM: NaN,
        kelvin: NaN,
        noStopS: NaN,
        stopDepthM: NaN,
        stopTimeS: NaN,
        switchRef: undefined,
        unread: [],
      };
    } else if (name === 'link' && !waypoint) {
      const { ref = '' } = attributes;
      if (path.includes('informationbeforedive')) this.links.push(ref);
      if (!this.refs.includes(ref)) this.refs.push(ref);
    } else if (name === 'infinity' && path.includes('surfaceintervalbeforedive')) this.intervalBeforeS = Infinity;
    else if (!waypoint) return;
    else if (name === 'switchmix') waypoint.switchRef = attributes.ref ?? '';
    else if (name === 'divemode') {
      const mode = attributes.type ?? attributes.kind ?? 'opencircuit';
      if (mode !== 'opencircuit') this.refusedMode ??= mode;
    } else if (name === 'decostop') this.takeStop(waypoint, attributes);
  }

  /** Of several required stops the deepest is the one a unit shows; a safety stop is no figure of the model. */
  private takeStop(waypoint: Waypoint, { kind, decodepth, duration }: Readonly<Record<string, string>>): void {
    if (kind !== 'mandatory') return;
    const depthM = xmlNumber(decodepth ?? '');
    if (!(depthM > waypoint.stopDepthM || Number.isNaN(waypoint.stopDepthM))) return;
    waypoint.stopDepthM = depthM;
    waypoint.stopTimeS = xmlNumber(duration ?? '');
  }

  /** @param samples how many waypoints the whole file has had */
  close(name: string, text: string, path: readonly string[], samples: number): void {
    const { waypoint } = this;
    if (waypoint) this.closeInWaypoint(waypoint, name, text, samples);
    else if (name === 'passedtime' && path.includes('surfaceintervalbeforedive')) {
      const seconds = xmlNumber(text);
      if (seconds >= 0) this.intervalBeforeS = seconds;
    } else if (path.includes('informationbeforedive')) {
      if (name === 'datetime') this.startedAt = text.trim().slice(0, 40);
      if (name === 'altitude') this.altitudeM = xmlNumber(text);
    }
  }

  private closeInWaypoint(waypoint: Waypoint, name: string, text: string, samples: number): void {
    const row = this.time.length + 1;
    if (name === 'depth' || name === 'divetime') {
      const value = xmlNumber(text);
      if (name === 'depth') waypoint.depthM = value;
      else waypoint.timeS = value;
      if (Number.isNaN(value))
        waypoint.unread.push({ row, text: text.slice(0, 60), of: name === 'depth' ? 'depth' : 'time' });
    } else if (name === 'temperature') waypoint.kelvin = xmlNumber(text);
    else if (name === 'nodecotime') waypoint.noStopS = xmlNumber(text);
    else if (name === 'waypoint') {
      if (samples > MAX_SAMPLES) throw tooManySamples(MAX_SAMPLES);
      this.keep(waypoint, row);
      this.waypoint = undefined;
    }
  }

  private keep(waypoint: Waypoint, row: number): void {
    this.time.push(waypoint.timeS);
    this.depth.push(waypoint.depthM);
    this.kelvin.push(waypoint.kelvin);
    this.unit.noStopS.push(waypoint.noStopS);
    this.unit.stopDepthM.push(waypoint.stopDepthM);
    this.unit.stopTimeS.push(waypoint.stopTimeS);
    if (this.unread.length < MOST_UNREAD) this.unread.push(...waypoint.unread);
    if (waypoint.switchRef !== undefined)
      this.switches.push({ timeS: waypoint.timeS, ref: waypoint.switchRef, waypoint: row });
  }

  /**
   * The gas the dive begins with where no waypoint at its beginning names one: that of its cylinder, where all its
   * cylinders hold one. With several nobody can tell from the file; with none the standard means air.
   */
  private firstGas(gasOf: (ref: string) => Gas, isMix: (ref: string) => boolean): FirstGas | undefined {
    if (this.switches[0]?.waypoint === 1) return undefined;
    const possible: Gas[] = [];
    for (const gas of this.refs.filter(isMix).map(gasOf)) {
      if (!possible.some((other) => sameGas(other, gas))) possible.push(gas);
    }
    const [only] = possible;
    if (only === undefined)
      return {
        from: `“${this.name}” names no gas at its beginning and no cylinder’s: air is meant by that.`,
        possible: [AIR],
      };
    const names = possible.map(gasName).join(' and ');
    return possible.length === 1
      ? {
          from: `“${this.name}” names no gas at its beginning: ${names} is taken, from its cylinder or its own link.`,
          possible,
        }
      : { from: `“${this.name}” has cylinders of ${names} and does not say which it begins with.`, possible };
  }

  /** What of it was passed over. */
  notes(): string[] {
    const odd = this.kelvin.slice().find((value) => Number.isFinite(value) && !isOfWater(value));
    const { altitudeM } = this;
    return [
      odd === undefined
        ? ''
        : `${this.name} tells of ${plainNumber(odd)} K, which no water has: such temperatures were passed over.`,
      altitudeM === undefined || Number.isNaN(altitudeM) || inRange(altitudeM) !== undefined
        ? ''
        : `${this.name} tells of an altitude of ${plainNumber(altitudeM)} m, beyond what is reckoned with: it was passed over.`,
    ].filter((note) => note !== '');
  }

  /**
   * @param gasOf the gas a reference stands for
   * @param isMix whether a reference stands for a gas at all
   */
  recording(gasOf: (ref: string) => Gas, isMix: (ref: string) => boolean, site: UddfSite): Recording {
    const { length } = this;
    const switches: GasSwitch[] = [];
    const firstGas = this.firstGas(gasOf, isMix);
    if (firstGas?.possible.length === 1) switches.push({ timeS: 0, gas: firstGas.possible[0]! });
    for (const { timeS, ref, waypoint } of this.switches) {
      const gas = gasOf(ref);
      const last = switches.at(-1);
      const from = waypoint === 1 ? 0 : timeS;
      if (Number.isFinite(from) && !(last && sameGas(last.gas, gas))) switches.push({ timeS: from, gas });
    }
    const unit: Partial<Record<UnitChannel, Float64Array>> = {};
    for (const channel of ['noStopS', 'stopDepthM', 'stopTimeS'] as const) {
      const values = this.unit[channel].slice();
      if (values.some(Number.isFinite)) unit[channel] = values;
    }
    const kelvin = this.kelvin.slice();
    return {
      name: this.name,
      rowsAre: 'waypoint',
      row: Uint32Array.from({ length }, (_, i) => i + 1),
      timeS: this.time.slice(),
      depthM: this.depth.slice(),
      switches,
      firstGas,
      unit,
      temperatureC: kelvin.some(isOfWater)
        ? kelvin.map((value) => (isOfWater(value) ? Math.round((value - ZERO_CELSIUS_K) * 1e9) / 1e9 : NaN))
        : undefined,
      startedAt: this.startedAt,
      clockS: undefined,
      intervalBeforeS: this.intervalBeforeS,
      altitudeM: inRange(site.altitudeM),
      water: site.water,
      unread: this.unread,
    };
  }
}

/** Whether a temperature could be one of water or air around a diver, K. */
function isOfWater(kelvin: number): boolean {
  return kelvin > 200 && kelvin < 350;
}

function inRange(altitudeM: number | undefined): number | undefined {
  const [lowest, highest] = ALTITUDE_RANGE_M;
  return altitudeM !== undefined && altitudeM >= lowest && altitudeM <= highest ? altitudeM : undefined;
}

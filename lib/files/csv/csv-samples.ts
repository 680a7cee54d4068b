import { recordedGas } from './recorded-gas';
import { gasName, sameGas, type Gas, WHOLE_GAS } from '../../physics/gas';
import { numberBetween, type RowScanner } from './csv-cells';
import { tidy } from '../../quantity/number';
import { celsius, unitSize, type Mapping, type Role } from './csv-mapping';
import { timeReader } from './csv-time';
import { partedUnit } from './csv-words';
import { inDiveOrder, TURNED_NOTE } from '../records/dive-log';
import { GrowingNumbers } from '../records/growing';
import {
  MAX_DIVES,
  MAX_SAMPLES,
  type FileResult,
  type GasSwitch,
  type Recording,
  type UnitChannel,
  type Unread,
} from '../records/record';
import { RefusedFile, tooManySamples } from '../refused-file';

/** Unreadable cells are quoted up to this many; the samples themselves tell of the rest. */
const MOST_UNREAD = 200;

const CHANNEL_ROLES: readonly (readonly [UnitChannel, Role])[] = [
  ['noStopS', 'noStop'],
  ['ceilingM', 'ceiling'],
  ['stopDepthM', 'stopDepth'],
  ['stopTimeS', 'stopTime'],
];

interface Channel {
  readonly column: number;
  readonly values: GrowingNumbers;
  read(value: number, text: () => string): number;
}

/** Gathers the samples of a CSV file row by row. */
export class CsvSamples {
  private readonly columnOf = new Map<Role, number>();
  private readonly time = new GrowingNumbers(65_536);
  private readonly depth = new GrowingNumbers(65_536);
  private readonly rows = new GrowingNumbers(65_536);
  private readonly unit = new Map<UnitChannel, Channel>();
  private readonly temperature: Channel | undefined;
  private readonly timeColumn: number;
  private readonly depthColumn: number;
  private readonly decimal: number;
  private readonly depthSize: number;
  private readonly readTime: (value: number, text: () => string) => number;
  private readonly timeIsWritten: boolean;
  private readonly timeIsDated: boolean;
  private readonly unread: Unread[] = [];
  private switches: { sample: number; gas: Gas }[] = [];
  private gasText = '';
  private highestM = 0;
  private lowestM = 0;
  /** Samples at which a new dive begins, and its name. */
  private readonly dives: { first: number; name: string; startText: string }[] = [];
  private readonly timeText = () => this.scanner.cell(this.timeColumn);

  constructor(
    private readonly mapping: Mapping,
    private readonly scanner: RowScanner,
  ) {
    mapping.columns.forEach(({ role }, i) => {
      if (role !== 'ignored' && !this.columnOf.has(role)) this.columnOf.set(role, i);
    });
    this.timeColumn = this.columnOf.get('time')!;
    this.depthColumn = this.columnOf.get('depth')!;
    this.decimal = mapping.decimal.charCodeAt(0);
    const timeUnit = mapping.columns[this.timeColumn]!.unit;
    this.timeIsWritten = unitSize(timeUnit) === undefined;
    this.timeIsDated = timeUnit === 'date' || timeUnit === 'date, month first';
    this.readTime = timeReader(timeUnit);
    this.depthSize = unitSize(mapping.columns[this.depthColumn]!.unit)!;
    for (const [channel, role] of CHANNEL_ROLES) {
      const made = this.channel(role, (unit) => {
        const size = unitSize(unit);
        if (size === undefined) return timeReader(unit);
        return (value) => sized(value, size);
      });
      if (made) this.unit.set(channel, made);
    }
    this.temperature = this.channel('temperature', (unit) => (value) => celsius(value, unit));
  }

  private channel(
    role: Role,
    reader: (unit: Mapping['columns'][number]['unit']) => Channel['read'],
  ): Channel | undefined {
    const column = this.columnOf.get(role);
    if (column === undefined) return undefined;
    return { column, values: new GrowingNumbers(65_536), read: reader(this.mapping.columns[column]!.unit) };
  }

  private number(column: number): number {
    const { scanner } = this;
    if (column >= scanner.cells) return NaN;
    const value = numberBetween(scanner.text, scanner.from[column]!, scanner.to[column]!, this.decimal);
    return value === value ? value : this.numberWithUnit(column);
  }

  /** `12.5 m` in a column of metres. */
  private numberWithUnit(column: number): number {
    const { number, unit } = partedUnit(this.scanner.cell(column));
    return unit !== undefined && unit === this.mapping.columns[column]!.unit
      ? numberBetween(number, 0, number.length, this.decimal)
      : NaN;
  }

  /** Takes in the row the scanner stands on. */
  take(): void {
    const { scanner } = this;
    if (scanner.row < this.mapping.firstRow || this.isAside()) return;
    const sample = this.time.length;
    if (sample >= MAX_SAMPLES) throw tooManySamples(MAX_SAMPLES);
    const time = this.readTime(this.timeIsWritten ? NaN : this.number(this.timeColumn), this.timeText);
    const depth = sized(this.number(this.depthColumn), this.depthSize);
    if (time !== time) this.remember('time', this.timeColumn);
    else if (depth !== depth) this.remember('depth', this.depthColumn);
    this.takeDive(sample);
    this.takeGas(sample);
    this.time.push(time);
    this.depth.push(depth);
    if (depth > this.highestM) this.highestM = depth;
    if (depth < this.lowestM) this.lowestM = depth;
    this.rows.push(scanner.row);
    for (const channel of this.unit.values()) this.takeChannel(channel);
    if (this.temperature) this.takeChannel(this.temperature);
  }

  /** Blank lines and remarks are not samples. */
  private isAside(): boolean {
    const { scanner } = this;
    if (scanner.cells === 1 && scanner.from[0] === scanner.to[0]) return true;
    const code = scanner.text.charCodeAt(scanner.from[0]!);
    return code === 35 || (scanner.cells === 1 && scanner.cell(0).trim() === '');
  }

  private remember(of: Unread['of'], column: number): void {
    if (this.unread.length < MOST_UNREAD)
      this.unread.push({ row: this.scanner.row, text: this.scanner.cell(column), of });
  }

  private takeChannel(channel: Channel): void {
    channel.values.push(channel.read(this.number(channel.column), () => this.scanner.cell(channel.column)));
  }

  private takeDive(sample: number): void {
    const column = this.columnOf.get('dive');
    const name = column === undefined ? '' : this.scanner.cell(column).trim();
    const last = this.dives.at(-1);
    if (last && (name === last.name || name === '')) return;
    if (this.dives.length === MAX_DIVES) {
      throw new RefusedFile(
        `The column of dive numbers names more than ${MAX_DIVES} dives.`,
        'Check that it holds the number of the dive, not of the sample.',
      );
    }
    this.dives.push({ first: sample, name, startText: this.timeText().trim() });
    // Each dive tells its own gas anew.
    this.gasText = '';
  }

  private takeGas(sample: number): void {
    const gas = this.columnOf.get('gas');
    const oxygen = this.columnOf.get('oxygen');
    const helium = this.columnOf.get('helium');
    if (gas === undefined && oxygen === undefined) return;
    const text = gas === undefined ? '' : this.scanner.cell(gas).trim();
    const parts =
      oxygen === undefined
        ? ''
        : `${this.scanner.cell(oxygen)}/${helium === undefined ? '' : this.scanner.cell(helium)}`;
    const told = `${text}|${parts}`;
    if (told === this.gasText) return;
    this.gasText = told;
    if (text === '' && /^[\s/]*$/.test(parts)) return;
    const read = text === '' ? this.gasOfParts(oxygen!, helium) : recordedGas(text);
    if (!read) this.remember('gas', text === '' ? oxygen! : gas!);
    else this.switches.push({ sample, gas: read });
  }

  private gasOfParts(oxygen: number, helium: number | undefined): Gas | undefined {
    const size = (column: number) => unitSize(this.mapping.columns[column]!.unit) ?? 1;
    const o2 = sized(this.number(oxygen), size(oxygen));
    const he = helium === undefined ? 0 : sized(this.number(helium) || 0, size(helium));
    return o2 >= 0 && he >= 0 && o2 + he <= WHOLE_GAS ? { o2, he } : undefined;
  }

  /** Whether depths are written as negative numbers throughout, as heights are. */
  private get countsUpward(): boolean {
    return this.highestM <= SURFACE_NOISE_M && this.lowestM < -DEEP_ENOUGH_M;
  }

  /** The dives read so far. */
  soFar(): Recording[] {
    return this.dives.map(({ first, name }, i) =>
      this.recording(first, this.dives[i + 1]?.first ?? this.time.length, name, i),
    );
  }

  private recording(first: number, end: number, name: string, index: number): Recording {
    const timeS = this.time.slice(first, end);
    const startS = timeS.find(Number.isFinite) ?? 0;
    const depthM = this.depth.slice(first, end);
    if (this.countsUpward) for (let i = 0; i < depthM.length; i += 1) depthM[i] = 0 - depthM[i]!;
    const shiftS = startsOnOtherClock(startS, index) || this.timeIsWritten ? startS : 0;
    if (shiftS !== 0) timeS.forEach((time, i) => (timeS[i] = Math.round((time - shiftS) * 1e9) / 1e9));
    const own = this.switches.filter(({ sample }) => sample >= first && sample < end);
    const switches: GasSwitch[] = [];
    for (const { sample, gas } of own) {
      const last = switches.at(-1);
      const time = sample === first ? 0 : timeS.slice(sample - first).find(Number.isFinite);
      if (time !== undefined && !(last && sameGas(last.gas, gas))) switches.push({ timeS: time, gas });
    }
    const { gasAbove } = this.mapping;
    const untold = switches.length === 0 && gasAbove !== undefined;
    if (untold && gasAbove.gases.length === 1) switches.push({ timeS: 0, gas: gasAbove.gases[0]! });
    const unit: Partial<Record<UnitChannel, Float64Array>> = {};
    for (const [channel, { values }] of this.unit) unit[channel] = values.slice(first, end);
    const row = Uint32Array.from(this.rows.slice(first, end));
    return {
      name: name === '' ? 'Dive 1' : /^\d+$/.test(name) ? `Dive ${name}` : name.slice(0, 60),
      rowsAre: 'row',
      row,
      timeS,
      depthM,
      switches,
      firstGas: untold ? { from: sayGasAbove(gasAbove), possible: gasAbove.gases } : undefined,
      unit,
      temperatureC: this.temperature?.values.slice(first, end),
      startedAt: this.timeIsDated ? this.dives[index]!.startText : undefined,
      clockS: this.dives.length > 1 || this.timeIsWritten ? shiftS : undefined,
      intervalBeforeS: undefined,
      altitudeM: undefined,
      water: undefined,
      unread: this.unread.filter((cell) => cell.row >= row[0]! && cell.row <= row[row.length - 1]!),
    };
  }

  result(): FileResult {
    if (this.time.length === 0)
      throw new RefusedFile(
        'No samples were found where they should begin.',
        `Check that row ${this.mapping.firstRow} holds the first one.`,
      );
    const recordings = this.soFar();
    if (recordings.every(({ timeS, depthM }) => !timeS.some((time, i) => time === time && depthM[i] === depthM[i]))) {
      throw new RefusedFile(
        'No row holds a time and a depth that can be read.',
        'Check which columns hold them, and the decimal mark.',
      );
    }
    const notes: string[] = [];
    if (recordings.every(({ switches }) => switches.length === 0)) notes.push('The file does not tell the gas.');
    if (this.countsUpward)
      notes.push('The file writes depths as negative numbers throughout; they were taken as depths below the surface.');
    const ordered = inDiveOrder(recordings);
    if (ordered.turned) notes.push(TURNED_NOTE);
    return { ok: true, recordings: ordered.recordings, notes };
  }
}

function sayGasAbove({ rows, gases }: NonNullable<Mapping['gasAbove']>): string {
  const [row, ...more] = rows;
  return more.length === 0
    ? `No column tells the gas; row ${row} names ${gasName(gases[0]!)}.`
    : `No column tells when which gas was breathed; rows ${rows.join(' and ')} name ${gases.map(gasName).join(' and ')}.`;
}

/** A later dive, or one that begins long after nought, counts from its own beginning. */
function startsOnOtherClock(startS: number, index: number): boolean {
  return index > 0 || startS > LATE_START_S || startS < 0;
}

const LATE_START_S = 120;
/** What a sensor at the surface may show the other way, and what is a dive for certain, m. */
const SURFACE_NOISE_M = 0.5;
const DEEP_ENOUGH_M = 1;

/** A number in the model's unit, without the dust of a conversion. */
function sized(value: number, size: number): number {
  return size === 1 ? value : tidy(value * size);
}

import type { Gas } from '../../physics/gas';
import { xmlNumber } from './xml-number';
import type { FileResult, Recording } from '../records/record';
import { inDiveOrder, TURNED_NOTE } from '../records/dive-log';
import { RefusedFile } from '../refused-file';
import { UddfDive, type UddfSite } from './uddf-dive';
import { WHOLE_GAS } from '../../physics/gas';

type Attributes = Readonly<Record<string, string>>;

/** Denser than this, kg/m³, counts as salt water: half-way between the densities of fresh and sea water. */
const SALT_FROM_KG_M3 = 1015;

/** A mix as the file defines it, fractions of 1; gases it does not name are NaN. */
interface Mix {
  o2: number;
  he: number;
  other: number;
  fault: string | undefined;
}

/**
 * Takes in the elements of a UDDF file in their order and gathers its dives. Elements it does not know are passed over.
 * Names and units are the standard's: m, s, K, fractions.
 */
export class UddfDocument {
  private readonly mixes = new Map<string, Mix>();
  private readonly sites = new Map<string, { altitudeM: number | undefined; densityKgM3: number | undefined }>();
  /** Dives read to their end: mixes and sites may be defined after them. */
  private readonly read: UddfDive[] = [];
  private readonly notes: string[] = [];
  private readonly path: string[] = [];
  private heard = '';
  private mix: Mix | undefined;
  private site: { altitudeM: number | undefined; densityKgM3: number | undefined } | undefined;
  private dive: UddfDive | undefined;
  private dives = 0;
  private samples = 0;

  open(name: string, attributes: Attributes): void {
    if (this.path.length === 0 && name !== 'uddf') {
      throw new RefusedFile(
        `This is XML, but not a UDDF file: its first element is <${name.slice(0, 40)}>.`,
        'Export the dive as UDDF.',
      );
    }
    if (this.path.length === 0 && !/^[23]\./.test(attributes.version ?? '')) {
      const version = attributes.version === undefined ? 'no version' : `version ${attributes.version.slice(0, 20)}`;
      this.notes.push(`The file names ${version} of UDDF; it was read like version 3.`);
    }
    this.path.push(name);
    this.heard = '';
    if (name === 'mix' && this.within('gasdefinitions')) {
      this.mix = { o2: NaN, he: NaN, other: 0, fault: undefined };
      this.mixes.set(attributes.id ?? '', this.mix);
    } else if (name === 'site' && this.within('divesite')) {
      this.site = { altitudeM: undefined, densityKgM3: undefined };
      this.sites.set(attributes.id ?? '', this.site);
    } else if (name === 'dive' && this.within('profiledata')) {
      this.dives += 1;
      this.dive = new UddfDive(this.dives);
    } else this.dive?.open(name, attributes, this.path);
  }

  text(text: string): void {
    this.heard += text;
  }

  close(name: string): void {
    const text = this.heard;
    this.heard = '';
    this.path.pop();
    if (this.dive) {
      this.closeInDive(this.dive, name, text);
      return;
    }
    if (this.mix) this.closeInMix(this.mix, name, text);
    else if (name === 'site') this.site = undefined;
    else if (this.site && name === 'altitude') this.site.altitudeM = finite(xmlNumber(text));
    else if (this.site && name === 'density') this.site.densityKgM3 = finite(xmlNumber(text));
  }

  private closeInMix(mix: Mix, name: string, text: string): void {
    if (name === 'mix') this.mix = undefined;
    const fraction = ['o2', 'he', 'ar', 'h2'].includes(name) ? xmlNumber(text) : 0;
    if (name === 'o2') mix.o2 = fraction;
    if (name === 'he') mix.he = fraction;
    if (name === 'ar' || name === 'h2') mix.other += fraction;
    if (fraction > 1) mix.fault = `its ${name} is ${text.trim().slice(0, 20)}, and a fraction is at most 1`;
  }

  private closeInDive(dive: UddfDive, name: string, text: string): void {
    if (name === 'waypoint') this.samples += 1;
    dive.close(name, text, this.path, this.samples);
    if (name !== 'dive') return;
    this.dive = undefined;
    if (dive.refusedMode !== undefined) {
      this.notes.push(
        `${dive.name} was left out: it is in the mode “${dive.refusedMode.slice(0, 40)}”, and the model here takes open circuit alone.`,
      );
    } else if (dive.length === 0) this.notes.push(`${dive.name} was left out: it has no waypoints.`);
    else this.read.push(dive);
  }

  private within(name: string): boolean {
    return this.path.includes(name);
  }

  private recordingOf(dive: UddfDive): Recording {
    const link = dive.links.find((id) => this.sites.has(id));
    const site = link === undefined ? undefined : this.sites.get(link)!;
    const density = site?.densityKgM3;
    const about: UddfSite = {
      altitudeM: dive.altitudeM ?? site?.altitudeM,
      water: density === undefined ? undefined : density >= SALT_FROM_KG_M3 ? 'salt' : 'fresh',
    };
    return dive.recording(
      (ref) => this.gasOf(ref),
      (ref) => this.mixes.has(ref),
      about,
    );
  }

  /** The gas a waypoint refers to. Throws RefusedFile for one the model cannot take. */
  private gasOf(ref: string): Gas {
    const mix = this.mixes.get(ref);
    const name = `“${ref.slice(0, 40)}”`;
    if (!mix)
      throw new RefusedFile(
        `A waypoint switches to the mix ${name}, which the file does not define.`,
        'Define it under gasdefinitions.',
      );
    const fault = mix.fault ?? (Number.isFinite(mix.o2) ? undefined : 'its oxygen (o2) cannot be read');
    if (fault !== undefined)
      throw new RefusedFile(`The mix ${name} cannot be used: ${fault}.`, 'Write fractions of 1, such as 0.32.');
    if (mix.other > 0.02)
      throw new RefusedFile(
        `The mix ${name} holds argon or hydrogen.`,
        'The model knows oxygen, nitrogen and helium alone.',
      );
    const he = Number.isFinite(mix.he) ? mix.he : 0;
    if (mix.o2 < 0 || he < 0 || mix.o2 + he > WHOLE_GAS)
      throw new RefusedFile(`The parts of the mix ${name} do not add up.`, 'Oxygen and helium together are at most 1.');
    return { o2: mix.o2, he };
  }

  /** Where reading has come to, for a message. */
  where(): string {
    return this.dive
      ? `in dive ${this.dives}, after waypoint ${this.dive.length}`
      : `after ${this.dives === 1 ? 'one dive' : `${this.dives} dives`}`;
  }

  /** The dives read whole, and of one broken off the waypoints read whole. */
  soFar(): Recording[] {
    if (!this.dive || this.dive.length < 2 || this.dive.refusedMode !== undefined)
      return this.recordings(this.read).recordings;
    return this.recordings([...this.read, this.dive]).recordings;
  }

  /** The dives whose gas can be used; of one whose gas cannot the rest is of no use either. */
  private recordings(dives: readonly UddfDive[]): {
    recordings: Recording[];
    leftOut: { name: string; why: RefusedFile }[];
  } {
    const recordings: Recording[] = [];
    const leftOut: { name: string; why: RefusedFile }[] = [];
    for (const dive of dives) {
      try {
        recordings.push(this.recordingOf(dive));
      } catch (thrown) {
        if (!(thrown instanceof RefusedFile)) throw thrown;
        leftOut.push({ name: dive.name, why: thrown });
      }
    }
    return { recordings, leftOut };
  }

  result(): FileResult {
    const { recordings: usable, leftOut } = this.recordings(this.read);
    if (usable.length === 0 && leftOut[0]) throw leftOut[0].why;
    for (const { name, why } of leftOut) this.notes.push(`${name} was left out: ${why.what}`);
    for (const dive of this.read) this.notes.push(...dive.notes());
    if (usable.length === 0) {
      const why = this.notes.length > 0 ? ` ${this.notes.join(' ')}` : '';
      throw new RefusedFile(
        `The file holds no dive that can be read.${why}`,
        'Export it with its profile: waypoints with depth and divetime.',
      );
    }
    const { recordings, turned } = inDiveOrder(usable);
    return { ok: true, recordings, notes: turned ? [...this.notes, TURNED_NOTE] : this.notes };
  }
}

function finite(value: number): number | undefined {
  return Number.isFinite(value) ? value : undefined;
}

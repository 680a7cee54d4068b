import { figuresOf } from '@/lib/ascent/figures';
import type { Settings } from '@/lib/dive/dive';
import { writeScript } from '@/lib/dive/script';
import { computeTimeline } from '@/lib/dive/timeline';
import { checkRecord, type FindingKind } from '@/lib/files/records/check-record';
import type { Mapping } from '@/lib/files/csv/csv-mapping';
import { diveFromRecords, type DiveOfRecords } from '@/lib/files/records/dive-from-record';
import { explainSettings, type Doubt, type SearchProgress } from '@/lib/files/settings/explain-settings';
import { sayMisfit } from '@/lib/files/settings/explanation-words';
import { guessColumns } from '@/lib/files/csv/guess-columns';
import { previewRows, type Preview } from '@/lib/files/csv/preview-rows';
import { readCsv } from '@/lib/files/csv/read-csv';
import { readUddf } from '@/lib/files/uddf/read-uddf';
import type { Recording } from '@/lib/files/records/record';
import { CANCELLED, refusalOf } from '@/lib/files/refused-file';
import { consentToKinds, laterS, repairRecord } from '@/lib/files/records/repair-record';
import { likelyChoice, seriesOf } from '@/lib/files/records/dive-log';
import { printHours } from '@/lib/quantity/duration';
import { lengthS, surfaceIntervals } from '@/lib/files/records/surface-intervals';
import { HEAD_BYTES, readHead, textOfBytes } from '@/lib/files/text-of-bytes';
import { thinned } from '@/lib/files/records/thin-samples';
import { comparisonOf } from '@/lib/files/settings/readings-compared';
import {
  believedTimeline,
  believedDive,
  legsForgottenAt,
  misfitOf,
  type UnitSettings,
} from '@/lib/files/settings/unit-fit';
import { channelsOf, layBeside, type SideBySide } from '@/lib/files/settings/unit-and-model';
import { writeProfileCsv } from '@/lib/files/csv/write-csv';
import { writeUddf } from '@/lib/files/uddf/write-uddf';
import type {
  Decisions,
  DiveRead,
  ExplainOutcome,
  Look,
  Made,
  MakeOutcome,
  MendedDive,
  ReadOutcome,
  Session,
} from './brought';
import { lineOf } from './pictures/dive-line';

const PICTURE_PARTS = 500;
const ROWS_BESIDE = 300;
const FIGURES_EVERY_S = 5;
const INTERVAL_EVERY_S = 600;
const STOPPED = { ok: false, what: 'The search was stopped.', mend: 'Start it again whenever you like.' } as const;

/** Holds a file and what has become of it, and does all the work on it. It runs in a worker, and in tests without one. */
export class BringSession implements Session {
  private file: Blob | undefined;
  private kind: 'csv' | 'uddf' = 'csv';
  private head = '';
  private recordings: readonly Recording[] = [];
  private mended: readonly Recording[] = [];
  private made: DiveOfRecords | undefined;
  private decisions: Decisions | undefined;
  /** Grows with every piece of work and with every wish to stop: work that is not the newest gives up. */
  private turn = 0;

  async look(file: Blob): Promise<Look> {
    this.file = file;
    this.recordings = [];
    this.mended = [];
    this.made = undefined;
    try {
      const head = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
      const { text, kind, encoding } = readHead(head);
      this.kind = kind;
      this.head = text;
      const notes = encoding.note === undefined ? [] : [encoding.note];
      if (kind === 'uddf') return { ok: true, kind, notes };
      const guess = guessColumns(text, head.length < HEAD_BYTES);
      return guess.ok ? { ...guess, kind, notes } : guess;
    } catch (thrown) {
      return refusalOf(thrown);
    }
  }

  preview(mapping: Mapping): Promise<Preview> {
    return previewRows(this.head, mapping);
  }

  async read(mapping: Mapping | undefined, onProgress: (characters: number) => void): Promise<ReadOutcome> {
    if (!this.file) return { ok: false, what: 'No file has been chosen.', mend: 'Choose one.' };
    const own = (this.turn += 1);
    const pieces = textOfBytes(piecesOf(this.file));
    const hooks = { onProgress, cancelled: () => own !== this.turn };
    const read =
      this.kind === 'uddf' || !mapping ? await readUddf(pieces, hooks) : await readCsv(pieces, mapping, hooks);
    const recordings = read.ok ? read.recordings : read.rescued;
    if (!read.ok && (recordings.length === 0 || read.what === CANCELLED.what))
      return { ok: false, what: read.what, mend: read.mend };
    this.recordings = recordings;
    const [first] = recordings;
    return {
      ok: true,
      dives: recordings.map(diveRead),
      series: seriesOf(recordings),
      likely: likelyChoice(recordings),
      notes: read.ok ? read.notes : [],
      told: { water: first?.water, altitudeM: first?.altitudeM },
      brokeOff: read.ok ? undefined : { what: read.what, mend: read.mend },
    };
  }

  async make(decisions: Decisions): Promise<MakeOutcome> {
    const repaired: Partial<Record<FindingKind, number>> = {};
    const consent = consentToKinds(decisions.repair);
    const parts = decisions.chosen.flatMap((place) => {
      const { recordings, done } = repairRecord(this.withoutLeftOut(place, decisions.chosen), consent);
      for (const [kind, count] of Object.entries(done) as [FindingKind, number][])
        repaired[kind] = (repaired[kind] ?? 0) + count;
      return recordings.map((recording, part) => ({ recording, place, fromRow: part === 0 ? 0 : recording.row[0]! }));
    });
    this.mended = parts.map(({ recording }) => recording);
    this.decisions = decisions;
    const told = surfaceIntervals(this.mended);
    const dives = parts.map(({ recording, place, fromRow }, i): MendedDive => ({
      name: recording.name,
      samples: recording.timeS.length,
      channels: channelsOf(recording),
      intervalS: decisions.intervalsS[i] ?? told[i],
      recorded: thinned(recording.timeS, recording.depthM, PICTURE_PARTS),
      place,
      fromRow,
      laterS: laterS(recording, this.recordings[place]!),
    }));
    const made = diveFromRecords(this.mended, this.options());
    this.made = made.ok ? made.value : undefined;
    return {
      dives,
      repaired,
      made: made.ok
        ? {
            ok: true,
            ...this.shown({ ...made.value, notes: [...this.cutOffNotes(decisions.chosen), ...made.value.notes] }),
          }
        : made,
    };
  }

  /** A dive whose predecessor stays behind: the interval it tells is one to that, and says nothing of the one before. */
  private withoutLeftOut(place: number, chosen: readonly number[]): Recording {
    const recording = this.recordings[place]!;
    const follows = place === 0 || chosen.includes(place - 1) || recording.intervalBeforeS === Infinity;
    return follows ? recording : { ...recording, intervalBeforeS: undefined };
  }

  /** What is said where a dive is taken out of the middle of its series. */
  private cutOffNotes(chosen: readonly number[]): string[] {
    const intervals = surfaceIntervals(this.recordings);
    const firsts = new Set(seriesOf(this.recordings).map(({ dives }) => dives[0]));
    return chosen.flatMap((place) => {
      if (firsts.has(place) || chosen.includes(place - 1)) return [];
      const [name, before] = [this.recordings[place]!.name, this.recordings[place - 1]!.name];
      return [
        `“${name}” came ${printHours(intervals[place]!)} after “${before}”, which is not brought: what that dive left in the tissues is missing here.`,
      ];
    });
  }

  async explain(doubt: Doubt, onProgress: (progress: SearchProgress) => void): Promise<ExplainOutcome> {
    const own = (this.turn += 1);
    const search = explainSettings(this.mended, { options: this.options(), doubt });
    for (;;) {
      const step = search.next();
      if (step.done) {
        if (!step.value.ok) return step.value;
        const found = step.value.value;
        return { ok: true, ...found, beside: this.besideUnder(found.sets[0]?.best.settings) };
      }
      onProgress(step.value);
      await breath();
      if (own !== this.turn) return STOPPED;
    }
  }

  async write(kind: 'uddf' | 'csv'): Promise<string> {
    const [first, ...others] = this.mended;
    if (!first) return '';
    const { settings } = this.decisions ?? {};
    // What was said of the site belongs to the dives as much as what the file told.
    const sited = [first, ...others].map((recording) => ({
      ...recording,
      water: settings?.water ?? recording.water,
      altitudeM: settings?.altitudeM ?? recording.altitudeM,
      ...this.intervalOf(recording),
    }));
    return kind === 'uddf' ? writeUddf(sited) : writeProfileCsv(sited);
  }

  async cancel(): Promise<void> {
    this.turn += 1;
  }

  private intervalOf(recording: Recording): Partial<Recording> {
    const said = this.decisions?.intervalsS[this.mended.indexOf(recording)];
    return said === undefined ? {} : { intervalBeforeS: said };
  }

  private options() {
    return { settings: this.decisions?.settings ?? {}, intervalsS: this.decisions?.intervalsS };
  }

  private shown({ dive, notes, depthErrorM, tissueErrorBar, offsetS }: DiveOfRecords): Made {
    return {
      script: writeScript(dive),
      steps: dive.steps.length,
      notes,
      depthErrorM,
      tissueErrorBar,
      lines: this.mended.map((recording, i) => lineOf(dive, offsetS[i]!, lengthS(recording))),
      beside: this.besideUnder(undefined),
      offBy: this.offBy(dive.settings),
    };
  }

  /** The unit's figures beside those of the model under other settings than the dive's, for each dive. */
  private besideUnder(unit: UnitSettings | undefined): SideBySide[][] {
    const { made, mended } = this;
    if (!made || mended.every((recording) => channelsOf(recording).length === 0)) return [];
    const under = unit ? believedDive(made.dive, unit) : made.dive;
    const timeline = computeTimeline(under, FIGURES_EVERY_S, {
      intervalEveryS: INTERVAL_EVERY_S,
      freshAtLegs: legsForgottenAt(made.dive, unit?.forgotBefore ?? 0),
    });
    const figures = figuresOf(timeline, under.settings);
    return mended.map((recording, i) => layBeside(recording, made.offsetS[i]!, timeline, figures, ROWS_BESIDE));
  }

  private offBy({ water, altitudeM, gas, gradientFactors }: Settings): string | undefined {
    const { made, mended } = this;
    if (!made || mended.every((recording) => channelsOf(recording).length === 0)) return undefined;
    const comparison = comparisonOf(mended, made.offsetS, made.dive);
    const words = sayMisfit(
      misfitOf(comparison, believedTimeline(comparison, { water, altitudeM, gas, forgotBefore: 0 }), gradientFactors)
        .misfit,
    );
    return words === '' ? undefined : words;
  }
}

function diveRead(recording: Recording): DiveRead {
  const { name, timeS, depthM } = recording;
  const deepestM = depthM.reduce((most, depth) => (depth > most ? depth : most), 0);
  return {
    name,
    startedAt: recording.startedAt,
    samples: timeS.length,
    endS: lengthS(recording),
    deepestM,
    gases: recording.switches.map(({ gas }) => gas),
    firstGas: recording.firstGas,
    channels: channelsOf(recording),
    ...checkRecord(recording),
  };
}

/** Lets messages in, such as the one to stop. */
function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

async function* piecesOf(file: Blob): AsyncGenerator<Uint8Array> {
  const reader = file.stream().getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    await reader.cancel();
  }
}

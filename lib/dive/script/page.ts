import type { Dive } from '../dive';
import { FASTEST_M_MIN, leastLegS, legRateMMin } from './leg-rate';
import { turned, timeLike } from './edit-words';
import { readLine, remarkFrom } from './read-line';
import { parseScript, splitLines, writeScript } from '../script';
import type { LineRead, Part, Span, Speed, StepRead } from './line';

/** A script given as text, or as the dive it means. */
export type Script = string | Dive;

/** A change of depth that could be read, on its line. */
export interface PageLeg {
  readonly lineIndex: number;
  readonly kind: 'descend' | 'ascend';
  readonly verb: Span;
  readonly depth: Part<number>;
  /** Undefined where the step leaves its rate to the plan. */
  readonly speed: Part<Speed> | undefined;
}

/** The lines of a script, open for editing. Steps are counted from 0, as in the dive. */
export class ScriptPage {
  readonly asGiven: string;
  private readonly lines: string[];
  /** What lines have been read as: an edit asks after the same few again and again. */
  private readonly reads = new Map<string, LineRead>();

  constructor(script: Script) {
    this.asGiven = typeof script === 'string' ? script : writeScript(script);
    this.lines = splitLines(this.asGiven);
  }

  get length(): number {
    return this.lines.length;
  }

  line(lineIndex: number): string {
    return this.lines[lineIndex] ?? '';
  }

  read(lineIndex: number): LineRead {
    const line = this.line(lineIndex);
    const known = this.reads.get(line);
    if (known) return known;
    const read = readLine(line);
    this.reads.set(line, read);
    return read;
  }

  /** The line a step stands on, or -1. */
  lineOfStep(stepIndex: number): number {
    let left = stepIndex;
    return this.lines.findIndex((_, lineIndex) => this.read(lineIndex).as === 'step' && left-- === 0);
  }

  /** The line the first step stands on; with none, the one it would: at the end, before any blank lines there. */
  firstStepLine(): number {
    const first = this.lineOfStep(0);
    if (first >= 0) return first;
    let end = this.lines.length;
    while (end > 0 && this.line(end - 1).trim() === '') end--;
    return end;
  }

  /** The step on a line, when there is one. */
  step(lineIndex: number): StepRead | undefined {
    const read = this.read(lineIndex);
    return read.as === 'step' ? read.step : undefined;
  }

  leg(lineIndex: number): PageLeg | undefined {
    const read = this.read(lineIndex);
    if (read.as !== 'step' || (read.step.kind !== 'descend' && read.step.kind !== 'ascend')) return undefined;
    const { kind, depthM: depth, speed } = read.step;
    return depth ? { lineIndex, kind, verb: read.verb, depth, speed } : undefined;
  }

  /** The next change of depth after a line within the same dive, or the one before it (`direction` -1). */
  legFrom(lineIndex: number, direction: 1 | -1): PageLeg | undefined {
    for (let i = lineIndex + direction; i >= 0 && i < this.lines.length; i += direction) {
      if (this.step(i)?.kind === 'interval') return undefined;
      const leg = this.leg(i);
      if (leg) return leg;
    }
    return undefined;
  }

  /** The depth a line begins at, m. */
  depthBeforeM(lineIndex: number): number {
    return this.legFrom(lineIndex, -1)?.depth.value ?? 0;
  }

  /** Whether depths are written in feet, judged by the first one. */
  get inFeet(): boolean {
    for (let i = 0; i < this.lines.length; i++) {
      const leg = this.leg(i);
      if (leg?.depth.value) return /f/i.test(this.line(i).slice(...leg.depth.span));
    }
    return false;
  }

  replace(lineIndex: number, [from, to]: Span, words: string): void {
    const line = this.line(lineIndex);
    this.lines[lineIndex] = line.slice(0, from) + words + line.slice(to);
  }

  /** Puts a new line before the one at an index, with the same line end and indent as its neighbour. */
  insert(lineIndex: number, words: string, neighbour = lineIndex): void {
    const beside = this.line(neighbour);
    const end = this.lines.length > 1 && this.line(0).endsWith('\r') ? '\r' : '';
    const indent = /^[ \t]*/.exec(beside)![0];
    this.lines.splice(lineIndex, 0, indent + words + end);
  }

  /** Takes a line out; a remark at its end stays, on a line of its own. */
  remove(lineIndex: number): void {
    const line = this.line(lineIndex);
    const remark = line.slice(remarkFrom(line));
    if (remark.trim() === '') this.lines.splice(lineIndex, 1);
    else this.lines[lineIndex] = remark;
  }

  /**
   * Makes every change of depth go the way its depth lies: turns its words where they point the wrong way, drops it
   * where it would change nothing, and gives it more time where it would be faster than a script may ask.
   */
  straighten(): void {
    let fromM = 0;
    for (let i = 0; i < this.lines.length; i++) {
      const leg = this.leg(i);
      if (this.step(i)?.kind === 'interval') fromM = 0;
      if (!leg || leg.depth.value === undefined) continue;
      const toM = leg.depth.value;
      if (toM === fromM) {
        const before = this.lines.length;
        this.remove(i);
        i -= before - this.lines.length;
        continue;
      }
      this.slow(leg, fromM, toM);
      if (toM > fromM !== (leg.kind === 'descend')) this.replace(i, leg.verb, turned(this.line(i).slice(...leg.verb)));
      fromM = toM;
    }
  }

  private slow({ lineIndex, speed }: PageLeg, fromM: number, toM: number): void {
    if (speed?.value?.by !== 'time' || legRateMMin(fromM, toM, speed.value.s) <= FASTEST_M_MIN) return;
    this.replace(lineIndex, speed.span, timeLike(this.line(lineIndex).slice(...speed.span), leastLegS(fromM, toM)));
  }

  /** The script as edited. */
  edited(): string {
    return this.lines.join('\n');
  }

  /** The script as edited when it still reads, else as it was: an edit never breaks a script. */
  editedOrAsGiven(): string {
    const edited = this.edited();
    return parseScript(edited).ok ? edited : this.asGiven;
  }
}

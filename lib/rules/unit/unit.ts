import type { Figures } from '../../ascent/figures';
import { sayAtDayClock, shownFromS } from '../../dive/day-clock';
import type { Timeline } from '../../dive/timeline';
import { alarmBit, type AlarmKind } from '../alarms';
import { sentence, type EventKind, type EventNumbers, type RuleEvent } from '../event';
import type { Moment } from '../rule';
import type { SafetyStopState } from '../safety-stop-state';

/** What becomes of a dive, as the unit sees it. */
export interface DiveSeen {
  readonly diveNumber: number;
  readonly startS: number;
  /** When it last came to the surface; null while under water. */
  surfacedS: number | null;
  maxDepthM: number;
  /** Whether the model asked for a stop at any time. */
  requiredStop: boolean;
  /** How often the rise was too fast for too long. */
  breaches: number;
}

/** What one rule told. */
export interface ToldByRule {
  readonly rule: string;
  readonly events: readonly RuleEvent[];
}

/**
 * The unit while it watches: what the rules have made of the dive so far. One rule writes a field and those listed
 * after it read it; each field says whose it is.
 */
export class Unit {
  /** What was told on the way; what is told when asked is not among it. */
  readonly events: RuleEvent[] = [];
  private readonly tellers: { readonly rule: string; readonly teller: (tell: Unit['tell']) => void }[] = [];
  /** Every dive watched. */
  readonly dives: DiveSeen[] = [];
  /** How many of them, the latest, it remembers. */
  divesKnown = 0;
  alarms = 0;

  /** Rate watch: index into `RATE_LEVELS`. */
  rateLevel = 0;
  /** Rate watch: which breach of this dive has come about at this very sample; 0 for none. */
  breach = 0;
  breachRiseM = 0;
  breachOverS = 0;

  /** Tighter limits: how many times the limits are drawn in. */
  tightness = 0;
  /** Longer safety stop: seconds for the safety stop to take up. */
  extraSafetyStopS = 0;
  /** Imposed stop: its depth and what is left of it; 0 when there is none. */
  imposedStopM = 0;
  imposedStopLeftS = 0;
  /** Imposed stop: how shallow one may be while it stands, m. */
  imposedCeilingM = 0;

  /** Required stops: above the ceiling for longer than the grace time. */
  graceOver = false;
  /** Lock-out: until when, s; 0 when not locked. */
  lockedUntilS = 0;

  /** Safety stop. */
  safetyStop: SafetyStopState = 'none';
  safetyStopLeftS = 0;

  constructor(
    /** What the unit has worked out for itself, under its own settings. */
    readonly timeline: Timeline,
    private readonly figuresUnder: (tightness: number) => Figures,
  ) {}

  /** The model's figures under the limits the unit goes by now. */
  get figures(): Figures {
    return this.figuresUnder(this.tightness);
  }

  /** The high gradient factor it goes by while no rule draws its limits in. */
  get ownHigh(): number {
    return this.figuresUnder(0).limits.gradientFactors.high;
  }

  /** The dive under way, or the last one. */
  get dive(): DiveSeen | undefined {
    return this.dives[this.dives.length - 1];
  }

  /** The dives it remembers, the latest last. */
  get remembered(): readonly DiveSeen[] {
    return this.dives.slice(this.dives.length - this.divesKnown);
  }

  /** Whether a stop must be made: the model's or an imposed one. */
  stopOwed(sample: number): boolean {
    return this.imposedStopM > 0 || this.figures.ceilingM[sample]! > 0;
  }

  tell<Numbers extends EventNumbers>(kind: EventKind<string, Numbers>, timeS: number, numbers: Numbers): void {
    this.events.push(this.eventOf(kind, timeS, numbers));
  }

  /** Has a rule tell the rest of what it has to tell when somebody asks for it. */
  tellLater(rule: string, teller: (tell: Unit['tell']) => void): void {
    this.tellers.push({ rule, teller });
  }

  /** What is told when asked, by the rule that tells it, in order of time. */
  toldWhenAsked(): ToldByRule[] {
    return this.tellers.map(({ rule, teller }) => {
      const events: RuleEvent[] = [];
      teller((kind, timeS, numbers) => events.push(this.eventOf(kind, timeS, numbers)));
      return { rule, events };
    });
  }

  private eventOf<Numbers extends EventNumbers>(
    kind: EventKind<string, Numbers>,
    timeS: number,
    numbers: Numbers,
  ): RuleEvent {
    const at = sayAtDayClock(this.timeline, shownFromS(this.timeline, timeS));
    return { timeS, at, kind: kind.kind, rule: kind.rule, numbers, text: sentence(kind, at, numbers, 'metric') };
  }

  alarm(kind: AlarmKind, on: boolean): void {
    if (on) this.alarms |= alarmBit(kind);
    else this.alarms &= ~alarmBit(kind);
  }

  startDive({ diveNumber, timeS }: Moment): void {
    this.dives.push({ diveNumber, startS: timeS, surfacedS: null, maxDepthM: 0, requiredStop: false, breaches: 0 });
    this.divesKnown += 1;
  }

  /** Keeps the record of the dive under way. */
  record(now: Moment): void {
    const { dive } = this;
    if (!dive) return;
    if (now.depthM > dive.maxDepthM) dive.maxDepthM = now.depthM;
    if (now.surfaces) dive.surfacedS = now.timeS;
    else if (!now.atSurface) {
      dive.surfacedS = null;
      if (this.figures.ceilingM[now.sample]! > 0) dive.requiredStop = true;
    }
  }

  /** Loses all it knew, as when its battery is taken out. */
  forget(): void {
    this.divesKnown = 0;
    this.lockedUntilS = 0;
    this.restart();
  }

  /** Puts back what the rules have written, but for the lock. */
  restart(): void {
    this.alarms = 0;
    this.rateLevel = 0;
    this.breach = 0;
    this.tightness = 0;
    this.extraSafetyStopS = 0;
    this.imposedStopM = 0;
    this.imposedStopLeftS = 0;
    this.imposedCeilingM = 0;
    this.graceOver = false;
    this.safetyStop = 'none';
    this.safetyStopLeftS = 0;
  }
}

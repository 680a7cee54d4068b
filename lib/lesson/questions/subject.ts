import { ascentStartAt } from '../../ascent/plan/ascent-start';
import { ascentPlanner, type Schedule } from '../../ascent/plan/schedule';
import { figuresOf, type Figures } from '../../ascent/figures';
import type { Dive } from '../../dive/dive';
import { SET_RIGHT } from '../../dive/edit/set-right';
import type { Setup } from '../../dive/setup';
import { samplingOf, INTERVAL_EVERY_S } from '../../dive/sampling';
import { computeTimeline, type Timeline } from '../../dive/timeline';
import { gasDensitiesOf } from '../../exposure/gas-density';
import { gasSupplyOf, type GasSupply } from '../../exposure/gas-supply';
import { oxygenExposureOf, type OxygenExposure } from '../../exposure/oxygen-exposure';
import { DEFAULT_RULES, type RuleSettings } from '../../rules/all';
import { scheduleAt } from '../../rules/unit/schedule-at';
import { watchDive, type Watch } from '../../rules/watch';
import { diveSpans, type DiveSpan } from '../facts/dive-spans';

/** Something to remember once it has been worked out. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

/** A dive as the model has it, or as one unit takes it to be: what facts are read from. */
export interface View {
  readonly subject: Subject;
  /** As it was, or as the unit takes it to be. */
  readonly dive: Dive;
  readonly timeline: Timeline;
  readonly figures: Figures;
  /** The unit that watches: the one meant, or one that is set right. */
  readonly watch: () => Watch;
  readonly oxygen: () => OxygenExposure;
  readonly densityGL: () => Float64Array;
  readonly supply: () => GasSupply | undefined;
  /** The way up from a sample. */
  readonly scheduleAt: (sample: number) => Schedule;
}

/** One script of a lesson, worked out as far as it is asked for. */
export interface Subject {
  readonly dive: Dive;
  readonly spans: readonly DiveSpan[];
  readonly endS: number;
  readonly truth: View;
  /** The names of its units. */
  readonly units: readonly string[];
  /** The dive as a unit takes it to be; undefined for a name it does not have. */
  readonly viewOf: (unit: string) => View | undefined;
}

/** Makes a dive ready to be asked. Nothing is worked out before it is needed. */
export function subjectOf(dive: Dive, rules: RuleSettings = DEFAULT_RULES): Subject {
  const { everyS, intervalEveryS } = samplingOf(dive, INTERVAL_EVERY_S);
  const timeline = computeTimeline(dive, everyS, { intervalEveryS });
  const truthFigures = once(() => figuresOf(timeline, dive.settings));
  const watch = (setup: Setup) =>
    watchDive(dive, setup, rules, everyS, { truth: { timeline, figures: truthFigures() }, intervalEveryS });
  const setups = dive.settings.setups ?? [];
  const views = new Map<string, View>();
  const subject: Subject = {
    dive,
    spans: diveSpans(timeline.legs),
    endS: timeline.legs.at(-1)!.endS,
    units: setups.map(({ name }) => name),
    get truth() {
      return truth();
    },
    viewOf(unit) {
      const setup = setups.find(({ name }) => name === unit);
      if (!setup) return undefined;
      let view = views.get(unit);
      if (!view) {
        const own = watch(setup);
        view = viewFrom(
          subject,
          own.believed,
          own.timeline,
          () => own.figures,
          () => own,
          (sample) => scheduleAt(own, sample),
        );
        views.set(unit, view);
      }
      return view;
    },
  };
  const truth = once(() =>
    viewFrom(
      subject,
      dive,
      timeline,
      truthFigures,
      once(() => watch(SET_RIGHT)),
      modelSchedule(timeline, truthFigures),
    ),
  );
  return subject;
}

function viewFrom(
  subject: Subject,
  dive: Dive,
  timeline: Timeline,
  figures: () => Figures,
  watch: () => Watch,
  schedule: View['scheduleAt'],
): View {
  return {
    subject,
    dive,
    timeline,
    get figures() {
      return figures();
    },
    watch,
    oxygen: once(() => oxygenExposureOf(timeline)),
    densityGL: once(() => gasDensitiesOf(timeline)),
    supply: once(() => gasSupplyOf(timeline, dive.settings)),
    scheduleAt: remembered(schedule),
  };
}

function remembered(schedule: View['scheduleAt']): View['scheduleAt'] {
  const known = new Map<number, Schedule>();
  return (sample) => {
    const before = known.get(sample);
    if (before) return before;
    const made = schedule(sample);
    known.set(sample, made);
    return made;
  };
}

function modelSchedule(timeline: Timeline, figures: () => Figures): View['scheduleAt'] {
  const planner = once(() => ascentPlanner(figures().limits, timeline));
  return (sample) => planner()(ascentStartAt(timeline, figures(), sample));
}

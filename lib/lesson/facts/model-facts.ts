import { figuresAt, loadAt } from '../../ascent/figures';
import { coefficientsOf, inertBarOf } from '../../ascent/ceiling';
import { breathedInertBar } from '../../ascent/breathed';
import { supersaturation } from '../../ascent/supersaturation';
import { noStopAfter } from '../../rules/surface/no-stop-recovery';
import { COMPARTMENTS } from '../../tissue/coefficients';
import { limitBar, mValueBar } from '../../tissue/limit';
import type { View } from '../questions/subject';
import { PERCENT, type MomentFact } from './fact';

const surfacing = ({ timeline }: View, sample: number) =>
  supersaturation(loadAt(timeline, sample), timeline.surfaceBar);
const now = ({ timeline }: View, sample: number) =>
  supersaturation(loadAt(timeline, sample), timeline.ambientBar[sample]!);
const tensionBar = ({ timeline }: View, sample: number, compartment: number) =>
  inertBarOf(loadAt(timeline, sample), compartment - 1);

/** What the model says at a moment. */
export const MODEL_FACTS: readonly MomentFact[] = [
  {
    of: 'moment',
    name: 'depthM',
    dimension: 'depth',
    meaning: 'Depth.',
    noun: 'the depth',
    value: ({ timeline }, sample) => timeline.depthM[sample]!,
  },
  {
    of: 'moment',
    name: 'ambientBar',
    dimension: 'pressure',
    meaning: 'Pressure of air and water around the diver.',
    noun: 'the pressure around you',
    value: ({ timeline }, sample) => timeline.ambientBar[sample]!,
  },
  {
    of: 'moment',
    name: 'breathedInertBar',
    dimension: 'pressure',
    meaning: 'Pressure of inert gas in the lungs: what the compartments chase.',
    noun: 'the inert gas breathed',
    value: ({ timeline }, sample) => breathedInertBar(timeline, sample),
  },
  {
    of: 'moment',
    name: 'noStopMin',
    dimension: 'time',
    meaning: 'No-stop time at this depth on this gas; 0 once a stop is required, infinite where it never ends.',
    noun: 'the no-stop time',
    format: 'min',
    measure: 'noStopMin',
    value: ({ figures }, sample) => figures.noStopMin[sample]!,
  },
  {
    of: 'moment',
    name: 'noStopLeader',
    dimension: 'compartment',
    meaning: 'The compartment that sets the no-stop time, 1 to 16; 0 where none does.',
    noun: 'the compartment that sets the no-stop time',
    value: ({ figures }, sample) => figures.noStopLeader[sample]!,
  },
  {
    of: 'moment',
    name: 'creditedNoStopMin',
    dimension: 'time',
    dear: true,
    meaning: 'No-stop time with the gas lost on the way up counted.',
    noun: 'the no-stop time with the ascent credited',
    format: 'min',
    measure: 'creditedNoStopMin',
    value: ({ timeline, figures }, sample) => figuresAt(timeline, figures, sample).creditedNoStopMin,
  },
  {
    of: 'moment',
    name: 'ceilingM',
    dimension: 'depth',
    meaning: 'Ceiling on the line from the low to the high gradient factor; 0 without one.',
    noun: 'the ceiling',
    format: 'm 1',
    measure: 'ceilingM',
    value: ({ figures }, sample) => figures.ceilingM[sample]!,
  },
  {
    of: 'moment',
    name: 'ceilingLeader',
    dimension: 'compartment',
    meaning: 'The compartment that sets the ceiling, 1 to 16; 0 without one.',
    noun: 'the compartment that sets the ceiling',
    value: ({ figures }, sample) => (figures.ceilingM[sample]! > 0 ? figures.ceilingLeader[sample]! : 0),
  },
  {
    of: 'moment',
    name: 'stopM',
    dimension: 'depth',
    dear: true,
    meaning: 'Depth of the first required stop if the ascent began now; 0 without one.',
    noun: 'the first required stop',
    format: 'stop',
    measure: 'stopM',
    value: (view, sample) => view.scheduleAt(sample).stops[0]?.depthM ?? 0,
  },
  {
    of: 'moment',
    name: 'stopMin',
    dimension: 'time',
    dear: true,
    meaning: 'Minutes at the first required stop if the ascent began now.',
    noun: 'the time at the first required stop',
    format: 'min 1',
    measure: 'stopMin',
    value: (view, sample) => view.scheduleAt(sample).stops[0]?.minutes ?? 0,
  },
  {
    of: 'moment',
    name: 'stopsMin',
    dimension: 'time',
    dear: true,
    meaning: 'Minutes of all required stops together if the ascent began now.',
    noun: 'the time at required stops',
    format: 'min 1',
    measure: 'stopMin',
    value: (view, sample) => view.scheduleAt(sample).stops.reduce((sum, { minutes }) => sum + minutes, 0),
  },
  {
    of: 'moment',
    name: 'stopCount',
    dimension: 'plain',
    dear: true,
    meaning: 'How many required stops there are if the ascent began now.',
    noun: 'the number of required stops',
    value: (view, sample) => view.scheduleAt(sample).stops.length,
  },
  {
    of: 'moment',
    name: 'stopMinAt',
    dimension: 'time',
    dear: true,
    parameters: ['depth'],
    meaning: 'Minutes of the required stop at that depth if the ascent began now; 0 where none is made there.',
    noun: 'the required stop at {1}',
    format: 'min 1',
    measure: 'stopMin',
    value: (view, sample, [depthM]) =>
      // In feet a stop goes by its round figure: 50 ft for the one at 15 m.
      view.scheduleAt(sample).stops.find((stop) => Math.abs(stop.depthM - depthM!) < 0.5)?.minutes ?? 0,
  },
  {
    of: 'moment',
    name: 'timeToSurfaceMin',
    dimension: 'time',
    dear: true,
    meaning: 'The whole ascent with its required stops if it began now.',
    noun: 'the time to surface',
    format: 'min',
    measure: 'timeToSurfaceMin',
    value: (view, sample) => view.scheduleAt(sample).timeToSurfaceMin,
  },
  {
    of: 'moment',
    name: 'supersaturationPercent',
    dimension: 'percent',
    meaning: 'Supersaturation now: 0% at equilibrium, 100% at the model’s own limit.',
    noun: 'the supersaturation',
    value: (view, sample) => now(view, sample).value * PERCENT,
  },
  {
    of: 'moment',
    name: 'supersaturationLeader',
    dimension: 'compartment',
    meaning: 'The compartment that is most supersaturated now.',
    noun: 'the most supersaturated compartment',
    value: (view, sample) => now(view, sample).leader,
  },
  {
    of: 'moment',
    name: 'surfacingSupersaturationPercent',
    dimension: 'percent',
    meaning: 'Supersaturation as if you surfaced this instant.',
    noun: 'the surfacing supersaturation',
    value: (view, sample) => surfacing(view, sample).value * PERCENT,
  },
  {
    of: 'moment',
    name: 'surfacingSupersaturationLeader',
    dimension: 'compartment',
    meaning: 'The compartment that would be most supersaturated if you surfaced this instant.',
    noun: 'the compartment that sets the surfacing supersaturation',
    value: (view, sample) => surfacing(view, sample).leader,
  },
  {
    of: 'moment',
    name: 'tensionBar',
    dimension: 'pressure',
    parameters: ['compartment'],
    meaning: 'Inert gas a compartment holds.',
    noun: 'what compartment {1} holds',
    value: (view, sample, [compartment]) => tensionBar(view, sample, compartment!),
  },
  {
    of: 'moment',
    name: 'nitrogenBar',
    dimension: 'pressure',
    parameters: ['compartment'],
    meaning: 'Nitrogen a compartment holds.',
    noun: 'the nitrogen in compartment {1}',
    value: ({ timeline }, sample, [compartment]) => timeline.nitrogenBar[sample * COMPARTMENTS + compartment! - 1]!,
  },
  {
    of: 'moment',
    name: 'heliumBar',
    dimension: 'pressure',
    parameters: ['compartment'],
    meaning: 'Helium a compartment holds.',
    noun: 'the helium in compartment {1}',
    value: ({ timeline }, sample, [compartment]) => timeline.heliumBar[sample * COMPARTMENTS + compartment! - 1]!,
  },
  {
    of: 'moment',
    name: 'mValueBar',
    dimension: 'pressure',
    parameters: ['compartment'],
    meaning: 'The model’s own limit for a compartment at the present depth, without a gradient factor.',
    noun: 'the model’s limit for compartment {1}',
    value({ timeline }, sample, [compartment]) {
      const { a, b } = coefficientsOf(loadAt(timeline, sample), compartment! - 1);
      return mValueBar(a, b, timeline.ambientBar[sample]!);
    },
  },
  {
    of: 'moment',
    name: 'surfaceLimitBar',
    dimension: 'pressure',
    parameters: ['compartment'],
    meaning: 'What a compartment may hold at the surface under the high gradient factor.',
    noun: 'what compartment {1} may hold at the surface',
    value({ timeline, figures }, sample, [compartment]) {
      const { a, b } = coefficientsOf(loadAt(timeline, sample), compartment! - 1);
      return limitBar(a, b, figures.limits.gradientFactors.high, timeline.surfaceBar);
    },
  },
  {
    of: 'moment',
    name: 'filledPercent',
    dimension: 'percent',
    parameters: ['compartment'],
    meaning:
      'How much of the gap between its tension when the script began and the inert gas breathed now a compartment has closed.',
    noun: 'how far compartment {1} has come',
    value(view, sample, [compartment]) {
      const startBar = tensionBar(view, 0, compartment!);
      return (
        ((tensionBar(view, sample, compartment!) - startBar) / (breathedInertBar(view.timeline, sample) - startBar)) *
        PERCENT
      );
    },
  },
  {
    of: 'moment',
    name: 'nextNoStopMin',
    dimension: 'time',
    parameters: ['depth'],
    meaning: 'No-stop time if you went straight down to a depth now, on the gas the dive began with.',
    noun: 'the no-stop time you would have at {1}',
    format: 'min',
    measure: 'noStopMin',
    value: ({ dive, timeline }, sample, [depthM]) =>
      noStopAfter(timeline, dive.settings, sample, { depthM: depthM!, gas: dive.settings.gas })(0).minutes,
  },
];

import type { SymbolName, WorkingValue } from '../working';
import { FIXED } from './fixed';
import type { Asked, Knob } from './knob';
import { depthKnob, gasKnob, timeKnob, type Part } from './step-knobs';
import {
  altitudeKnob,
  coefficientKnob,
  factorKnob,
  gaugeKnob,
  PLAIN_SETTINGS,
  ruleKnob,
  startKnob,
  tensionKnob,
} from './setting-knobs';

/** Numbers of practice and of publications that no script says, and that stand in the working in full. */
const IN_FULL: ReadonlySet<SymbolName> = new Set(['p_O2_limit', 'T', 'n_lung', 't_fade', 'h_guide']);
/** What a sum begins with where earlier legs are left out. */
const LEFT_OUT: readonly SymbolName[] = ['x_before', 'U_before'];

/** Readings whose gradient factor is the unit's own, even where a rule has drawn it in. */
const BY_OWN_FACTORS: ReadonlySet<string> = new Set(['tightened-limits', 'no-fly']);

/** What is answered where nothing but the working itself says a number. */
export const IN_THE_WORKING = 'in the working';

/**
 * What turns a number of a working: a knob of the dive, its unit or its rules; `IN_THE_WORKING` where nothing but the
 * working itself says it; or why it is not for changing, a sentence.
 */
export function knobOf(asked: Asked, symbol: SymbolName, value: WorkingValue): Knob | string {
  return (
    stepKnob(asked, symbol) ?? otherKnob(asked, symbol, value) ?? inTheWorking(asked, symbol) ?? why(value, symbol)
  );
}

/** `d_3`, `t_3`, `F_N2_3` and `d_3_end` are of leg 3; without a number they are of now. */
function stepKnob(asked: Asked, symbol: SymbolName): Knob | string | undefined {
  const { timeline, sample, working } = asked;
  const [, what, number, end] = /^(d|t|F_(?:N2|He|O2|narc))(?:_(\d+)(_end)?)?$/.exec(symbol) ?? [];
  if (!what || (what === 't' && number === undefined)) return undefined;
  const now = timeline.leg[sample]!;
  const index = number === undefined ? now : Number(number) - 1;
  if (!timeline.legs[index] || index > now) return undefined;
  if (what === 't') return timeKnob(asked, index);
  if (what === 'd') return depthKnob(asked, index, end !== undefined || number === undefined ? 'ends' : 'begins');
  if (what !== 'F_narc') return gasKnob(asked, index, what.slice(2) as Part);
  return working.reading === 'end' ? narcoticKnob(asked, index) : gasKnob(asked, index, 'N2');
}

/** Where oxygen counts as narcotic, all but helium does. */
function narcoticKnob(asked: Asked, index: number): Knob | string {
  const helium = gasKnob(asked, index, 'He');
  if (typeof helium === 'string') return helium;
  const [least, most] = helium.within!;
  return { within: [1 - most, 1 - least], turn: (fraction) => helium.turn(1 - fraction) };
}

function otherKnob(asked: Asked, symbol: SymbolName, value: WorkingValue): Knob | string | undefined {
  const { working, watch, sample, dive } = asked;
  const own = (working.compartment ?? 0) - 1;
  if (/^gf(_low|_high)?$/.test(symbol)) {
    if (watch && watch.tracks.tightness[sample]! > 0 && !BY_OWN_FACTORS.has(working.reading)) return FIXED.drawnIn;
    return factorKnob(asked, symbol === 'gf' ? 'both' : symbol === 'gf_low' ? 'low' : 'high');
  }
  const [, which, gas, suffix] = /^(t_half|a|b)(?:_(N2|He))?(_next|_low)?$/.exec(symbol) ?? [];
  if (which && value.changeable) {
    if (suffix === '_low' || own < 0) return FIXED.otherCompartment;
    return coefficientKnob(asked, which as 't_half' | 'a' | 'b', (gas ?? 'N2') as 'N2' | 'He', own);
  }
  const [, of] = /^P_(N2|He)(?:_0)?$/.exec(symbol) ?? [];
  if (of && value.from === 'setting' && dive.settings.start.kind === 'tensions')
    return own < 0 ? FIXED.otherCompartment : tensionKnob(asked, of as 'N2' | 'He', own);
  if (symbol === 'h') return altitudeKnob(asked);
  if (symbol === 'h_home' || symbol === 't_ago') return startKnob(asked, symbol === 'h_home' ? 'home' : 'ago');
  if (symbol === 'f_gauge') return gaugeKnob(asked);
  return PLAIN_SETTINGS[symbol]?.(asked) ?? (value.from === 'setting' ? ruleKnob(asked, symbol) : undefined);
}

function inTheWorking({ working }: Asked, symbol: SymbolName): string | undefined {
  if (!IN_FULL.has(symbol)) return undefined;
  const leftOut = working.steps.some(({ values }) => LEFT_OUT.some((before) => (values[before]?.value ?? 0) > 0));
  return leftOut ? FIXED.earlierLegs : IN_THE_WORKING;
}

function why({ from }: WorkingValue, symbol: SymbolName): string {
  if (from === 'search') return FIXED.found;
  if (/^(p_surface|p_home|p_cabin|w)$/.test(symbol)) return FIXED.place;
  if (from === 'published' || from === 'common practice') return FIXED.constant;
  return from === 'dive' ? FIXED.followed : FIXED.planned;
}

import { gradientFactorAt } from '../../ascent/ceiling';
import { limitBar } from '../../tissue/limit';
import { quantity, type Chain } from '../chain';
import type { Coefficients } from '../steps/compartment-steps';
import type { Site } from '../steps/pressure-steps';
import { SOURCES } from '../sources';
import type { Named } from '../working';

interface LineGiven {
  readonly tension: Named;
  readonly coefficients: Coefficients;
  readonly low: Named;
  readonly high: Named;
  readonly anchor: Named;
  readonly ceilingM: number;
}

/**
 * The ceiling on the line from low to high. At x bar of water the limit is p_surface + x + (gf_high + m·x)·(G + s·x), with
 * s = 1/b − 1, G the room at the surface and m the line's slope; set equal to the tension this is a quadratic in x, and
 * the root that leads to the surface is the ceiling. The limit there is worked out again as a check. Returns the pressure
 * around a diver at the ceiling.
 */
export function lineCeilingSteps(
  chain: Chain,
  site: Site,
  { tension, coefficients: { a, b }, low, high, anchor, ceilingM }: LineGiven,
): Named {
  const [surfaceBar, perMetre] = [site.surface.value.value, site.water.value.value];
  const [aBar, bValue] = [a.value.value, b.value.value];
  const [gfLow, gfHigh] = [low.value.value, high.value.value];
  const source = SOURCES.gradientFactors;

  const steepness = 1 / bValue - 1;
  const roomBar = aBar + surfaceBar * steepness;
  const slope = (gfLow - gfHigh) / (anchor.value.value * perMetre);
  const overBar = tension.value.value - surfaceBar - gfHigh * roomBar;
  const linear = 1 + gfHigh * steepness + slope * roomBar;
  const underBar = (2 * overBar) / (linear + Math.sqrt(Math.max(0, linear * linear + 4 * slope * steepness * overBar)));

  const s = chain.add({
    id: 'step:steepness',
    title: 'how much faster than the pressure around you the limit rises',
    why: 'The deeper you are, the more room this compartment has.',
    expression: `1 / ${b.symbol} - 1`,
    symbol: 's',
    values: [b],
    result: quantity(steepness, ''),
    source: SOURCES.limits,
  });
  const room = chain.add({
    id: 'step:room',
    title: 'room at the surface between its pressure and the model’s own limit',
    why: 'A gradient factor allows a share of this room.',
    expression: `${a.symbol} + p_surface * s`,
    symbol: 'G_0',
    values: [a, site.surface, s],
    result: quantity(roomBar, 'bar'),
    source: SOURCES.limits,
  });
  const m = chain.add({
    id: 'step:slope',
    title: 'how the gradient factor changes with the pressure of the water',
    why: 'It runs straight from high at the surface to low at the anchor. Baker’s papers round its foot deeper, to a stop; here it is not rounded, so that no figure jumps.',
    expression: '(gf_low - gf_high) / (w * d_anchor)',
    symbol: 'm',
    values: [low, high, site.water, anchor],
    result: quantity(slope, '1/bar'),
    source,
  });
  const over = chain.add({
    id: 'step:over',
    title: 'how far this compartment is past its limit at the surface',
    why: 'Less than nothing means that it is tolerated there, and sets no ceiling.',
    expression: `${tension.symbol} - p_surface - gf_high * G_0`,
    symbol: 'x_0',
    values: [tension, site.surface, high, room],
    result: quantity(overBar, 'bar'),
    source,
  });
  const linearly = chain.add({
    id: 'step:linear',
    title: 'how fast the limit on the line rises at the surface',
    why: 'The water’s own pressure, the room it adds and the fall of the gradient factor together.',
    expression: '1 + gf_high * s + m * G_0',
    symbol: 'q',
    values: [high, s, m, room],
    result: quantity(linear, ''),
    source,
  });
  const water = chain.add({
    id: 'step:water',
    title: 'pressure of the water at the ceiling',
    why: 'Limit and tension set equal give a quadratic equation; this is its root nearest to the surface.',
    expression: '2 * x_0 / (q + sqrt(max(0, q ^ 2 + 4 * m * s * x_0)))',
    symbol: 'p_w',
    values: [over, linearly, m, s],
    result: quantity(underBar, 'bar'),
    source,
  });
  const ambient = chain.add({
    id: 'step:ceiling-ambient',
    title: 'pressure around you at the ceiling',
    why: 'The air above the water and the water above the ceiling.',
    expression: 'p_surface + p_w',
    symbol: 'p_c',
    values: [site.surface, water],
    result: quantity(surfaceBar + underBar, 'bar'),
    source: SOURCES.water,
  });
  const factor = chain.add({
    id: 'step:ceiling-gf',
    title: 'gradient factor at the ceiling',
    why: 'Read off the line.',
    expression: 'gf_high + m * p_w',
    symbol: 'gf_c',
    values: [high, m, water],
    result: quantity(
      ceilingM > 0
        ? gradientFactorAt(underBar / perMetre, anchor.value.value, { low: gfLow, high: gfHigh })
        : gfHigh + slope * underBar,
      '',
    ),
    source,
  });
  const limit = chain.add({
    id: 'step:ceiling-limit',
    title: 'what this compartment tolerates at the ceiling',
    why: 'The check: it must be what the compartment holds.',
    expression: `p_c + gf_c * (${a.symbol} + p_c / ${b.symbol} - p_c)`,
    symbol: 'M_c',
    values: [ambient, factor, a, b],
    result: quantity(limitBar(aBar, bValue, factor.value.value, ambient.value.value), 'bar'),
    source,
  });
  chain.add({
    id: 'step:ceiling-check',
    title: 'how far tension and limit are apart at the ceiling',
    why: 'Nothing, but for rounding.',
    expression: `${tension.symbol} - M_c`,
    symbol: 'x_c',
    values: [tension, limit],
    result: quantity(tension.value.value - limit.value.value, 'bar'),
    source: SOURCES.arithmetic,
  });
  chain.add({
    id: 'step:ceiling',
    title: 'ceiling',
    why: 'The depth of that water; a depth above the surface is none, and the line ends at the anchor.',
    expression: 'max(0, min(p_w / w, d_anchor))',
    symbol: 'd_ceiling',
    values: [water, site.water, anchor],
    result: quantity(ceilingM, 'm'),
    source: SOURCES.water,
  });
  return ambient;
}

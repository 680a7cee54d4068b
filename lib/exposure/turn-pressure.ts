/** How the gas above the reserve is shared out between the way out and the way back. */
export const TURN_RULES = ['all usable', 'halves', 'thirds'] as const;
export type TurnRule = (typeof TURN_RULES)[number];

/** What each rule means, and when it is used; all three are common practice without a source. */
export const TURN_RULE_MEANINGS: Readonly<Record<TurnRule, string>> = {
  'all usable':
    'Everything above the reserve may be used before the ascent begins, where you can go up from any point.',
  halves: 'Half of what is above the reserve takes you out, the other half back to where the ascent begins.',
  thirds:
    'A third of the whole takes you out, a third back, a third is kept; where the reserve is more than a third, the rest is halved.',
};

export interface TurnPressure {
  readonly rule: TurnRule;
  /** Turn back when the gauge shows this, bar. */
  readonly turnBar: number;
  /** What may be used before the ascent begins, bar. */
  readonly usableBar: number;
  /** Whether the cylinder as filled covers the reserve at all; if not, the dive should not begin. */
  readonly coversReserve: boolean;
}

/** The gauge pressure to turn at, from what the gauge shows at the start and what must be left for the reserve, bar. */
export function turnPressure(rule: TurnRule, startBar: number, reserveBar: number): TurnPressure {
  const usableBar = Math.max(0, startBar - reserveBar);
  const outBar = { 'all usable': usableBar, halves: usableBar / 2, thirds: Math.min(startBar / 3, usableBar / 2) }[
    rule
  ];
  return { rule, turnBar: startBar - outBar, usableBar, coversReserve: reserveBar <= startBar };
}

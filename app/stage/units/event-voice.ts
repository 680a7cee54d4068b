import type { RuleEvent } from '@/lib/rules/event';

/** Rules that only pass on what the model's ceiling demands. */
const MODELS_OWN: ReadonlySet<string> = new Set(['requiredStops', 'lockOut']);

/** Whether an event is the model's stop or a rule laid on top of it: the two never share a colour or a mark. */
export function saidBy({ rule }: Pick<RuleEvent, 'rule'>): 'byModel' | 'byRule' {
  return MODELS_OWN.has(rule) ? 'byModel' : 'byRule';
}

import type { Filled } from '@/lib/lesson/expression/template';
import { amountHtml } from './fillable';
import type { Otherwise } from './in-units';
import type { PreparedLesson } from './prepared';

interface Laid {
  readonly both: unknown;
  readonly otherwise: Otherwise | undefined;
}

/** Lays the lesson in feet into the same in metres. */
export function withFeet(metric: PreparedLesson, feet: PreparedLesson): PreparedLesson {
  const { both, otherwise } = laid(metric, feet);
  return { ...(both as PreparedLesson), inFeet: otherwise && 'within' in otherwise ? otherwise : { within: {} } };
}

/** Texts with the values of one in metres and of the other in feet; what else differs stays as it is in metres. */
export function inBoth<T>(metric: T, feet: T): T {
  return laid(metric, feet).both as T;
}

function laid(metric: unknown, feet: unknown): Laid {
  if (Object.is(metric, feet)) return { both: metric, otherwise: undefined };
  if (typeof metric === 'string' && typeof feet === 'string') {
    const text = laidText(metric, feet);
    return text === undefined ? { both: metric, otherwise: { be: feet } } : { both: text, otherwise: undefined };
  }
  if (!isGroup(metric) || !isGroup(feet)) return { both: metric, otherwise: { be: feet } };
  if (isFilled(metric) && isFilled(feet))
    return { both: { metric: metric.metric, imperial: feet.imperial }, otherwise: undefined };
  const keys = Object.keys(metric);
  if (Array.isArray(metric) !== Array.isArray(feet) || keys.join() !== Object.keys(feet).join())
    return { both: metric, otherwise: { be: feet } };
  const parts = keys.map((key) => [key, laid(metric[key], feet[key])] as const);
  const within = Object.fromEntries(parts.flatMap(([key, { otherwise }]) => (otherwise ? [[key, otherwise]] : [])));
  const both = Array.isArray(metric)
    ? parts.map(([, part]) => part.both)
    : Object.fromEntries(parts.map(([key, part]) => [key, part.both]));
  return { both, otherwise: Object.keys(within).length > 0 ? { within } : undefined };
}

const AMOUNT =
  /<span class="amount" data-in="metric">([^<]*)<\/span><span class="amount" data-in="imperial">([^<]*)<\/span>|<span class="amount">([^<]*)<\/span>/g;

/** A text that differs in its values only, with both; undefined where it differs otherwise. */
function laidText(metric: string, feet: string): string | undefined {
  if (metric.replace(AMOUNT, '') !== feet.replace(AMOUNT, '')) return undefined;
  const inFeetOf = [...feet.matchAll(AMOUNT)].map(([, , imperial, alike]) => imperial ?? alike!);
  let at = 0;
  return metric.replace(AMOUNT, (_, inMetres?: string, __?: string, alike?: string) =>
    amountHtml(inMetres ?? alike!, inFeetOf[at++]!),
  );
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function isFilled(value: object): value is Filled {
  return Object.keys(value).join() === 'metric,imperial';
}

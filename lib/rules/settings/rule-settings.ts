import * as z from 'zod';
import { RULES, type RuleId, type RuleSettings } from '../all';
import { rateLimitSchema } from './rate-limit-schema';
import type { Setting, SettingList } from './setting';
import type { Condition } from '../rule';
import { slowedWashoutSettings } from './slowed-washout-settings';

/** Settings as a person, a file or a link may give them: what is left out is as usual. */
export type RuleSettingsInput = { [Id in keyof RuleSettings]?: Partial<RuleSettings[Id]> | undefined };

/** Each rule on or off with its numbers, and the what-if kept apart from them. What is left out is the default. */
export const ruleSettingsSchema = z.strictObject({
  ...Object.fromEntries(
    (RULES as readonly Listed[]).map(({ id, settings, must }) => [id, checked(settings, must).prefault({})]),
  ),
  slowedWashout: checked(slowedWashoutSettings).prefault({}),
}) as unknown as z.ZodType<RuleSettings, RuleSettingsInput>;

// Which conditions belong to which settings is known where the rule is declared.
interface Listed {
  readonly id: RuleId;
  readonly settings: SettingList;
  readonly must?: readonly Condition<never>[];
}

function checked(list: SettingList, must: readonly Condition<never>[] = []): z.ZodType {
  const shape = Object.fromEntries(
    Object.entries(list).map(([name, setting]) => [name, valueOf(setting).default(setting.usual)]),
  );
  return must.reduce<z.ZodType>(
    (schema, { holds, otherwise }) => schema.refine((own) => holds(own as never), otherwise),
    z.strictObject(shape),
  );
}

function valueOf({ may }: Setting): z.ZodType {
  if (may === 'be on or off') return z.boolean();
  if (may === 'be a rate limit') return rateLimitSchema;
  if ('be' in may) return z.literal(may.be);
  const number = z.number().min(may.from).max(may.to);
  return may.whole ? number.int() : number;
}

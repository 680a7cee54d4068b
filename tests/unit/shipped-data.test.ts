import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { cautions } from '@/content/cautions';
import { cautionsSchema } from '@/content/cautions-schema';
import { scenarioSchema } from '@/content/scenarios/scenario-schema';
import { scenarios } from '@/content/scenarios/scenarios';
import { SET_RIGHT } from '@/lib/dive/edit/set-right';
import { setupSchema } from '@/lib/dive/setup';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';

// What ships with the app is held to its schemas here, once, and not in each visitor's browser.
describe('data that ships with the app', () => {
  it('has every caution, and a watermark short enough to be read across a page', () => {
    expect(cautionsSchema.parse(cautions)).toEqual(cautions);
  });

  it('has ready dives of the right shape, each with an id of its own', () => {
    expect(z.array(scenarioSchema).parse(scenarios)).toEqual(scenarios);
    expect(new Set(scenarios.map(({ id }) => id)).size).toBe(scenarios.length);
  });

  it('has a unit set right that is what a setup with nothing but a name is', () => {
    expect(SET_RIGHT).toEqual(setupSchema.parse({ name: SET_RIGHT.name }));
  });

  it('has usual rules that their own schema allows, and makes where nothing is said', () => {
    expect(ruleSettingsSchema.parse(DEFAULT_RULES)).toEqual(DEFAULT_RULES);
    expect(ruleSettingsSchema.parse({})).toEqual(DEFAULT_RULES);
  });
});

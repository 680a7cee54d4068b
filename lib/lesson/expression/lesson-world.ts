import { parseScript, type Notice } from '../../dive/script';
import { DEFAULT_RULES, type RuleSettings } from '../../rules/all';
import { ruleSettingsSchema } from '../../rules/settings/rule-settings';
import type { Lesson } from '../lesson';
import { subjectOf, type Subject } from '../questions/subject';
import type { Work } from './work';
import type { World } from './world';

/** The dives of a lesson, worked out as they are asked for. */
export interface LessonWorld {
  /** The world of a step, whose unnamed facts are about one script; the first of the lesson unless named. */
  readonly about: (script?: string) => World;
  /** The world of another dive under the rules of a script: a learner's own, or a question's. */
  readonly aboutDive: (subject: Subject) => World;
  readonly rulesOf: (script?: string) => RuleSettings;
}

export type Scripts = Pick<Lesson, 'scripts'>;

/** The errors in a lesson's scripts, by script. */
export function scriptErrors({ scripts }: Scripts): { readonly name: string; readonly errors: readonly Notice[] }[] {
  return Object.entries(scripts).flatMap(([name, { script }]) => {
    const parsed = parseScript(script);
    return parsed.ok ? [] : [{ name, errors: parsed.errors }];
  });
}

/** The world of a lesson whose scripts are known to parse. Throws if one does not, and `TooMuchWork` once its work is spent. */
export function lessonWorld({ scripts }: Scripts, work?: Work): LessonWorld {
  const names = Object.keys(scripts);
  const first = names[0]!;
  const made = new Map<string, Subject>();
  const rulesOf = (name = first) => {
    const rules = ruleSettingsSchema.safeParse(scripts[name]?.rules ?? {});
    return rules.success ? rules.data : DEFAULT_RULES;
  };
  const subject = (name: string): Subject | undefined => {
    const known = made.get(name);
    const own = Object.hasOwn(scripts, name) ? scripts[name] : undefined;
    if (known || !own) return known;
    const fresh = subjectOfScript(own.script, rulesOf(name));
    made.set(name, fresh);
    return fresh;
  };
  const around = (main: Subject): World => ({
    subject: main,
    script: subject,
    scriptNames: names,
    values: new Map(),
    work,
  });
  return {
    about: (name = first) => around(subject(name) ?? subject(first)!),
    aboutDive: around,
    rulesOf,
  };
}

/** A script made ready to be asked; throws if it does not parse. */
export function subjectOfScript(script: string, rules: RuleSettings): Subject {
  const parsed = parseScript(script);
  if (!parsed.ok)
    throw new Error(`the script does not parse: line ${parsed.errors[0]?.line}: ${parsed.errors[0]?.message}`);
  return subjectOf(parsed.dive, rules);
}

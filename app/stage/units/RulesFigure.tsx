'use client';

import { sayIssue } from '@/lib/quantity/schema-words';
import { DEFAULT_RULES, RULES, type RuleId, type RuleSettings } from '@/lib/rules/all';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { RATE_PRESETS } from '@/lib/rules/settings/rate-limits';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { Field } from '../../parts/Field';
import { usePreferences } from '../../parts/preferences';
import { useStatus } from '../../parts/status';
import { useDesk } from '../desk-context';
import { PictureFrame } from '../figures/PictureFrame';
import { inUnits } from '@/lib/rules/say';
import { fieldName } from './rule-fields';
import styles from './units.module.css';

type PresetId = keyof typeof RATE_PRESETS;

/** What instruments add to the model: each rule with its reason, its standing and its numbers. */
export function RulesFigure() {
  const rules = useDesk((state) => state.rules) ?? DEFAULT_RULES;
  const change = useDesk((state) => state.change);
  const units = usePreferences((state) => state.units);

  const set = (id: RuleId, key: string, value: unknown) => {
    const read = ruleSettingsSchema.safeParse({ ...rules, [id]: { ...rules[id], [key]: value } });
    if (read.success) change({ rules: read.data }, `rule ${id} ${key}`);
    else useStatus.getState().say(`That is not possible. ${sayIssue(read.error.issues[0]!)}.`);
  };

  return (
    <PictureFrame
      id="rules"
      title="Rules of the unit"
      sentence="The model knows no alarm and no penalty; instruments add them, and makers differ. Every rule here can be switched and set."
      actions={
        <Button kind="quiet" disabled={rules === DEFAULT_RULES} onClick={() => change({ rules: undefined })}>
          As usual
        </Button>
      }
      columns={[
        { heading: 'Rule', cell: (rule: (typeof RULES)[number]) => rule.title },
        { heading: 'On', cell: (rule) => (rules[rule.id].on ? 'on' : 'off') },
        { heading: 'Standing', cell: (rule) => rule.standing },
        { heading: 'Reason', cell: (rule) => inUnits(rule.reason, units) },
      ]}
      rows={() => RULES}
    >
      <div className={styles.rules}>
        {RULES.map((rule) => (
          <div key={rule.id} className={styles.ruleRow} role="group" aria-label={rule.title}>
            <div className={styles.ruleHead}>
              <label className={styles.check}>
                <input
                  type="checkbox"
                  checked={rules[rule.id].on}
                  onChange={(event) => set(rule.id, 'on', event.target.checked)}
                />
                {rule.title}
              </label>
              <span className={styles.standing}>{rule.standing}</span>
            </div>
            <p>{inUnits(rule.reason, units)}</p>
            {rules[rule.id].on && <Numbers id={rule.id} rules={rules} onSet={set} />}
          </div>
        ))}
      </div>
    </PictureFrame>
  );
}

function Numbers({
  id,
  rules,
  onSet,
}: {
  id: RuleId;
  rules: RuleSettings;
  onSet: (id: RuleId, key: string, value: unknown) => void;
}) {
  const system = usePreferences((state) => state.units);
  return (
    <div className={styles.numbers}>
      {Object.entries(rules[id]).map(([key, value]) => {
        const { label, unit, size } = fieldName(key, system);
        if (key === 'limit')
          return <RatePreset key={key} limit={rules.rateWatch.limit} onSet={(limit) => onSet(id, key, limit)} />;
        if (key === 'outside') {
          const options = [
            { value: 'pauses', label: 'the time stands still' },
            { value: 'extends', label: 'the time grows again' },
          ];
          return (
            <Choice
              key={key}
              label="Outside the band"
              value={String(value)}
              options={options}
              onChange={(next) => onSet(id, key, next)}
            />
          );
        }
        if (key === 'hours') {
          const options = [24, 48].map((hours) => ({ value: String(hours), label: `${hours} h` }));
          return (
            <Choice
              key={key}
              label="Locked for"
              value={String(value)}
              options={options}
              onChange={(next) => onSet(id, key, Number(next))}
            />
          );
        }
        if (typeof value !== 'number') return null;
        const shown = size === 1 ? value : Math.round((value / size) * 10) / 10;
        return (
          <Field
            key={`${key} ${shown}`}
            label={label}
            unit={unit}
            type="number"
            step="any"
            defaultValue={shown}
            onBlur={(event) =>
              Number.isFinite(event.target.valueAsNumber) &&
              event.target.valueAsNumber !== shown &&
              onSet(id, key, event.target.valueAsNumber * size)
            }
            onKeyDown={(event) => event.key === 'Enter' && event.currentTarget.blur()}
          />
        );
      })}
    </div>
  );
}

function RatePreset({
  limit,
  onSet,
}: {
  limit: RuleSettings['rateWatch']['limit'];
  onSet: (limit: RuleSettings['rateWatch']['limit']) => void;
}) {
  const entries = Object.entries(RATE_PRESETS) as [PresetId, (typeof RATE_PRESETS)[PresetId]][];
  const chosen = entries.find(([, preset]) => JSON.stringify(preset.limit) === JSON.stringify(limit))?.[0] ?? 'own';
  const options = entries.map(([value, preset]) => ({ value: value as string, label: preset.title }));
  return (
    <Choice
      label="Fastest rise"
      value={chosen}
      options={chosen === 'own' ? [{ value: 'own', label: 'Your own' }, ...options] : options}
      hint={
        chosen === 'own'
          ? undefined
          : `${RATE_PRESETS[chosen as PresetId].standing}: ${RATE_PRESETS[chosen as PresetId].source}`
      }
      onChange={(next) => next !== 'own' && onSet(RATE_PRESETS[next as PresetId].limit)}
    />
  );
}

'use client';

import type { Path } from '@/lib/lesson/edit-lesson';
import { Button } from '../../../parts/Button';
import type { FieldSpec } from './field-specs';
import { Faults, type Editing } from '../faults/Faults';
import { Fields } from './Fields';
import { NameBox } from './NameBox';
import styles from '../workshop.module.css';

interface NamedGroupsProps {
  field: Extract<FieldSpec, { control: 'named' }>;
  value: unknown;
  path: Path;
  editing: Editing;
}

/** Groups of parts, each under a name of its own. */
export function NamedGroups({ field, value, path, editing }: NamedGroupsProps) {
  const groups = typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.entries(value) : [];
  const taken = groups.map(([name]) => name);
  const fresh = taken.includes(field.newName)
    ? Array.from({ length: 99 }, (_, i) => `${field.newName}${i + 2}`).find((name) => !taken.includes(name))!
    : field.newName;
  return (
    <fieldset className={styles.entries}>
      <legend>{field.label}</legend>
      {field.hint && <p className={styles.hint}>{field.hint}</p>}
      <Faults path={path} editing={editing} />
      <ol>
        {groups.map(([name, group], index) => (
          <li key={index}>
            <div>
              <NameBox name={name} taken={taken} onName={(after) => editing.rename(path, name, after)} />
              <Faults path={[...path, name]} editing={editing} />
              <Fields fields={field.fields} data={group} path={[...path, name]} editing={editing} />
            </div>
            <div className={styles.entryTools}>
              <Button
                kind="quiet"
                aria-label={`Remove ${field.item} ${name}`}
                disabled={groups.length === 1 && !field.optional}
                onClick={() => editing.set(groups.length === 1 ? path : [...path, name], undefined)}
              >
                Remove
              </Button>
            </div>
          </li>
        ))}
      </ol>
      <Button icon="plus" onClick={() => editing.set([...path, fresh], field.make)}>
        Add a {field.item}
      </Button>
    </fieldset>
  );
}

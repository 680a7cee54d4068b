'use client';

import { memo, useState } from 'react';
import { scriptReference, type ReferenceEntry } from '@/lib/dive/script-reference';
import { Disclosure } from '../parts/Disclosure';
import styles from './desk.module.css';

/** Everything a script can say, made from the language's own tables. */
export const ScriptHelp = memo(function ScriptHelp() {
  const [open, setOpen] = useState(false);
  return (
    <Disclosure summary="How to write a dive" onToggle={setOpen}>
      {open && (
        <div className={styles.help}>
          <p>One line says one thing; what follows a # is a remark. Settings come first, then the steps of the dive.</p>
          <Entries title="Steps" kind="step" />
          <Entries title="Settings" kind="setting" />
        </div>
      )}
    </Disclosure>
  );
});

function Entries({ title, kind }: { title: string; kind: ReferenceEntry['kind'] }) {
  return (
    <>
      <h3>{title}</h3>
      <dl>
        {scriptReference
          .filter((entry) => entry.kind === kind)
          .map(({ name, help, examples, unless }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>
                {help} {unless && `Left out: ${unless}`}
                {examples.slice(0, 2).map((example) => (
                  <code key={example}>{example}</code>
                ))}
              </dd>
            </div>
          ))}
      </dl>
    </>
  );
}

'use client';

import { useId, useRef } from 'react';
import { overstayed } from '@/content/scenarios/overstayed';
import { scenarioIn } from '@/content/scenarios/scenario-in';
import { Button } from '../parts/Button';
import { Choice } from '../parts/Choice';
import { gathered, splitLines, type Notice } from '@/lib/dive/script';
import { mended, type Mend } from '@/lib/dive/script/mend';
import { fetchedLater } from '../parts/fetched-later';
import { TYPING } from '../keep/history';
import { Icon } from '../parts/Icon';
import { usePreferences } from '../parts/preferences';
import { useDesk, useDeskStore } from '../stage/desk-context';
import { StepHint } from '../stage/figures/StepHint';
import { useScriptShown } from './use-script-shown';
import styles from './desk.module.css';
import noticeStyles from './notices.module.css';

const StepEditor = fetchedLater(async () => (await import('../stage/after-opening')).StepEditor, <StepHint />);
// What helps to write a dive stands there as the page came with it until it is fetched.
const ReadyDives = fetchedLater(
  async () => (await import('./keep/keep-and-print')).ReadyDives,
  function FirstReadyDive() {
    const { title, shows } = scenarioIn(
      overstayed,
      usePreferences((state) => state.units),
    );
    return (
      <Choice
        label="Ready dives"
        value={overstayed.id}
        options={[{ value: overstayed.id, label: title }]}
        onChange={() => undefined}
        disabled
        hint={shows}
      />
    );
  },
);
const WriteInUnits = fetchedLater(async () => (await import('./keep/keep-and-print')).WriteInUnits);
const OverlaySentence = fetchedLater(async () => (await import('./keep/keep-and-print')).OverlaySentence);
const PictureChooser = fetchedLater(async () => (await import('./keep/keep-and-print')).PictureChooser);
const ScriptHelp = fetchedLater(async () => (await import('./keep/keep-and-print')).ScriptHelp);

/** The dive as text, what is wrong with it, and dives to begin with. */
export function ScriptPanel() {
  const id = useId();
  const store = useDeskStore();
  const editor = useRef<HTMLTextAreaElement>(null);
  const { script, catchUp } = useScriptShown(editor);
  const errors = useDesk((state) => state.errors);
  const warnings = useDesk((state) => state.warnings);
  const change = useDesk((state) => state.change);
  const fixed = useDesk((state) => state.base !== undefined);

  const make = (mend: Mend) => change({ script: mended(store.getState().script, mend) });
  const goTo = ({ line, column, endColumn }: Notice) => {
    const before = splitLines(script)
      .slice(0, line - 1)
      .reduce((sum, text) => sum + text.length + 1, 0);
    editor.current?.focus();
    editor.current?.setSelectionRange(before + column - 1, before + endColumn - 1);
  };

  return (
    <section className={styles.script} data-tour="script" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>Dive script</h2>
      <ReadyDives />
      <WriteInUnits />
      <textarea
        ref={editor}
        aria-label="Dive script"
        aria-invalid={errors.length > 0 ? true : undefined}
        aria-describedby={`${id}-notices`}
        className={styles.editor}
        spellCheck={false}
        autoCapitalize="off"
        autoCorrect="off"
        value={script}
        onFocus={catchUp}
        rows={Math.max(14, script.split('\n').length + 4)}
        onChange={(event) => change({ script: event.target.value }, TYPING)}
      />
      <div id={`${id}-notices`}>
        {errors.length > 0 && (
          <>
            <p className={styles.mistake}>
              <Icon name="close" />{' '}
              {errors.length === 1 ? 'A mistake in the script' : `${errors.length} mistakes in the script`}
            </p>
            <p className={styles.held}>The pictures show the last dive that made sense.</p>
            <NoticeList notices={errors} onGo={goTo} onMend={make} />
          </>
        )}
        {errors.length === 0 && warnings.length > 0 && (
          <NoticeList notices={gathered(warnings)} onGo={goTo} onMend={make} />
        )}
      </div>
      {!fixed && <StepEditor />}
      {!fixed && <OverlaySentence />}
      <PictureChooser />
      <ScriptHelp />
    </section>
  );
}

interface NoticeListProps {
  notices: readonly Notice[];
  onGo: (notice: Notice) => void;
  onMend: (mend: Mend) => void;
}

function NoticeList({ notices, onGo, onMend }: NoticeListProps) {
  return (
    <ul className={styles.notices}>
      {notices.slice(0, 8).map((notice, index) => (
        <li key={index}>
          <button type="button" onClick={() => onGo(notice)}>
            {notice.alsoOn ? `Lines ${listed([notice.line, ...notice.alsoOn])}.` : `Line ${notice.line}.`}
          </button>{' '}
          {notice.message} {notice.mend}
          {notice.mends && (
            <span className={noticeStyles.mends}>
              {notice.mends.map((mend) => (
                <Button key={mend.label} onClick={() => onMend(mend)}>
                  {mend.label}
                </Button>
              ))}
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}

function listed(lines: readonly number[]): string {
  return lines.length > 6
    ? `${lines.slice(0, 5).join(', ')} and more`
    : `${lines.slice(0, -1).join(', ')} and ${lines.at(-1)}`;
}

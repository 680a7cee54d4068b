'use client';

import { memo, useCallback, useEffect, useId, useMemo, useRef } from 'react';
import { isScenario, scenarioIn } from '@/content/scenarios/scenario-in';
import { scenarios } from '@/content/scenarios/scenarios';
import { writeInUnits } from '@/lib/dive/write-in-units';
import { Button } from '../parts/Button';
import { Choice } from '../parts/Choice';
import { usePreferences } from '../parts/preferences';
import { gathered, splitLines, type Notice } from '@/lib/dive/script';
import { mended, type Mend } from '@/lib/dive/script/mend';
import { fetchedLater } from '../parts/fetched-later';
import { useDesk, useDeskStore } from '../stage/desk-context';
import { OverlaySentence } from '../stage/figures/OverlayChooser';
import { StepHint } from '../stage/figures/StepHint';
import { PictureChooser } from './PictureChooser';
import { ScriptHelp } from './ScriptHelp';
import { useScriptShown } from './use-script-shown';
import styles from './desk.module.css';
import noticeStyles from './notices.module.css';

const StepEditor = fetchedLater(async () => (await import('../stage/after-opening')).StepEditor, <StepHint />);

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
        onChange={(event) => change({ script: event.target.value }, 'typing')}
      />
      <div id={`${id}-notices`} aria-live="polite">
        {errors.length > 0 && (
          <>
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

const OWN = { value: 'own', label: 'Your own' };

/** Dives to begin with; kept apart, since it stays the same while a script is changed. */
const ReadyDives = memo(function ReadyDives() {
  const units = usePreferences((state) => state.units);
  const scenario = useDesk((state) => scenarios.find((one) => isScenario(one, state.script)));
  const change = useDesk((state) => state.change);
  const store = useDeskStore();
  // A ready dive that nobody has touched follows the units.
  useEffect(() => {
    const { script, past } = store.getState();
    const ready = scenarios.find((one) => isScenario(one, script));
    if (ready && past.length === 0) change({ script: scenarioIn(ready, units).script });
  }, [store, change, units]);
  const own = scenario === undefined;
  const options = useMemo(() => {
    const ready = scenarios.map((one) => ({ value: one.id, label: scenarioIn(one, units).title }));
    return own ? [OWN, ...ready] : ready;
  }, [own, units]);
  const choose = useCallback(
    (chosen: string) => {
      const next = scenarios.find((one) => one.id === chosen);
      if (next) change({ script: scenarioIn(next, units).script });
    },
    [change, units],
  );
  return (
    <Choice
      label="Ready dives"
      value={scenario?.id ?? OWN.value}
      options={options}
      onChange={choose}
      hint={scenario && scenarioIn(scenario, units).shows}
    />
  );
});

/** Writes the script in the units chosen, where it is in the others. */
function WriteInUnits() {
  const units = usePreferences((state) => state.units);
  const script = useDesk((state) => (state.errors.length > 0 ? undefined : state.script));
  const change = useDesk((state) => state.change);
  const written = useMemo(() => (script === undefined ? undefined : writeInUnits(script, units)), [script, units]);
  if (written === undefined || written === script) return null;
  return (
    <p>
      <Button kind="quiet" onClick={() => change({ script: written })}>
        Write it in {units === 'imperial' ? 'feet' : 'metres'}
      </Button>
    </p>
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

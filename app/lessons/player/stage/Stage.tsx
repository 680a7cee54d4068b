'use client';

import { useEffect, useMemo, useState, type ReactNode } from 'react';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { cutDive } from '@/lib/dive/edit/cut-dive';
import type { LessonScript } from '@/lib/lesson/lesson';
import { DeskContext } from '../../../stage/desk-context';
import { createDeskStore } from '../../../stage/desk-store';
import type { PLAYBACK_SPEEDS } from '../../../stage/desk-state';
import { pictures } from '../../../stage/figures/all';
import type { PictureId } from '../../../pictures/picture-ids';
import { PictureRoom } from '../../../stage/PictureRoom';
import { Playback } from '../../../stage/PlaybackBar';
import { READING_IDS, type ReadingId } from '../../../stage/reading-ids';
import places from '../window.module.css';

interface StageProps {
  script: LessonScript;
  show: readonly string[];
  /** Where the time cursor stands at first, s. */
  atS?: number;
  /** Where the dive ends for this step, s: what comes later is asked for first. */
  untilS?: number | undefined;
  /** How fast it plays at first. */
  speed?: (typeof PLAYBACK_SPEEDS)[number];
  /** The readings that stand beside it; nothing is said of others. */
  reads?: readonly ReadingId[];
  /** Whether the dive is the learner's own, to be changed. */
  own?: boolean;
  /** What the learner had made of it before. */
  draft?: string | undefined;
  /** Told of every change of the learner's own script. */
  onScript?: (script: string) => void;
  /** What stands with the pictures, each part in its place (see window.module.css). */
  children?: ReactNode;
}

/** Where the diver is can be seen on any picture of a dive. */
const WHERE: readonly ReadingId[] = ['time', 'depth', 'rate'];

/** A desk of its own for one step: pictures of one dive, and whatever stands with them. */
export function Stage({
  script,
  show,
  atS = 0,
  untilS,
  speed,
  reads = WHERE,
  own = false,
  draft,
  onScript,
  children,
}: StageProps) {
  const shown = show.filter((id): id is PictureId => Object.hasOwn(pictures, id));
  const [store] = useState(() => {
    const rules = ruleSettingsSchema.safeParse(script.rules ?? {});
    const made = createDeskStore(
      {
        script: script.script,
        pictures: shown,
        covered: [],
        rules: rules.success ? rules.data : DEFAULT_RULES,
      },
      !own,
    );
    if (untilS !== undefined) made.getState().showLive(cutDive(made.getState().scene.dive, untilS));
    made.getState().setCursor(atS);
    if (speed !== undefined) made.getState().setSpeed(speed);
    if (draft !== undefined) made.getState().change({ script: draft });
    return made;
  });
  useEffect(
    () =>
      onScript &&
      store.subscribe((now, last) => {
        if (now.script !== last.script) onScript(now.script);
      }),
    [store, onScript],
  );
  const unread = useMemo(() => READING_IDS.filter((id) => !own && !reads.includes(id)), [own, reads]);
  return (
    <DeskContext value={store}>
      <Playback unread={unread} />
      {children}
      <div className={places.pictures}>
        <PictureRoom shown={shown} />
      </div>
    </DeskContext>
  );
}

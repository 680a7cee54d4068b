'use client';

import { useEffect, useMemo, useState } from 'react';
import { parseScript } from '@/lib/dive/script';
import { needsDeepCaution } from '@/lib/ways-out/deep';
import type { Target } from '@/lib/ways-out/trouble';
import type { WayOut } from '@/lib/ways-out/ways-out';
import { usePreferences } from '../parts/preferences';
import { useOpenWhy } from '../parts/working/open-why';
import { WorkingSheet } from '../parts/working/WorkingSheet';
import { useWaysOut } from '../working/ways-out/use-ways-out';
import { targetOf, useWaysOutHere, waysOutId } from '../working/ways-out/ways-out-here';
import { WaysOutPanel } from '../working/ways-out/WaysOutPanel';

interface RecordWaysOutProps {
  script: string;
  onOpen: (way: WayOut) => void;
}

/** Answers of a recorded dive, as the desk will have it, what would have avoided its stop; a way out opens on the desk. */
export function RecordWaysOut(props: RecordWaysOutProps) {
  const target = useOpenWhy((state) => targetOf(state.id));
  useEffect(() => {
    useWaysOutHere.setState(({ panels }) => ({ panels: panels + 1 }));
    return () => useWaysOutHere.setState(({ panels }) => ({ panels: panels - 1 }));
  }, []);
  return target ? <OpenPanel {...props} target={target} /> : null;
}

function OpenPanel({ script, target, onOpen }: RecordWaysOutProps & { target: Target }) {
  const units = usePreferences((state) => state.units);
  const { ask, close } = useOpenWhy.getState();
  const asked = useMemo(() => ({ script, question: { target, system: units } }), [script, target, units]);
  const answer = useWaysOut(asked);
  const [deep] = useState(() => {
    const parsed = parseScript(script);
    return parsed.ok && needsDeepCaution(parsed.dive);
  });
  return (
    <WorkingSheet title="What would have avoided it?" onClose={close}>
      <WaysOutPanel
        target={target}
        onTarget={(next) => ask(waysOutId(next))}
        answer={answer}
        shown={[]}
        onUse={onOpen}
        use="Open this one on the desk"
        deep={deep}
      />
    </WorkingSheet>
  );
}

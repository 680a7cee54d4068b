import { useMemo } from 'react';
import { useDesk } from '../../stage/desk-context';
import type { PanelId } from '../../stage/panel-ids';
import { presentedPanels } from './panels';

/** What is on show in the presenter's view of the desk around. */
export function usePresented(): readonly PanelId[] {
  const presented = useDesk((state) => state.presented);
  const pictures = useDesk((state) => state.pictures);
  return useMemo(() => presentedPanels({ presented, pictures }), [presented, pictures]);
}

import { WorkingSheet } from '../../parts/working/WorkingSheet';

/** In place of a working of what is not shown at the time cursor. */
export function NotShownNow({ where, onClose }: { where: string; onClose: () => void }) {
  return (
    <WorkingSheet title="Why?" where={where} onClose={onClose}>
      <p>This is not shown at this moment. Move the time cursor to where it is.</p>
    </WorkingSheet>
  );
}

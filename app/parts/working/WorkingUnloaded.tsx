import { WorkingSheet } from './WorkingSheet';

/** In place of a working whose parts did not arrive. */
export function WorkingUnloaded({ onClose }: { onClose: () => void }) {
  return (
    <WorkingSheet title="Why?" onClose={onClose}>
      <p role="alert">
        The working could not be loaded; you may be offline. Nothing on the page is lost. Reload the page and ask again.
      </p>
    </WorkingSheet>
  );
}

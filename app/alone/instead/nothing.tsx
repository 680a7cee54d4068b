/**
 * In place of the desk's: a dive on a page of its own is looked at. It saves nothing further and changes nothing, and needs
 * no code for either.
 */
function Nothing() {
  return null;
}

export {
  Nothing as OverlayChooser,
  Nothing as OverlaySentence,
  Nothing as ProfileHandles,
  Nothing as SaveDivePage,
  Nothing as SavePicture,
  Nothing as SaveReadings,
  Nothing as SetupEditor,
  Nothing as StepEditor,
};

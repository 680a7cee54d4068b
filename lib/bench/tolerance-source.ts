/** Where tolerances for instruments are laid down; this sheet has none of its own. */
export const TOLERANCE_SOURCE =
  'EN 13319 is where to look for the accuracy of depth gauges and combined instruments; the maker’s service manual may ask for more.';

/** Every warning the project gives, worded once. A screen, a print, an export or a command quotes these and adds no other. */
export const cautions = {
  general:
    'For teaching and planning study only, never to dive on. Follow your training, your instrument’s manual, local codes and licensed practice.',
  unknown:
    'The model knows dissolved gas and nothing else. You, bubbles, cold and work are unknown to it, so a dive inside every limit shown here can still hurt someone.',
  deepCourse:
    'Deep and staged-stop diving needs training, a team and gas for failures that a picture can’t give you. Nothing shown here is a plan to dive.',
  chamber:
    'Pressure vessels can kill. Follow the chamber’s rating, local codes and the maker’s service manual. A passed sheet is not a certification.',
  /** Laid across what may be printed or photographed. */
  watermark: 'For teaching only, never to dive on',
};

/** Lessons that stand in another place on the shelf than they did, by the names they had in addresses and records. */
export const RENAMED: Readonly<Record<string, string>> = {
  '10-misleading-settings': '17-misleading-settings',
  '12-second-dive': '13-second-dive',
  '13-flying-and-mountains': '14-flying-and-mountains',
  '14-enriched-air': '12-enriched-air',
  '15-before-a-deep-course': '20-before-a-deep-course',
  '16-beyond-no-stop': '21-beyond-no-stop',
  '16-misleading-settings': '17-misleading-settings',
  '17-before-a-deep-course': '20-before-a-deep-course',
  '18-beyond-no-stop': '21-beyond-no-stop',
};

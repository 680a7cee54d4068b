import * as z from 'zod';
import { DESK } from '../../keep/dive-on-desk';
import { stampSchema, type Shelved, type ShelvedKind } from '../../keep/shelved';
import { deskViewSchema, type DeskView } from '../../stage/desk-view';
import { leftBehind } from './left-behind';

/** What is kept of the desk between visits, without being asked to. */
export interface DeskContent {
  script: string;
  desk?: DeskView | undefined;
}
export type DeskRecord = Shelved<DeskContent>;

export const deskKind: ShelvedKind<DeskContent> = {
  name: DESK,
  version: 1,
  schema: stampSchema.extend({
    script: z.string(),
    /** How the desk looked; passed over where it is no longer understood, since the dive is what matters. */
    desk: deskViewSchema.optional().catch(undefined),
  }),
  lastWords: 'halftime.desk.last',
  beside: (theirs, ours) => (theirs.script === ours.script && !theirs.desk?.run ? {} : leftBehind(theirs).record),
  words: {
    unread: 'What was kept of your last visit can’t be read, so the desk opens with a ready dive.',
    refused: {
      full: 'There is no room left in this browser to keep your work. Go on working, and pass this dive on as a link or export your dives as a file; then delete dives you no longer need.',
      blocked:
        'This browser does not let the page keep anything, so your work lasts until the page is closed. Go on working, and pass the dive on as a link to keep it.',
    },
    fileName: 'halftime-unread.json',
  },
};

import * as z from 'zod';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { writeScript } from '@/lib/dive/script';
import { steerRunSchema } from '@/lib/steer/run-schema';
import type { DeskDocument, DeskState, OpenedDesk } from './desk-state';
import { PICTURE_IDS } from '../pictures/picture-ids';
import { PANEL_IDS } from './panel-ids';
import { READING_IDS } from './reading-ids';

/** Names from a list, each once. One that is not known here, such as a newer version's, is passed over. */
function namesOf<Name extends string>(known: readonly Name[]) {
  return z
    .array(z.string())
    .max(500)
    .transform((names) =>
      [...new Set(names)].filter((name): name is Name => (known as readonly string[]).includes(name)),
    );
}

/** What of the desk's document lies beside the script. A field added to the document is asked for here. */
const beside = {
  pictures: namesOf(PICTURE_IDS),
  covered: namesOf(READING_IDS),
  presented: namesOf(PANEL_IDS).optional(),
  rules: ruleSettingsSchema.optional(),
  overlay: z.object({ title: z.string().max(200), script: z.string().max(200_000) }).optional(),
} satisfies Record<Exclude<keyof DeskDocument, 'script'>, z.ZodType>;

/** Every field of the desk's document. */
export const DOCUMENT_FIELDS: readonly (keyof DeskDocument)[] = [
  'script',
  ...(Object.keys(beside) as (keyof typeof beside)[]),
];

const timeS = z.number().min(0).max(1e9);

/** How a desk looks: what is kept and sent of it beside its script. */
export const deskViewSchema = z.object({
  ...beside,
  cursorS: timeS,
  view: z
    .object({ startS: timeS, endS: timeS })
    .refine(({ startS, endS }) => startS < endS)
    .optional(),
  /** The unit whose readings are shown. */
  unit: z.number().int().min(0).max(100).optional(),
  soundScript: z.string().max(1_000_000).optional(),
  /** A dive that is being steered by hand; passed over where it is none. */
  run: steerRunSchema.optional().catch(undefined),
});
export type DeskView = z.infer<typeof deskViewSchema>;

/** How a desk looks now. */
export function viewOf(state: DeskState): DeskView {
  const { pictures, covered, presented, rules, overlay, cursorS, view, unit, errors, base, run, scene } = state;
  return {
    pictures: [...pictures],
    covered: [...covered],
    ...(presented && { presented: [...presented] }),
    ...(rules && { rules }),
    ...(overlay && { overlay }),
    // While a dive is steered by hand, the cursor is on that dive and not on the script's.
    cursorS: base ? 0 : Math.round(cursorS * 10) / 10,
    ...(view && !run && { view }),
    ...(run && { run: { timesS: [...run.timesS], depthsM: [...run.depthsM] } }),
    ...(unit > 0 && { unit }),
    ...(errors.length > 0 && { soundScript: writeScript(base ?? scene.dive) }),
  };
}

/** A desk from a script and how it looked; without the latter, as `otherwise` looks now. */
export function deskFrom(script: string, look: DeskView | undefined, otherwise: DeskDocument): OpenedDesk {
  if (look) return { script, ...look, view: look.view };
  const { pictures, covered, presented, rules, overlay } = otherwise;
  return { script, pictures, covered, presented, rules, overlay, cursorS: 0, view: undefined };
}

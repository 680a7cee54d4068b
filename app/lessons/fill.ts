import { fillSlots, parseTemplate, type Filled } from '@/lib/lesson/expression/template';
import type { World } from '@/lib/lesson/expression/world';
import { fillHtml, type Fillable } from './fillable';

/** Works out the values of a text that has been set, in the world of one question or answer, and puts them in. */
export function fillIn(text: Fillable, world: World): string {
  const values = text.slots.map(({ source }): Filled => {
    const template = parseTemplate(source);
    const filled = template.ok ? fillSlots(template.value, world) : undefined;
    return (filled?.ok ? filled.value[0] : undefined) ?? { metric: '–', imperial: '–' };
  });
  return fillHtml(text, values);
}

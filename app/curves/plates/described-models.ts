import haldane from '@/content/models/haldane-1908.json';
import workman from '@/content/models/workman-1965.json';
import zhL16A from '@/content/models/zh-l16a.json';
import zhL16B from '@/content/models/zh-l16b.json';
import zhL16C from '@/content/models/zh-l16c.json';
import type { ModelFile } from '@/content/models/schema';
import { LIMIT_MODELS } from '@/lib/tissue/models/all';

const FILES = [haldane, workman, zhL16A, zhL16B, zhL16C] as readonly ModelFile[];

/** Each limit model with what is description of it, oldest first. */
export const DESCRIBED_MODELS = LIMIT_MODELS.map((model) => ({ model, description: descriptionOf(model.id) }));

function descriptionOf(wanted: string): ModelFile {
  const found = FILES.find(({ id }) => id === wanted);
  if (!found) throw new Error(`FILES in app/curves/description-models.ts lacks content/models/${wanted}.json`);
  return found;
}

import { HALDANE_1908 } from './haldane-1908';
import type { LimitModel } from './limit-model';
import { WORKMAN_1965 } from './workman-1965';
import { zhL16 } from './zh-l16';

/** Every limit model, oldest first. A new one is a data file in `content/models`, a small module beside this and a line here. */
export const LIMIT_MODELS: readonly LimitModel[] = [HALDANE_1908, WORKMAN_1965, zhL16('A'), zhL16('B'), zhL16('C')];

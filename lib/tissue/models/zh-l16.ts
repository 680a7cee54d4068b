import aboutA from '../../../content/models/zh-l16a.json';
import aboutB from '../../../content/models/zh-l16b.json';
import aboutC from '../../../content/models/zh-l16c.json';
import { compartments, type FirstCompartment, type Variant } from '../coefficients';
import type { LimitModel } from './limit-model';
import { linearModel } from './linear-model';

const ABOUT = { A: aboutA, B: aboutB, C: aboutC };

/** A variant of ZH-L16 on nitrogen, with its published limits a + p/b and no gradient factor. */
export function zhL16(variant: Variant, first: FirstCompartment = '1b'): LimitModel {
  const { nitrogenHalfTimeMin, nitrogenA, nitrogenB } = compartments(variant, first);
  const rows = Array.from(nitrogenHalfTimeMin, (halfTimeMin, i) => ({
    name: i === 0 ? first : String(i + 1),
    halfTimeMin,
    interceptBar: nitrogenA[i]!,
    slope: 1 / nitrogenB[i]!,
  }));
  return linearModel(ABOUT[variant], rows);
}

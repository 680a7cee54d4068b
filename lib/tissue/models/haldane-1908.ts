import about from '../../../content/models/haldane-1908.json';
import published from '../../../content/published/historic-models.json';
import { linearModel } from './linear-model';

const { halfTimesMin, nitrogenRatio } = published.haldane;

/** Five compartments and one ratio: nitrogen may stand at 1.58 times the ambient pressure. */
export const HALDANE_1908 = linearModel(
  about,
  halfTimesMin.map((halfTimeMin, i) => ({ name: String(i + 1), halfTimeMin, interceptBar: 0, slope: nitrogenRatio })),
);

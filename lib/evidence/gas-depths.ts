import published from '../../content/published/gas-depths.json';
import { gasDepthsSchema } from '../../content/published/schema';
import { gasName } from '../physics/gas';
import { compared, type Check } from './check';
import type { Engine } from './engine';

const group = 'gas-depths';
/** The sites the arithmetic is done for: 10 m to the bar under 1 bar, and 33 fsw to the atmosphere under 1 atm. */
const METRES = { surfaceBar: 1, barPerMetre: 0.1 };
const FEET = { surfaceBar: 1, barPerMetre: 1 / 33 };

/** Depths and mixtures that follow from Dalton's law, worked by hand, and the nitrox limits in feet. */
export function gasDepthChecks(engine: Engine): Check[] {
  const { source, tolerances, ...rows } = gasDepthsSchema.parse(published);
  const common = { group, source };
  const metres = { ...common, unit: 'm', tolerance: tolerances.metres.value, reason: tolerances.metres.reason };
  const share = { ...common, unit: '', tolerance: tolerances.fraction.value, reason: tolerances.fraction.reason };
  const nitrox = (o2: number) => ({ o2, he: 0 });
  return [
    ...rows.deepest.map(({ o2, po2Bar, depthM, obtained }) =>
      compared({
        ...metres,
        id: `${group}-deepest-${o2}-${po2Bar}`,
        title: `Deepest for ${gasName(nitrox(o2))} under ${po2Bar} bar of oxygen`,
        published: depthM,
        ours: engine.gasModM(nitrox(o2), po2Bar, METRES),
        obtained,
      }),
    ),
    ...rows.deepestFeet.map(({ o2, po2Atm, depthFsw, obtained }) =>
      compared({
        ...common,
        id: `${group}-deepest-feet-${o2}-${po2Atm}`,
        title: `Deepest for ${gasName(nitrox(o2))} under ${po2Atm} atm of oxygen, in feet of sea water`,
        published: depthFsw,
        ours: engine.gasModM(nitrox(o2), po2Atm, FEET),
        unit: 'fsw',
        tolerance: tolerances.feet.value,
        reason: tolerances.feet.reason,
        obtained,
      }),
    ),
    ...rows.shallowest.map(({ o2, po2Bar, depthM, obtained }) =>
      compared({
        ...metres,
        id: `${group}-shallowest-${o2}`,
        title: `Shallowest for ${gasName(nitrox(o2))} with ${po2Bar} bar of oxygen at least`,
        published: depthM,
        ours: engine.hypoxicAboveM(nitrox(o2), METRES, po2Bar),
        obtained,
      }),
    ),
    ...rows.equivalentAir.map(({ o2, depthM, equivalentM, obtained }) =>
      compared({
        ...metres,
        id: `${group}-air-${o2}-${depthM}`,
        title: `Equivalent air depth of ${gasName(nitrox(o2))} at ${depthM} m`,
        published: equivalentM,
        ours: engine.equivalentAirDepthM(nitrox(o2), depthM, METRES),
        obtained,
      }),
    ),
    ...rows.equivalentNarcotic.flatMap(({ o2, he, depthM, withOxygenM, nitrogenAloneM, obtained }) =>
      (
        [
          ['nitrogen and oxygen', withOxygenM],
          ['nitrogen', nitrogenAloneM],
        ] as const
      ).map(([narcotic, equivalentM]) =>
        compared({
          ...metres,
          id: `${group}-narcotic-${o2}-${he}-${narcotic.replaceAll(' ', '-')}`,
          title: `Equivalent narcotic depth of ${gasName({ o2, he })} at ${depthM} m, ${narcotic} counted`,
          published: equivalentM,
          ours: engine.equivalentNarcoticDepthM({ o2, he }, depthM, narcotic, METRES),
          obtained,
        }),
      ),
    ),
    ...rows.bestMix.flatMap(({ depthM, po2Bar, o2, asAirAtM, heWithOxygen, heNitrogenAlone, obtained }) => {
      const oxygen = compared({
        ...share,
        id: `${group}-best-o2-${depthM}`,
        title: `Oxygen of the best mixture for ${depthM} m under ${po2Bar} bar of oxygen`,
        published: o2,
        ours: engine.bestMix(depthM, { pO2LimitBar: po2Bar }, METRES).o2,
        obtained,
      });
      const helium = (
        [
          ['nitrogen and oxygen', heWithOxygen],
          ['nitrogen', heNitrogenAlone],
        ] as const
      ).flatMap(([narcotic, he]) =>
        he === undefined || asAirAtM === undefined
          ? []
          : [
              compared({
                ...share,
                id: `${group}-best-he-${depthM}-${narcotic.replaceAll(' ', '-')}`,
                title: `Helium of the best mixture for ${depthM} m, as narcotic as air at ${asAirAtM} m with ${narcotic} counted`,
                published: he,
                ours: engine.bestMix(depthM, { pO2LimitBar: po2Bar, narcosis: { asAirAtM, narcotic } }, METRES).he,
                obtained,
              }),
            ],
      );
      return [oxygen, ...helium];
    }),
  ];
}

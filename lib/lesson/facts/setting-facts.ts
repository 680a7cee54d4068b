import { breathedAt } from '../../ascent/breathed';
import { noStop, type NoStop } from '../../ascent/no-stop';
import { atmosphereBar } from '../../physics/atmosphere';
import { tissuesSettledOnAir } from '../../tissue/tissues';
import type { View } from '../questions/subject';
import { PERCENT, type SettingFact } from './fact';

function freshNoStop({ dive, timeline }: View, depthM: number): NoStop {
  const { compartments, surfaceBar, barPerMetre } = timeline;
  const tissues = tissuesSettledOnAir(surfaceBar, dive.settings.model.respiratoryQuotient);
  const breathed = breathedAt(timeline, dive.settings.gas, surfaceBar + depthM * barPerMetre);
  return noStop(
    { compartments, ...tissues, at: 0, surfaceBar, barPerMetre },
    breathed,
    dive.settings.gradientFactors.high,
  );
}

/** What follows from the settings, and from physics alone. */
export const SETTING_FACTS: readonly SettingFact[] = [
  {
    of: 'settings',
    name: 'altitudeM',
    dimension: 'depth',
    meaning: 'Altitude of the site.',
    noun: 'the altitude of the site',
    format: 'altitude',
    value: ({ dive }) => dive.settings.altitudeM,
  },
  {
    of: 'settings',
    name: 'surfaceBar',
    dimension: 'pressure',
    meaning: 'Air pressure at the surface of the site.',
    noun: 'the pressure at the surface',
    value: ({ timeline }) => timeline.surfaceBar,
  },
  {
    of: 'settings',
    name: 'gfLowPercent',
    dimension: 'percent',
    meaning: 'The low gradient factor.',
    noun: 'the low gradient factor',
    value: ({ dive }) => dive.settings.gradientFactors.low * PERCENT,
  },
  {
    of: 'settings',
    name: 'gfHighPercent',
    dimension: 'percent',
    meaning: 'The high gradient factor.',
    noun: 'the high gradient factor',
    value: ({ dive }) => dive.settings.gradientFactors.high * PERCENT,
  },
  {
    of: 'settings',
    name: 'halfTimeMin',
    dimension: 'time',
    parameters: ['compartment'],
    meaning: 'Half-time of a compartment for nitrogen.',
    noun: 'the half-time of compartment {1}',
    format: 'min 1',
    value: ({ timeline }, [compartment]) => timeline.compartments.nitrogenHalfTimeMin[compartment! - 1]!,
  },
  {
    of: 'settings',
    name: 'heliumHalfTimeMin',
    dimension: 'time',
    parameters: ['compartment'],
    meaning: 'Half-time of a compartment for helium.',
    noun: 'the helium half-time of compartment {1}',
    format: 'min 1',
    value: ({ timeline }, [compartment]) => timeline.compartments.heliumHalfTimeMin[compartment! - 1]!,
  },
  {
    of: 'settings',
    name: 'firstGasOxygenPercent',
    dimension: 'percent',
    meaning: 'Oxygen in the gas the dive begins with.',
    noun: 'the oxygen in the first gas',
    value: ({ dive }) => dive.settings.gas.o2 * PERCENT,
  },
  {
    of: 'settings',
    name: 'firstGasHeliumPercent',
    dimension: 'percent',
    meaning: 'Helium in the gas the dive begins with.',
    noun: 'the helium in the first gas',
    value: ({ dive }) => dive.settings.gas.he * PERCENT,
  },
  {
    of: 'settings',
    name: 'freshNoStopMin',
    dimension: 'time',
    parameters: ['depth'],
    meaning: 'No-stop time of a rested diver set down at a depth at once, on the gas the dive begins with.',
    noun: 'a rested diver’s no-stop time at {1}',
    format: 'min',
    measure: 'noStopMin',
    value: (view, [depthM]) => freshNoStop(view, depthM!).minutes,
  },
  {
    of: 'settings',
    name: 'freshNoStopLeader',
    dimension: 'compartment',
    parameters: ['depth'],
    meaning: 'The compartment that sets a rested diver’s no-stop time at a depth; 0 where none does.',
    noun: 'the compartment that sets a rested diver’s no-stop time at {1}',
    value: (view, [depthM]) => freshNoStop(view, depthM!).leader,
  },
  {
    of: 'settings',
    name: 'pressureAtBar',
    dimension: 'pressure',
    parameters: ['depth'],
    meaning: 'Absolute pressure at a depth, in this water at this site.',
    noun: 'the pressure at {1}',
    value: ({ timeline }, [depthM]) => timeline.surfaceBar + depthM! * timeline.barPerMetre,
  },
  {
    of: 'settings',
    name: 'atmosphereBar',
    dimension: 'pressure',
    parameters: ['altitude'],
    meaning: 'Air pressure at an altitude, in the standard atmosphere.',
    noun: 'the air pressure at {1}',
    value: (_, [altitudeM]) => atmosphereBar(altitudeM!),
  },
];

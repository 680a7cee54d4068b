import { expect, it } from 'vitest';
import { timePicture } from '@/app/pictures/axes/time-picture';
import { sceneOf } from '@/app/pictures/scene';
import { down, diveOf, stay, up } from '../rules/made-dives';

it('the time axis that pictures share follows the stretch on show and the width', () => {
  const scene = sceneOf(diveOf([down(20, 100), stay(1000), up(0, 200)]));
  const axis = (width: number, view?: { startS: number; endS: number }) => {
    const { x, columns, inner } = timePicture(scene, width, 200, { top: 0, bottom: 0 }, view);
    return { fromS: x.invert(0), toS: x.invert(inner.width), samples: [columns[0], columns.at(-1)] };
  };
  const whole = axis(600);
  expect(whole).toMatchObject({ fromS: 0, toS: 1300 });
  const part = axis(600, { startS: 300, endS: 600 });
  expect(part.fromS).toBeCloseTo(300, 9);
  expect(part.toS).toBeCloseTo(600, 9);
  expect(part.samples).not.toEqual(whole.samples);
  expect(axis(900).toS).toBeCloseTo(1300, 9);
  expect(axis(600)).toEqual(whole);
});

import { expect, it } from 'vitest';
import { timePicture } from '@/app/pictures/axes/time-picture';
import { timeScale, timeTicks } from '@/app/pictures/axes/time-scale';
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

it('minutes are marked as far as the axis goes while a dive is still going on, and to its end once it is done', () => {
  const { timeline } = sceneOf(diveOf([down(20, 100), stay(80)]));
  const marks = (view?: { startS: number; endS: number }) =>
    timeTicks(timeScale(timeline, 500, view), 500).map(({ text }) => text);
  expect(marks({ startS: 0, endS: 600 })).toEqual(['0 min', '2 min', '4 min', '6 min', '8 min', '10 min']);
  expect(marks()).toEqual(['0 min', '1 min', '2 min', '3 min']);
});

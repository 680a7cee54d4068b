import { describe, expect, it } from 'vitest';
import { createDeskStore } from '@/app/stage/desk-store';
import { momentAfter, momentBefore, momentsOf } from '@/app/stage/moments';
import { presentedPanels } from '@/app/desk/present/panels';
import { doingOfKey, PRESENTER_KEYS } from '@/app/desk/present/presenter-keys';
import { isTypedIn } from '@/app/parts/typed-in';
import { watchesOf } from '@/app/pictures/scene-watches';
import { scenarios } from '@/content/scenarios/scenarios';

function pressed(key: string, on: Element = document.body, more: KeyboardEventInit = {}) {
  if (on !== document.body) document.body.append(on);
  let doing: ReturnType<typeof doingOfKey>;
  const hear = (event: KeyboardEvent) => {
    doing = doingOfKey(event);
  };
  window.addEventListener('keydown', hear);
  on.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, ...more }));
  window.removeEventListener('keydown', hear);
  if (on !== document.body) on.remove();
  return doing;
}

function element(html: string): Element {
  const holder = document.createElement('div');
  holder.innerHTML = html;
  return holder.firstElementChild!;
}

describe('the keys of the presenter’s view', () => {
  it.each([
    ['PageDown', 'next'],
    ['ArrowRight', 'next'],
    ['PageUp', 'back'],
    ['b', 'cover'],
    ['B', 'cover'],
    ['.', 'cover'],
    [' ', 'play'],
    ['?', 'help'],
    ['Escape', 'leave'],
  ])('%s means %s', (key, doing) => {
    expect(pressed(key)).toBe(doing);
  });

  it('have no two meanings', () => {
    const keys = PRESENTER_KEYS.flatMap((one) => one.keys);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it.each([
    ['b', '<input type="text">'],
    ['b', '<textarea></textarea>'],
    [' ', '<button>Cover</button>'],
    [' ', '<input type="checkbox">'],
    ['ArrowRight', '<input type="range">'],
    ['ArrowDown', '<div role="slider" tabindex="0"></div>'],
    ['ArrowDown', '<select><option>1</option></select>'],
    ['Escape', '<dialog open></dialog>'],
  ])('leave %j to what has the focus: %s', (key, html) => {
    expect(pressed(key, element(html))).toBeUndefined();
  });

  it('leave the browser its own', () => {
    expect(pressed('b', document.body, { ctrlKey: true })).toBeUndefined();
  });
});

describe('boxes that are typed in', () => {
  it.each([
    ['<input type="text">', true],
    ['<input type="number">', true],
    ['<textarea></textarea>', true],
    ['<input type="range">', false],
    ['<input type="checkbox">', false],
    ['<button>Go</button>', false],
  ])('%s: %s', (html, typed) => {
    expect(isTypedIn(element(html))).toBe(typed);
  });
});

describe('moments to stop at', () => {
  const { scene } = createDeskStore({ script: scenarios[0].script, pictures: [], covered: [] }).getState();
  const moments = momentsOf(scene, watchesOf(scene)[0]!, 'metric');

  it('are where the dive turns, in order, and where the ceiling comes and goes', () => {
    const times = moments.map(({ timeS }) => timeS);
    expect(times).toEqual([...times].sort((one, other) => one - other));
    for (const leg of scene.timeline.legs) expect(times.some((timeS) => Math.abs(timeS - leg.endS) < 1)).toBe(true);
    const appears = moments.find(({ name }) => name.includes('A ceiling appears.'))!;
    const first = scene.figures.ceilingM.findIndex((depthM) => depthM > 0);
    expect(Math.abs(appears.timeS - scene.timeline.timeS[first]!)).toBeLessThan(1);
    expect(moments.some(({ name }) => name.includes('The ceiling is gone.'))).toBe(true);
  });

  it('lead through the dive and back, each once', () => {
    const there: number[] = [0];
    for (let next = momentAfter(moments, 0); next; next = momentAfter(moments, next.timeS)) there.push(next.timeS);
    expect(there).toEqual(moments.map(({ timeS }) => timeS));
    const back: number[] = [];
    for (let before = momentBefore(moments, Infinity); before; before = momentBefore(moments, before.timeS))
      back.push(before.timeS);
    expect(back.reverse()).toEqual(there);
  });
});

describe('what a class is shown', () => {
  it('is the desk’s pictures and the readings, until something else is chosen', () => {
    expect(presentedPanels({ pictures: ['chase'] })).toEqual(['chase', 'readings']);
    expect(presentedPanels({ pictures: ['chase'], presented: ['time'] })).toEqual(['time']);
  });
});

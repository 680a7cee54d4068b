import { act, cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, beforeAll, beforeEach, vi } from 'vitest';
import { useAtlas } from '@/app/curves/chosen/atlas-store';
import { heavyWork, type HeavyJob } from '@/app/curves/slow-work/heavy-work';
import { NO_HISTORY } from '@/app/keep/history';
import { usePreferences } from '@/app/parts/preferences';
import { curveSite, rested } from '@/lib/curves/curve-site';
import { defaultSettings } from '@/lib/dive/default-settings';
import { AIR } from '@/lib/physics/gas';

/** A worker that works in the page's thread: at once, or never where a test asks it to dawdle. */
export class WorkerHere {
  static dawdles = false;
  static ended = 0;
  onmessage: ((event: { data: unknown }) => void) | undefined;
  postMessage(job: HeavyJob) {
    if (WorkerHere.dawdles) return;
    const work = heavyWork(job);
    for (;;) {
      const step = work.next();
      this.onmessage?.({ data: step.done ? { result: step.value } : { progress: step.value } });
      if (step.done) return;
    }
  }
  terminate() {
    WorkerHere.ended += 1;
  }
}

/** Before each test of a file: the atlas as a first visitor finds it. */
export function atTheAtlas() {
  // Loaded once, so that no test waits for it.
  beforeAll(() => import('@/app/curves/chosen/atlas-address'));

  beforeEach(() => {
    WorkerHere.dawdles = false;
    WorkerHere.ended = 0;
    localStorage.clear();
    useAtlas.setState({ plate: 'no-stop', chosen: {}, history: NO_HISTORY });
    history.replaceState(null, '', '/curves/');
    vi.stubGlobal('Worker', WorkerHere);
  });
  afterEach(() => {
    // What is still to be asked of a worker goes before the worker.
    cleanup();
    vi.unstubAllGlobals();
    act(() => usePreferences.getState().setUnits('metric'));
  });
}

export const type = (label: string, text: string, at: HTMLElement = document.body) => {
  const box = within(at).getByLabelText(label);
  fireEvent.change(box, { target: { value: text } });
  fireEvent.blur(box);
};
export const slide = (label: string, place: number) =>
  fireEvent.change(screen.getByRole('slider', { name: label }), { target: { value: String(place) } });
export const openTable = (figure: string) => {
  const frame = screen.getByRole('figure', { name: figure });
  const details = frame.querySelector('details')!;
  details.open = true;
  fireEvent(details, new Event('toggle'));
  return within(frame).getByRole('table', { name: figure });
};
export const cells = (table: HTMLElement, row: string | RegExp) =>
  Array.from(within(table).getByRole('row', { name: row }).querySelectorAll('td'), (cell) => cell.textContent);

export const settings = defaultSettings();
export const atSea = { site: curveSite(settings), tissues: rested(settings), gas: AIR, gf: 0.85 };
export const whole = (minutes: number) => `${Math.floor(minutes)} min`;

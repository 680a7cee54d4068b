import { describe, expect, it } from 'vitest';
import { createDeskStore, cursorSample } from '@/app/stage/desk-store';
import { watchesOf } from '@/app/pictures/scene-watches';
import { scenarios } from '@/content/scenarios/scenarios';
import { parseScript } from '@/lib/dive/script';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { FRESH_RUN, runEndS, steered } from '@/lib/steer/run';

const open = () => createDeskStore({ script: scenarios[0].script, pictures: ['profile', 'chase'], covered: [] });
const SHORT = 'descend to 20 m at 18 m/min\nstay 10 min\nascend to surface at 9 m/min\n';

describe('a desk', () => {
  it.each(scenarios.map(({ id, script }) => [id, script]))('opens the ready dive %s', (_, script) => {
    expect(parseScript(script)).toMatchObject({ ok: true });
  });

  it.each(
    scenarios.flatMap(({ id, script, inFeet, stillS }) => [
      [id, 'metric', script, stillS] as const,
      [id, 'imperial', inFeet.script, stillS] as const,
    ]),
  )(
    'opens the ready dive %s, %s, at a moment that shows something, and plays it from the start',
    (_, __, script, stillS) => {
      const desk = createDeskStore({ script, pictures: [], covered: [] });
      desk.getState().showStill(stillS);
      expect(desk.getState().scene.figures.ceilingM[cursorSample(desk.getState())]).toBeGreaterThan(0);
      desk.getState().play();
      expect(desk.getState().cursorS).toBe(0);
      desk.getState().showStill(stillS);
      desk.getState().setCursor(stillS + 1);
      desk.getState().play();
      expect(desk.getState().cursorS).toBe(stillS + 1);
    },
  );

  it('keeps the last good dive on show while the script makes no sense', () => {
    const desk = open();
    const { scene } = desk.getState();
    desk.getState().change({ script: 'descend to somewhere' });
    expect(desk.getState().errors.length).toBeGreaterThan(0);
    expect(desk.getState().scene).toBe(scene);
    desk.getState().change({ script: SHORT });
    expect(desk.getState().errors).toEqual([]);
    expect(desk.getState().scene).not.toBe(scene);
  });

  it('takes back changes of one drag together, and others one by one', () => {
    const desk = open();
    const { script } = desk.getState();
    desk.getState().change({ script: `${SHORT}# 1\n` }, 'drag');
    desk.getState().change({ script: `${SHORT}# 2\n` }, 'drag');
    desk.getState().change({ covered: ['depth'] });
    desk.getState().undo();
    expect(desk.getState().covered).toEqual([]);
    desk.getState().undo();
    expect(desk.getState().script).toBe(script);
    desk.getState().redo();
    desk.getState().redo();
    expect(desk.getState()).toMatchObject({ script: `${SHORT}# 2\n`, covered: ['depth'] });
  });

  it('takes back the second change of a rule by itself, where the first was taken back before', () => {
    const desk = open();
    const more = (times: number) => ({
      rules: { ...DEFAULT_RULES, slowedWashout: { ...DEFAULT_RULES.slowedWashout, on: true, times } },
    });
    desk.getState().change(more(2), 'slowed washout');
    desk.getState().undo();
    desk.getState().change(more(3), 'slowed washout');
    expect(desk.getState().past).toHaveLength(1);
    desk.getState().settle();
    desk.getState().change(more(4), 'slowed washout');
    desk.getState().undo();
    expect(desk.getState().rules).toEqual(more(3).rules);
    desk.getState().undo();
    expect(desk.getState().rules).toBeUndefined();
  });

  it('keeps the time cursor within a dive that has become shorter', () => {
    const desk = open();
    desk.getState().setCursor(1500);
    desk.getState().change({ script: SHORT });
    const { scene, cursorS } = desk.getState();
    expect(cursorS).toBe(scene.timeline.timeS.at(-1));
    expect(cursorSample(desk.getState())).toBe(scene.timeline.length - 1);
  });

  it('leaves the scene on show untouched while others are worked out in retired memory', () => {
    const desk = open();
    for (let i = 0; i < 4; i += 1) {
      desk.getState().change({ script: SHORT.replace('20 m', `${20 + i} m`) });
      const { scene } = desk.getState();
      const fresh = createDeskStore({ script: desk.getState().script, pictures: [], covered: [] }).getState().scene;
      expect(Array.from(scene.timeline.nitrogenBar.slice(-16))).toEqual(
        Array.from(fresh.timeline.nitrogenBar.slice(-16)),
      );
      expect(scene.timeline.depthM[200]).toBe(fresh.timeline.depthM[200]);
    }
  });

  it('changes what units show, never the model, when a rule is set', () => {
    const desk = open();
    const before = desk.getState().scene;
    const tensions = Array.from(before.timeline.nitrogenBar);
    desk.getState().change({ rules: { ...DEFAULT_RULES, safetyStop: { ...DEFAULT_RULES.safetyStop, on: false } } });
    const after = desk.getState().scene;
    expect(Array.from(after.timeline.nitrogenBar)).toEqual(tensions);
    expect(watchesOf(after)[0]!.events.some((event) => event.rule === 'safetyStop')).toBe(false);
    expect(watchesOf(before)[0]!.events.some((event) => event.rule === 'safetyStop')).toBe(true);
  });

  it('shows a dive that is steered, and goes back to the script, and where it was looked at, when it is thrown away', () => {
    const desk = open();
    const { dive } = desk.getState().scene;
    desk.getState().setCursor(100);
    desk.getState().startRun();
    desk.getState().steer(steered(FRESH_RUN, 12, 60, 0.1));
    expect(desk.getState().scene.timeline.depthM.at(-1)).toBe(12);
    expect(desk.getState().cursorS).toBe(60);
    desk.getState().endRun();
    expect(desk.getState().scene.dive).toEqual(dive);
    expect(desk.getState()).toMatchObject({ base: undefined, run: undefined, cursorS: 100 });
  });

  it('steers on from an earlier moment, and takes up again what that cut off', () => {
    const desk = open();
    desk.getState().startRun();
    const down = steered(FRESH_RUN, 12, 60, 0.1);
    desk.getState().steer(steered(down, 0, 600, 0.1));
    desk.getState().cutRunHere();
    expect(runEndS(desk.getState().run!)).toBe(660);
    desk.getState().setCursor(200);
    desk.getState().cutRunHere();
    expect(runEndS(desk.getState().run!)).toBe(200);
    expect(desk.getState().scene.timeline.timeS.at(-1)).toBe(200);
    desk.getState().putBackRun();
    expect(runEndS(desk.getState().run!)).toBe(660);
    expect(desk.getState().cutOff).toBeUndefined();
  });

  it('loses nothing that was steered when script, rules or pictures change meanwhile, or are undone', () => {
    const desk = open();
    desk.getState().startRun();
    const run = steered(FRESH_RUN, 12, 60, 0.1);
    desk.getState().steer(run);
    const richer = `gas: 32%\n${SHORT}`;
    desk.getState().change({ script: richer });
    expect(desk.getState().run).toBe(run);
    expect(desk.getState().scene.timeline.gases[0]!.o2).toBeCloseTo(0.32);
    expect(desk.getState().scene.timeline.depthM.at(-1)).toBe(12);
    desk.getState().change({ rules: DEFAULT_RULES });
    desk.getState().change({ pictures: ['chase'] });
    desk.getState().undo();
    desk.getState().undo();
    desk.getState().undo();
    expect(desk.getState().run).toBe(run);
    expect(desk.getState().script).toBe(scenarios[0].script);
    expect(desk.getState().scene.timeline.gases[0]!.o2).toBeCloseTo(0.21);
  });

  it('keeps a run as a change that can be undone, and opens one that was left', () => {
    const desk = open();
    desk.getState().startRun();
    desk.getState().steer(steered(FRESH_RUN, 12, 60, 0.1));
    desk.getState().endRun('descend to 12 m at 12 m/min\nascend to surface at 9 m/min\n');
    expect(desk.getState()).toMatchObject({ run: undefined, base: undefined, view: undefined, cursorS: 60 });
    expect(desk.getState().scene.timeline.timeS.at(-1)).toBe(140);
    desk.getState().undo();
    expect(desk.getState().script).toBe(scenarios[0].script);
    const run = steered(FRESH_RUN, 9, 30, 0.1);
    desk
      .getState()
      .open({ script: scenarios[0].script, pictures: ['profile'], covered: [], cursorS: 0, view: undefined, run });
    expect(desk.getState().run).toBe(run);
    expect(desk.getState().scene.timeline.depthM.at(-1)).toBe(4.5);
    desk
      .getState()
      .open({ script: scenarios[0].script, pictures: ['profile'], covered: [], cursorS: 0, view: undefined });
    expect(desk.getState().run).toBeUndefined();
    expect(desk.getState().scene.timeline.timeS.at(-1)).toBeGreaterThan(600);
  });
});

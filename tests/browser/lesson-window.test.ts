// @module-tag in-turn
import { expect, it } from 'vitest';
import { lessonPath } from '@/app/parts/lesson-paths';
import { arrive, browserVisits } from './visit';

const visit = browserVisits();

/** A choice, a curve, goals, a run with most readings and a working, each with more to say than most. */
const ASKING = [
  ['18-reading-a-record', 'which-guess'],
  ['04-no-stop-time', 'draw-the-fall'],
  ['19-when-instruments-disagree', 'agree'],
  ['18-reading-a-record', 'check'],
  ['08-too-fast', 'come-up-well'],
  ['21-beyond-no-stop', 'survive-the-loss'],
  ['21-beyond-no-stop', 'watch-the-stages'],
  ['02-half-times', 'open-the-tension'],
] as const;

it.each([
  [390, 844],
  [1024, 768],
])(
  'a step of a lesson has question, picture, number and controls together in a window of %i × %i',
  async (width, height) => {
    const { page } = await visit({ viewport: { width, height } });
    await arrive(page, lessonPath('04-no-stop-time', 'watch-it'));
    await page.getByRole('button', { name: 'Next moment' }).click();
    const together = {
      question: page.getByText('Run the dive and keep an eye on two things'),
      told: page.getByText(/and they are falling fast/),
      number: page.locator('[data-reading="no-stop"]'),
      picture: page.locator('[data-picture="profile"]'),
      controls: page.getByRole('group', { name: 'Time' }),
      onward: page.getByRole('button', { name: 'Go on', exact: true }),
    };
    for (const [part, locator] of Object.entries(together)) {
      const box = (await locator.first().boundingBox())!;
      expect(box.y, part).toBeGreaterThanOrEqual(0);
      expect(box.y + box.height, part).toBeLessThanOrEqual(height);
      expect(box.x + box.width, part).toBeLessThanOrEqual(width);
    }
    // Whatever is asked, it is asked and answered in one window, and what is said before that is not cut.
    for (const [slug, step] of ASKING) {
      await arrive(page, lessonPath(slug, step));
      await page
        .locator('main form, main [aria-label="Goal"], main [aria-label="Time"], main [aria-label^="Tension"]')
        .first()
        .waitFor();
      const [asked] = await page.locator('[data-part="step"]').evaluateAll((bodies) =>
        bodies.map((body) => {
          const cut = [...body.querySelectorAll('section > div')].filter(
            (part) =>
              part.clientHeight > 0 && part.scrollHeight > part.clientHeight + 8 && !part.querySelector('figure'),
          );
          const form = body.querySelector('form');
          return {
            below: form ? form.getBoundingClientRect().bottom - body.getBoundingClientRect().bottom : 0,
            around: window.innerHeight - body.clientHeight,
            // Of a working, what decides and what comes of it.
            answer: body.querySelector('[aria-label^="Tension"] [role="status"]')?.getBoundingClientRect().bottom ?? 0,
            cut: cut.map((part) => part.textContent!.slice(0, 40)),
          };
        }),
      );
      expect(asked!.below, `${step}: what is asked, below the window`).toBeLessThanOrEqual(0);
      expect(asked!.around, `${step}: lines around the step`).toBeLessThanOrEqual(120);
      expect(asked!.answer, `${step}: the answer of a working`).toBeLessThanOrEqual(height);
      expect(asked!.cut, `${step}: parts that are cut`).toEqual([]);
    }
    const { page: other } = await visit({ viewport: { width, height } });
    await arrive(other, lessonPath('04-no-stop-time', 'on-arrival'));
    await other.getByLabel('Your answer').fill('20');
    await other.getByText('A guess').click();
    await other.getByRole('button', { name: 'Show what the model says' }).click();
    const verdict = other.getByText('The model says something else.');
    const { y, height: tall } = (await verdict.boundingBox())!;
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y + tall).toBeLessThanOrEqual(height);
    expect(await verdict.evaluate((element) => element === document.activeElement)).toBe(true);
  },
);

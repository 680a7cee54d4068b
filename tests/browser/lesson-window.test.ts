// @module-tag in-turn
import { expect, it } from 'vitest';
import { lessonPath } from '@/app/parts/lesson-paths';
import { arrive, browserVisits } from './visit';

const visit = browserVisits();

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

import type { Page } from 'playwright-core';
import { afterEach, expect, it } from 'vitest';
import { siteFolder } from '@/app/commands/site/build-site';
import { classHandler } from '@/app/commands/class/class-handler';
import { serveSite, type RunningSite } from '@/app/commands/serve/serve-site';
import { routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { LONG } from '@/tests/laws/law';
import { deskWithReef } from './kept-desk';
import { browserVisits, sidewaysPx } from './visit';

/*
 * A room full of phones in real browsers: three people with ten windows each, every window at a loopback address of its own
 * (127.0.0.0/8, RFC 1122), so that each keeps what it has by itself as a phone does.
 */

const visit = browserVisits();
let site: RunningSite | undefined;
afterEach(() => site?.close());

const serve = (port = 0) => serveSite(siteFolder, port, { host: '0.0.0.0', handlers: [classHandler()] });
const EACH = 10;
const WAIT = { timeout: 60_000 };

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** Opens an address; a page that holds a line is never at rest, so only what answers to a person is waited for. */
async function come(page: Page, address: string): Promise<void> {
  await page.goto(address, { waitUntil: 'commit' });
  await page.locator('html[data-ready]').waitFor({ ...WAIT, state: 'attached' });
}

/** Gives an answer to whatever is asked: an option, a number, or a curve typed at its moments. */
async function answerAs(page: Page, index: number): Promise<void> {
  const form = page.locator('main');
  await form.locator('input').first().waitFor(WAIT);
  const radios = form.getByRole('radio');
  const count = await radios.count();
  if (count > 0) return radios.nth(index % count).check();
  const boxes = form.locator('fieldset input');
  const moments = await boxes.count();
  if (moments === 0) return form.getByRole('textbox', { name: 'Your answer' }).fill(String(5 + (index % 10)));
  for (let box = 0; box < moments; box += 1) await boxes.nth(box).fill(String(Math.max(0, 20 + index - 6 * box)));
}

it.runIf(LONG)(
  'thirty phones go through a covered reading of the desk and a lesson, whatever is cut, killed or reloaded',
  async () => {
    site = await serve();
    const port = Number(new URL(site.address).port);
    const teacher = await visit({ baseURL: site.address });
    const wall = teacher.page;
    await deskWithReef(wall);
    await press(wall, 'Cover No-stop time');
    await wall.getByRole('slider', { name: 'Time cursor' }).fill('600');
    await wall.getByRole('group', { name: 'This desk' }).getByRole('link', { name: 'Teach a class' }).click();
    await press(wall, 'Open a class');
    await wall.getByRole('combobox', { name: 'Lesson' }).selectOption('04-no-stop-time');
    const code = (await wall.locator('[class*="code"] b').textContent())!.replace(/\s/g, '');
    const people = await Promise.all([0, 1, 2].map(() => visit({ viewport: { width: 390, height: 844 } })));
    const phones: Page[] = [];
    for (const [who, { page }] of people.entries())
      for (let i = 0; i < EACH; i += 1) {
        const phone = i === 0 ? page : await page.context().newPage();
        await come(phone, `http://127.0.0.${who * EACH + i + 1}:${port}${routes.class.path}#${code}`);
        await phone.getByRole('button', { name: 'Join the class' }).click();
        await phone.getByText('You are in the class').waitFor(WAIT);
        phones.push(phone);
      }
    await wall.getByText('30 phones here').waitFor(WAIT);
    const away = people[2]!.page.context();

    await press(wall, 'Ask: How long may you still stay here before you need a stop?');
    for (const [index, phone] of phones.entries()) await answerAs(phone, index);
    await wall.getByText('30 of 30 have answered').waitFor(WAIT);
    await press(wall, 'Close it');
    await press(wall, 'Show how the answers lie');
    expect(await wall.locator('figure[class*="dots"] circle').count()).toBe(30);
    await press(wall, 'Run the model over it');
    for (const phone of phones) {
      await phone.getByText('The model says').first().waitFor(WAIT);
      expect(await sidewaysPx(phone)).toBeLessThanOrEqual(0);
      expect(await phone.getByText(cautions.general).count()).toBeGreaterThan(0);
    }
    await press(wall, 'Next question');

    await wall.getByRole('button', { name: 'Ask: How long at thirty metres?' }).waitFor(WAIT);
    const asks = await wall
      .getByRole('button', { name: /^Ask: / })
      .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')!));
    const lesson = asks.slice(0, await wall.locator('section[aria-labelledby="ask"] li').count());
    expect(lesson.length).toBeGreaterThanOrEqual(4);
    for (const [turn, ask] of lesson.entries()) {
      await press(wall, ask);
      await Promise.all(phones.map((phone) => phone.getByText('Give your answer.').waitFor(WAIT)));
      // The first is answered by a third of the phones without a network, while the server is killed and the teacher reloads.
      if (turn === 0) await away.setOffline(true);
      for (const [index, phone] of phones.entries()) await answerAs(phone, index);
      if (turn === 0) {
        await wall
          .getByText('20 of 30 have answered')
          .or(wall.getByText('20 of 20 have answered'))
          .first()
          .waitFor(WAIT);
        await site.close();
        await phones[0]!.getByText('The line to the class is cut.').waitFor(WAIT);
        site = await serve(port);
        await wall.reload();
        await away.setOffline(false);
      }
      await wall.getByText('30 of 30 have answered').waitFor(WAIT);
      await press(wall, 'Close it');
      await press(wall, 'Show how the answers lie');
      await press(wall, 'Run the model over it');
      for (const phone of phones)
        await phone
          .getByText(/That is (what the model says|the answer)|The model says something else|The answer is another/)
          .first()
          .waitFor(WAIT);
      await press(wall, 'Next question');
    }
    const complaints = [teacher, ...people].flatMap((one) =>
      // What a browser says of a server that is stopped, or of a network that is away.
      one.complaints.filter((text) => !/ERR_|404|Failed to load/.test(text)),
    );
    expect(complaints).toEqual([]);
  },
);

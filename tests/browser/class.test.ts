import type { Page } from 'playwright-core';
import { afterEach, expect, it } from 'vitest';
import { siteFolder } from '@/app/commands/site/build-site';
import { classHandler } from '@/app/commands/class/class-handler';
import { serveSite, type RunningSite } from '@/app/commands/serve/serve-site';
import { routes } from '@/app/parts/routes';
import { cautions } from '@/content/cautions';
import { isAsRead } from './as-read';
import { plateFaults } from './plate-faults';
import { accessibilityFaults, arrive, browserVisits, sidewaysPx } from './visit';

/* A teacher and a few phones in real browsers, on a server of their own that can be stopped and started. */

const visit = browserVisits();
let site: RunningSite;
afterEach(() => site.close());

const serve = (port = 0) => serveSite(siteFolder, port, { handlers: [classHandler()] });
const phoneWindow = { viewport: { width: 320, height: 700 } };

async function joined(page: Page, address: string, code: string) {
  await arrive(page, `${address}${routes.class.path}#${code}`);
  await page.getByRole('button', { name: 'Join the class' }).click();
  await page.getByText('You are in the class').waitFor();
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

it('a class predicts and then sees, through a stopped server, a reload and phones without a network', async () => {
  site = await serve();
  const { address } = site;
  const port = Number(new URL(address).port);
  const [teacher, ...phones] = await Promise.all([visit(), visit(phoneWindow), visit(phoneWindow), visit(phoneWindow)]);
  const wall = teacher.page;
  await arrive(wall, `${address}${routes.teach.path}#lesson=04-no-stop-time`);
  await press(wall, 'Open a class');
  const code = (await wall.locator('[class*="code"] b').textContent())!.replace(/\s/g, '');
  expect(code).toMatch(/^[2-9A-Z]{6}$/);
  await expect.poll(() => wall.evaluate(() => document.activeElement?.id)).toBe('class-code');
  for (const { page } of phones) await joined(page, address, code);
  await wall.getByText('3 phones here').waitFor();
  expect(await accessibilityFaults(wall)).toEqual([]);

  // A choice of a lesson, answered by a finger and changed.
  await press(wall, 'Ask: Shallower, who leads?');
  const [one, two, three] = phones.map(({ page }) => page) as [Page, Page, Page];
  await one.locator('main').getByRole('radio').nth(0).check();
  await two.locator('main').getByRole('radio').nth(2).check();
  await three.locator('main').getByRole('radio').nth(0).check();
  await three.locator('main').getByRole('radio').nth(1).check();
  await one.getByText('Your answer is in.').waitFor();
  await wall.getByText('3 of 3 have answered').waitFor();
  expect(await sidewaysPx(one)).toBeLessThanOrEqual(0);
  expect(await accessibilityFaults(one)).toEqual([]);
  await one.getByText(cautions.general).first().waitFor();
  await isAsRead(one, 'class-phone-asked');
  expect(await one.getByText('that is the answer').count()).toBe(0);

  // The server is killed and started again; the teacher reloads; a phone was without a network and answered meanwhile.
  await three.context().setOffline(true);
  await three.locator('main').getByRole('radio').nth(2).check();
  await site.close();
  await two.getByText('The line to the class is cut.').waitFor();
  site = await serve(port);
  await wall.getByText('3 of 3 have answered').waitFor();
  await wall.reload();
  await three.context().setOffline(false);
  await wall.getByText('3 of 3 have answered').waitFor();
  await wall.getByText('3 phones here').waitFor({ timeout: 20_000 });
  await three.getByText('Your answer is in.').waitFor();

  // The spread on the teacher's word, and the engine's answer over it.
  await press(wall, 'Close it');
  await one.getByText('The question is closed.').waitFor();
  await press(wall, 'Show how the answers lie');
  await one.getByText('What the class said').waitFor();
  expect(await wall.locator('ol[class*="bars"] output').allTextContents()).toEqual([
    '1 answer',
    '0 answers',
    '2 answers',
  ]);
  await press(wall, 'Discuss and ask again');
  await two.getByText('You have talked it over.').waitFor();
  await two.locator('main').getByRole('radio').nth(1).check();
  await wall.getByText('1 of 3 have answered, the second time').waitFor();
  await press(wall, 'Close it');
  // One answer alone would be told from the rest.
  await wall.getByText('3 or more answers hide whose is whose; this one is easily told').waitFor();
  await press(wall, 'Show the answers all the same');
  await press(wall, 'Run the model over it');
  await two.getByText('That is the answer.').waitFor();
  // The lesson's reply is fetched for it.
  await two.getByText('So the leader is a race between').waitFor();
  await isAsRead(two, 'class-phone-told');
  await wall.getByText('that is the answer').waitFor();
  expect(await wall.locator('ol[class*="bars"] output').allTextContents()).toEqual([
    '1 answer',
    '0 answers',
    '0 answers',
    '1 answer',
    '2 answers',
    '0 answers',
  ]);
  await press(wall, 'Next question');

  // A covered reading of the dive, and the dive followed on a phone.
  await press(wall, 'Ask: How long may you still stay here before you need a stop?');
  await one.getByRole('textbox', { name: 'Your answer' }).fill('200');
  await two.getByRole('textbox', { name: 'Your answer' }).fill('210');
  await three.getByRole('textbox', { name: 'Your answer' }).fill('0.1');
  await wall.getByText('3 of 3 have answered').waitFor();
  await press(wall, 'Close it');
  await press(wall, 'Show how the answers lie');
  await press(wall, 'Run the model over it');
  await wall.getByText(/2 × 200 min to 210 min/).waitFor();
  for (const page of [wall, one])
    await expect.poll(() => plateFaults(page), { message: 'words of the answers drawn' }).toEqual([]);
  await wall.getByText(/would be past its limit at the surface, and the way up would need a stop/).waitFor();
  await two.getByText(/would be past its limit at the surface/).waitFor();
  await one
    .getByText(/The model says/)
    .first()
    .waitFor();
  await press(wall, 'Next question');
  await press(wall, 'Let phones follow it');
  await one.getByText('You see what is on the wall').waitFor();
  for (const page of [wall, one])
    await expect.poll(() => plateFaults(page), { message: 'words of pictures' }).toEqual([]);
  await press(wall, 'Let them try it themselves');
  await one.getByText('Your teacher calls you back.').waitFor();
  await press(wall, 'Call them back');
  await one.getByText('You see what is on the wall').waitFor();

  await press(wall, 'End the class');
  await press(wall, 'End it for everyone');
  await two.getByText('The class is over.').waitFor();
  await wall.getByText('Results so far (2)').waitFor();
  const serious = [teacher, ...phones].flatMap(({ complaints }) =>
    // What a browser says of a server that is stopped, or of a network that is away.
    complaints.filter((one) => !/ERR_|404|Failed to load/.test(one)),
  );
  expect(serious).toEqual([]);
});

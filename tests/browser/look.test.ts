import { it } from 'vitest';
import { siteFolder } from '@/app/commands/build-site';
import { classHandler } from '@/app/commands/class/class-handler';
import { serveSite } from '@/app/commands/serve-site';
import { routes } from '@/app/parts/routes';
import { accessibilityFaults, arrive, browserVisits, faultsInEitherTheme, sidewaysPx } from './visit';
const visit = browserVisits();
const press = (page: any, name: string) => page.getByRole('button', { name, exact: true }).click();
it('look', async () => {
  const site = await serveSite(siteFolder, 0, { handlers: [classHandler()] });
  const t = await visit({ preferences: { theme: process.env['THEME'] ?? 'light' } });
  const wall = t.page;
  const d = '/tmp/halftime/class/';
  const log = (x: unknown) => console.log(JSON.stringify(x));
  const shot = async (page: any, name: string, full = true) => page.screenshot({ path: `${d}${name}.png`, fullPage: full });
  try {
    await arrive(wall, `${site.address}${routes.teach.path}#lesson=04-no-stop-time`);
    await press(wall, 'Open a class');
    const code = (await wall.locator('[class*="code"] b').textContent())!.replace(/\s/g, '');
    const sizes = [{ width: 390, height: 844 }, { width: 320, height: 640 }, { width: 390, height: 844 }, { width: 390, height: 844 }];
    const phones = [];
    for (const viewport of sizes) {
      const { page } = await visit({ viewport, preferences: { theme: process.env['THEME'] ?? 'light', units: phones.length === 1 ? 'imperial' : 'metric' } });
      await arrive(page, `${site.address}${routes.class.path}#${code}`);
      if (phones.length === 0) { await shot(page, 'p-join'); log(['join', await faultsInEitherTheme(page)]); }
      await page.getByRole('button', { name: 'Join the class' }).click();
      await page.getByText('You are in the class').waitFor();
      phones.push(page);
    }
    await shot(wall, 't-open'); log(['open', await faultsInEitherTheme(wall)]);
    await wall.getByText('Other readings').click();
    await press(wall, 'Ask: What is the pressure of oxygen in what is breathed now?');
    for (const [i, page] of phones.entries()) await page.getByRole('textbox', { name: 'Your answer' }).fill(['0.4', '5', '1.4', '0.5'][i]!);
    await wall.getByText('4 of 4 have answered').waitFor();
    await shot(phones[1], 'p-number'); log(['pn', await sidewaysPx(phones[1]!), await faultsInEitherTheme(phones[1]!)]);
    await shot(wall, 't-asking');
    await press(wall, 'Close it'); await press(wall, 'Show how the answers lie'); await press(wall, 'Run the model over it');
    await wall.waitForTimeout(2500);
    await shot(wall, 't-truth'); log(['truth', await faultsInEitherTheme(wall)]);
    await shot(phones[1], 'p-truth'); log(['pt', await sidewaysPx(phones[1]!), await faultsInEitherTheme(phones[1]!)]);
    await wall.setViewportSize({ width: 1024, height: 768 }); await shot(wall, 't-truth-1024'); log(['1024', await sidewaysPx(wall)]);
    await wall.setViewportSize({ width: 1440, height: 900 });
    await press(wall, 'Next question');
    await press(wall, 'Ask: Draw how it falls');
    for (const [i, page] of phones.entries()) {
      const boxes = page.locator('main fieldset input'); await boxes.first().waitFor();
      const n = await boxes.count();
      for (let b = 0; b < n; b += 1) await boxes.nth(b).fill(String(Math.max(0, 40 - 10 * b - 3 * i)));
    }
    await wall.getByText('4 of 4 have answered').waitFor();
    await shot(phones[0], 'p-draw'); log(['pd', await sidewaysPx(phones[1]!)]);
    await press(wall, 'Close it'); await press(wall, 'Show how the answers lie'); await press(wall, 'Run the model over it');
    await wall.waitForTimeout(3500);
    await shot(wall, 't-curves');
    await press(wall, 'Next question');
    await wall.getByText('Results so far (2)').click();
    await wall.waitForTimeout(500);
    await shot(wall, 't-results'); log(['results', await faultsInEitherTheme(wall), await sidewaysPx(wall)]);
    await press(wall, 'For those who can’t be there');
    await wall.getByRole('textbox', { name: 'Where they open this site' }).waitFor();
    await shot(wall, 't-home', false); log(['home', await accessibilityFaults(wall)]);
    const link = await wall.getByRole('textbox', { name: 'Link' }).inputValue();
    log(['link', link.length]);
    const home = await visit({ viewport: { width: 390, height: 844 } });
    await arrive(home.page, link);
    await home.page.getByRole('button', { name: 'Take the lesson' }).click();
    await home.page.locator('[data-kind]').waitFor();
    await shot(home.page, 'h-first', false); log(['h', await sidewaysPx(home.page)]);
    log([t.complaints, home.complaints]);
  } catch (e) { await shot(wall, 't-fail'); throw e; } finally { await site.close(); }
}, 500000);

// @module-tag in-turn
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openTools } from './kept-desk';
import { faultsInEitherTheme, arrive, browserVisits } from './visit';

const visit = browserVisits();

async function openDesk(page: Page) {
  await arrive(page, '/desk/');
  await page.getByRole('slider', { name: /^Point 1$/ }).waitFor();
}

/** The script as it stands: the desk has one text box of that name, whichever editor draws it. */
async function scriptOf(page: Page): Promise<string> {
  const box = page.getByRole('textbox', { name: 'Dive script' });
  return box.evaluate((element) =>
    element instanceof HTMLTextAreaElement ? element.value : (element as HTMLElement).innerText,
  );
}

async function writeScript(page: Page, script: string) {
  await page.getByRole('textbox', { name: 'Dive script' }).fill(script);
}

const reading = (page: Page, label: string) => page.getByRole('group', { name: label, exact: true });

describe('the desk', () => {
  it(
    'turns a typed script into a dive with a ceiling, sixteen tissues and readings',
    { tags: 'every-run' },
    async () => {
      const { page, complaints } = await visit({ viewport: { width: 1440, height: 900 } });
      await openDesk(page);
      await writeScript(page, 'gas: air\ndescend to 30 m at 18 m/min\nstay 25 min\nascend to surface at 9 m/min\n');
      await page.getByRole('slider', { name: 'Time cursor' }).fill(String(26 * 60));
      expect(await reading(page, 'No-stop time').innerText()).toContain('0');
      expect(await reading(page, 'Ceiling').innerText()).toMatch(/\d\.\d\s*m/);
      await openTools(page, 'The chase');
      await page
        .getByRole('figure', { name: 'The chase' })
        .getByText(/^Table of /)
        .click();
      const rows = page.getByRole('figure', { name: 'The chase' }).getByRole('row');
      await rows.first().waitFor();
      expect(await rows.count()).toBe(17);
      expect(complaints).toEqual([]);
    },
  );

  it(
    'says what is wrong with a script, where and how to mend it, and keeps the last good dive',
    { tags: 'every-run' },
    async () => {
      const { page } = await visit();
      await openDesk(page);
      await writeScript(page, 'gas: air\ndescend to 30\nascend to surface at 9 m/min\n');
      await page.getByText('The pictures show the last dive that made sense.').waitFor();
      expect(await page.getByText(/Line 2\./).innerText()).toContain('Line 2.');
      expect(await page.getByRole('slider', { name: /^Point 1$/ }).count()).toBe(1);
    },
  );

  it('follows a dragged point with the script, its remarks kept, and takes it back in one step', async () => {
    const { page, complaints } = await visit({ viewport: { width: 1440, height: 900 } });
    await openDesk(page);
    const before = await scriptOf(page);
    const point = await page.getByRole('slider', { name: /^Point 1$/ }).boundingBox();
    const [x, y] = [point!.x + point!.width / 2, point!.y + point!.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let step = 1; step <= 12; step += 1) await page.mouse.move(x, y - step * 4);
    await page.mouse.up();
    const dragged = await scriptOf(page);
    expect(dragged).not.toBe(before);
    expect(dragged).toMatch(/descend to 2\d m at 18 m\/min/);
    expect(dragged).toContain('# the no-stop time runs out on the way');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await scriptOf(page)).toBe(before);
    expect(complaints).toEqual([]);
  });

  it('is edited by keys alone: a point moved, a value typed, a point added and taken away', async () => {
    const { page } = await visit({ viewport: { width: 1440, height: 900 } });
    await openDesk(page);
    await page.getByRole('slider', { name: /^Point 1$/ }).focus();
    await page.keyboard.press('ArrowDown');
    expect(await scriptOf(page)).toContain('descend to 31 m at 18 m/min');
    await page.getByRole('slider', { name: /^Point 2$/ }).focus();
    await page.keyboard.press('ArrowRight');
    expect(await scriptOf(page)).toContain('stay 18 min');
    await page.getByRole('textbox', { name: 'Depth' }).fill('100 ft');
    await page.keyboard.press('Enter');
    expect(await scriptOf(page)).toMatch(/descend to 30\.5 m at 18 m\/min/);
    const count = await page.getByRole('slider', { name: /^Point \d/ }).count();
    await page.getByRole('button', { name: 'Add a point' }).click();
    expect(await page.getByRole('slider', { name: /^Point \d/ }).count()).toBeGreaterThan(count);
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: 'Undo' }).focus();
    await page.keyboard.press('Enter');
    expect(await page.getByRole('slider', { name: /^Point \d/ }).count()).toBeLessThanOrEqual(count);
  });

  it(
    'is steered by holding a key: the unit complains of the speed, and the run becomes a script with a name',
    { tags: 'every-run' },
    async () => {
      const { page, complaints } = await visit({ viewport: { width: 1440, height: 900 } });
      await openDesk(page);
      await page.getByRole('button', { name: 'Steer by hand' }).click();
      const lever = page.getByRole('slider', { name: /^Lever/ });
      await lever.waitFor();
      // The hand is on the lever at once.
      expect(await lever.evaluate((element) => element === document.activeElement)).toBe(true);
      await page.getByRole('combobox', { name: 'Speed of time' }).selectOption('20');
      await lever.focus();
      const depth = (is: (depthM: number) => boolean) =>
        expect
          .poll(
            async () => {
              const text = await page.locator('[data-reading="depth"]').textContent();
              return is(Number(/\d+\.\d/.exec(text ?? '')?.[0]));
            },
            { timeout: 30_000 },
          )
          .toBe(true);
      await page.keyboard.down('ArrowDown');
      await depth((depthM) => depthM > 20);
      await page.keyboard.up('ArrowDown');
      await page.keyboard.down('ArrowUp');
      await page
        .locator('[data-part="insist"]')
        .getByText(/slow down\./i)
        .waitFor();
      await depth((depthM) => depthM < 3);
      await page.keyboard.up('ArrowUp');
      await page.getByRole('button', { name: 'Keep', exact: true }).click();
      const dialog = page.getByRole('dialog', { name: 'Keep this dive' });
      expect(await dialog.innerText()).toMatch(/as \d+ steps?\. No depth is more than [\d.]+ m from what you steered/);
      await dialog.getByLabel('Its name').fill('Too fast a way up');
      await page.keyboard.press('Enter');
      await dialog.waitFor({ state: 'detached' });
      const script = await scriptOf(page);
      expect(script).toMatch(/^# Too fast a way up\n/);
      expect(script).not.toContain('Six minutes too long');
      expect(script).toMatch(/# steered by hand\ndescend to \d+/);
      await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Play');
      await page.getByRole('button', { name: 'Choose pictures' }).or(page.getByText('Choose pictures')).first().click();
      await page.getByRole('checkbox', { name: 'What the unit tells' }).check();
      expect(await page.getByRole('figure', { name: 'What the unit tells' }).innerText()).toContain('slow down');
      expect(complaints).toEqual([]);
    },
  );

  it('shows units that are set wrong beside one that is right, and says in words what differs', async () => {
    const { page } = await visit({ viewport: { width: 1440, height: 900 } });
    await openDesk(page);
    await page.getByRole('button', { name: 'Choose pictures' }).or(page.getByText('Choose pictures')).first().click();
    await page.getByRole('checkbox', { name: 'Units side by side' }).check();
    const figure = page.getByRole('figure', { name: 'Units side by side' });
    await figure.getByLabel('A unit that is wrong').selectOption({ label: 'Set to 32% while air is breathed' });
    await figure.getByRole('button', { name: 'Add it, the unit that is wrong' }).click();
    expect(await scriptOf(page)).toContain('setup: Nitrox unit, gas 32%');
    expect(await figure.innerText()).toMatch(/more no-stop time at 30 m than is so/);
    await figure.getByRole('button', { name: 'Remove Nitrox unit' }).click();
    expect(await scriptOf(page)).not.toContain('Nitrox unit');
  });

  it('has no fault that axe finds in either theme with every picture on show', { timeout: 180_000 }, async () => {
    const { page } = await visit({ viewport: { width: 1440, height: 900 } });
    await openDesk(page);
    await page.getByText('Choose pictures').click();
    const pictures = page.getByRole('list', { name: 'Pictures' });
    const titles = await pictures
      .getByRole('checkbox', { checked: false })
      .evaluateAll((boxes) => boxes.map((box) => box.parentElement!.textContent!.trim()));
    for (const title of titles) await pictures.getByRole('checkbox', { name: title, exact: true }).check();
    expect(await pictures.getByRole('checkbox', { checked: false }).count()).toBe(0);
    expect(await faultsInEitherTheme(page)).toEqual([]);
  });
});

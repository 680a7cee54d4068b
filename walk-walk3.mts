import { kit, settle, shot, DIR } from './kit-plates.mts';
import { plateFaults } from './tests/browser/plate-faults';
import { everyPage } from './tests/browser/every-page';
import { lessonSlugs } from './app/lessons/load-lessons';
const { visit, end } = await kit();
const part = async (name: string, f: () => Promise<unknown>) => { try { await f(); } catch (e) { console.log('FAIL', name, String(e).slice(0, 400)); } };
const report = async (page: any, name: string) => { for (const f of await plateFaults(page)) console.log(name, '|', f); const s = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth); if (s > 0) console.log(name, '| sideways', s); };
// imperial everywhere
await part('imperial', async () => {
  for (const [w, h] of [[1440, 900], [390, 844]] as const) {
    const page = await visit(w, h);
    await page.goto('/gases/'); await settle(page, 300);
    await page.getByRole('radio', { name: 'Imperial' }).check({ force: true });
    for (const { name, path } of everyPage) {
      await page.goto(path); await settle(page, 500);
      await report(page, `imperial ${w} ${name}`);
      if (/Desk|Halftime|Gases|Curves/.test(name)) await page.screenshot({ path: `${DIR}/imp-${w}-${name.replace(/\W+/g, '_')}.png` });
    }
    for (const plate of ['limits', 'half-times', 'ascent-rate', 'gradient-factors', 'models', 'how-sure']) { await page.goto(`/curves/#${plate}`); await settle(page, 1500); await report(page, `imperial ${w} curves ${plate}`); }
    await page.context().close();
  }
});
// text pages of lessons with drawings, at some widths
await part('texts', async () => {
  for (const w of [390, 820, 1280]) {
    const page = await visit(w, w === 1280 ? 720 : 900);
    for (const slug of lessonSlugs()) { await page.goto(`/lessons/${slug}/text/`); await settle(page, 50); await report(page, `text ${w} ${slug}`); }
    await page.goto('/lessons/04-no-stop-time/text/'); await settle(page, 100);
    await page.locator('svg[role=img]').first().screenshot({ path: `${DIR}/textsvg-${w}.png` });
    await page.context().close();
  }
});
await part('model', async () => {
  for (const w of [390, 1440]) { const page = await visit(w, 900); await page.goto('/model/'); await settle(page, 300);
    console.log('raw tex', await page.evaluate(() => document.body.innerText.includes('$')));
    console.log('model wide', w, await page.evaluate(() => [...document.querySelectorAll('.formula, .scroll')].filter((e) => e.scrollWidth > e.clientWidth + 1).map((e) => `${e.className} ${e.scrollWidth}>${e.clientWidth} ${e.textContent!.slice(0, 30)}`)));
    await page.context().close(); }
});
await part('evidence', async () => { const page = await visit(1440, 900); await page.goto('/evidence/'); await settle(page, 2500); await page.getByText('Read the 53 checks').click(); await page.waitForTimeout(300); await page.screenshot({ path: `${DIR}/evidence.png` }); });
// why, formulas
await part('why', async () => {
  for (const [w, h] of [[820, 1180], [1024, 768], [390, 844], [1440, 900]] as const) {
    const page = await visit(w, h);
    await page.goto('/desk/'); await settle(page, 600);
    const names: string[] = [...new Set(await page.getByRole('button', { name: /^Why / }).evaluateAll((els: Element[]) => els.map((e) => e.getAttribute('aria-label') ?? '')))] as string[];
    for (const [i, name] of names.entries()) {
      const b = page.getByRole('button', { name, exact: true }).first();
      if (!(await b.isVisible())) continue;
      await b.click();
      await page.locator('dialog math').first().waitFor().catch(() => {});
      await page.waitForTimeout(500);
      await page.evaluate(() => { for (const d of document.querySelectorAll('dialog details')) (d as HTMLDetailsElement).open = true; });
      await page.waitForTimeout(500);
      const wide = await page.evaluate(() => [...document.querySelectorAll('dialog[open] *')].filter((e) => e.scrollWidth > e.clientWidth + 1 && /auto|scroll/.test(getComputedStyle(e).overflowX)).map((e) => `${e.className.toString().slice(0,40)} ${e.scrollWidth}>${e.clientWidth} ${(e.getAttribute('aria-label') ?? '').slice(0, 60)}`));
      for (const x of [...new Set(wide)]) console.log('WIDE', w, name, x);
      if (w === 820 || w === 1440) { const dlg = page.locator('dialog[open]'); await page.evaluate(() => { const d = document.querySelector('dialog[open]') as HTMLElement; d.style.height = '3000px'; }); await dlg.screenshot({ path: `${DIR}/whyfull-${w}-${i}.png` }).catch(() => {}); }
      await page.keyboard.press('Escape'); await page.waitForTimeout(150);
    }
    await page.context().close();
  }
});
await part('desk', async () => { const page = await visit(1440, 900); await page.goto('/desk/'); await settle(page, 800); await page.screenshot({ path: `${DIR}/desk-now.png` }); await page.goto('/desk/#play=one-dive-four-settings'); await settle(page, 1500); await page.screenshot({ path: `${DIR}/desk-four.png` }); });
await part('print', async () => {
  const page = await visit(1280, 720);
  await page.goto('/lessons/04-no-stop-time/'); await settle(page, 500);
  for (let i = 1; i < 12; i++) { const go = page.getByRole('button', { name: /^(Go on|To your results)$/ }); if (!(await go.count())) break; await go.click(); await settle(page, 200); }
  await page.pdf({ path: `${DIR}/print-results.pdf`, format: 'A4' });
  await page.goto('/lessons/04-no-stop-time/text/'); await settle(page, 200); await page.pdf({ path: `${DIR}/print-A_lesson_as_text.pdf`, format: 'A4' });
  await page.goto('/model/'); await settle(page, 200); await page.pdf({ path: `${DIR}/print-Model.pdf`, format: 'A4' });
  await page.goto('/bring/'); await settle(page, 300);
  await page.getByRole('button', { name: 'Try an invented record with faults' }).click();
  await page.getByRole('heading', { name: 'What is wrong with it' }).waitFor(); await settle(page, 800);
  for (const box of await page.getByRole('group', { name: /Mend what you agree to/ }).getByRole('checkbox').all()) await box.check().catch(() => {});
  await page.getByRole('button', { name: 'Open on the desk' }).waitFor(); await settle(page, 800);
  await page.pdf({ path: `${DIR}/print-bring-mended.pdf`, format: 'A4' });
});
await end();

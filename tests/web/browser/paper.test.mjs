// The pages on paper: what is pressed is left out, nothing is cut at the edge, and each comes out as a PDF.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { Bench, counted, launch } from './bench.mjs';
import { school } from './school.mjs';

let browser, bench, page;
before(async () => {
    browser = await launch();
    bench = new Bench();
    school(bench, 2, 3, 1);
    await bench.start();
    page = await bench.open(browser);
});
after(async () => {
    await browser?.close();
    await bench?.remove();
});

const paths = ['/coupon/T-3', '/coupon/T-3/exam/3', '/class', '/class/accepted', '/class/coupon/T-3', '/class/summary', '/class/learner/L3',
               '/welder/L3', '/welder/L3/coupon/T-3', '/keeper/due', '/keeper/criteria/mil-hdbk-1890-table-3'];
/** Width of the sheet between its margins, in pixels of 1/96 in. */
const sheets = { A4: Math.floor(210 / 25.4 * 96 - 2 * 0.4 * 96), Letter: Math.floor(8.5 * 96 - 2 * 0.4 * 96) };

/** How many sheets a PDF has. */
const sheetsOf = pdf => pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

test('every page prints on A4 and on Letter, whole and without what is pressed', async () => {
    await page.emulateMedia({ media: 'print' });
    for (const [format, width] of Object.entries(sheets))
        for (const path of paths) {
            await page.setViewportSize({ width, height: 1000 });
            await page.goto(bench.url + path);
            assert.equal(await page.locator('nav:visible, button:visible, a.button:visible, input:not([type=checkbox]):visible, select:visible, textarea:visible').count(), 0, path);
            const cut = await page.evaluate(wide => [...document.querySelectorAll('main *')]
                .filter(one => one.getClientRects().length > 0 && !one.closest('.unseen'))
                .filter(one => one.getBoundingClientRect().right > wide + 1)
                .map(one => one.outerHTML.slice(0, 80)), width);
            assert.deepEqual(cut, [], `${path} on ${format}`);
            const pdf = await page.pdf({ format, margin: { top: '0.4in', bottom: '0.4in', left: '0.4in', right: '0.4in' } });
            assert.equal(pdf.subarray(0, 5).toString(), '%PDF-');
            assert.ok(sheetsOf(pdf) >= 1 && sheetsOf(pdf) <= 12, `${path}: ${sheetsOf(pdf)} sheets`);
        }
    await page.emulateMedia({ media: null });
});

test('the foot of each sheet names the page and the state of the record', async () => {
    await page.goto(`${bench.url}/class/learner/L3`);
    const foot = await page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--foot'));
    const head = await (await page.request.get(`${bench.url}/head`)).text();
    assert.equal(foot, `"Learner L3 · record ${head.slice(0, 12)}"`);
});

test('what a form holds besides its controls is on paper too: a map, and a list that is ticked', async () => {
    await page.emulateMedia({ media: 'print' });
    await page.goto(`${bench.url}/coupon/T-3/exam/3`);
    await counted(page.locator('.weld-map:visible'), 1);
    await page.goto(`${bench.url}/class/accepted`);
    await counted(page.locator('ul.ticks li:visible'), 2);
    await page.emulateMedia({ media: null });
});

test('on paper black stands on white, also where the screen is dark', async () => {
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    await page.goto(`${bench.url}/welder/L3/coupon/T-3`);
    const [ink, paper] = await page.evaluate(() => {
        const style = getComputedStyle(document.body);
        return [style.color, style.backgroundColor];
    });
    assert.deepEqual([ink, paper], ['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    // So are the texts of pictures and what stands out: none of them is as light as a dark screen has it.
    const light = await page.evaluate(() => [...document.querySelectorAll('main .reject, main a, main svg text, main .quiet')]
        .filter(one => one.getClientRects().length > 0)
        .map(one => getComputedStyle(one)[one instanceof SVGElement ? 'fill' : 'color'])
        .filter(color => (color.match(/\d+/g) ?? []).slice(0, 3).map(Number).reduce((a, b) => a + b, 0) > 3 * 130));
    assert.deepEqual(light, []);
    await page.emulateMedia({ media: null, colorScheme: null });
});

test('each learner begins on a sheet of its own', async () => {
    await page.goto(`${bench.url}/class/learners`);
    const pdf = await page.pdf({ format: 'A4' });
    assert.ok(sheetsOf(pdf) >= 6, `${sheetsOf(pdf)} sheets for six learners`);
});

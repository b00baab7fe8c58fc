// How the pages look: they fit from 320 to 1600 px, fingers meet the buttons, readers of screens find no fault, in
// light and dark; and nothing that a name holds runs.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Bench, launch, plate, tube } from './bench.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
let browser, bench;

before(async () => {
    browser = await launch();
    bench = new Bench();
    bench.run('register', 'T-1..T-3', ...plate);
    bench.run('register', 'A-very-long-mark-of-a-coupon-0123456789', ...tube);
    bench.run('exam', 'T-1..T-2', 'VT', '--examiner', 'A. Field', '--level', 'II', '--condition', 'light=1000 lx');
    for (let i = 1; i <= 9; ++i) bench.run('log', 'T-1', `undercut 0.${i} in at 0.${i} in face`);
    bench.run('log', 'T-1', 'crack 0.2 in at 3 in');
    bench.run('finish', 'T-2', '--found', 'none');
    bench.run('exam', 'A-very-long-mark-of-a-coupon-0123456789', 'VT', '--examiner', 'A. Field', '--level', 'II');
    await bench.start();
});
after(async () => {
    await browser?.close();
    await bench?.remove();
});

const paths = ['/', '/register', '/person', '/coupon/T-1', '/coupon/T-1/change', '/coupon/T-1/exam',
               '/coupon/T-3/exam?method=MT', '/coupon/T-1/exam/1', '/coupon/T-1/exam/1/conditions',
               '/coupon/T-2/exam/1', '/coupon/A-very-long-mark-of-a-coupon-0123456789/exam/1', '/coupon/none'];

let page;
const once = async () => (page ??= await bench.open(browser));

test('every page fits from 320 to 1600 px', async () => {
    await once();
    for (const width of [320, 800, 1600]) {
        await page.setViewportSize({ width, height: 900 });
        for (const path of paths) {
            await page.goto(bench.url + path);
            const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
            assert.ok(over <= 0, `${path} is ${over} px too wide at ${width}`);
        }
    }
});

test('readers of screens find no fault, in light and in dark', async () => {
    await once();
    for (const colorScheme of ['light', 'dark']) {
        await page.emulateMedia({ colorScheme });
        for (const path of paths) {
            await page.goto(bench.url + path);
            // By the protocol, which the content policy of the page does not bind.
            await page.evaluate(axe);
            const { violations } = await page.evaluate(() => globalThis.axe.run());
            assert.deepEqual(violations.map(v => `${v.id}: ${v.nodes[0].html}`), [], `${path} in ${colorScheme}`);
        }
    }
    await page.emulateMedia({ colorScheme: null });
});

test('on a screen that is touched, what is tapped at the bench is 12 mm at least', async () => {
    await once();
    const touched = await bench.openBeside(browser, page, { hasTouch: true, isMobile: true, viewport: { width: 800, height: 1000 } });
    await touched.goto(`${bench.url}/coupon/T-1/exam/1`);
    await touched.locator('#pad').waitFor();
    const small = await touched.locator('button:visible, a.button:visible, nav a').evaluateAll(all => all
        .map(one => ({ text: one.textContent, ...one.getBoundingClientRect().toJSON() }))
        .filter(one => Math.min(one.width, one.height) < 12 * 96 / 25.4 - 0.5).map(one => one.text));
    assert.deepEqual(small, []);
    await touched.context().close();
});

test('no page says anything on the console, nor asks another host', async () => {
    await once();
    page.faults.length = 0;
    for (const path of paths.filter(one => one !== '/coupon/none')) {
        await page.goto(bench.url + path);
        await page.waitForLoadState('networkidle');
    }
    assert.deepEqual(page.faults, []);
});

test('a name that holds a script is a name', async () => {
    await once();
    const hostile = '<img src=x onerror="document.title=1"><script>document.title=1</script>';
    await page.goto(`${bench.url}/person`);
    await page.getByLabel('Name').fill(hostile);
    await page.getByRole('button', { name: 'Sit down' }).click();
    assert.equal(await page.getByText(hostile, { exact: true }).count(), 1);
    assert.equal(await page.title(), 'To be examined');
    await page.goto(`${bench.url}/person`);
    await page.getByLabel('Name').fill('A. Field');
    await page.getByRole('button', { name: 'Sit down' }).click();
});

test('a page of another origin writes nothing, and reads nothing', async () => {
    await once();
    const other = await page.context().newPage();
    // Its own origin is null: it is no page of ours, though it runs in the same browser, which may keep the request from
    // the bench or the refusal from the page. Either way it was tried.
    await other.setContent(`<script>onmessage = () => { document.title = 'tried'; }</script>
        <iframe sandbox="allow-scripts allow-forms" srcdoc="<script>
        fetch('${bench.url}/coupon/T-1/remark', {method:'POST', mode:'no-cors', credentials:'include',
              body:new URLSearchParams({text:'forged'})}).catch(() => {}).finally(() => parent.postMessage('tried', '*'));
        </script>"></iframe>`);
    await other.waitForFunction(() => document.title === 'tried');
    // What the bench itself answers to such a page:
    const forged = await page.request.post(`${bench.url}/coupon/T-1/remark`,
        { headers: { origin: 'null' }, form: { text: 'forged' } });
    assert.equal(forged.status(), 403);
    await other.close();
    assert.ok(!JSON.stringify(bench.coupon('T-1')).includes('forged'));
});

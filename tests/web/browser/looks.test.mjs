// How the pages look: they fit from 320 to 1600 px, fingers meet the buttons, readers of screens find no fault, in
// light and dark; and nothing that a name holds runs.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Bench, counted, launch, plate, tube } from './bench.mjs';
import { school } from './school.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
let browser, bench;

before(async () => {
    browser = await launch();
    bench = new Bench();
    bench.run('register', 'T-1..T-3', ...plate, '--welder', 'Q1');
    bench.run('register', 'A-very-long-mark-of-a-coupon-0123456789', ...tube);
    bench.run('exam', 'T-1..T-2', 'VT', '--examiner', 'A. Field', '--level', 'II', '--condition', 'light=1000 lx');
    for (let i = 1; i <= 9; ++i) bench.run('log', 'T-1', `undercut l 0.${i} in at 0.${i} in face`);
    bench.run('log', 'T-1', 'crack 0.2 in at 3 in');
    bench.run('finish', 'T-2', '--found', 'none');
    bench.run('exam', 'A-very-long-mark-of-a-coupon-0123456789', 'VT', '--examiner', 'A. Field', '--level', 'II');
    // A class beside them, with people and equipment.
    school(bench, 2, 3, 1, 'C-');
    bench.run('enrol', 'L3', '--name', 'J. Reef');
    bench.run('grade', 'C-3', 'failed', '--remark', 'dry the rods');
    bench.run('person', 'M. Tide', '--role', 'technician', '--certificate', 'VT II until 2027-12-20', '--vision', '2026-11-01');
    bench.run('equipment', 'LM-7', '--kind', 'light meter', '--calibration', '2026-05-01 until 2027-05-01');
    await bench.start();
});
after(async () => {
    await browser?.close();
    await bench?.remove();
});

const paths = ['/', '/register', '/person', '/coupon/T-1', '/coupon/T-1/change', '/coupon/T-1/exam',
               '/coupon/T-3/exam?method=MT', '/coupon/T-1/exam/1', '/coupon/T-1/exam/1/conditions',
               '/coupon/T-2/exam/1', '/coupon/A-very-long-mark-of-a-coupon-0123456789/exam/1', '/coupon/none',
               '/class', '/class?graded=none', '/class?cohort=nobody', '/class/accepted', '/class/coupon/C-1', '/class/coupon/C-4',
               '/class/coupon/C-6', '/class/summary', '/class/summary?cohort=night&against=day', '/class/learner/L3',
               '/class/learners', '/welders', '/welders?mark=nobody', '/welder/L3', '/welder/Q1', '/welder/L3/coupon/C-3',
               '/welder/Q1/coupon/T-1', '/welder/Q1/coupon/T-2', '/welder/Q1/coupon/C-1', '/keeper', '/keeper/people',
               '/keeper/people/M.%20Tide', '/keeper/equipment', '/keeper/equipment/LM-7', '/keeper/due', '/keeper/verify',
               '/keeper/criteria', '/keeper/criteria/mil-hdbk-1890-table-3', '/keeper/practices', '/keeper/practices/asme-v-pt',
               '/keeper/rules', '/keeper/rules/asme-ix', '/keeper/types', '/keeper/copy', '/keeper/copy/aws-d17.1'];
/** Of these the answer is that there is none. */
const refused = ['/coupon/none', '/welders?mark=nobody', '/welder/Q1/coupon/C-1'];

let page;
const once = async () => (page ??= await bench.open(browser));

/** In the dark only the colours are others. What is in order is not described: that took longer than the looking. */
const only = { light: { resultTypes: ['violations'] }, dark: { resultTypes: ['violations'], runOnly: ['color-contrast'] } };

/** All that is found on all pages, each opened once: too wide, faults by axe, said on the console. */
async function look() {
    await once();
    const found = { answers: [], wide: [], faults: [], said: [] };
    for (const path of paths) {
        page.faults.length = 0;
        await page.emulateMedia({ colorScheme: 'light' });
        const answer = await page.goto(bench.url + path);
        if (answer.ok() === refused.includes(path)) found.answers.push(`${path}: ${answer.status()}`);
        for (const width of [320, 800, 1600]) {
            await page.setViewportSize({ width, height: 900 });
            const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
            if (over > 0) found.wide.push(`${path} is ${over} px too wide at ${width}`);
        }
        // By the protocol, which the content policy of the page does not bind.
        await page.evaluate(axe);
        for (const colorScheme of ['light', 'dark']) {
            await page.emulateMedia({ colorScheme });
            const { violations } = await page.evaluate(only => globalThis.axe.run(only), only[colorScheme]);
            found.faults.push(...violations.map(v => `${path} in ${colorScheme}: ${v.id}: ${v.nodes[0].html}`));
        }
        // Of a refusal the console of the browser tells the status.
        found.said.push(...page.faults.filter(one => !refused.includes(path) || !/status of 4\d\d/.test(one))
            .map(one => `${path}: ${one}`));
    }
    await page.emulateMedia({ colorScheme: null });
    return found;
}
let looking;
const looked = () => (looking ??= look());

test('every page is there, and fits from 320 to 1600 px', async () => {
    assert.deepEqual((await looked()).answers, []);
    assert.deepEqual((await looked()).wide, []);
});

test('readers of screens find no fault, in light and in dark', async () => {
    assert.deepEqual((await looked()).faults, []);
});

test('no page says anything on the console, nor asks another host', async () => {
    assert.deepEqual((await looked()).said, []);
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

test('a name that holds a script is a name', async () => {
    await once();
    const hostile = '<img src=x onerror="document.title=1"><script>document.title=1</script>';
    await page.goto(`${bench.url}/person`);
    await page.getByLabel('Name').fill(hostile);
    await page.getByRole('button', { name: 'Sit down' }).click();
    await counted(page.getByText(hostile, { exact: true }), 1);
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

test('what a gloved finger taps on the pages of exams and the class is 12 mm', async () => {
    const hand = await bench.openBeside(browser, await once(), { hasTouch: true, isMobile: true, viewport: { width: 800, height: 1100 } });
    for (const [path, met] of [['/coupon/T-1/exam/1', 'h1 a, .quiet > a'], ['/', 'ul.coupons h2 a'],
                               ['/class', '.board th a, .board li > a'], ['/class/accepted', '.ticks input, .ticks a']]) {
        await hand.goto(`${bench.url}${path}`);
        const small = await hand.evaluate(wanted => {
            const all = [...document.querySelectorAll(wanted)];
            const least = 12 * 96 / 25.4 - 0.5;
            return [all.length, all.map(one => [one.textContent, one.getBoundingClientRect()])
                .filter(([, { width, height }]) => width < least || height < least).map(([text]) => text)];
        }, met);
        assert.ok(small[0] > 0, path);
        assert.deepEqual(small[1], [], path);
    }
    await hand.context().close();
});

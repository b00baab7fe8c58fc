// The welder's journey in a real browser: my coupons, and one page a coupon that says what came of it and why.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { Bench, counted, launch, tabTo } from './bench.mjs';
import { school } from './school.mjs';

let browser, bench;
before(async () => {
    browser = await launch();
    bench = new Bench();
    // T-1 accepted; T-2 a pore that class 3 allows; T-3 a crack; T-4 not examined to the end.
    school(bench, 1, 2, 1);
    bench.run('enrol', 'L2', '--name', 'J. Reef');
    bench.run('grade', 'T-2', 'failed', '--remark', 'dry the rods');
    await bench.start();
});
after(async () => {
    await browser?.close();
    await bench?.remove();
});

/** The text of the page of a coupon, asked for as its welder. */
async function toldOf(page, welder, mark) {
    await page.goto(`${bench.url}/welder/${welder}`);
    await page.getByRole('link', { name: mark, exact: true }).click();
    await page.getByRole('heading', { name: `Coupon ${mark}`, exact: true }).waitFor();
    await page.waitForLoadState('load');
    return page.locator('main').innerText();
}

for (const [how, options] of [['with', {}], ['without', { javaScriptEnabled: false }]])
    test(`${how} JavaScript a rejected coupon says so, where, why with its picture, the cause, the remedy and the class made`, async () => {
        const page = options.javaScriptEnabled === false ? await bench.openBeside(browser, await seen(), options) : await seen();
        await page.goto(bench.url);
        await page.getByRole('link', { name: 'Welders', exact: true }).click();
        await page.getByLabel('Mark of a welder').fill('L2');
        await page.getByRole('button', { name: 'Show the coupons' }).click();
        await page.getByRole('heading', { name: 'Welder L2', exact: true }).waitFor();
        const told = await toldOf(page, 'L2', 'T-2');
        assert.match(told, /Class 2 of .*: reject/);
        assert.match(told, /Where on the weld/);
        // MIL-HDBK-1890(AT), Table III, page 11: in 3/8 in a pore of 0.080 in for class 2.
        assert.match(told, /#1 gas pore \(RT\) from 3 in to 3\.09 in: .*0\.09 in, limit 0\.08 in/);
        assert.match(told, /usually .+\n.*Change: .+/);
        assert.match(told, /It meets class 3\./);
        assert.match(told, /Graded failed for class 2 by tester: dry the rods/);
        // The map, and the measured against its limit.
        const pictures = page.locator('main svg[role=img]:visible');
        await counted(pictures, 2);
        assert.match(await pictures.first().locator('desc').textContent(), /#1/);
        assert.deepEqual(page.faults.filter(one => !/favicon/.test(one)), []);
    });

let first;
const seen = async () => (first ??= await bench.open(browser));

test('a coupon that is accepted, one that makes no class, and one of which nobody can say', async () => {
    const page = await seen();
    const accepted = await toldOf(page, 'L1', 'T-1');
    assert.match(accepted, /Class 2 of .*: accept/);
    assert.match(accepted, /It meets the classes 1, 2 and 3\./);
    assert.doesNotMatch(accepted, /Why it is not accepted/);
    const crack = await toldOf(page, 'L3', 'T-3');
    assert.match(crack, /: reject/);
    assert.match(crack, /It meets no class of this set/);
    const open = await toldOf(page, 'L4', 'T-4');
    assert.match(open, /: cannot say/);
    assert.match(open, /What is missing before anybody can say/);
    assert.doesNotMatch(open, /It meets (the )?class/);
});

test('a coupon is held against the earlier ones of its kind, and a reject reads as one', async () => {
    bench.run('register', 'U-1..U-3', '--criteria', 'mil-hdbk-1890-table-3', '--class', '2', '--joint', 'groove', '--form', 'plate',
              '--thickness', '3/8 in', '--weld-length', '8 in', '--magnetic', 'yes', '--process', 'SMAW', '--material', 'steel',
              '--welder', 'U');
    bench.run('exam', 'U-1..U-2', 'VT,MT', '--examiner', 'A. Field', '--level', 'II', '--found', 'none');
    bench.run('exam', 'U-1..U-2', 'RT', '--examiner', 'A. Field', '--level', 'II');
    bench.run('log', 'U-1', 'gas pore 0.12 in at 3 in', 'slag 0.05 in at 5 in', '--finish');
    bench.run('log', 'U-2', 'gas pore 0.09 in at 3 in', '--finish');
    const told = await toldOf(await seen(), 'U', 'U-2');
    assert.match(told, /1 earlier coupon of this welder of the same kind \(groove joint, class 2 of mil-hdbk-1890-table-3\): 1 rejected\./);
    assert.match(told, /Since U-1: then reject, now reject\./);
    assert.match(told, /slag[^\n]*: then 1, now none\./);
    // 0.12 in and 0.09 in of 0.080 in: 150 % and, away from the limit, 113 %.
    assert.match(told, /Then Size of a pore or void: 150 % of the limit, out\. Now Size of a pore or void: 113 % of the limit, out\./);
    // Of U-3, which nobody examined, nobody can say.
    assert.match(await toldOf(await seen(), 'U', 'U-3'), /then reject, now cannot say/);
});

test("a welder who asks for another's coupon gets nothing of it", async () => {
    const page = await seen();
    for (const path of ['/welder/L1/coupon/T-2', '/welder/L1/coupon/none', '/welder/l2/coupon/T-2', '/welder/%20L2/coupon/T-2']) {
        const answer = await page.goto(bench.url + path);
        assert.equal(answer.status(), 404, path);
        const told = await page.locator('body').innerText();
        for (const secret of ['pore', 'reject', 'J. Reef', 'dry the rods']) assert.ok(!told.includes(secret), `${path}: ${secret}`);
    }
    // Nor does the list of one's own show it.
    await page.goto(`${bench.url}/welder/L1`);
    assert.doesNotMatch(await page.locator('main').innerText(), /T-2|J\. Reef/);
});

test('a welder goes from one coupon to the next by keyboard', async () => {
    const page = await seen();
    await page.goto(`${bench.url}/welders?mark=L3`);
    for (const name of ['T-3', 'All coupons of L3']) {
        await page.evaluate(() => /** @type {HTMLElement} */ (document.activeElement)?.blur());
        await tabTo(page, name);
        await page.keyboard.press('Enter');
        await page.getByRole('heading', { name: name === 'T-3' ? 'Coupon T-3' : 'Welder L3', exact: true }).waitFor();
    }
});

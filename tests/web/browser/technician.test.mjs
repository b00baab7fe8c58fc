// The technician's journey in a real browser.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { Bench, counted, launch, plate, tube } from './bench.mjs';

let browser, bench;
before(async () => { browser = await launch(); });
after(async () => { await browser?.close(); });

const fresh = async () => {
    bench = new Bench();
    return bench;
};

/** T-1 and T-2 with an open VT each, and the page of the first. */
async function atTheBench(options, kind = plate) {
    await fresh();
    bench.run('register', 'T-1..T-2', ...kind);
    bench.run('exam', 'T-1..T-2', 'VT', '--examiner', 'A. Field', '--level', 'II');
    await bench.start();
    const page = await bench.open(browser, options);
    await page.goto(`${bench.url}/coupon/T-1/exam/1`);
    await page.locator('#pad').waitFor();
    return page;
}

/** Waits until the page shows so many finds. */
const finds = (page, count) => page.waitForFunction(n => document.querySelectorAll('.finds li').length === n, count);

test('a coupon goes from registering to its verdict by pages alone', async () => {
    await fresh();
    await bench.start();
    const page = await bench.open(browser);
    await page.getByRole('link', { name: 'Register a coupon' }).click();
    await page.getByLabel('Mark').fill('T-1');
    await page.getByLabel('Criteria', { exact: true }).fill('mil-hdbk-1890-table-3');
    await page.getByLabel('Class', { exact: true }).fill('2');
    await page.getByLabel('Joint', { exact: true }).selectOption('groove');
    await page.getByLabel('Form', { exact: true }).selectOption('plate');
    await page.getByLabel('Thickness', { exact: true }).fill('3/8 in');
    await page.getByLabel('Weld length', { exact: true }).fill('8 in');
    await page.getByRole('button', { name: 'Register' }).click();
    await page.getByRole('heading', { name: 'Coupon T-1', exact: true }).waitFor();
    await page.getByRole('link', { name: 'begin VT' }).click();
    await page.getByLabel('Level', { exact: true }).fill('II');
    await page.getByRole('button', { name: 'Begin VT' }).click();
    await page.getByLabel('What was found').fill('crack 0.2 at 3');
    await page.getByText('reads as crack size 0.2 in at 3 in').waitFor();
    await page.getByRole('button', { name: 'Log it' }).click();
    await finds(page, 1);
    await page.getByRole('button', { name: 'These are all: 1' }).click();
    await page.getByText('Finished by A. Field: 1 found').waitFor();
    const coupon = bench.coupon('T-1');
    assert.equal(coupon.exams[0].indications?.length ?? 0, 1);
    assert.deepEqual(page.faults, []);
    await page.context().close();
    assert.equal(await bench.end(), 0);
    await bench.remove();
});

test('one find takes at most six taps: type, size, place on the map, log', async () => {
    const page = await atTheBench({ hasTouch: true, isMobile: true, viewport: { width: 800, height: 1100 } });
    let taps = 0;
    const tap = async where => {
        await where.tap();
        ++taps;
    };
    await tap(page.getByRole('button', { name: 'undercut', exact: true }));
    await tap(page.locator('[data-part=size][data-value="1/16"]'));
    const map = page.locator('.weld-map:visible').first();
    const box = await map.boundingBox();
    const data = await map.evaluate(m => ({ ...m.dataset, width: m.viewBox.baseVal.width }));
    const face = await map.locator('g[data-side=face]').boundingBox();
    const x = box.width * (Number(data.x0) + 0.5 * (Number(data.x1) - Number(data.x0))) / data.width;
    await page.touchscreen.tap(box.x + x, face.y + face.height / 2);
    ++taps;
    assert.match(await page.getByLabel('What was found').inputValue(), /^undercut 1\/16(?: in)? at [34](?:\.\d+)?(?: in)? face$/);
    await page.locator('#reading p').first().waitFor();
    await tap(page.getByRole('button', { name: 'Log it' }));
    await finds(page, 1);
    assert.ok(taps <= 6, `${taps} taps`);
    const [found] = bench.coupon('T-1').exams[0].indications;
    assert.equal(found.type, 'undercut');
    assert.equal(found.side, 'face');
    assert.ok(Math.abs(found.at.nm - 101_600_000) < 2_000_000, `half of 8 in, not ${found.at.nm} nm`);
    assert.deepEqual(page.faults, []);
    await page.context().close();
    await bench.remove();
});

test('on a tube the map and the hours give the clock', async () => {
    const page = await atTheBench({}, tube);
    await page.getByRole('button', { name: 'gas pore', exact: true }).click();
    await page.locator('[data-part=size][data-value="0.05"]').click();
    await page.getByRole('button', { name: '4:00', exact: true }).click();
    assert.match(await page.getByLabel('What was found').inputValue(), /^gas pore 0\.05(?: in)? at 4:00$/);
    await page.getByRole('button', { name: 'Log it' }).click();
    await finds(page, 1);
    await page.context().close();
    await bench.remove();
});

test('a finish that is refused leaves everything where it is, with the reason beside', async () => {
    const page = await atTheBench({});
    // Another one logs a find meanwhile, and this page has not heard of it.
    const head = await (await page.request.get(`${bench.url}/head`)).text();
    await page.route('**/head', route => route.fulfill({ body: head }));
    bench.run('log', 'T-1', 'undercut 0.1 in at 3 in');
    const path = new URL(page.url()).pathname;
    await page.getByRole('button', { name: 'None found' }).click();
    await page.getByText('is said to have found 0, and 1 is on record').waitFor();
    await page.waitForURL(bench.url + path); // not that of the deed
    await page.getByLabel('What was found').fill('crack 0.2 in at 4 in');
    await page.getByRole('button', { name: 'Log it' }).click();
    await page.getByText('stored as #2: crack').waitFor();
    await page.getByRole('button', { name: 'These are all: 2' }).click();
    await page.getByText('Finished by A. Field: 2 found').waitFor();
    await page.context().close();
    await bench.remove();
});

test('the digits put fractions together, and a tap changes or adds to what was typed', async () => {
    const page = await atTheBench({});
    const line = page.getByLabel('What was found');
    await page.getByRole('button', { name: 'overlap', exact: true }).click();
    for (const key of ['1', '-', '3', '/', '1', '6'])
        await page.locator(`[data-key="${key}"]`).click();
    assert.match(await line.inputValue(), /^overlap 1-3\/16/);
    await page.locator('[data-key=back]').click();
    await page.locator('[data-key="8"]').click();
    assert.match(await line.inputValue(), /^overlap 1-3\/18/);
    await page.locator('[data-key=clear]').click();
    assert.equal(await line.inputValue(), '');
    await line.fill('crack 0.2 mm at 3');
    await page.getByRole('button', { name: 'undercut', exact: true }).click();
    assert.equal(await line.inputValue(), 'undercut 0.2 mm at 3');
    await page.locator('[data-part=side][data-value=root]').click();
    assert.equal(await line.inputValue(), 'undercut 0.2 mm at 3 root');
    await line.fill('crack 1 3/16 near the tack');
    await page.locator('[data-part=side][data-value=face]').click();
    await page.locator('[data-key="5"]').click();
    assert.match(await line.inputValue(), /^crack 1 3\/16 near the tack 5(?: in)? face$/);
    await page.context().close();
    await bench.remove();
});

test('what the criteria want measured comes first until it is, and an edge is smooth or sharp', async () => {
    const page = await atTheBench({}, ['--criteria', 'aws-d1.1-visual', '--class', 'static', '--joint', 'fillet',
                                       '--joint-form', 'tee', '--form', 'plate', '--thickness', '3/8 in',
                                       '--fillet-size', '1/4 in', '--weld-length', '8 in', '--magnetic', 'yes',
                                       '--process', 'SMAW', '--material', 'steel']);
    const line = page.getByLabel('What was found');
    const wanted = page.locator('#wanted');
    await wanted.getByRole('button', { name: 'fillet size', exact: true }).click();
    await page.locator('[data-part=size][data-value="1/4"]').click();
    assert.match(await line.inputValue(), /^fillet size 1\/4/);
    await page.getByRole('button', { name: 'Log it' }).click();
    await finds(page, 1);
    assert.equal((await wanted.innerText()).trim(), '');
    await page.getByRole('button', { name: 'undercut', exact: true }).click();
    await page.locator('[data-part=toe][data-value=sharp]').click();
    assert.equal(await line.inputValue(), 'undercut sharp');
    await page.locator('[data-part=toe][data-value=smooth]').click();
    await page.locator('[data-part=side][data-value=face]').click();
    assert.equal(await line.inputValue(), 'undercut face smooth');
    // A fillet has no root to look at.
    assert.equal(await page.locator('[data-part=side][data-value=root], .weld-map g[data-side=root]').count(), 0);
    // From one open exam to the next that was begun with it.
    await line.fill('');
    await page.getByRole('link', { name: 'on to VT of T-2' }).click();
    await page.getByRole('link', { name: 'back to VT of T-1' }).waitFor();
    await page.context().close();
    await bench.remove();
});

test('a second measure begins beside the first, and digits that came before a name get it', async () => {
    const page = await atTheBench({});
    const line = page.getByLabel('What was found');
    await page.getByRole('button', { name: 'undercut', exact: true }).click();
    for (const key of ['0', '.', '2'])
        await page.locator(`[data-key="${key}"]`).click();
    await page.locator('[data-part=key][data-value=l]').click();
    assert.match(await line.inputValue(), /^undercut l 0\.2(?: in)?$/);
    await page.locator('[data-part=key][data-value=d]').click();
    for (const key of ['0', '.', '0', '1'])
        await page.locator(`[data-key="${key}"]`).click();
    assert.match(await line.inputValue(), /^undercut l 0\.2(?: in)? d 0\.01(?: in)?$/);
    // Back to the first one: its digits go on.
    await page.locator('[data-part=key][data-value=l]').click();
    await page.locator('[data-key="5"]').click();
    assert.match(await line.inputValue(), /^undercut l 0\.25(?: in)? d 0\.01(?: in)?$/);
    await page.context().close();
    await bench.remove();
});

test('a refused line stands there again, is asked about, and is taken when it is meant so', async () => {
    const page = await atTheBench({});
    const line = page.getByLabel('What was found');
    await line.fill('undercut d 5 in at 3 in');
    await line.press('Enter');
    await page.getByLabel('It is meant so').check();
    assert.equal(await line.inputValue(), 'undercut d 5 in at 3 in');
    assert.equal(bench.coupon('T-1').exams[0].indications?.length ?? 0, 0);
    await page.getByRole('button', { name: 'Log it' }).click();
    await finds(page, 1);
    await page.waitForFunction(() => document.querySelector('#waiting').textContent === '');
    // A refusal is an answer of the bench: the console of the browser tells its status, and nothing else.
    assert.ok(page.faults.every(fault => /status of 422/.test(fault)), page.faults.join('\n'));
    await page.context().close();
    await bench.remove();
});

/** Types a find and sends it; its answer comes only when what this returns is called. */
async function sentAndHeld(page, find) {
    let answer = () => {};
    await page.route('**/log', async route => {
        await new Promise(ok => { answer = ok; });
        await route.continue();
    });
    const line = page.getByLabel('What was found');
    await line.fill(find);
    const asked = page.waitForRequest('**/log');
    await line.press('Enter');
    await asked;
    return () => answer();
}

test('the answer to one find leaves the next one where it is typed', async () => {
    const page = await atTheBench({ serviceWorkers: 'block' });
    const line = page.getByLabel('What was found');
    const answer = await sentAndHeld(page, 'undercut 0.1 in at 3 in');
    await page.getByRole('button', { name: 'Log it' }).click(); // pressed once more: the same find is sent once
    await line.fill('crack 0.2 in at 5 in');
    answer();
    await finds(page, 1);
    assert.equal(await line.inputValue(), 'crack 0.2 in at 5 in');
    await page.getByRole('button', { name: 'These are all: 1' }).click();
    await page.getByText('This line is not logged yet').waitFor();
    assert.equal(bench.coupon('T-1').exams[0]['finished by'], undefined);
    await page.unroute('**/log');
    await line.press('Enter');
    await finds(page, 2);
    assert.equal(await line.inputValue(), '');
    await page.context().close();
    await bench.remove();
});

test('that a line is not logged yet stays told when the bench reads that line late', async () => {
    const page = await atTheBench({ serviceWorkers: 'block' });
    await page.route('**/reading?*', async route => {
        await new Promise(ok => setTimeout(ok, 300));
        await route.continue();
    });
    await page.getByLabel('What was found').fill('crack 0.2 in at 5 in');
    await page.waitForRequest('**/reading?*');
    await page.getByRole('button', { name: 'None found' }).click();
    await page.waitForTimeout(600);
    assert.equal(await page.getByText('This line is not logged yet').count(), 1);
    await page.context().close();
    await bench.remove();
});

test('a question that comes when another line stands there is kept with its find, and asks nothing of that line', async () => {
    const page = await atTheBench({ serviceWorkers: 'block' });
    const line = page.getByLabel('What was found');
    const answer = await sentAndHeld(page, 'undercut d 5 in at 3 in');
    await line.fill('crack 0.2 in at 5 in');
    answer();
    await page.locator('#refused-later').getByText('T-1, exam 1: undercut d 5 in at 3 in').waitFor();
    assert.equal(await page.getByLabel('It is meant so').count(), 0);
    assert.equal(await line.inputValue(), 'crack 0.2 in at 5 in');
    await page.context().close();
    await bench.remove();
});

test('a tick is of the words that it was shown for', async () => {
    const page = await atTheBench({});
    const line = page.getByLabel('What was found');
    const asked = page.getByLabel('It is meant so');
    const ask = async () => {
        await line.fill('undercut d 5 in at 3 in');
        await line.press('Enter');
        await asked.check();
    };
    await ask();
    await line.fill('undercut d 6 in at 3 in');
    await asked.waitFor({ state: 'detached' });
    await line.press('Enter');
    await asked.waitFor();
    assert.equal(await asked.isChecked(), false);
    await ask();
    await page.locator('[data-key=clear]').click();
    await asked.waitFor({ state: 'detached' });
    await ask();
    await page.locator('[data-part=side][data-value=root]').click();
    await asked.waitFor({ state: 'detached' });
    assert.equal(bench.coupon('T-1').exams[0].indications?.length ?? 0, 0);
    await page.context().close();
    await bench.remove();
});

test('where an exam is begun a tick is of the fields that it was shown for', async () => {
    await fresh();
    bench.run('register', 'T-1', ...plate);
    await bench.start();
    const page = await bench.open(browser);
    await page.goto(`${bench.url}/coupon/T-1/exam?method=VT`);
    const day = page.getByLabel('Day', { exact: true }), begin = page.getByRole('button', { name: 'Begin VT' });
    const asked = page.getByLabel('It is meant so');
    await page.getByLabel('Level', { exact: true }).fill('II');
    await day.fill('2005-03-01');
    await begin.click();
    await asked.check();
    await day.fill('2006-03-01');
    await asked.waitFor({ state: 'detached' });
    await begin.click();
    await asked.waitFor();
    assert.equal(await asked.isChecked(), false);
    assert.equal(bench.coupon('T-1').exams?.length ?? 0, 0);
    await asked.check();
    await begin.click();
    await page.locator('#pad').waitFor();
    await page.context().close();
    await bench.remove();
});

test('an earlier find is undone with a reason, which is asked beside it', async () => {
    const page = await atTheBench({});
    for (const text of ['undercut 0.1 in at 3 in', 'overlap 0.1 in at 5 in']) {
        await page.getByLabel('What was found').fill(text);
        await page.getByLabel('What was found').press('Enter');
        await page.locator('.finds li', { hasText: text.split(' ')[0] }).waitFor();
    }
    await page.locator('.finds summary', { hasText: 'Undo #1' }).click();
    await page.locator('.finds').getByLabel('The reason').fill('it is a scratch');
    await page.getByRole('button', { name: 'Undo #1' }).click();
    await finds(page, 1);
    assert.deepEqual(bench.coupon('T-1').exams[0].indications.map(one => one.type), ['overlap']);
    await page.context().close();
    await bench.remove();
});

test('without JavaScript a tick answers no other question either', async () => {
    await fresh();
    bench.run('register', 'T-1', ...plate);
    bench.run('exam', 'T-1', 'VT', '--examiner', 'A. Field', '--level', 'II');
    await bench.start();
    const page = await bench.open(browser, { javaScriptEnabled: false });
    await page.goto(`${bench.url}/coupon/T-1/exam/1`);
    const line = page.getByLabel('What was found'), log = page.getByRole('button', { name: 'Log it' });
    await line.fill('undercut d 5 in at 3 in');
    await log.click();
    await page.getByLabel('It is meant so').check();
    await line.fill('crack 0.2 in at 3 in h 6 in');
    await log.click();
    await page.getByLabel('It is meant so').check();
    assert.equal(bench.coupon('T-1').exams[0].indications?.length ?? 0, 0);
    await log.click();
    await page.locator('.finds li').waitFor();
    assert.equal(bench.coupon('T-1').exams[0].indications.length, 1);
    await page.context().close();
    await bench.remove();
});

test('a line that is not logged is asked about where the page is left, and stands there again', async () => {
    const page = await atTheBench({});
    await page.getByRole('button', { name: 'undercut', exact: true }).click();
    const asked = page.waitForEvent('dialog');
    const left = page.getByRole('link', { name: 'T-1', exact: true }).click();
    const dialog = await asked;
    assert.equal(dialog.type(), 'beforeunload');
    await dialog.accept();
    await left;
    await page.getByRole('heading', { name: 'Coupon T-1', exact: true }).waitFor();
    await page.goto(`${bench.url}/coupon/T-1/exam/1`);
    await page.waitForFunction(() => document.querySelector('#f-line').value === 'undercut');
    await page.context().close();
    await bench.remove();
});

test('the digits give a clock', async () => {
    const page = await atTheBench({}, tube);
    const line = page.getByLabel('What was found');
    await page.getByRole('button', { name: 'undercut', exact: true }).click();
    await page.locator('[data-part=size][data-value="0.05"]').click();
    for (const key of ['4', ':', '3', '0']) await page.locator(`[data-key="${key}"]`).click();
    assert.match(await line.inputValue(), /^undercut 0\.05(?: in)? at 4:30$/);
    await page.context().close();
    await bench.remove();
});

test('undo takes the last find back, and finishing goes on to the next coupon', async () => {
    const page = await atTheBench({});
    for (const text of ['undercut 0.1 in at 3 in', 'overlap 0.1 in at 5 in']) {
        await page.getByLabel('What was found').fill(text);
        await page.getByLabel('What was found').press('Enter');
        await page.locator('.finds li', { hasText: text.split(' ')[0] }).waitFor();
    }
    await page.getByRole('button', { name: 'Undo #2' }).click();
    await finds(page, 1);
    await page.getByRole('button', { name: 'These are all: 1' }).click();
    await page.getByText('Finished by A. Field: 1 found').waitFor(); // or what is clicked may move away
    await page.getByRole('link', { name: 'VT of T-2' }).click();
    await page.getByRole('button', { name: 'None found' }).click();
    await page.getByText('Finished by A. Field: none found').waitFor();
    assert.equal(bench.coupon('T-2').exams[0].found, 0);
    assert.deepEqual(page.faults, []);
    await page.context().close();
    await bench.remove();
});

test('without JavaScript a line that stands there is not lost where the exam is finished', async () => {
    await fresh();
    bench.run('register', 'T-1', ...plate);
    bench.run('exam', 'T-1', 'VT', '--examiner', 'A. Field', '--level', 'II');
    await bench.start();
    const page = await bench.open(browser, { javaScriptEnabled: false });
    await page.goto(`${bench.url}/coupon/T-1/exam/1`);
    await page.getByLabel('What was found').fill('crack 0.2 at 3');
    await page.locator('button[form="log"][name="found"]').click(); // None found
    await page.getByText('this line is not logged yet').waitFor();
    assert.equal(bench.coupon('T-1').exams[0].found, undefined);
    assert.equal(await page.getByLabel('What was found').inputValue(), 'crack 0.2 at 3');
    await page.getByRole('button', { name: 'Log it' }).click();
    await page.locator('button[form="log"][name="found"]').click(); // These are all
    await page.getByText('Finished by A. Field: 1 found').waitFor();
    await page.context().close();
    await bench.remove();
});

test('the whole of it goes by keyboard', async () => {
    const page = await atTheBench({});
    const focusOn = async name => {
        for (let i = 0; i < 120; ++i) {
            await page.keyboard.press('Tab');
            if (await page.evaluate(n => (document.activeElement?.textContent ?? '').trim().startsWith(n), name)) return;
        }
        assert.fail(`nothing called ${name} is reached by Tab`);
    };
    await focusOn('undercut');
    await page.keyboard.press('Space');
    await focusOn('1/16');
    await page.keyboard.press('Space');
    await page.getByLabel('What was found').focus();
    await page.keyboard.press('End');
    await page.keyboard.type(' at 2 in');
    await page.keyboard.press('Enter');
    await finds(page, 1);
    await focusOn('These are all: 1');
    await page.keyboard.press('Enter');
    await page.getByText('Finished by A. Field: 1 found').waitFor();
    await page.context().close();
    await bench.remove();
});

test('without JavaScript everything is read and written by forms', async () => {
    await fresh();
    bench.run('register', 'T-1', ...plate);
    await bench.start();
    const page = await bench.open(browser, { javaScriptEnabled: false });
    await page.getByRole('link', { name: 'begin VT' }).click();
    await page.getByLabel('Level', { exact: true }).fill('II');
    await page.getByRole('button', { name: 'Begin VT' }).click();
    assert.equal(await page.locator('#pad').isVisible(), false);
    await page.getByLabel('What was found').fill('nonsense');
    await page.getByRole('button', { name: 'Log it' }).click();
    assert.equal(await page.getByLabel('What was found').inputValue(), 'nonsense');
    await counted(page.getByRole('alert'), 1);
    await page.getByLabel('What was found').fill('undercut 0.1 in at 3 in');
    await page.getByRole('button', { name: 'Log it' }).click();
    // The other one of the name, of the script, is out of sight once the sheet is there.
    await page.locator('button[form="log"][name="found"]').click();
    assert.equal(bench.coupon('T-1').exams[0].found, 1);
    await page.context().close();
    await bench.remove();
});

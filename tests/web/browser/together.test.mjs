// Two people at once, each in a browser of their own: nobody overwrites what he has not seen, and nothing is lost.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { Bench, launch, plate } from './bench.mjs';
import { school } from './school.mjs';

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser?.close(); });

/** Two browsers in which A. Field and B. Other sit. */
async function two(prepare) {
    const bench = new Bench();
    prepare(bench);
    await bench.start();
    const field = await bench.open(browser);
    const other = await bench.openBeside(browser, field);
    await other.goto(`${bench.url}/person`);
    await other.getByLabel('Name').fill('B. Other');
    await other.getByRole('button', { name: 'Sit down' }).click();
    await other.getByRole('link', { name: 'B. Other' }).waitFor();
    const end = async () => {
        await field.context().close();
        await other.context().close();
        await bench.remove();
    };
    return { bench, field, other, end };
}

test('who changes what another changed meanwhile is told so, and overwrites nothing', async () => {
    const { bench, field, other, end } = await two(b => b.run('register', 'T-1', ...plate));
    for (const page of [field, other]) await page.goto(`${bench.url}/coupon/T-1/change`);
    const change = async (page, value) => {
        await page.getByLabel('Welder', { exact: true }).fill(value);
        await page.getByLabel('The reason').fill('misread');
        await page.getByRole('button', { name: 'Correct' }).click();
    };
    await change(field, 'L1');
    await field.getByRole('heading', { name: 'Coupon T-1', exact: true }).waitFor();
    await change(other, 'L2');
    await other.getByText('was changed after this page was opened').waitFor();
    assert.equal(bench.coupon('T-1').fields.welder, 'L1');
    // Seen anew, it can be changed.
    await other.goto(`${bench.url}/coupon/T-1/change`);
    assert.equal(await other.getByLabel('Welder', { exact: true }).inputValue(), 'L1');
    await change(other, 'L2');
    await other.getByRole('heading', { name: 'Coupon T-1', exact: true }).waitFor();
    assert.equal(bench.coupon('T-1').fields.welder, 'L2');
    await end();
});

test('a coupon that another graded meanwhile is not graded over', async () => {
    const { bench, field, other, end } = await two(b => school(b, 1, 1, 0));
    for (const page of [field, other]) await page.goto(`${bench.url}/class/coupon/T-2`);
    await field.getByLabel('Remark').fill('seen again: no pore');
    await field.getByRole('button', { name: 'Grade it passed' }).click();
    await field.getByRole('heading', { name: 'Class', exact: true }).waitFor();
    await other.getByRole('button', { name: 'Grade it failed' }).click();
    await other.getByText('was changed after this page was opened').waitFor();
    assert.equal(bench.coupon('T-2').grade.decision, 'passed');
    await end();
});

test('two who log on one exam lose nothing, and each sees what the other found', async () => {
    const { bench, field, other, end } = await two(b => {
        b.run('register', 'T-1', ...plate);
        b.run('exam', 'T-1', 'VT', '--examiner', 'A. Field', '--level', 'II');
    });
    const pages = [field, other];
    for (const page of pages) {
        await page.goto(`${bench.url}/coupon/T-1/exam/1`);
        await page.locator('#pad').waitFor();
    }
    const log = async (page, from) => {
        for (let i = 0; i < 4; ++i) {
            await page.getByLabel('What was found').fill(`undercut 0.1 in at ${from + i} in`);
            await page.getByRole('button', { name: 'Log it' }).click();
            await page.waitForFunction(() => document.querySelector('#f-line').value === '');
        }
    };
    await Promise.all([log(field, 0), log(other, 4)]);
    for (const page of pages) await page.waitForFunction(() => document.querySelector('#waiting').textContent === '');
    const found = bench.coupon('T-1').exams[0].indications;
    assert.deepEqual(found.map(one => one.at.typed).sort(), Array.from({ length: 8 }, (_, i) => `${i} in`));
    assert.equal(new Set(found.map(one => one.number)).size, 8);
    // Without anybody reloading a page.
    for (const page of pages) await page.waitForFunction(() => document.querySelectorAll('.finds li').length === 8);
    await end();
});

test('what another finished takes no more finds, and says so', async () => {
    const { bench, field, other, end } = await two(b => {
        b.run('register', 'T-1', ...plate);
        b.run('exam', 'T-1', 'VT', '--examiner', 'A. Field', '--level', 'II');
    });
    for (const page of [field, other]) {
        await page.goto(`${bench.url}/coupon/T-1/exam/1`);
        await page.locator('#pad').waitFor();
    }
    await other.getByLabel('What was found').fill('undercut 0.1 in at 3 in');
    await field.getByRole('button', { name: 'None found' }).click();
    await field.getByText('Finished by A. Field: none found').waitFor();
    await other.getByRole('button', { name: 'Log it' }).click();
    await other.locator('[role=alert]').first().waitFor();
    assert.equal(bench.coupon('T-1').exams[0].found, 0);
    assert.equal(bench.coupon('T-1').exams[0].indications?.length ?? 0, 0);
    await end();
});

test('a page that was opened before somebody else sat down stores nothing under that name', async () => {
    const bench = new Bench();
    bench.run('register', 'T-1', ...plate);
    bench.run('exam', 'T-1', 'VT', '--examiner', 'A. Field', '--level', 'II');
    await bench.start();
    const page = await bench.open(browser);
    await page.goto(`${bench.url}/coupon/T-1/exam/1`);
    await page.locator('#pad').waitFor();
    const sit = async name => {
        const seat = await page.context().newPage();
        await seat.goto(`${bench.url}/person`);
        await seat.getByLabel('Name').fill(name);
        await seat.getByRole('button', { name: 'Sit down' }).click();
        await seat.getByRole('link', { name, exact: true }).waitFor();
        await seat.close();
    };
    await sit('W4');
    await page.getByLabel('What was found').fill('undercut 0.1 in at 1 in');
    await page.getByRole('button', { name: 'Log it' }).click();
    await page.locator('#unsent').getByText('somebody else sits here now: it waits until A. Field sits here again').waitFor();
    assert.equal(bench.coupon('T-1').exams[0].indications?.length ?? 0, 0);
    await page.locator('#unsent').getByRole('link', { name: 'See who sits here now' }).click();
    await page.getByRole('link', { name: 'W4' }).waitFor();
    await page.locator('#waiting').getByText('1 waiting, entered by A. Field, sent when A. Field sits here again').waitFor();
    await sit('A. Field');
    await page.reload();
    await page.waitForFunction(() => document.querySelectorAll('.finds li').length === 1);
    await page.waitForFunction(() => document.querySelector('#waiting').textContent === '');
    await page.goto(`${bench.url}/coupon/T-1`);
    await sit('W4');
    await page.getByLabel('Remark').fill('restart is cold');
    await page.getByLabel('Remark').press('Enter');
    await page.getByText('A. Field sat here when this page was opened, and W4 sits here now').waitFor();
    assert.equal(await page.getByLabel('Remark').inputValue(), 'restart is cold');
    await page.getByLabel('Remark').press('Enter');
    await page.getByText('the remark is kept').waitFor();
    await page.context().close();
    await bench.remove();
});

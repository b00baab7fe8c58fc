// What is entered without a connection: nothing is lost, nothing comes twice.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { Bench, launch, plate } from './bench.mjs';

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser?.close(); });

async function atTheBench(options = {}) {
    const bench = new Bench();
    bench.run('register', 'T-1', ...plate);
    bench.run('exam', 'T-1', 'VT', '--examiner', 'A. Field', '--level', 'II');
    await bench.start();
    const page = await bench.open(browser, options);
    await page.goto(`${bench.url}/coupon/T-1/exam/1`);
    await page.locator('#pad').waitFor();
    return { bench, page };
}

async function enter(page, text) {
    await page.getByLabel('What was found').fill(text);
    await page.getByRole('button', { name: 'Log it' }).click();
    await page.waitForFunction(() => document.querySelector('#f-line').value === '');
}

const waiting = (page, text) => page.waitForFunction(t => document.querySelector('#waiting').textContent === t, text);
/** A page that was only just opened has not counted what waits: the record is asked until it says so. */
async function untilLogged(bench, places) {
    for (let tries = 0; tries < 100 && logged(bench).length < places.length; ++tries)
        await new Promise(ok => { setTimeout(ok, 100); });
    assert.deepEqual(logged(bench), places);
}
const logged = bench => (bench.coupon('T-1').exams[0].indications ?? []).map(one => one.at.typed);

test('what is entered offline waits, is seen to wait, and is sent once in its order', async () => {
    const { bench, page } = await atTheBench();
    await page.context().setOffline(true);
    for (const place of ['1 in', '2 in', '3 in']) await enter(page, `undercut 0.1 in at ${place}`);
    await waiting(page, '3 waiting');
    assert.deepEqual(logged(bench), []);
    await page.context().setOffline(false);
    await waiting(page, '');
    assert.deepEqual(logged(bench), ['1 in', '2 in', '3 in']);
    await page.waitForFunction(() => document.querySelectorAll('.finds li').length === 3);
    await page.context().close();
    await bench.remove();
});

test('an answer that is lost after the entry was stored brings it no second time', async () => {
    const { bench, page } = await atTheBench({ serviceWorkers: 'block' });
    let lost = 0;
    await page.route('**/log', async route => {
        if (lost >= 2) return route.continue();
        ++lost;
        await route.fetch();
        return route.abort('connectionreset');
    });
    await enter(page, 'undercut 0.1 in at 1 in');
    await page.waitForFunction(() => document.querySelectorAll('.finds li').length === 1, null, { timeout: 15000 });
    await waiting(page, '');
    assert.equal(lost, 2);
    assert.deepEqual(logged(bench), ['1 in']);
    await page.context().close();
    await bench.remove();
});

test('a refused entry keeps none of the others, and is shown with what it said', async () => {
    const { bench, page } = await atTheBench();
    await page.context().setOffline(true);
    await enter(page, 'undercut 0.1 in at 99 in');
    await enter(page, 'undercut 0.1 in at 2 in');
    await waiting(page, '2 waiting');
    await page.context().setOffline(false);
    await waiting(page, '');
    assert.deepEqual(logged(bench), ['2 in']);
    const refused = page.locator('#refused-later');
    await refused.getByText('undercut 0.1 in at 99 in').waitFor();
    // Until it is thrown away, which takes two taps, the exam is not finished.
    await page.getByRole('button', { name: 'These are all: 1' }).click();
    await page.locator('#unsent').getByText('refused, see above').waitFor();
    assert.equal(bench.coupon('T-1').exams[0]['finished by'], undefined);
    const forGood = refused.getByRole('button', { name: 'Throw it away for good' });
    assert.equal(await forGood.isVisible(), false);
    await refused.getByText('Throw it away', { exact: true }).click();
    await forGood.click();
    await refused.waitFor({ state: 'detached' });
    await page.locator('#unsent').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'These are all: 1' }).click();
    await page.getByText('Finished by').waitFor();
    await page.context().close();
    await bench.remove();
});

test('where the session is over the line is kept, and it is said how to go on', async () => {
    const { bench, page } = await atTheBench({ serviceWorkers: 'block' });
    await enter(page, 'undercut 0.1 in at 1 in');
    await untilLogged(bench, ['1 in']);
    const cookies = await page.context().cookies();
    await page.context().clearCookies();
    const line = page.getByLabel('What was found');
    await line.fill('crack 0.1 in at 2 in');
    await page.locator('#reading').getByText('The bench does not know this browser any more').waitFor();
    assert.equal(await page.locator('#reading :is(h1, form, input)').count(), 0);
    await line.press('Enter');
    await page.locator('#unsent').getByText('crack 0.1 in at 2 in: it waits until you open the new link of the bench').waitFor();
    await waiting(page, '1 waiting until you open the new link of the bench');
    await line.fill('overlap 0.1 in at 3 in');
    await page.context().addCookies(cookies);
    await waiting(page, '');
    await untilLogged(bench, ['1 in', '2 in']);
    await page.reload();
    await page.waitForFunction(() => document.querySelector('#f-line').value === 'overlap 0.1 in at 3 in');
    await page.context().close();
    await bench.remove();
});

test('no sign-in page is drawn where a find is read', async () => {
    const { bench, page } = await atTheBench({ serviceWorkers: 'block' });
    await page.route('**/reading*', route => route.fulfill({ status: 303, headers: { Location: '/sign-in' } }));
    await page.route('**/sign-in', route => route.fulfill({ contentType: 'text/html', body: '<h1>Sign in</h1><form><input></form>' }));
    const line = page.getByLabel('What was found');
    await line.fill('crack 0.1 in at 2 in');
    await page.locator('#reading').getByRole('link', { name: 'Sign in again' }).waitFor();
    assert.equal(await page.locator('#reading :is(h1, form, input)').count(), 0);
    assert.equal(await line.inputValue(), 'crack 0.1 in at 2 in');
    await page.context().close();
    await bench.remove();
});

test('a refused find is put back on the line, and is kept until the mended one is taken', async () => {
    const { bench, page } = await atTheBench();
    await page.context().setOffline(true);
    await enter(page, 'undercut 0.1 in at 99 in');
    await page.context().setOffline(false);
    const refused = page.locator('#refused-later');
    await refused.getByText('undercut 0.1 in at 99 in').waitFor();
    await page.goto(`${bench.url}/coupon/T-1`);
    await refused.getByRole('button', { name: 'Put it back on the line' }).click();
    await page.waitForFunction(() => document.querySelector('#f-line')?.value === 'undercut 0.1 in at 99 in');
    await refused.waitFor();
    // A tap adds to it, as to any line.
    await page.locator('[data-part=side][data-value=root]').click();
    assert.equal(await page.getByLabel('What was found').inputValue(), 'undercut 0.1 in at 99 in root');
    await enter(page, 'undercut 0.1 in at 3 in');
    await refused.waitFor({ state: 'detached' });
    await untilLogged(bench, ['3 in']);
    await page.context().close();
    await bench.remove();
});

test('another find than the one that was put back leaves the refused one where it is', async () => {
    const { bench, page } = await atTheBench();
    await page.context().setOffline(true);
    await enter(page, 'undercut 0.1 in at 99 in');
    await page.context().setOffline(false);
    const refused = page.locator('#refused-later');
    await refused.getByRole('button', { name: 'Put it back on the line' }).click();
    await page.getByLabel('What was found').fill('');
    await enter(page, 'crack 0.1 in at 4 in');
    await untilLogged(bench, ['4 in']);
    await refused.getByText('undercut 0.1 in at 99 in').waitFor();
    await page.context().close();
    await bench.remove();
});

test('without a connection no form leaves the page, and what it holds stays', async () => {
    const { bench, page } = await atTheBench({ serviceWorkers: 'block' });
    await enter(page, 'undercut 0.1 in at 1 in');
    await page.getByRole('button', { name: 'Undo #1' }).waitFor();
    await page.context().setOffline(true);
    await page.getByRole('button', { name: 'Undo #1' }).click();
    await page.getByText('No connection to the bench').waitFor();
    await page.getByRole('button', { name: 'These are all: 1' }).click();
    await page.waitForFunction(() => document.querySelectorAll('.refused.away').length === 2);
    await page.context().setOffline(false);
    await page.getByRole('button', { name: 'Undo #1' }).click();
    await page.getByText('Nothing is logged yet').waitFor();
    await page.goto(`${bench.url}/coupon/T-1`);
    const text = page.getByLabel('Remark');
    await text.fill('seen by lamp');
    await page.context().setOffline(true);
    await text.press('Enter');
    await page.getByText('No connection to the bench').waitFor();
    assert.equal(await text.inputValue(), 'seen by lamp');
    await page.context().setOffline(false);
    await text.press('Enter');
    await page.waitForFunction(() => document.body.innerText.includes('seen by lamp'));
    await page.context().close();
    await bench.remove();
});

test('a page that is reloaded offline opens, and what waited is sent when the connection is back', async () => {
    const { bench, page } = await atTheBench();
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.reload();
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await page.reload();
    await page.context().setOffline(true);
    await enter(page, 'undercut 0.1 in at 1 in');
    await page.reload();
    await page.locator('#pad').waitFor();
    await waiting(page, '1 waiting');
    await enter(page, 'undercut 0.1 in at 2 in');
    await page.context().setOffline(false);
    await waiting(page, '');
    assert.deepEqual(logged(bench), ['1 in', '2 in']);
    await page.context().close();
    await bench.remove();
});

test('the bench is started anew on its port: what waited is sent once the browser has come in again', async () => {
    const { bench, page } = await atTheBench();
    const port = new URL(bench.url).port;
    await bench.end();
    await enter(page, 'undercut 0.1 in at 1 in');
    await waiting(page, '1 waiting');
    await bench.start(port);
    await page.goto(bench.link);
    await untilLogged(bench, ['1 in']);
    await waiting(page, '');
    await page.context().close();
    await bench.remove();
});

test('two pages of one browser send one entry once', async () => {
    const { bench, page } = await atTheBench();
    const other = await page.context().newPage();
    await other.goto(page.url());
    await page.context().setOffline(true);
    await enter(page, 'undercut 0.1 in at 1 in');
    await enter(other, 'undercut 0.1 in at 2 in');
    await page.context().setOffline(false);
    await waiting(page, '');
    await waiting(other, '');
    assert.deepEqual(logged(bench).sort(), ['1 in', '2 in']);
    await page.context().close();
    await bench.remove();
});

test('what somebody entered is not sent under the name of who sits there now', async () => {
    const { bench, page } = await atTheBench({ serviceWorkers: 'block' });
    await page.context().setOffline(true);
    await enter(page, 'undercut 0.1 in at 1 in');
    await page.route('**/log', route => route.abort());
    await page.context().setOffline(false);
    await page.goto(`${bench.url}/person`);
    await page.getByLabel('Name').fill('B. Other');
    await page.getByRole('button', { name: 'Sit down' }).click();
    await page.unroute('**/log');
    await page.goto(`${bench.url}/coupon/T-1`);
    await waiting(page, '1 waiting, entered by A. Field, sent when A. Field sits here again');
    assert.deepEqual(logged(bench), []);
    await page.goto(`${bench.url}/coupon/T-1/exam/1`);
    await page.locator('#unsent').getByText('entered by A. Field, it waits until A. Field sits here again').waitFor();
    await page.goto(`${bench.url}/person`);
    await page.getByLabel('Name').fill('A. Field');
    await page.getByRole('button', { name: 'Sit down' }).click();
    await untilLogged(bench, ['1 in']);
    await waiting(page, '');
    await page.context().close();
    await bench.remove();
});

test('nobody finishes an exam while a find of it waits', async () => {
    const { bench, page } = await atTheBench({ serviceWorkers: 'block' });
    await page.route('**/log', route => route.abort('connectionrefused'));
    await enter(page, 'crack 0.1 in at 4 in');
    await page.locator('#unsent').waitFor();
    assert.match(await page.locator('#unsent').innerText(), /Not on record yet.*\n*.*crack 0\.1 in at 4 in/);
    await page.getByRole('button', { name: 'None found' }).click();
    await page.waitForTimeout(500);
    assert.equal(bench.coupon('T-1').exams[0]['finished by'], undefined);
    await page.unroute('**/log');
    await untilLogged(bench, ['4 in']);
    await waiting(page, ''); // the answer has come, too: before that nobody finishes
    await page.getByRole('button', { name: 'These are all: 1' }).click();
    await page.getByText('Finished by').waitFor();
    assert.equal(await page.locator('#unsent').count(), 0);
    await page.context().close();
    await bench.remove();
});

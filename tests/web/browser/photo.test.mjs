// A photo from the tablet's camera, with modules, without them and without a connection; and measuring on it.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { Bench, counted, launch, plate, tabTo } from './bench.mjs';

let browser, picture, hash;
before(async () => {
    browser = await launch();
    // A ruler of 600 pixels, and a crack of 60.
    const page = await browser.newPage();
    const url = await page.evaluate(() => {
        const canvas = document.createElement('canvas');
        canvas.width = 800;
        canvas.height = 400;
        const pen = canvas.getContext('2d');
        pen.fillStyle = '#999';
        pen.fillRect(0, 0, 800, 400);
        pen.fillStyle = '#000';
        pen.fillRect(100, 300, 600, 20);
        pen.fillRect(300, 100, 60, 2);
        return canvas.toDataURL('image/png');
    });
    await page.close();
    picture = { name: 'crack.png', mimeType: 'image/png', buffer: Buffer.from(url.split(',')[1], 'base64') };
    hash = createHash('sha256').update(picture.buffer).digest('hex');
});
after(async () => { await browser?.close(); });

async function withFind(use) {
    const bench = new Bench();
    bench.run('register', 'T-1', ...plate);
    bench.run('exam', 'T-1', 'MT', '--examiner', 'A. Field', '--level', 'II');
    bench.run('log', 'T-1', 'crack 0.1 in at 2 in');
    await bench.start();
    try {
        await use(bench);
    } finally {
        await bench.remove();
    }
}

async function take(page, bench) {
    await page.goto(`${bench.url}/coupon/T-1`);
    await page.getByLabel('Take a photo').setInputFiles(picture);
    await page.getByLabel('What it shows').selectOption('#1 crack');
    await page.getByLabel('What is to be seen').fill('as found');
    await page.getByRole('button', { name: 'Keep the photo' }).click();
}

for (const javaScriptEnabled of [true, false])
    test(`a photo is taken and stands by its find, with JavaScript ${javaScriptEnabled ? 'on' : 'off'}`, () =>
        withFind(async bench => {
            const page = await bench.open(browser, { javaScriptEnabled });
            await take(page, bench);
            await page.getByText('photo 1 is kept').waitFor();
            const [photo] = bench.coupon('T-1').photos;
            assert.equal(photo.photo, hash);
            assert.equal(photo.find, 1);
            assert.equal(photo.remark, 'as found');
            await page.getByAltText('Photo 1: as found').waitFor();
            const shown = await page.context().request.get(`${bench.url}/coupon/T-1/photo/${hash}`);
            assert.equal(shown.headers()['content-type'], 'image/png');
            assert.ok(Buffer.compare(await shown.body(), picture.buffer) === 0);
            // What is none is refused, and said.
            await page.getByLabel('Take a photo').setInputFiles({ name: 'x.png', mimeType: 'image/png', buffer: Buffer.from('%PDF-1.7') });
            await page.getByRole('button', { name: 'Keep the photo' }).click();
            await page.getByText('is a PDF').waitFor();
            assert.equal(bench.coupon('T-1').photos.length, 1);
            assert.deepEqual(page.faults.filter(one => !one.includes('422')), []);
        }));

test('a photo that is taken without a connection waits, and is sent once when it is back', () =>
    withFind(async bench => {
        const page = await bench.open(browser);
        await page.goto(`${bench.url}/coupon/T-1`);
        await page.context().setOffline(true);
        await page.getByLabel('Take a photo').setInputFiles(picture);
        await page.getByRole('button', { name: 'Keep the photo' }).click();
        await page.getByText('1 waiting').waitFor();
        assert.equal(bench.coupon('T-1').photos, undefined);
        await page.context().setOffline(false);
        await page.waitForFunction(() => document.querySelector('#waiting').textContent === '');
        const { photos } = bench.coupon('T-1');
        assert.deepEqual(photos.map(one => one.photo), [hash]);
    }));

const place = async (page, x, y) => {
    const at = await page.locator('#measuring img').boundingBox();
    await page.mouse.click(at.x + x * at.width / 800, at.y + y * at.height / 400);
};

test('a find is measured by taps on a known length and on it, and entered as a line of its own', () =>
    withFind(async bench => {
        const page = await bench.open(browser, { viewport: { width: 1000, height: 900 } });
        await take(page, bench);
        await page.getByText('photo 1 is kept').waitFor();
        await page.getByRole('link', { name: 'Measure on it' }).click();
        await page.getByText('Now: 1 known length, one end').waitFor();
        for (const [x, y] of [[100, 310], [700, 310], [300, 100], [360, 100]]) await place(page, x, y);
        await page.getByLabel('Its length').fill('2 in');
        await page.getByLabel('Which measure it is').selectOption('size');
        await page.getByRole('button', { name: 'Work it out' }).click();
        // 2 in * 60 / 600; u = 0.2 in * sqrt(18 / 600^2 + 18 / 60^2) = 0.0143 in.
        const line = await page.getByLabel('The line that is entered').inputValue();
        const [, size, off] = /^crack size (0\.\d+) in at 2 in # measured on photo [0-9a-f]{12} ± (0\.\d+) in$/.exec(line) ?? [];
        assert.ok(Number(size) >= 0.197 && Number(size) <= 0.204, line);
        assert.ok(Number(off) >= 0.0142 && Number(off) <= 0.017, line);
        await page.getByText('It does not cover a picture that was taken slanting').waitFor();
        // With another length it would be of what does not stand there any more; the page's module sees to that.
        await page.waitForLoadState('load');
        await page.getByLabel('Its length').fill('1 in');
        await counted(page.locator('#result'), 0);
        await page.getByLabel('Its length').fill('2 in');
        await page.getByRole('button', { name: 'Work it out' }).click();
        // The person types the value.
        await page.getByLabel('The line that is entered').fill(line.replace(/size 0\.\d+ in/, 'size 0.22 in'));
        await page.getByRole('button', { name: 'Correct #1' }).click();
        await page.getByText('#1 is corrected').waitFor();
        const [find] = bench.coupon('T-1').exams[0].indications;
        assert.equal(find.size.typed, '0.22 in');
        assert.match(find.remark, new RegExp(`measured on photo ${hash.slice(0, 12)} ± 0\\.`));
        assert.deepEqual(page.faults, []);
    }));

test('the marks are set and moved by the keyboard alone', () =>
    withFind(async bench => {
        const page = await bench.open(browser, { viewport: { width: 1000, height: 900 } });
        await take(page, bench);
        await page.getByText('photo 1 is kept').waitFor();
        await page.goto(`${bench.url}/coupon/T-1/photo/${hash}/measure`);
        await page.getByText('Now: 1 known length, one end').waitFor();
        await tabTo(page, '2 known length');
        await page.keyboard.press('Enter');
        for (let i = 0; i < 3; ++i) await page.keyboard.press('Shift+ArrowRight');
        await page.keyboard.press('ArrowUp');
        const value = name => page.locator(`[name=${name}]`).inputValue();
        assert.equal(Number(await value('known-2-x')), 430);
        assert.equal(Number(await value('known-2-y')), 199);
        assert.equal(await value('known-1-x'), '');
        // Not beyond the picture.
        for (let i = 0; i < 60; ++i) await page.keyboard.press('Shift+ArrowRight');
        assert.equal(Number(await value('known-2-x')), 800);
    }));

test('without JavaScript the eight numbers are typed', () =>
    withFind(async bench => {
        const page = await bench.open(browser, { javaScriptEnabled: false });
        await take(page, bench);
        await page.getByRole('link', { name: 'Measure on it' }).click();
        const fill = (name, value) => page.locator(`[name=${name}]`).fill(value);
        await fill('known', '2 in');
        for (const [name, x, y] of [['known-1', '100', '310'], ['known-2', '700', '310'], ['find-1', '300', '100'], ['find-2', '360', '100']]) {
            await fill(`${name}-x`, x);
            await fill(`${name}-y`, y);
        }
        await page.getByRole('button', { name: 'Work it out' }).click();
        await page.getByText('0.200 in ± 0.015 in').waitFor();
        await fill('find-2-x', 'far');
        await page.getByRole('button', { name: 'Work it out' }).click();
        await page.getByText("'far' is no place of a mark").waitFor();
    }));

test('photos and marks are read by a screen reader, and fit a narrow page', () =>
    withFind(async bench => {
        const page = await bench.open(browser, { viewport: { width: 320, height: 700 } });
        await take(page, bench);
        await page.getByText('photo 1 is kept').waitFor();
        const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
        for (const path of ['/coupon/T-1', `/coupon/T-1/photo/${hash}/measure?known=2+in&known-1-x=100&known-1-y=310&known-2-x=700&known-2-y=310&find-1-x=300&find-1-y=100&find-2-x=360&find-2-y=100`]) {
            await page.goto(bench.url + path);
            await page.waitForLoadState();
            assert.ok(await page.evaluate(() => document.documentElement.scrollWidth) <= 320, path);
            await page.evaluate(axe);
            const { violations } = await page.evaluate(() => axe.run());
            assert.deepEqual(violations.map(one => `${one.id}: ${one.nodes.map(node => node.html)}`), [], path);
        }
    }));

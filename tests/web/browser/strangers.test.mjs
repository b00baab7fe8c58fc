// Who is not let in, and names and files that mean harm, as they come over the wire.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { request } from 'node:http';
import { Bench, launch, plate } from './bench.mjs';

// A name is of one person, so it has no slash.
const named = `<img src=x onerror="document.title='harm'">"'`;
const hostile = `<img src=x onerror="document.title='harm'"><script>1</script>"'`;

let browser, bench, page, cookie, token;
before(async () => {
    browser = await launch();
    bench = new Bench();
    bench.run('register', 'T-1', ...plate, '--welder', named, '--cohort', hostile, '--note', hostile);
    bench.run('exam', 'T-1', 'VT', '--examiner', named, '--level', 'II', '--note', hostile, '--sure');
    bench.run('log', 'T-1', `undercut 0.1 in at 3 in # ${hostile}`);
    bench.run('remark', 'T-1', hostile);
    bench.run('enrol', 'L1', '--name', named);
    bench.run('person', named, '--role', 'technician');
    await bench.start();
    page = await bench.open(browser);
    cookie = (await page.context().cookies()).map(one => `${one.name}=${one.value}`).join('; ');
    token = await page.locator('meta[name=bench-token]').getAttribute('content');
});
after(async () => {
    await browser?.close();
    await bench?.remove();
});

/** What the bench answers to a request as no browser would send it. */
const asked = (method, path, headers, body = '') => new Promise((ok, no) => {
    const { hostname, port } = new URL(bench.url);
    // A connection of its own: one that was kept may be closed while a command is waited for.
    const sent = request({ hostname, port, method, path, agent: false, headers: { 'content-length': Buffer.byteLength(body), ...headers } }, answer => {
        let text = '';
        answer.setEncoding('utf8');
        answer.on('data', more => { text += more; });
        answer.on('end', () => ok({ status: answer.statusCode, text }));
    });
    sent.on('error', no);
    sent.end(body);
});
const kept = () => JSON.stringify(bench.coupon('T-1'));

test('another host is not answered, whatever cookie it brings', async () => {
    const port = new URL(bench.url).port;
    for (const host of ['evil.example', `evil.example:${port}`, '127.0.0.1', `127.0.0.1.evil.example:${port}`, `[::1]:${port}`]) {
        const { status, text } = await asked('GET', '/coupon/T-1', { host, cookie });
        assert.equal(status, 421, host);
        assert.ok(!text.includes('undercut'), host);
    }
    assert.equal((await asked('GET', '/coupon/T-1', { host: `localhost:${port}`, cookie })).status, 200);
});

test('nothing is written for another origin, nor without the word of the session', async () => {
    const before = kept();
    const form = `text=forged&token=${token}`;
    const type = { 'content-type': 'application/x-www-form-urlencoded', cookie };
    for (const origin of ['http://evil.example', 'null', 'https://127.0.0.1', bench.url.replace('http', 'https'), `${bench.url}.evil.example`])
        assert.equal((await asked('POST', '/coupon/T-1/remark', { ...type, origin }, form)).status, 403, origin);
    for (const wrong of ['text=forged', 'text=forged&token=', `text=forged&token=${'0'.repeat(64)}`])
        assert.equal((await asked('POST', '/coupon/T-1/remark', { ...type, origin: bench.url }, wrong)).status, 403);
    assert.equal((await asked('POST', '/coupon/T-1/remark', { ...type, cookie: '', origin: bench.url }, form)).status, 403);
    assert.equal(kept(), before);
    assert.equal((await asked('POST', '/coupon/T-1/remark', { ...type, origin: bench.url }, form)).status, 303);
    assert.notEqual(kept(), before);
});

test('a refused body is never taken for the next request', async () => {
    const inner = `POST /coupon/T-1/remark HTTP/1.1\r\nHost: ${new URL(bench.url).host}\r\nCookie: ${cookie}\r\nOrigin: ${bench.url}\r\n` +
        `Content-Type: application/x-www-form-urlencoded\r\nContent-Length: ${`text=smuggled&token=${token}`.length}\r\n\r\ntext=smuggled&token=${token}`;
    const { status } = await asked('POST', '/coupon/T-1/remark', { host: 'evil.example', cookie, connection: 'keep-alive' }, inner);
    assert.equal(status, 421);
    assert.ok(!kept().includes('smuggled'));
});

test('a file where none is expected, a long one and one with a path for a name store nothing', async () => {
    const before = kept();
    const edge = 'x-edge';
    const part = (name, file, type, bytes) => `--${edge}\r\nContent-Disposition: form-data; name="${name}"${file === null ? '' : `; filename="${file}"`}` +
        `${type ? `\r\nContent-Type: ${type}` : ''}\r\n\r\n${bytes}\r\n`;
    const sent = (...parts) => asked('POST', '/coupon/T-1/remark',
        { cookie, origin: bench.url, 'content-type': `multipart/form-data; boundary=${edge}` }, `${parts.join('')}--${edge}--\r\n`);
    const word = part('token', null, '', token);
    for (const [file, type, bytes] of [['../../../../tmp/harm.html', 'text/html', hostile], ['x.svg', 'image/svg+xml', '<svg onload="1"/>'],
                                       ['big.jpg', 'image/jpeg', 'x'.repeat(40_000_000)]]) {
        const status = await sent(word, part('text', file, type, bytes)).then(answer => answer.status, () => 'cut off');
        assert.ok(status === 'cut off' || status >= 400, `${file}: ${status}`);
    }
    assert.equal(kept(), before);
    // It answers others as before.
    assert.equal((await asked('GET', '/coupon/T-1', { cookie })).status, 200);
});

test('a name that holds a script is a name on every page that says it', async () => {
    const person = encodeURIComponent(named);
    for (const path of ['/', '/person', '/coupon/T-1', '/coupon/T-1/change', '/coupon/T-1/exam/1', '/coupon/T-1/exam/1/conditions', '/class',
                        '/class/coupon/T-1', '/class/summary', '/class/learners', `/class/learner/${person}`, `/class?cohort=${person}`,
                        '/welders', `/welders?mark=${person}`, `/welder/${person}`, `/welder/${person}/coupon/T-1`, '/welder/L1', '/keeper/people',
                        `/keeper/people/${person}`, `/coupon/T-1/exam/1/reading?line=${person}`, `/coupon/${person}`]) {
        const answer = await page.goto(bench.url + path);
        assert.ok(answer.status() < 500, `${path}: ${answer.status()}`);
        await page.waitForLoadState('networkidle');
        assert.notEqual(await page.title(), 'harm', path);
        assert.equal(await page.locator('img, script:not([src])').count(), 0, path);
    }
});

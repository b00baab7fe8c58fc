// The way in for tablets as it is run: Debian's nginx with the configuration that is written, TLS by the shop's own
// authority, and the bench behind it.
import { after, before, test } from 'node:test';
import assert from 'node:assert/strict';
import { spawn, execFileSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, statSync } from 'node:fs';
import { request } from 'node:https';
import { createServer, connect } from 'node:net';
import { createInterface } from 'node:readline';
import { join } from 'node:path';
import { Bench, plate } from './bench.mjs';

const host = 'bench.shop.internal', password = 'ten letters and more';
let bench, folder, port, behind, proxy, running;

const freePort = async () => {
    const server = createServer().listen(0, '127.0.0.1');
    await once(server, 'listening');
    const { port: free } = server.address();
    server.close();
    await once(server, 'close');
    return free;
};
const answers = at => new Promise(ok => {
    const socket = connect(at, '127.0.0.1', () => { socket.destroy(); ok(true); }).on('error', () => ok(false));
});

before(async () => {
    bench = new Bench();
    bench.run('register', 'T-1', ...plate, '--welder', 'L1');
    bench.run('register', 'T-2', ...plate, '--welder', 'L2');
    for (const [name, role] of [['Tess', 'technician'], ['Inge', 'instructor'], ['Kim', 'keeper'], ['L1', 'welder']]) {
        bench.run('person', name, '--role', role);
        execFileSync(process.env.BEADBOOK_PROGRAM, ['account', name, '--set-password'], { env: bench.env, input: `${password}\n` });
    }
    folder = join(bench.folder, 'door');
    port = await freePort();
    behind = await freePort();
    bench.run('bench', '--nginx', folder, '--host', host, '--tls-port', String(port), '--port', String(behind));
    running = spawn(process.env.BEADBOOK_PROGRAM, ['bench', '--sign-in', folder, '--json'],
                    { env: bench.env, stdio: ['ignore', 'pipe', 'inherit'] });
    const line = once(createInterface(running.stdout), 'line').then(([text]) => text);
    const ended = once(running, 'exit').then(([code]) => { throw new Error(`the bench ended with ${code}`); });
    ended.catch(() => {});
    assert.equal(JSON.parse(await Promise.race([line, ended])).link, `https://${host}:${port}/`);
    proxy = spawn('/usr/sbin/nginx', ['-c', join(folder, 'nginx.conf'), '-g', 'daemon off;'], { stdio: ['ignore', 'inherit', 'inherit'] });
    while (!await answers(port)) {
        assert.equal(proxy.exitCode, null, 'nginx ended');
        await new Promise(ok => setTimeout(ok, 20));
    }
});
after(async () => {
    for (const one of [proxy, running])
        if (one && one.exitCode === null) {
            one.kill('SIGTERM');
            await once(one, 'exit');
        }
    await bench?.remove();
});

/** As a tablet asks that trusts the authority and nothing else. */
const asked = (method, path, { cookie = '', origin = `https://${host}:${port}`, form = {}, ...more } = {}) => new Promise((ok, no) => {
    const body = method === 'GET' ? '' : new URLSearchParams(form).toString();
    const headers = { host: `${host}:${port}`, cookie, 'content-length': Buffer.byteLength(body), 'content-type': 'application/x-www-form-urlencoded',
                      ...(method === 'GET' || !origin ? {} : { origin }), ...more.headers };
    const sent = request({ host: '127.0.0.1', port, servername: more.servername ?? host, method, path, headers, agent: false,
                           ca: readFileSync(join(folder, 'authority.crt')) }, answer => {
        let text = '';
        answer.setEncoding('utf8');
        answer.on('data', data => { text += data; });
        answer.on('end', () => ok({ status: answer.statusCode, headers: answer.headers, text }));
    });
    sent.on('error', no);
    sent.end(more.body ?? body);
});
const signIn = async (name, word = password) => {
    const { status, headers } = await asked('POST', '/sign-in', { form: { name, password: word } });
    return { status, cookie: headers['set-cookie']?.[0].split(';')[0] };
};

test('each role signs in through TLS and sees its own', async () => {
    for (const [name, path, status] of [['Tess', '/coupon/T-2', 200], ['Inge', '/class', 200], ['Kim', '/keeper/people', 200],
                                        ['Tess', '/class', 403], ['Inge', '/keeper', 403], ['L1', '/welder/L1', 200]]) {
        const { cookie } = await signIn(name);
        const page = await asked('GET', path, { cookie });
        assert.equal(page.status, status, `${name} ${path}`);
        assert.ok(page.headers['strict-transport-security']);
    }
    assert.equal((await asked('GET', '/coupon/T-1')).headers.location, '/sign-in');
});

test('a welder who asks for another\'s coupon gets the answer of one that there is not', async () => {
    const { cookie } = await signIn('L1');
    assert.equal((await asked('GET', '/coupon/T-1', { cookie })).headers.location, '/welder/L1/coupon/T-1');
    const others = await asked('GET', '/coupon/T-2', { cookie }), none = await asked('GET', '/coupon/T-9', { cookie });
    assert.equal(others.status, 404);
    assert.equal(others.text, none.text);
});

test('nothing is written for another origin', async () => {
    const { cookie } = await signIn('Tess');
    const token = (await asked('GET', '/coupon/T-1', { cookie })).text.match(/name="bench-token" content="([0-9a-f]{64})"/)[1];
    const form = { text: 'a remark', token };
    for (const origin of ['https://evil.example', `http://${host}:${port}`, 'null', ''])
        assert.equal((await asked('POST', '/coupon/T-1/remark', { cookie, form, origin })).status, 403, origin);
    assert.ok(!JSON.stringify(bench.coupon('T-1')).includes('a remark'));
    assert.equal((await asked('POST', '/coupon/T-1/remark', { cookie, form })).status, 303);
    assert.ok(JSON.stringify(bench.coupon('T-1')).includes('a remark'));
});

test('wrong passwords are limited, whatever address is claimed', async () => {
    for (let i = 0; i < 5; ++i)
        assert.equal((await signIn('Inge', 'another word, wrong')).status, 403);
    const claimed = await asked('POST', '/sign-in', { form: { name: 'Inge', password }, headers: { 'x-forwarded-for': '192.0.2.1' } });
    assert.equal(claimed.status, 429);
});

test('another name is not answered, too much is refused, and the files are closed', async () => {
    await assert.rejects(asked('GET', '/sign-in', { servername: 'other.internal' }));
    assert.equal((await asked('GET', '/sign-in', { headers: { host: 'other.internal' } })).status, 421);
    const long = await asked('POST', '/sign-in', { body: '', headers: { 'content-length': String(9 << 20) } }).catch(() => ({ status: 413 }));
    assert.equal(long.status, 413);
    for (const name of ['authority.key', 'server.key', 'door.json', 'nginx.conf', 'proxy.conf'])
        assert.equal(statSync(join(folder, name)).mode & 0o077, 0, name);
    const before = readFileSync(join(folder, 'authority.crt'), 'utf8');
    bench.run('bench', '--nginx', join(bench.folder, 'door'), '--host', host, '--tls-port', String(port), '--port', String(behind));
    assert.equal(readFileSync(join(folder, 'authority.crt'), 'utf8'), before);
});

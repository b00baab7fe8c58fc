// The modules of the pages are what their types say: no name is misspelt, no answer taken for another.
import { test } from 'node:test';
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const folder = process.env.BEADBOOK_MODULES;
const tsc = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin', 'tsc');

const check = files => {
    writeFileSync('tsconfig.json', JSON.stringify({
        compilerOptions: { allowJs: true, checkJs: true, noEmit: true, target: 'es2022', module: 'esnext',
                           moduleResolution: 'bundler', lib: ['es2022', 'dom', 'dom.iterable'], types: [], strict: false },
        files,
    }));
    return spawnSync(process.execPath, [tsc, '-p', 'tsconfig.json'], { encoding: 'utf8' });
};

test('the modules of the pages hold together', () => {
    // A worker has names of its own, which no page knows.
    const files = readdirSync(folder).filter(name => name.endsWith('.js') && name !== 'worker.js');
    assert.ok(files.length >= 3);
    const run = check(files.map(name => join(folder, name)));
    assert.equal(run.stdout + run.stderr, '');
    assert.equal(run.status, 0);
});

test('a module that does not is noticed', () => {
    writeFileSync('wrong.js', "document.querySelector('a').hrefs = 1;\nundeclared();\n");
    const run = check(['wrong.js']);
    assert.match(run.stdout, /undeclared/);
    assert.notEqual(run.status, 0);
});

// A bench of its own for a test: the program over a fresh record, and a browser that came in by its link.
import assert from 'node:assert/strict';
import { spawn, execFileSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { chromium } from 'playwright-core';

const program = process.env.BEADBOOK_PROGRAM;
if (!program) throw new Error('BEADBOOK_PROGRAM names the program that is tested');

export const launch = () => chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium-headless-shell' });

export class Bench {
    constructor() {
        this.folder = mkdtempSync(join(tmpdir(), 'beadbook-bench-'));
        this.env = { ...process.env, BEADBOOK_BOOK: join(this.folder, 'book.db'), BEADBOOK_USER: 'tester',
                     BEADBOOK_SETTINGS: join(this.folder, 'none.yaml') };
    }

    /** Runs a command of the program over the same record, and returns what it prints. */
    run(...words) {
        return execFileSync(program, words, { env: this.env, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
    }

    /** The coupon as the record has it. */
    coupon(mark) {
        return JSON.parse(this.run('show', mark, '--json'));
    }

    async start(port = 'any') {
        this.process = spawn(program, ['bench', '--port', String(port), '--as', 'A. Field', '--no-open', '--json'],
                             { env: this.env, stdio: ['ignore', 'pipe', 'inherit'] });
        const line = once(createInterface(this.process.stdout), 'line').then(([text]) => text);
        const ended = once(this.process, 'exit').then(([code]) => { throw new Error(`the bench ended with ${code} ${this.process.signalCode ?? ''}`); });
        ended.catch(() => {});
        // A test that failed before it ended its bench must not keep the others waiting.
        this.process.unref();
        const { process: started } = this;
        process.on('exit', () => started.kill('SIGKILL'));
        this.link = JSON.parse(await Promise.race([line, ended])).link;
        this.process.stdout.unref();
        this.url = new URL(this.link).origin;
        return this;
    }

    /** Ends it as Ctrl-C does, and returns its exit code. */
    async end() {
        const exit = once(this.process, 'exit');
        this.process.kill('SIGTERM');
        return (await exit)[0];
    }

    async remove() {
        if (this.process && this.process.exitCode === null) await this.end();
        rmSync(this.folder, { recursive: true, force: true });
    }

    /** A page of a browser that came in; its console and its failed requests are kept as `page.faults`. */
    async open(browser, options = {}) {
        const context = await browser.newContext(options);
        context.setDefaultTimeout(120_000); // a slow machine under load is no fault of a page
        const page = await context.newPage();
        page.faults = [];
        page.on('console', message => {
            if (['error', 'warning'].includes(message.type())) page.faults.push(message.text());
        });
        page.on('pageerror', error => page.faults.push(String(error)));
        page.on('request', request => {
            if (!request.url().startsWith(this.url) && !request.url().startsWith('blob:') &&
                !request.url().startsWith('data:'))
                page.faults.push(`asks another host: ${request.url()}`);
        });
        await page.goto(this.link);
        return page;
    }

    /** A second browser: the first one asks for a link. */
    async openBeside(browser, page, options = {}) {
        const other = await page.context().newPage();
        await other.goto(`${this.url}/person`);
        await other.getByRole('button', { name: 'Make a link' }).click();
        this.link = await other.locator('code').textContent();
        await other.close();
        return this.open(browser, options);
    }
}

/** So many of them are there: now, or once the page that is being opened has come. Its style sheet is there then, too. */
export async function counted(where, count) {
    for (let left = 100; left > 0 && await where.count() !== count; --left) await setTimeout(50);
    assert.equal(await where.count(), count);
    await where.page().waitForLoadState('load');
}

/** Presses Tab until what has the focus is called so, and says how often. */
export async function tabTo(page, name) {
    for (let pressed = 1; pressed < 200; ++pressed) {
        await page.keyboard.press('Tab');
        const at = await page.evaluate(() => {
            const one = /** @type {HTMLInputElement} */ (document.activeElement);
            return (one?.labels?.[0]?.textContent ?? one?.textContent ?? '').trim();
        });
        if (at.startsWith(name)) return pressed;
    }
    throw new Error(`nothing called ${name} is reached by Tab`);
}

/** A plate with one weld and criteria that ask for VT and MT. */
export const plate = ['--criteria', 'mil-hdbk-1890-table-3', '--class', '2', '--joint', 'groove', '--form', 'plate',
                      '--thickness', '3/8 in', '--weld-length', '8 in', '--magnetic', 'yes', '--process', 'SMAW'];
/** A tube with a girth weld. */
export const tube = ['--criteria', 'mil-hdbk-1890-table-3', '--class', '2', '--joint', 'groove', '--form', 'tube',
                     '--seam', 'girth', '--diameter', '2 in', '--thickness', '0.15 in', '--magnetic', 'yes',
                     '--process', 'GTAW'];

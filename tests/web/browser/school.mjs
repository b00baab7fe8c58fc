// A class on record, for the tests of instructor and welder, and an instructor's hand, each of whose actions counts.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { tabTo } from './bench.mjs';

/**
 * Coupons T-1 on (or of another series), each by a learner of its own, L1 on: first those that the judge accepts for class 2, then those that
 * it rejects (a pore that only class 3 allows; every third a crack, which none does), then those whose exams are not all
 * done. The limits are those of MIL-HDBK-1890(AT), Table III, page 11: a pore of 0.080 in for class 2 and of 0.100 in
 * for class 3 in 3/8 in, no crack.
 */
export function school(bench, accepted, rejected, unsaid, series = 'T-') {
    const count = accepted + rejected + unsaid;
    const rows = ['coupon,welder,cohort,criteria,class,joint,form,thickness,weld-length,magnetic,process,material,welded'];
    for (let i = 1; i <= count; ++i)
        rows.push(`${series}${i},L${i},night,mil-hdbk-1890-table-3,2,groove,plate,3/8 in,8 in,yes,SMAW,steel,2026-11-02`);
    const file = join(bench.folder, 'class.csv');
    writeFileSync(file, rows.join('\n') + '\n');
    bench.run('import', 'csv', 'coupons', '--file', file);
    const exam = (first, last, methods, ...more) => last < first ||
        bench.run('exam', first === last ? `${series}${first}` : `${series}${first}..${series}${last}`, methods, '--examiner', 'A. Field', '--level', 'II', ...more);
    exam(1, accepted, 'VT,MT,RT', '--found', 'none');
    exam(accepted + 1, accepted + rejected, 'VT,MT', '--found', 'none');
    exam(accepted + 1, accepted + rejected, 'RT');
    for (let i = accepted + 1; i <= accepted + rejected; ++i)
        bench.run('log', `${series}${i}`, i % 3 === 0 ? 'crack 0.2 in at 3 in' : 'gas pore 0.09 in at 3 in', '--finish');
    exam(accepted + rejected + 1, count, 'VT', '--found', 'none');
}

/** Does things on a page as a person does, and counts them: a tap is one, and each key is one. */
export class Hand {
    constructor(page) {
        this.page = page;
        this.taps = this.keys = 0;
    }
    async tap(where) {
        await where.click();
        ++this.taps;
    }
    /** Keys that are pressed together count one by one. */
    async press(keys) {
        await this.page.keyboard.press(keys);
        this.keys += keys.split('+').length;
    }
    /** Alt and the key that a button shows: by the protocol, because Playwright sends no sign with a held Alt. */
    async shortcut(key) {
        const session = await this.page.context().newCDPSession(this.page);
        const pressed = { modifiers: 1, key, code: `Key${key.toUpperCase()}`, windowsVirtualKeyCode: key.toUpperCase().charCodeAt(0) };
        await session.send('Input.dispatchKeyEvent', { type: 'keyDown', ...pressed, text: key, unmodifiedText: key });
        await session.send('Input.dispatchKeyEvent', { type: 'keyUp', ...pressed });
        await session.detach();
        this.keys += 2;
    }
    async type(text) {
        await this.page.keyboard.type(text);
        this.keys += text.length;
    }
    /** Goes on by Tab until what has the focus is called so. */
    async tabTo(name) {
        this.keys += await tabTo(this.page, name);
    }
    get actions() {
        return this.taps + this.keys;
    }
    /** What a person needs for it who takes so long for each key and each tap. */
    seconds(each = 1.2) {
        return this.actions * each;
    }
}

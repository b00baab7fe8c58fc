// What every page has beyond its HTML. Without it everything can still be read and written.
import { add, drop, flush, listen, pending, wanted, wants } from './outbox.js';
export { wants };

const meta = name => document.querySelector(`meta[name=${name}]`)?.getAttribute('content') ?? '';
export const token = meta('bench-token');
export const person = meta('bench-person');
document.documentElement.classList.add('scripted');

/** HTML of the bench, in place of what an element holds. Its texts were escaped where it was made. */
export function showPart(element, html) {
    const part = new DOMParser().parseFromString(html, 'text/html');
    element.replaceChildren(...part.body.childNodes);
}

/** What this page shows of the record, as the bench names it; empty where it shows less than there is. */
let head = meta('bench-head');

/** Fetches this page again, and puts its changing parts in place of the old ones. */
export async function refresh() {
    let text;
    try {
        const answer = await fetch(location.href, { headers: { 'X-Bench-Part': '1' } });
        if (!answer.ok) return;
        text = await answer.text();
    } catch {
        return;
    }
    const fresh = new DOMParser().parseFromString(text, 'text/html');
    // Its forms would enter it under another name than stands at the top of this page.
    if ([...fresh.querySelectorAll('[name=sits]')].some(one => one.getAttribute('value') !== person)) return;
    for (const old of document.querySelectorAll('[data-live]')) {
        const now = fresh.getElementById(old.id);
        if (!now) continue;
        // A button that is replaced under the finger is never pressed: what is new comes with the next look.
        if (old.querySelector(':active')) {
            head = '';
            continue;
        }
        // What was unfolded stays so.
        const open = [...old.querySelectorAll('details[open] > summary')].map(one => one.textContent);
        for (const one of now.querySelectorAll('details > summary'))
            if (open.includes(one.textContent)) /** @type {HTMLDetailsElement} */ (one.parentElement).open = true;
        if (!old.isEqualNode(now)) old.replaceWith(now);
    }
}

/** What others enter appears without reloading, but never under the focus or the finger of who is at work there. */
async function follow() {
    if (document.visibilityState !== 'visible' || document.querySelector('[data-live] :is(:focus, :active)')) return;
    try {
        const answer = await fetch('/head');
        if (!answer.ok) return;
        const now = await answer.text();
        if (now === head) return;
        head = now;
    } catch {
        return; // without a connection there is nothing to follow
    }
    await refresh();
}

/** Told at the head of the page, in place of what was told before. */
function tell(html) {
    document.querySelector('main > .told')?.remove();
    const holder = document.createElement('div');
    showPart(holder, html);
    document.querySelector('main')?.prepend(...holder.childNodes);
}

/** A question, and the tick that answers it, are of the words that they were shown for.
 * @param {HTMLFormElement} form */
export function unask(form) {
    for (const asked of form.querySelectorAll('.asked'))
        if (asked.querySelector('#a-sure')) asked.remove();
}

/** What keeps an entry of the person at the bench waiting. */
export const waitsFor = () => ({ 'sign-in': 'it waits until you sign in again', link: 'it waits until you open the new link of the bench',
                                 reload: 'it waits until this page is loaded anew', seat: `somebody else sits here now: it waits until ${person} sits here again` })[wanted()] ?? 'it waits for the bench';

/** @type {Map<string, (happened: {stored?: string, refused?: string}) => void>} */
const awaited = new Map();

/** @returns {[string, string|File][]} */
const said = form => [...new FormData(form)].filter(([name]) => name !== 'token' && name !== 'key')
    .map(([name, value]) => /** @type {[string, string|File]} */ ([name, value]));

const isAnswer = name => name === 'sure' || name === 'again';
/** Whether the form says what was sent of it, but for the ticks, which went. */
function saysStill(form, fields) {
    const now = said(form).filter(([name]) => !isAnswer(name));
    const then = fields.filter(([name]) => !isAnswer(name));
    const same = (a, b) => a === b || (a instanceof File && b instanceof File && a.name === b.name && a.size === b.size);
    return now.length === then.length && then.every(([name, value], i) => now[i][0] === name && same(now[i][1], value));
}

/**
 * Saves what a form says and sends it. True: it is stored, or kept here until it can be sent. False: it was
 * refused, and the form shows why; or, if it says something else by then, the head of the page does.
 * @param {HTMLFormElement} form
 */
export async function send(form) {
    const fields = said(form);
    const path = new URL(form.action).pathname;
    form.querySelectorAll('.refused, .asked').forEach(old => old.remove());
    document.querySelector('main > .told')?.remove(); // it tells of what was sent before
    const key = await add({ path, fields, person }, token);
    const happened = await new Promise(ok => {
        awaited.set(key, ok);
        setTimeout(() => ok({}), navigator.onLine ? 3000 : 0);
    });
    awaited.delete(key);
    if (happened.refused === undefined) {
        if (happened.stored !== undefined) tell(happened.stored);
        return true;
    }
    if (!saysStill(form, fields)) {
        await count();
        return false;
    }
    // Whoever entered it sees it now: it stands in the form again, and waits here no more.
    const entry = (await pending()).find(one => one.key === key);
    if (entry?.n !== undefined) await drop(entry.n);
    await count();
    const why = document.createElement('div');
    why.className = 'asked';
    showPart(why, happened.refused);
    const bar = form.querySelector('.logbar');
    if (bar) bar.append(why);
    else form.querySelector('.deeds')?.before(why);
    return false;
}

let away = false;
/** Whether the bench answers, whatever it says. */
async function reached() {
    try {
        await fetch('/head', { signal: AbortSignal.timeout(3000) });
        away = false;
    } catch {
        away = true;
    }
    return !away;
}

/**
 * Sends a form by leaving the page, unless the bench cannot be reached: then what was typed stays where it is.
 * @param {HTMLFormElement} form
 * @param {HTMLElement|null} by the button
 */
export async function leave(form, by = null) {
    form.querySelectorAll('.refused.away').forEach(old => old.remove());
    if (await reached()) {
        form.dataset.reached = '';
        form.requestSubmit(by);
        return;
    }
    const why = document.createElement('div');
    why.className = 'refused away';
    why.setAttribute('role', 'alert');
    showPart(why, '<p>No connection to the bench: nothing was sent. What you entered stays here; send it again when the connection is back.</p>');
    (by?.closest('form') === form ? by.closest('.deeds') ?? by : form.lastElementChild)?.before(why);
}

/** A form that would leave for a bench that does not answer ends on the browser's own page, and is lost. */
function guard() {
    const ask = event => /** @type {Element} */ (event.target).closest?.('form[method=post]') && reached();
    addEventListener('focusin', ask);
    addEventListener('pointerdown', ask);
    document.addEventListener('submit', event => {
        const form = /** @type {HTMLFormElement} */ (event.target);
        if (event.defaultPrevented || form.method !== 'post') return;
        if (form.dataset.reached !== undefined) return void delete form.dataset.reached;
        if (navigator.onLine && !away) return;
        event.preventDefault();
        leave(form, event.submitter);
    });
}

const waiting = document.querySelector('#waiting');
let counting = 0;

/** How many wait, and whose they are who does not sit here now: theirs are sent when they do again. */
function told(unsent) {
    const others = unsent.filter(one => one.person !== person);
    const whose = [...new Set(others.map(one => one.person))].join(' and ');
    const until = waitsFor().replace(/^(?:.*: )?it waits(?: for the bench)?/, '');
    if (others.length === 0) return unsent.length === 0 ? '' : `${unsent.length} waiting${until}`;
    const which = others.length === unsent.length ? 'entered by' : `${others.length} of them entered by`;
    return `${unsent.length} waiting, ${which} ${whose}, sent when ${whose} sits here again`;
}

/** The line of a find that was refused goes back into the field where it was typed. */
function mender(entry) {
    if (!entry.path.endsWith('/log')) return [];
    const page = entry.path.slice(0, -'/log'.length);
    const button = document.createElement('button');
    button.textContent = 'Put it back on the line';
    button.addEventListener('click', () => {
        if (location.pathname === page) document.dispatchEvent(new CustomEvent('mend', { detail: entry }));
        else location.href = `${page}#mend-${entry.n}`;
    });
    return [button];
}

/** What an entry said, and of what, in words. */
function entryWords(entry) {
    const [, mark, exam, deed] = /^\/coupon\/([^/]+)(?:\/exam\/(\d+))?(?:\/([^/]+))?/.exec(entry.path) ?? [];
    const of = mark === undefined ? entry.path.split('/').filter(Boolean).join(' ')
        : [decodeURIComponent(mark), exam && `exam ${exam}`, deed && deed !== 'log' && deed].filter(Boolean).join(', ');
    const values = entry.fields.filter(([name, value]) => !isAnswer(name) && name !== 'sits' && value !== '')
        .map(([, value]) => typeof value === 'string' ? value : value.name);
    return `${of}: ${values.join(', ')}`;
}

/** Thrown away it is on no record: that takes a second tap, which lies elsewhere. */
function thrower(entry) {
    const fold = document.createElement('details');
    fold.className = 'throw';
    const summary = document.createElement('summary');
    summary.textContent = 'Throw it away';
    const ask = document.createElement('p');
    ask.textContent = 'It is on no record, and is lost then. Is that meant?';
    const button = document.createElement('button');
    button.textContent = 'Throw it away for good';
    button.className = 'plain';
    button.addEventListener('click', async () => {
        await drop(entry.n ?? 0);
        await count();
        document.dispatchEvent(new Event('thrown'));
    });
    fold.append(summary, ask, button);
    return fold;
}

/** @param {import('./outbox.js').Entry} entry */
function refusedItem(entry) {
    const item = document.createElement('div');
    const what = document.createElement('p');
    what.textContent = entryWords(entry);
    const why = document.createElement('div');
    showPart(why, entry.refused ?? '');
    why.querySelectorAll('.field').forEach(field => field.remove());
    const deeds = document.createElement('p');
    deeds.className = 'deeds';
    deeds.append(...mender(entry));
    item.append(what, why, deeds, thrower(entry));
    return item;
}

let listed = '';
/** How many wait, and what was refused while nobody looked. */
export async function count() {
    if (!waiting) return;
    const mine = ++counting;
    const all = await pending();
    if (mine !== counting) return; // a later count knows better
    const refused = all.filter(one => one.refused !== undefined && !awaited.has(one.key));
    waiting.textContent = told(all.filter(one => one.refused === undefined));
    // What stands there already is left to the finger that may be on it.
    const keys = refused.map(one => one.key).join(' ');
    if (keys === listed) return;
    listed = keys;
    document.querySelector('#refused-later')?.remove();
    if (refused.length === 0) return;
    const list = document.createElement('section');
    list.id = 'refused-later';
    const head = document.createElement('h2');
    head.textContent = 'Entered, refused, and not on record';
    list.append(head, ...refused.map(refusedItem));
    document.querySelector('main')?.prepend(list);
}

if (token) {
    document.documentElement.classList.add('with-modules');
    listen(happened => {
        if (happened) awaited.get(happened.entry.key)?.(happened);
        count();
        if (happened?.stored !== undefined && !awaited.has(happened.entry.key)) refresh();
    });
    guard();
    document.addEventListener('input', event => {
        const changed = /** @type {HTMLInputElement} */ (event.target);
        if (changed.form && !changed.closest('.asked')) unask(changed.form);
    });
    addEventListener('online', () => flush(token, person));
    addEventListener('visibilitychange', () => document.visibilityState === 'visible' && flush(token, person));
    flush(token, person);
    if (head && document.querySelector('[data-live]')) setInterval(follow, 3000);
    navigator.storage?.persist?.();
    navigator.serviceWorker?.register('/files/worker.js', { scope: '/' }).catch(() => {});
}

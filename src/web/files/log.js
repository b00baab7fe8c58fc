// The pad of the page that logs finds: taps put a line together, and the line is read back while it grows.
import { token, person, showPart, refresh, send, leave, count, unask, wants, waitsFor } from './bench.js';
import { Line } from './line.js';
import { drop, listen, pending, wanted } from './outbox.js';

const form = /** @type {HTMLFormElement} */ (document.querySelector('#log'));
const line = /** @type {HTMLInputElement} */ (form?.querySelector('[name=line]'));
const reading = /** @type {HTMLElement} */ (document.querySelector('#reading'));
const pad = /** @type {HTMLElement} */ (document.querySelector('#pad'));

// Where something was refused the address is that of the deed: what is fetched, kept and reloaded is of the page.
const home = form?.dataset.reading?.replace(/\/reading$/, '');
if (home && location.pathname !== home) history.replaceState(null, '', home);

/** What the line says, as far as the pad has buttons for it, and the line that it was put together for. */
const parts = new Line([...pad?.querySelectorAll('[data-part=type]') ?? []].map(one => /** @type {HTMLElement} */ (one).dataset.value));
let shown = '';
let target = 'size';
/** Something else was tapped since the last digit: the next one begins a number. */
let fresh = false;
const unit = pad?.dataset.sayUnit !== undefined ? ` ${pad.dataset.unit}` : '';

/** The entry that was refused and stands in the line to be mended: it is kept until the line is taken. */
let mending = 0;

function press() {
    const now = { target, key: parts.key, size: parts.measures.get(parts.key)?.digits, place: parts.place.digits,
                  type: parts.type, side: parts.side, toe: parts.toe };
    for (const button of /** @type {NodeListOf<HTMLElement>} */ (pad.querySelectorAll('[data-part]'))) {
        const { part, value } = button.dataset;
        button.setAttribute('aria-pressed', String(now[part] === value && (value !== '' || part === 'key')));
    }
}

/** What was typed, or put there, is what the next tap adds to. */
function adopt() {
    if (line.value === shown) return;
    parts.read(line.value);
    shown = line.value;
    target = 'size';
    fresh = false;
}

/** The line says something else than before. */
function touched() {
    if (!line.value.trim()) mending = 0;
    press();
    unask(form);
    keep(line.value);
    echo();
}

function changed() {
    line.value = shown = parts.text();
    touched();
}

function clear() {
    parts.clear();
    line.value = shown = '';
    target = 'size';
    fresh = false;
    keep('');
    press();
}

/** What the digits go to now. */
const amount = () => target === 'place' ? parts.place : parts.measures.get(parts.key) ?? { digits: '', unit };

/** The size that a number took the place of. */
let replaced = null;
/** A clock is always a place: digits that were just taken for a size are its hour, and were none. */
function hour() {
    if (target === 'place') return;
    target = 'place';
    const size = parts.measures.get('');
    if (parts.key !== '' || fresh || !size || parts.place.digits) return;
    parts.place = size;
    if (replaced) parts.measures.set('', replaced);
    else parts.measures.delete('');
}

/**
 * One sign into the measure or the place.
 * @param {string} sign
 */
function key(sign) {
    if (sign === 'clear') {
        clear();
        return touched();
    }
    if (sign === 'back' && parts.typed && parts.text() === parts.typed) {
        parts.typed = parts.typed.slice(0, -1);
        return changed();
    }
    if (sign !== 'back' && sign !== ':') nextNumber();
    renamed = null;
    if (sign === ':') hour();
    // Never a digit more on a number that was done with.
    else if (fresh && sign !== 'back' && target === 'size' && parts.measures.get(parts.key)?.digits) parts.key = '';
    const known = amount();
    const before = fresh && sign !== 'back' && sign !== ':' ? { digits: '', unit } : known;
    if (sign !== ':') replaced = fresh && target === 'size' && known.digits ? known : before.digits ? replaced : null;
    fresh = false;
    const after = { digits: sign === 'back' ? before.digits.slice(0, -1) : before.digits + sign, unit: before.unit };
    if (target === 'place') parts.place = after;
    else parts.measures.set(parts.key, after);
    changed();
}

/**
 * What the digits measure: those that were typed before any name get this one, else another measure begins. The
 * pressed one, pressed again, loses its name.
 * @param {string} name
 */
function name(name) {
    const again = parts.key === name, to = again ? '' : name;
    const number = parts.measures.get(parts.key);
    renamed = null;
    if (number?.digits && (parts.key === '' || again) && !parts.measures.get(to)?.digits) {
        parts.measures.delete(parts.key);
        parts.measures.set(to, number);
        renamed = { from: parts.key, to };
    }
    parts.key = to;
    target = 'size';
}

/**
 * The name that a number just got was meant for the next one, if that follows at once.
 * @type {{from: string, to: string} | null}
 */
let renamed = null;
function nextNumber() {
    if (!renamed || target !== 'size') return;
    const number = parts.measures.get(renamed.to);
    parts.measures.delete(renamed.to);
    if (number) parts.measures.set(renamed.from, number);
    renamed = null;
}

/** @param {HTMLElement} button */
function tap(button) {
    const { part, value } = button.dataset;
    fresh = part !== 'key';
    if (part === 'size') nextNumber();
    else if (part !== 'key') renamed = null;
    if (part === 'target') {
        target = target === value ? 'size' : value;
        press();
        return;
    }
    const toggled = amount => ({ digits: amount?.digits === value ? '' : value, unit });
    if (part === 'key') name(value);
    else if (part === 'size') parts.measures.set(parts.key, toggled(parts.measures.get(parts.key)));
    else if (part === 'place') parts.place = toggled(parts.place);
    else parts[part] = parts[part] === value ? '' : value;
    changed();
}

/**
 * A tap on the map: its place along the weld, and the side of the band that was met.
 * @param {MouseEvent} event
 */
function place(event) {
    const met = /** @type {Element} */ (event.target);
    const map = /** @type {SVGSVGElement} */ (met.closest('.weld-map'));
    if (!map) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(map.getScreenCTM().inverse());
    const { x0, x1, start, length } = map.dataset;
    if (x0 === undefined) return;
    adopt();
    const share = Math.min(1, Math.max(0, (at.x - Number(x0)) / (Number(x1) - Number(x0))));
    const nm = Number(start) + share * Number(length);
    if (pad.dataset.closed !== undefined) {
        const minutes = Math.round(share * 720 / 5) * 5 % 720;
        parts.place = { digits: `${Math.floor(minutes / 60) || 12}:${String(minutes % 60).padStart(2, '0')}`, unit };
    } else {
        parts.place = { digits: String(pad.dataset.unit === 'mm' ? Math.round(nm / 1e6) : Math.round(nm / 254e3) / 100), unit };
    }
    const side = (met.closest('g[data-side]') ?? nearest(map, event.clientY))?.getAttribute('data-side');
    if (side === 'face' || side === 'root') parts.side = side;
    fresh = true;
    changed();
}

/**
 * The band that a tap beside all of them is nearest to.
 * @param {SVGSVGElement} map
 * @param {number} y
 */
function nearest(map, y) {
    const away = band => {
        const { top, bottom } = band.getBoundingClientRect();
        return Math.max(top - y, y - bottom, 0);
    };
    return [...map.querySelectorAll('g[data-side]')].sort((a, b) => away(a) - away(b))[0];
}

let waiting = 0;
let asked = 0;
/** What was typed last need not be read any more: what is said of it now stands. */
function hush() {
    clearTimeout(waiting);
    ++asked;
}

/** The line as the bench reads it, a moment after the last sign; an answer that comes late is not shown. */
function echo() {
    clearTimeout(waiting);
    const mine = ++asked;
    if (!line.value.trim()) {
        reading.replaceChildren();
        return;
    }
    waiting = setTimeout(async () => {
        try {
            const answer = await fetch(`${form.dataset.reading}?line=${encodeURIComponent(line.value)}`);
            const text = await answer.text();
            if (mine !== asked) return;
            // Nothing but a fragment of the bench stands there: no sign-in page, and no page of an error.
            if (wants(answer)) showWanted(wants(answer));
            else if (answer.ok && !answer.redirected) showPart(reading, text);
            else reading.replaceChildren();
        } catch {
            if (mine === asked) reading.replaceChildren();
        }
    }, 150);
}

/** Where one goes on once the bench knows this browser again; the line is kept meanwhile. */
function showWanted(what) {
    const words = { 'sign-in': 'Nobody is signed in any more. <a href="/sign-in">Sign in again</a>; this line is kept, and stands here again then.',
                    link: 'The bench does not know this browser any more. Open its new link; this line is kept, and stands here again then.',
                    reload: 'This page is out of date. <a href="">Load it anew</a>; this line is kept.' };
    showPart(reading, `<p class="open" role="alert">${words[what]}</p>`);
}

/** The line that is not logged yet, kept while somebody signs in again or looks at another page. */
const kept = `line of ${location.pathname}`;
function keep(text) {
    if (text.trim()) sessionStorage.setItem(kept, JSON.stringify({ text, person }));
    else sessionStorage.removeItem(kept);
}
function keptLine() {
    const before = JSON.parse(sessionStorage.getItem(kept) ?? 'null');
    return before?.person === person ? before.text : '';
}

/** What was logged under this exam and is not on record: it waits for the bench, or was refused by it. */
async function unsent() {
    return (await pending()).filter(one => one.path === new URL(form.action).pathname);
}

function standing(one) {
    if (one.refused !== undefined) return 'refused, see above';
    return one.person === person ? waitsFor() : `entered by ${one.person}, it waits until ${one.person} sits here again`;
}

/** @param {import('./outbox.js').Entry} entry */
function mend(entry) {
    line.value = String(entry.fields.find(([name]) => name === 'line')?.[1] ?? '');
    mending = entry.n ?? 0;
    adopt();
    touched();
    line.focus();
}

/** It stands with what was found, so that nobody takes the exam for done. */
async function showUnsent() {
    const lines = await unsent();
    document.querySelector('#unsent')?.remove();
    if (lines.length === 0) return;
    const list = document.createElement('section');
    list.id = 'unsent';
    list.className = 'caution';
    const head = document.createElement('p');
    head.textContent = 'Not on record yet, so this exam cannot be finished:';
    const items = document.createElement('ul');
    for (const one of lines) {
        const item = document.createElement('li');
        item.textContent = `${one.fields.find(([name]) => name === 'line')?.[1] ?? ''}: ${standing(one)}`;
        items.append(item);
    }
    list.append(head, items);
    if (wanted() === 'seat') {
        const anew = document.createElement('a');
        anew.href = location.pathname;
        anew.className = 'button';
        anew.textContent = 'See who sits here now';
        list.append(anew);
    }
    if (waitsFor().endsWith('sign in again')) {
        const link = document.createElement('a');
        link.href = '/sign-in';
        link.className = 'button';
        link.textContent = 'Sign in again';
        list.append(link);
    }
    document.querySelector('#live')?.before(list);
}

/** @param {HTMLFormElement} to */
async function finish(to) {
    if ((await unsent()).length === 0) return leave(to);
    await showUnsent();
    document.querySelector('#unsent')?.scrollIntoView({ block: 'center' });
}

/** The line that waits for its answer; pressed once more meanwhile, it is not sent again. */
let sent = '';

async function submit(event) {
    event.preventDefault();
    const words = line.value, mended = mending;
    if (!words.trim() || words === sent) return;
    sent = words;
    const done = await send(form).finally(() => { if (sent === words) sent = ''; });
    // What is asked stands beside its tick now.
    if (!done) reading.querySelectorAll('p').forEach(one => one.textContent?.includes('is that meant?') && one.remove());
    if (done && mended > 0) await drop(mended);
    if (done && mending === mended) mending = 0;
    // Another find may have been begun meanwhile: it stays.
    if (done && line.value === words) {
        clear();
        hush();
        reading.replaceChildren();
        unask(form);
    }
    await count();
    await showUnsent();
    if (done) await refresh();
}

/** Asks before the page is left with a line that is not logged; where it comes back at once, nothing is asked. */
function guardLine() {
    let comesBack = false;
    document.addEventListener('submit', event => {
        comesBack = new URL(/** @type {HTMLFormElement} */ (event.target).action).pathname.startsWith(location.pathname);
    });
    document.addEventListener('click', event => {
        comesBack = /** @type {Element} */ (event.target).closest('#reading a, #unsent a') !== null;
    });
    addEventListener('beforeunload', event => {
        if (line.value.trim() && !comesBack) event.preventDefault();
    });
}

if (form && line && pad && token) {
    pad.hidden = false;
    press();
    pad.addEventListener('click', event => {
        const button = /** @type {Element} */ (event.target).closest('button');
        if (button) adopt();
        if (button?.dataset.part) tap(button);
        else if (button?.dataset.key) key(button.dataset.key);
    });
    form.addEventListener('click', place);
    line.addEventListener('input', () => {
        adopt();
        touched();
    });
    if (!line.value.trim()) line.value = keptLine();
    if (line.value.trim()) echo(); // typed before this module came
    guardLine();
    form.addEventListener('submit', submit);
    listen(() => showUnsent());
    showUnsent();
    document.addEventListener('thrown', showUnsent);
    document.addEventListener('mend', event => mend(/** @type {CustomEvent} */ (event).detail));
    const from = Number(/^#mend-(\d+)$/.exec(location.hash)?.[1] ?? 0);
    if (from > 0) pending().then(all => all.filter(one => one.n === from).forEach(mend));
    // A line that stands there is not logged: nobody finishes without it by a slip.
    document.addEventListener('submit', event => {
        const to = /** @type {HTMLFormElement} */ (event.target);
        if (!to.action.endsWith('/finish') || to.dataset.reached !== undefined) return;
        event.preventDefault();
        event.stopImmediatePropagation();
        if (!line.value.trim()) return void finish(to);
        hush();
        showPart(reading, '<p class="open" role="alert">This line is not logged yet: log it, or clear it, and then finish.</p>');
        line.focus();
    }, true);
}

// The pad of the page that logs finds: taps put a line together, and the line is read back while it grows.
import { token, person, showPart, refresh, send, leave, count } from './bench.js';
import { drop, listen, pending } from './outbox.js';

const form = /** @type {HTMLFormElement} */ (document.querySelector('#log'));
const line = /** @type {HTMLInputElement} */ (form?.querySelector('[name=line]'));
const reading = /** @type {HTMLElement} */ (document.querySelector('#reading'));
const pad = /** @type {HTMLElement} */ (document.querySelector('#pad'));

/** What was tapped so far; the digits go to the measure whose key is pressed ('': a size of no name). */
const parts = { type: '', key: '', place: '', side: '' };
/** @type {Map<string, string>} digits by key */
const measures = new Map();
let target = 'size';
/** Something else was tapped since the last digit: the next one begins a number. */
let fresh = false;

/** The entry that was refused and stands in the line to be mended: it is kept until the line is taken. */
let mending = 0;

function composed() {
    const unit = pad.dataset.sayUnit !== undefined ? ` ${pad.dataset.unit}` : '';
    const measured = [...measures].map(([key, digits]) => digits && `${key} ${digits}${unit}`.trim());
    const clock = parts.place.includes(':');
    const placeUnit = parts.place && !clock && pad.dataset.sayUnit !== undefined ? ` ${pad.dataset.unit}` : '';
    const place = parts.place ? `at ${parts.place}${placeUnit}` : '';
    return [parts.type, ...measured, place, parts.side].filter(Boolean).join(' ');
}

function press() {
    for (const button of /** @type {NodeListOf<HTMLElement>} */ (pad.querySelectorAll('[data-part]'))) {
        const { part, value } = button.dataset;
        const now = part === 'target' ? target : part === 'size' ? measures.get(parts.key) : parts[part];
        button.setAttribute('aria-pressed', String(now === value && (value !== '' || part === 'key')));
    }
}

function changed() {
    mending = 0; // what is tapped is a line of its own
    line.value = composed();
    press();
    echo();
}

export function clear() {
    for (const part of Object.keys(parts)) parts[part] = '';
    measures.clear();
    target = 'size';
    fresh = false;
    press();
}

/**
 * One sign into the measure or the place.
 * @param {string} sign
 */
function key(sign) {
    // Never a digit more on a number that was done with.
    if (fresh && sign !== 'back' && target === 'size' && measures.get(parts.key)) parts.key = '';
    const known = target === 'place' ? parts.place : measures.get(parts.key) ?? '';
    const before = fresh && sign !== 'back' ? '' : known;
    fresh = false;
    const after = sign === 'back' ? before.slice(0, -1) : before + sign;
    if (sign === 'clear') clear();
    else if (target === 'place') parts.place = after;
    else measures.set(parts.key, after);
    changed();
}

/**
 * What the digits measure: those that were typed before any name get this one, else another measure begins. The
 * pressed one, pressed again, loses its name.
 * @param {string} name
 */
function name(name) {
    const to = parts.key === name ? '' : name;
    const nameless = measures.get(parts.key);
    if (nameless && (parts.key === '' || to === '')) {
        measures.delete(parts.key);
        measures.set(to, nameless);
    }
    parts.key = to;
    target = 'size';
}

/** @param {HTMLElement} button */
function tap(button) {
    const { part, value } = button.dataset;
    fresh = part !== 'key';
    if (part === 'target') {
        target = target === value ? 'size' : value;
        press();
        return;
    }
    if (part === 'key') name(value);
    else if (part === 'size') measures.set(parts.key, measures.get(parts.key) === value ? '' : value);
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
    const share = Math.min(1, Math.max(0, (at.x - Number(x0)) / (Number(x1) - Number(x0))));
    const nm = Number(start) + share * Number(length);
    if (pad.dataset.closed !== undefined) {
        const minutes = Math.round(share * 720 / 5) * 5 % 720;
        parts.place = `${Math.floor(minutes / 60) || 12}:${String(minutes % 60).padStart(2, '0')}`;
    } else if (pad.dataset.unit === 'mm') {
        parts.place = String(Math.round(nm / 1e6));
    } else {
        parts.place = String(Math.round(nm / 254e3) / 100);
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
/** The line as the bench reads it, a moment after the last sign; an answer that comes late is not shown. */
function echo() {
    clearTimeout(waiting);
    const mine = ++asked;
    if (!line.value.trim()) {
        mending = 0;
        reading.replaceChildren();
        return;
    }
    waiting = setTimeout(async () => {
        try {
            const answer = await fetch(`${form.dataset.reading}?line=${encodeURIComponent(line.value)}`);
            if (answer.ok && mine === asked) showPart(reading, await answer.text());
        } catch {
            if (mine === asked) reading.replaceChildren();
        }
    }, 150);
}

/** What was logged under this exam and is not on record: it waits for the bench, or was refused by it. */
async function unsent() {
    return (await pending()).filter(one => one.path === new URL(form.action).pathname);
}

function standing(one) {
    if (one.refused !== undefined) return 'refused, see above';
    return one.person === person ? 'it waits for the bench' : `entered by ${one.person}, it waits until ${one.person} sits here again`;
}

/** @param {import('./outbox.js').Entry} entry */
function mend(entry) {
    clear();
    line.value = String(entry.fields.find(([name]) => name === 'line')?.[1] ?? '');
    mending = entry.n ?? 0;
    echo();
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
    document.querySelector('#live')?.before(list);
}

/** @param {HTMLFormElement} to */
async function finish(to) {
    if ((await unsent()).length === 0) return leave(to);
    await showUnsent();
    document.querySelector('#unsent')?.scrollIntoView({ block: 'center' });
}

async function submit(event) {
    event.preventDefault();
    if (!line.value.trim()) return;
    const done = await send(form);
    if (!done) return;
    if (mending > 0) await drop(mending);
    mending = 0;
    await count();
    await showUnsent();
    line.value = '';
    clear();
    clearTimeout(waiting); // what was typed last need not be read any more
    ++asked;
    reading.replaceChildren();
    form.querySelector('.asked')?.remove();
    await refresh();
}

if (form && line && pad && token) {
    pad.hidden = false;
    press();
    pad.addEventListener('click', event => {
        const button = /** @type {Element} */ (event.target).closest('button');
        if (button?.dataset.part) tap(button);
        else if (button?.dataset.key) key(button.dataset.key);
    });
    form.addEventListener('click', place);
    line.addEventListener('input', () => {
        clear();
        echo();
    });
    if (line.value.trim()) echo(); // typed before this module came
    form.addEventListener('submit', submit);
    listen(() => showUnsent());
    showUnsent();
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
        showPart(reading, '<p class="open" role="alert">This line is not logged yet: log it, or clear it, and then finish.</p>');
        line.focus();
    }, true);
}

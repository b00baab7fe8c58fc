// The pad of the page that logs finds: taps put a line together, and the line is read back while it grows.
import { token, showPart, refresh, send } from './bench.js';

const form = /** @type {HTMLFormElement} */ (document.querySelector('#log'));
const line = /** @type {HTMLInputElement} */ (form?.querySelector('[name=line]'));
const reading = /** @type {HTMLElement} */ (document.querySelector('#reading'));
const pad = /** @type {HTMLElement} */ (document.querySelector('#pad'));

/** What was tapped so far. */
const parts = { type: '', key: '', size: '', place: '', side: '' };
let target = 'size';

function composed() {
    const unit = pad.dataset.sayUnit !== undefined && parts.size ? ` ${pad.dataset.unit}` : '';
    const measure = parts.size ? `${parts.key} ${parts.size}${unit}`.trim() : '';
    const clock = parts.place.includes(':');
    const placeUnit = parts.place && !clock && pad.dataset.sayUnit !== undefined ? ` ${pad.dataset.unit}` : '';
    const place = parts.place ? `at ${parts.place}${placeUnit}` : '';
    return [parts.type, measure, place, parts.side].filter(Boolean).join(' ');
}

function press() {
    for (const button of /** @type {NodeListOf<HTMLElement>} */ (pad.querySelectorAll('[data-part]'))) {
        const { part, value } = button.dataset;
        const on = part === 'target' ? target === value : value !== '' && parts[part] === value;
        button.setAttribute('aria-pressed', String(part === 'key' ? parts.key === value : on));
    }
}

function changed() {
    line.value = composed();
    press();
    echo();
}

export function clear() {
    for (const part of Object.keys(parts)) parts[part] = '';
    target = 'size';
    press();
}

/**
 * One sign into the size or the place.
 * @param {string} sign
 */
function key(sign) {
    if (sign === 'clear') {
        clear();
    } else if (sign === 'back') {
        parts[target] = parts[target].slice(0, -1);
    } else {
        parts[target] += sign;
    }
    changed();
}

/** @param {HTMLElement} button */
function tap(button) {
    const { part, value } = button.dataset;
    if (part === 'target') {
        target = target === value ? 'size' : value;
        press();
        return;
    }
    parts[part] = parts[part] === value ? '' : value;
    if (part === 'key') target = 'size';
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
    const side = met.closest('g[data-side]')?.getAttribute('data-side');
    if (side === 'face' || side === 'root') parts.side = side;
    changed();
}

let waiting = 0;
let asked = 0;
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
            if (answer.ok && mine === asked) showPart(reading, await answer.text());
        } catch {
            if (mine === asked) reading.replaceChildren();
        }
    }, 150);
}

async function submit(event) {
    event.preventDefault();
    if (!line.value.trim()) return;
    const done = await send(form);
    if (!done) return;
    line.value = '';
    clear();
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
    form.addEventListener('submit', submit);
}

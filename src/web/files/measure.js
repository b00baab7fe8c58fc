// Marks on a photo: two on a length that is known, two on the find. A tap sets one, the arrow keys move it; where it lies
// goes into the fields, in pixels of the picture. The bench works the size out of them.
import './bench.js';

const holder = /** @type {HTMLElement} */ (document.querySelector('#measuring'));
const picture = /** @type {HTMLImageElement} */ (holder.querySelector('img'));
const form = /** @type {HTMLFormElement} */ (document.querySelector('#sizes'));
const input = name => /** @type {HTMLInputElement} */ (form.elements.namedItem(name));
const told = document.createElement('p');
told.setAttribute('role', 'status');

const svg = (name, attributes = {}) => {
    const out = document.createElementNS('http://www.w3.org/2000/svg', name);
    for (const [key, value] of Object.entries(attributes)) out.setAttribute(key, value);
    return out;
};
const lines = svg('svg', { 'aria-hidden': 'true' });

const marks = [
    ['known-1', 'known length, one end'], ['known-2', 'known length, other end'],
    ['find-1', 'find, one end'], ['find-2', 'find, other end'],
].map(([name, words], i) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = `plain mark ${name.startsWith('known') ? 'known' : 'find'}`;
    button.hidden = true;
    button.textContent = String(i + 1);
    const choose = document.createElement('button');
    choose.type = 'button';
    choose.className = 'plain';
    choose.textContent = `${i + 1} ${words}`;
    return { x: input(`${name}-x`), y: input(`${name}-y`), words: choose.textContent, button, choose };
});
const pairs = [marks.slice(0, 2), marks.slice(2)].map(ends => ({
    ends, line: svg('line', { class: ends[0] === marks[0] ? 'known' : 'find' }),
}));
let active = marks[0];

const isSet = mark => mark.x.value !== '' && mark.y.value !== '';
/** Pixels of the picture for one of the screen. */
const scale = () => picture.naturalWidth / picture.getBoundingClientRect().width;

function draw() {
    for (const mark of marks) {
        mark.button.hidden = !isSet(mark);
        mark.button.style.left = `${Number(mark.x.value) / picture.naturalWidth * 100}%`;
        mark.button.style.top = `${Number(mark.y.value) / picture.naturalHeight * 100}%`;
        mark.button.setAttribute('aria-label', `${mark.words}: ${mark.x.value} across, ${mark.y.value} down`);
        mark.choose.setAttribute('aria-pressed', String(mark === active));
    }
    for (const { ends: [from, to], line } of pairs) {
        line.toggleAttribute('hidden', !isSet(from) || !isSet(to));
        const at = { x1: from.x.value, y1: from.y.value, x2: to.x.value, y2: to.y.value };
        for (const [key, value] of Object.entries(at)) line.setAttribute(key, value || '0');
    }
    told.textContent = `Now: ${active.words}`;
}

/** What was worked out is of other marks, or another length, than those that stand there now. */
const stale = () => document.querySelector('#result')?.remove();

function put(mark, x, y) {
    stale();
    const within = (value, end) => Math.min(Math.max(value, 0), end).toFixed(1);
    mark.x.value = within(x, picture.naturalWidth);
    mark.y.value = within(y, picture.naturalHeight);
    draw();
}

/** @param {KeyboardEvent} event */
function move(mark, event) {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (!way) return;
    event.preventDefault();
    const far = scale() * (event.shiftKey ? 10 : 1);
    put(mark, Number(mark.x.value) + way[0] * far, Number(mark.y.value) + way[1] * far);
}

function begin() {
    lines.setAttribute('viewBox', `0 0 ${picture.naturalWidth} ${picture.naturalHeight}`);
    lines.append(...pairs.map(one => one.line));
    const chooser = document.createElement('p');
    chooser.className = 'deeds';
    chooser.append(...marks.map(mark => mark.choose));
    holder.append(lines, ...marks.map(mark => mark.button));
    holder.after(told, chooser);
    holder.classList.add('ready');
    picture.addEventListener('click', event => {
        const at = picture.getBoundingClientRect();
        put(active, (event.clientX - at.left) * scale(), (event.clientY - at.top) * scale());
        active = marks.find(mark => !isSet(mark)) ?? active;
        draw();
    });
    for (const mark of marks) {
        mark.button.addEventListener('keydown', event => move(mark, event));
        mark.button.addEventListener('focus', () => { active = mark; draw(); });
        // Without a finger or a mouse it begins in the middle.
        mark.choose.addEventListener('click', () => {
            active = mark;
            if (!isSet(mark)) put(mark, picture.naturalWidth / 2, picture.naturalHeight / 2);
            draw();
            mark.button.focus();
        });
        for (const field of [mark.x, mark.y]) field.addEventListener('input', draw);
    }
    form.addEventListener('input', stale);
    // The same words again lead to this very place, which a browser does not ask for anew.
    form.addEventListener('submit', event => {
        const asked = new URLSearchParams([...new FormData(form)].map(([name, value]) => [name, String(value)]));
        if (`?${asked}` !== location.search) return;
        event.preventDefault();
        location.reload();
    });
    // Whoever said nothing else can be off by three pixels as they are shown.
    if (location.search === '') input('off').value = (3 * scale()).toFixed(1);
    active = marks.find(mark => !isSet(mark)) ?? active;
    draw();
}

if (picture.complete && picture.naturalWidth > 0) begin();
else picture.addEventListener('load', begin);

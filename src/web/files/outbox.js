// What was entered and is not on record yet. It is saved here first, sent in order, and taken off only once
// the bench has answered that it is stored. Each thing has a key, so that what is sent twice is entered once.

/** @typedef {{n?: number, key: string, path: string, fields: [string, string|File][], person: string, refused?: string}} Entry */

const name = 'beadbook';
const store = 'out';

/** @returns {Promise<IDBDatabase>} */
function open() {
    return new Promise((ok, no) => {
        const ask = indexedDB.open(name, 1);
        ask.onupgradeneeded = () => ask.result.createObjectStore(store, { keyPath: 'n', autoIncrement: true });
        ask.onsuccess = () => ok(ask.result);
        ask.onerror = () => no(ask.error);
    });
}

/**
 * @param {IDBTransactionMode} mode
 * @param {(s: IDBObjectStore) => IDBRequest} work
 * @returns {Promise<any>}
 */
async function transaction(mode, work) {
    const db = await open();
    try {
        return await new Promise((ok, no) => {
            const t = db.transaction(store, mode, { durability: 'strict' });
            const request = work(t.objectStore(store));
            t.oncomplete = () => ok(request.result);
            t.onabort = () => no(t.error);
            t.onerror = () => no(t.error);
        });
    } finally {
        db.close();
    }
}

/** @returns {Promise<Entry[]>} */
export const pending = () => transaction('readonly', s => s.getAll());
/** @param {number} n */
export const drop = n => transaction('readwrite', s => s.delete(n));

const listeners = new Set();
/** @param {(happened: {entry: Entry, stored?: string, refused?: string}|null) => void} listener */
export const listen = listener => listeners.add(listener);
const tell = happened => listeners.forEach(listener => listener(happened));

/** Answers that may be another one later: not signed in, too late, the wrong address, too many, no record. */
const later = [401, 403, 408, 421, 429];

/** What the bench wants before it takes anything of this browser: 'sign-in', 'link', 'reload', 'seat'; '' if nothing.
 * @param {Response} answer */
export const wants = answer => answer.redirected && new URL(answer.url).pathname === '/sign-in' ? 'sign-in'
    : answer.headers.get('X-Bench-Wants') ?? '';
let wantedLast = '';
/** What it wanted when something was sent last. */
export const wanted = () => wantedLast;

/** What is sent, and how long it may take (ms): a photo goes in parts, and over a slow network.
 * @param {[string, string|File][]} fields */
function packed(fields) {
    if (fields.every(([, value]) => typeof value === 'string'))
        return { body: new URLSearchParams(/** @type {[string, string][]} */ (fields)), patience: 8000 };
    const body = new FormData();
    for (const [name, value] of fields) body.append(name, value);
    return { body, patience: 120000 };
}

/** @param {Entry} entry */
async function deliver(entry, token) {
    // Under the name of who entered it, or not at all.
    const { body, patience } = packed([...entry.fields.filter(([name]) => name !== 'sits'), ['sits', entry.person]]);
    let answer;
    try {
        answer = await fetch(entry.path, {
            method: 'POST', body, signal: AbortSignal.timeout(patience),
            headers: { 'X-Bench-Token': token, 'X-Bench-Part': '1', 'Idempotency-Key': entry.key },
        });
    } catch {
        return false;
    }
    wantedLast = wants(answer);
    const text = await answer.text().catch(() => null);
    if (text === null) return false;
    if (answer.ok) {
        await drop(entry.n ?? 0);
        tell({ entry, stored: text });
    } else if (answer.status >= 400 && answer.status < 500 && !later.includes(answer.status)) {
        await transaction('readwrite', s => s.put({ ...entry, refused: text }));
        tell({ entry, refused: text });
    } else {
        return false;
    }
    return true;
}

async function drain(token, person) {
    for (const entry of await pending()) {
        // What somebody else entered waits until he sits here again: it is his name that it goes under.
        if (entry.refused !== undefined || entry.person !== person) continue;
        if (!await deliver(entry, token)) return false;
    }
    return true;
}

let again = false;
/** Sends what waits; one page of the browser at a time does so. */
export async function flush(token, person) {
    await navigator.locks.request('beadbook-out', { ifAvailable: true }, async lock => {
        if (!lock) {
            again = true;
            return;
        }
        do {
            again = false;
            if (!await drain(token, person)) {
                setTimeout(() => flush(token, person), 1000);
                break;
            }
        } while (again);
    });
    tell(null);
}

/**
 * Saves, then sends.
 * @param {Omit<Entry, 'key'>} entry
 * @returns {Promise<string>} its key
 */
export async function add(entry, token) {
    const key = crypto.randomUUID();
    await transaction('readwrite', s => s.add({ ...entry, key }));
    tell(null);
    flush(token, entry.person);
    return key;
}

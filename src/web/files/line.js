// The line of a find as the pad sees it: the parts that it has buttons for, read from what was typed and put together
// again. A line that says anything else is kept as it was typed, and what is tapped is added to it.

/** @typedef {{digits: string, unit: string}} Amount the unit with the blank before it, empty if none is said */

const unit = String.raw`(\s*(?:mm|in)\b)?(?=\s|$)`;
const measure = new RegExp(String.raw`^(?:([ldhws])\s+)?(\.?\d[\d./x-]*)${unit}`);
const place = new RegExp(String.raw`^at\s+(\.?\d[\d.:/-]*)${unit}`);
const side = /^(face|root)(?=\s|$)/;
const toe = /^(smooth|sharp)(?=\s|$)/;

const written = amount => amount.digits && amount.digits + (amount.digits.includes(':') ? '' : amount.unit);

export class Line {
    /** @param {string[]} types what the pad has buttons for */
    constructor(types) {
        // 'crater crack' before 'crack'.
        this.types = [...types].sort((a, b) => b.length - a.length);
        this.clear();
    }

    clear() {
        /** what the pad has no buttons for */
        this.typed = '';
        this.type = '';
        /** the measure that digits go to ('': what such a find is measured by) */
        this.key = '';
        this.side = '';
        this.toe = '';
        /** @type {Amount} */
        this.place = { digits: '', unit: '' };
        /** @type {Map<string, Amount>} by key */
        this.measures = new Map();
    }

    text() {
        const measured = [...this.measures].map(([key, amount]) => written(amount) && `${key} ${written(amount)}`.trim());
        const at = written(this.place) && `at ${written(this.place)}`;
        return [this.typed, this.type, ...measured, at, this.side, this.toe].filter(Boolean).join(' ');
    }

    /** @param {string} text */
    read(text) {
        this.clear();
        let rest = text.trim();
        const next = length => { rest = rest.slice(length).trim(); };
        const starts = type => rest.toLowerCase() === type || rest.toLowerCase().startsWith(`${type} `);
        this.type = this.types.find(starts) ?? '';
        next(this.type.length);
        while (rest && this.#takes(rest, next));
        if (!rest) return;
        this.clear();
        this.typed = text.trim();
    }

    /** Whether the rest begins with a part of which there is none yet: it is taken. */
    #takes(rest, next) {
        const [at, sized, met, runs] = [place.exec(rest), measure.exec(rest), side.exec(rest), toe.exec(rest)];
        if (at && !this.place.digits) {
            this.place = { digits: at[1], unit: at[2] ?? '' };
        } else if (sized && !this.measures.has(sized[1] ?? '')) {
            this.key = sized[1] ?? '';
            this.measures.set(this.key, { digits: sized[2], unit: sized[3] ?? '' });
        } else if (met && !this.side) {
            this.side = met[1];
        } else if (runs && !this.toe) {
            this.toe = runs[1];
        } else {
            return false;
        }
        next((at ?? sized ?? met ?? runs)[0].length);
        return true;
    }
}

// Two rule engines of other people on the job of bench/pores_job.hpp: a JSON one and one for CEL expressions. Neither
// knows an inch that moves along a weld, so what is measured is worked out before, by hand, and both compare it with the
// limits. Reads a coupon a line, "at size at size ..." in nanometres; prints a line each: name, classes rejected, ns a coupon.
import { parse } from '@marcbachmann/cel-js';
import { Engine } from 'json-rules-engine';
import { readFileSync } from 'node:fs';

const inch = 25_400_000;
// By class: largest size, largest sum in an inch, nearest gap in larger sizes (MIL-HDBK-1890 Table III, page 11, read).
const classes = [
    { size: 1_524_000, sum: 3_048_000, apart: 5 },
    { size: 2_032_000, sum: 6_096_000, apart: 4 },
    { size: 2_540_000, sum: 15_240_000, apart: 3 },
];

const held = (pores, from) =>
    pores.reduce((all, p) => all + Math.max(0, Math.min(p.to, from + inch) - Math.max(p.at, from)), 0);

/** What the rules look at; the gaps as multiples of the larger of two neighbours. */
function measured(line) {
    const numbers = line.split(' ').map(Number);
    const pores = [];
    for (let i = 0; i < numbers.length; i += 2)
        pores.push({ at: numbers[i], to: numbers[i] + numbers[i + 1], size: numbers[i + 1] });
    pores.sort((a, b) => a.at - b.at);
    const pairs = [];
    let furthest = 0;
    for (let i = 1; i < pores.length; i++) {
        for (const before of new Set([i - 1, furthest]))
            pairs.push({
                free: Math.max(0, pores[i].at - pores[before].to),
                larger: Math.max(pores[i].size, pores[before].size),
            });
        if (pores[i].to > pores[furthest].to) furthest = i;
    }
    return {
        sizes: pores.map((p) => p.size),
        sum: Math.max(...pores.flatMap((p) => [held(pores, p.at), held(pores, p.to - inch)])),
        pairs,
    };
}

async function timed(name, coupons, judge) {
    let rejected = 0;
    const begin = process.cpuUsage();
    for (const line of coupons) rejected += await judge(measured(line));
    const { user, system } = process.cpuUsage(begin);
    console.log(`${name}\t${rejected}\t${((user + system) * 1000) / coupons.length}`);
}

function byJsonRules() {
    const engine = new Engine();
    engine.addOperator('all at most', (values, limit) => values.every((value) => value <= limit));
    engine.addOperator('all apart', (pairs, times) => pairs.every((p) => p.free >= times * p.larger));
    classes.forEach((row, k) =>
        engine.addRule({
            conditions: {
                all: [
                    { fact: 'sizes', operator: 'all at most', value: row.size },
                    { fact: 'sum', operator: 'lessThanInclusive', value: row.sum },
                    { fact: 'pairs', operator: 'all apart', value: row.apart },
                ],
            },
            event: { type: `class ${k + 1}` },
        }),
    );
    return async (facts) => (await engine.run(facts)).failureEvents.length;
}

function byCel() {
    const rules = classes.map((row) =>
        parse(`sizes.all(s, s <= ${row.size}.0) && sum <= ${row.sum}.0 && pairs.all(p, p.free >= ${row.apart}.0 * p.larger)`),
    );
    return (facts) => rules.reduce((out, accepts) => out + (accepts(facts) ? 0 : 1), 0);
}

const coupons = readFileSync(0, 'utf8').trimEnd().split('\n');
await timed('JSON rule engine (npm)', coupons, byJsonRules());
await timed('CEL expressions (npm)', coupons, byCel());

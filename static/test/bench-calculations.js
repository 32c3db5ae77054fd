// Each calculation's first example in specs/ops.md, and the bottle choice at 200
// bottles: by the core natively and as WebAssembly in Node.
import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { coreInNode } from './core-in-node.js';
import { median } from './median.js';

const root = new URL('../../', import.meta.url);
const warmUp = 50;
const runs = 300;

/** [{name, native, wasm}] in µs. */
export async function calculationCosts() {
  const call = await coreInNode();
  const native = await natively();
  return [...native].map(([op, micros]) => ({
    name: op,
    native: micros,
    wasm: inNode(call, ...inputOf(op)),
  }));
}

async function natively() {
  const args = [
    'test',
    '-run',
    '^$',
    '-bench',
    '^BenchmarkCalculation$|^BenchmarkBottles200$',
    '-count',
    '5',
    './internal/core',
  ];
  const { stdout } = await promisify(execFile)('go', args, { cwd: fileURLToPath(root) });
  const times = new Map();
  for (const [, name, nanos] of stdout.matchAll(
    /^Benchmark(\S+?)(?:-\d+)?\s+\d+\s+([\d.]+) ns\/op/gm,
  )) {
    const op = name.replace('Calculation/', '');
    times.set(op, [...(times.get(op) ?? []), nanos / 1000]);
  }
  return new Map([...times].map(([op, list]) => [op, median(list)]));
}

/** The operation and its input. */
function inputOf(name) {
  if (name === 'Bottles200') return ['bottles', shelf(200)];
  const doc = readFileSync(new URL('specs/ops.md', root), 'utf8');
  const [, input] = doc.split(`\`\`\`json in ${name}\n`);
  return [name, input.slice(0, input.indexOf('```'))];
}

/** A shelf as that of BenchmarkBottles200: no two sealed bottles alike. */
function shelf(size) {
  const bottles = Array.from({ length: size }, (_, n) => ({
    size: `${400 + 7 * n} mL`,
    price: `${5 + (n % 13)}`,
  }));
  return JSON.stringify({ need: '9.7 L', bottles });
}

function inNode(call, op, input) {
  const times = [];
  for (let run = -warmUp; run < runs; run++) {
    const begin = performance.now();
    const answer = call(op, input);
    if (run >= 0) times.push(performance.now() - begin);
    if (!answer.startsWith('{"ok"')) throw new Error(`${op}: ${answer}`);
  }
  return median(times) * 1000;
}

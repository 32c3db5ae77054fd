// Runs test files of the page: node static/test/run.js [flags of node --test] FILE...
// What may take how long is measured first (slowness.js).
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { measureSlowness } from './slowness.js';

const hangs = 1800; // s after which a file of tests is given up on a quiet machine; its waits end sooner (patience.js)

const slowness = Number(process.env.TEST_SLOWNESS) || (await measureSlowness());
if (slowness > 1) console.log(`This machine is ${slowness} times slower than a quiet one now.`);

const literal = (s) => s.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
const { TEST_NAME: name } = process.env; // how the names of the tests to run begin
const chosen = name ? [`--test-name-pattern=^${literal(name)}`] : [];

const reporters = ['chosen.js', 'failed.js'].flatMap((file) => [
  `--test-reporter=${fileURLToPath(new URL(file, import.meta.url))}`,
  '--test-reporter-destination=stdout',
]);
const flags = [
  '--test',
  `--test-timeout=${Math.round(hangs * slowness) * 1000}`,
  ...chosen,
  ...reporters,
];
const child = spawn(process.execPath, [...flags, ...process.argv.slice(2)], {
  stdio: 'inherit',
  env: { ...process.env, TEST_SLOWNESS: String(slowness) },
});
child.once('exit', (code) => process.exit(code ?? 1));

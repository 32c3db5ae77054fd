import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { test } from 'node:test';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { patience } from '../browser/patience.js';

const groups = fileURLToPath(new URL('groups.js', import.meta.url));

// A shell that leads a group, with a child in it that outlives the shell; it says both.
const family = 'sleep 600 & echo $$ $!; wait';
const owner = `
  const { startGroup } = await import(${JSON.stringify(groups)});
  const { child, kill } = startGroup('sh', ['-c', ${JSON.stringify(family)}], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  child.stdout.pipe(process.stdout);
  process.stdin.once('data', kill);
  setInterval(() => {}, 1000);`;

const runs = (id) => {
  try {
    return process.kill(id, 0);
  } catch {
    return false;
  }
};

async function untilGone(ids) {
  const end = performance.now() + patience();
  while (ids.some(runs)) {
    assert.ok(performance.now() < end, `${ids.filter(runs)} of ${ids} still run`);
    await pause(20);
  }
}

for (const [how, end] of [
  ['is asked to', (child) => child.stdin.write('end\n')],
  ['was killed', (child) => child.kill('SIGKILL')],
  ['was asked to end', (child) => child.kill('SIGTERM')],
])
  test(`a group of processes ends with the one that started it when that ${how}`, async (t) => {
    const child = spawn(process.execPath, ['--input-type=module', '-e', owner], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    t.after(() => child.kill('SIGKILL'));
    const [line] = await Promise.race([
      new Promise((resolve) => createInterface(child.stdout).once('line', (l) => resolve([l]))),
      pause(patience(), [''], { ref: false }),
    ]);
    const ids = line.split(' ').map(Number);
    assert.ok(ids.length === 2 && ids.every(runs), `both run: "${line}"`);
    end(child);
    await untilGone(ids);
  });

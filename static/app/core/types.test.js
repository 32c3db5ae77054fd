// What the checker of types says about calls of the core: a member that is misspelt, in
// what is asked or in what is answered, must not pass.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** The lines that the checker complains of in a module that calls the core. */
async function complaints(t, lines) {
  const folder = await mkdtemp(join(root, 'node_modules/.types-'));
  t.after(() => rm(folder, { recursive: true }));
  const head = `import { call } from '${root}app/core/client.js';`;
  await writeFile(join(folder, 'module.js'), [head, ...lines].join('\n'));
  const config = {
    extends: `${root}tsconfig.json`,
    include: ['module.js', `${root}app/site/*.d.ts`],
  };
  await writeFile(join(folder, 'tsconfig.json'), JSON.stringify(config));
  const { stdout } = spawnSync(join(root, 'node_modules/.bin/tsc'), ['-p', folder], {
    encoding: 'utf8',
  });
  return stdout.split('\n').flatMap(
    (line) =>
      line
        .match(/module\.js\((\d+),\d+\): error (.*)/)
        ?.slice(1, 3)
        .join(' ') ?? [],
  );
}

test('calls of the core are held against what its operations say', async (t) => {
  const lines = [
    `const card = /** @type {any} */ ({});`,
    `const plan = await call('plan', { card, bench: { system: 'metric', place: 'garage' } });`,
    `export const right = [plan.ok?.steps?.[0].stage === 'drain', plan.findings?.[0].code, plan.ok?.oils?.[0].due.texts];`,
    `export const level = (await call('level', { gauge: 'window', band: '0.5 L' })).ok?.corrected?.toFixed(1);`,
    `await call('plans', { card });`,
    `await call('plan', { card, banch: {} });`,
    `await call('plan', { bench: {} });`,
    `await call('plan', { card, bench: { place: 'kitchen' } });`,
    `export const wrong = plan.ok?.step;`,
    `export const stage = plan.ok?.steps?.[0].stage === 'draining';`,
    `export const text = plan.ok?.oils?.[0].due.texts?.toFixed(1);`,
    `export const refused = plan.ok.name;`,
    `export const absent = plan.ok?.oils[0];`,
  ];
  const found = await complaints(t, lines);
  assert.deepEqual(
    found.map((text) => Number(text.split(' ')[0])),
    [6, 7, 8, 9, 10, 11, 12, 13, 14],
    found.join('\n'),
  );
});

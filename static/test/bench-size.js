// What each file of the exported site weighs.
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { run } from './browser/launch.js';

// What a visit does not need: pictures for the shop window, and icons of other sizes.
const later = /^icons\/|\.webmanifest$|^sw\.js$/;

/** [{name, raw, gzip, brotli}] in bytes, the largest first; a sum comes last. */
export async function sizes() {
  const folder = await mkdtemp(join(tmpdir(), 'tidysump-'));
  try {
    await run('tidysump', '-export', folder);
    const names = (await readdir(folder, { recursive: true, withFileTypes: true }))
      .filter((entry) => entry.isFile() && !/\.(br|gz)$|^headers\.json$/.test(entry.name))
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
    const files = await Promise.all(names.map((name) => weigh(folder, name)));
    files.sort((a, b) => b.raw - a.raw);
    return [
      ...files,
      sum('all', files),
      sum(
        'all with *',
        files.filter((f) => f.name.endsWith('*')),
      ),
    ];
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function weigh(folder, name) {
  const bytes = await readFile(join(folder, name));
  const quality = { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } };
  return {
    name: name.replace(/\.[0-9a-f]{10}\./, '.') + (later.test(name) ? '' : ' *'),
    raw: bytes.length,
    gzip: gzipSync(bytes, { level: 9 }).length,
    brotli: brotliCompressSync(bytes, quality).length,
  };
}

function sum(name, files) {
  const total = (key) => files.reduce((all, file) => all + file[key], 0);
  return { name, raw: total('raw'), gzip: total('gzip'), brotli: total('brotli') };
}

import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { programOf } from './programs.js';
import { WebKitEngine, logIn } from './webkit-engine.js';

const run = promisify(execFile);
const source = fileURLToPath(new URL('webkit-old-window.c', import.meta.url));

/** Compiles the window, once for a profile; resolves to its path. */
async function compiled(profile) {
  const program = join(profile, 'window');
  if (existsSync(program)) return program;
  const { stdout } = await run('pkg-config', [
    '--cflags',
    '--libs',
    'wpe-webkit-1.1',
    'wpebackend-fdo-1.0',
  ]);
  await run('gcc', ['-Wall', '-Werror', '-o', program, source, ...stdout.trim().split(/\s+/)]);
  return program;
}

/** Starts a WPE WebKit 2.38, which is as old as iOS 16.0. */
export async function startOldWebKit({ profile, downloads, size: { width, height } }) {
  const driver = programOf('webkit-old');
  const log = logIn(profile);
  const engine = new WebKitEngine();
  engine.name = 'webkit-old';
  engine.can = new Set(['file', 'windows', 'reopen', 'drag']); // the port knows no a[download]
  engine.downloads = downloads;
  await engine.start({
    driver,
    options: 'wpe:browserOptions',
    window: [await compiled(profile), profile, log, `${width}`, `${height}`],
    env: { LIBGL_ALWAYS_SOFTWARE: '1' },
    log,
  });
  return engine;
}

import { fileURLToPath } from 'node:url';
import { startGroup } from './groups.js';
import { programOf } from './programs.js';
import { WebKitEngine, logIn } from './webkit-engine.js';

const program = fileURLToPath(new URL('webkit-window.py', import.meta.url));

/** Starts a screen that nobody sees; resolves to {display, kill}. */
async function startScreen() {
  const { child, kill } = startGroup(
    'Xvfb',
    ['-displayfd', '1', '-screen', '0', '1280x1024x24', '-nolisten', 'tcp'],
    { stdio: ['ignore', 'pipe', 'ignore'] },
  );
  const number = await new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`Xvfb ended with ${code}`)));
    child.stdout.once('data', (data) => resolve(String(data).trim()));
  });
  return { display: `:${number}`, kill };
}

/** Starts a WebKitGTK in a window of its own, with what Safari has. */
export async function startWebKit({ profile, downloads, size: { width, height } }) {
  const driver = programOf('webkit');
  const { display, kill } = await startScreen();
  const log = logIn(profile);
  const engine = new WebKitEngine();
  engine.name = 'webkit';
  engine.can = new Set(['file', 'windows', 'download', 'reopen', 'drag']);
  engine.downloads = downloads;
  await engine.start({
    driver,
    options: 'webkitgtk:browserOptions',
    window: ['/usr/bin/python3', program, profile, downloads, log, `${width}`, `${height}`],
    env: {
      DISPLAY: display,
      GDK_BACKEND: 'x11',
      NO_AT_BRIDGE: '1', // no bus for screen readers, which nobody started
      GIO_USE_VFS: 'local',
    },
    log,
    groups: [kill],
  });
  return engine;
}

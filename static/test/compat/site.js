// The built site, read and checked whole.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { checkHeaders } from './headers.js';
import { checkManifest } from './manifest.js';
import { checkMarkup } from './markup.js';
import { Report } from './report.js';
import { checkScripts } from './script.js';
import { checkStyle } from './style.js';
import { promisedBrowsers } from './support.js';
import { checkWasm } from './wasm.js';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const program = (name, ...args) =>
  execFileSync(join(root, 'build', name), args, { cwd: root, encoding: 'utf8' });

/** The promised versions, as the build of the page has them, by the data's names. */
export const promised = () => promisedBrowsers(JSON.parse(program('builder', '-oldest')));

/** The files of the built site, {name, path, body}: its name has no hash; and the headers of each. */
export function builtSite() {
  const folder = mkdtempSync(join(tmpdir(), 'tidysump-compat-'));
  try {
    program('tidysump', '-export', folder);
    const files = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !/\.(br|gz)$/.test(entry.name))
      .map((entry) => {
        const path = join(entry.parentPath ?? entry.path, entry.name);
        const name = path.slice(folder.length + 1).replace(/\.[0-9a-f]{10}\./, '.');
        return { name, path: path.slice(folder.length), body: readFileSync(path) };
      });
    const headers = JSON.parse(files.find(({ name }) => name === 'headers.json').body);
    return { files: files.filter(({ name }) => name !== 'headers.json'), headers };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

// Loaded as classic scripts, which know no import; the page's other scripts are modules.
const classic = /^(sw|app\/rescue|app\/older)\.js$/;

const checks = [
  [/\.css$/, (report, name, text) => checkStyle(report, name, text)],
  [/\.(html|svg)$/, (report, name, text) => checkMarkup(report, name, text)],
  [/\.webmanifest$/, (report, name, text) => checkManifest(report, name, JSON.parse(text))],
  [/\.wasm$/, (report, name, text, body) => checkWasm(report, name, body)],
  [/\.(js|json|png|txt)$/, () => {}], // scripts go together; the others are data
];

/** The scripts of a site, as checkScripts takes them. */
export const scriptsOf = ({ files }) =>
  files
    .filter(({ name }) => name.endsWith('.js'))
    .map(({ name, body }) => ({ name, text: body.toString(), module: !classic.test(name) }));

/** Reports all that a site uses; gives what of the page's own names was needed too. */
export async function checkSite(site) {
  const report = new Report(promised());
  for (const { name, body } of site.files) {
    const check = checks.find(([kind]) => kind.test(name))?.[1];
    if (check) await check(report, name, body.toString(), body);
    else report.odd(`file: ${name}`, name);
  }
  for (const headers of new Set(Object.values(site.headers).map((one) => JSON.stringify(one))))
    checkHeaders(report, JSON.parse(headers));
  return { report, needed: checkScripts(report, scriptsOf(site)) };
}

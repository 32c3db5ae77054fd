// What a printed page says.
import { execFile } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { temporaryFolder } from './launch.js';

const run = promisify(execFile);

/** Prints the page on 'A4' or 'Letter' and reads it: the text of each sheet, with plain spaces. */
export async function printed(t, page, format) {
  const path = join(await temporaryFolder(t), 'page.pdf');
  await writeFile(path, await page.pdf({ format }));
  const program = process.env.PDFTOTEXT ?? 'pdftotext';
  const { stdout } = await run(program, ['-layout', path, '-']);
  return stdout
    .split('\f')
    .slice(0, -1) // each sheet ends with one
    .map((text) => text.replace(/\s+/g, ' '));
}

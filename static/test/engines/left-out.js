// Which engines a run left out, for who reads its end.
import { appendFileSync } from 'node:fs';

/**
 * Skips the walk of an engine that can't be had here; where everything has to be (CI) it
 * fails instead. LEFT_OUT names the file that is read at the end of all tests.
 */
export function leaveOut(t, name, why) {
  if (process.env.CI === 'true') throw new Error(`${name} can't be had: ${why}`);
  if (process.env.LEFT_OUT) appendFileSync(process.env.LEFT_OUT, `${name}: ${why}\n`);
  console.log(`NOT TRIED IN ${name}: ${why}`);
  t.skip(why);
}

// How slow this machine is now: waits in tests grow with it, so that a loaded
// machine makes them late and not wrong.
import { spawn } from 'node:child_process';
import { availableParallelism, loadavg } from 'node:os';

const usual = 450; // ms that the probe takes on a quiet machine of two cores
/** How many times slower at most; further on something hangs. */
export const most = 20;

// What tests do: a program a core starts, and computes for a while.
const probe = 'for (let i = 0, s = ""; i < 3e6; i++) s = (s + i.toString(36)).slice(-99);';

function once() {
  const began = performance.now();
  const child = spawn(process.execPath, ['-e', probe], { stdio: 'ignore' });
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', () => resolve(performance.now() - began));
  });
}

/** Resolves to how many times slower this machine is than a quiet one; 1 at least. */
export async function measureSlowness() {
  const cores = availableParallelism();
  const times = await Promise.all(Array.from({ length: cores }, once));
  const slowness = Math.max(1, Math.max(...times) / usual, loadavg()[0] / cores);
  return Math.min(Math.round(slowness * 10) / 10, most);
}

// How long a test waits for what should come. It grows with the slowness of the
// machine, which static/test/run.js has measured before, and with what else runs on it now.
import { availableParallelism, loadavg } from 'node:os';
import { most } from '../slowness.js';

const before = Number(process.env.TEST_SLOWNESS) || 1;

/** How many times slower than a quiet one the machine is. */
const slowness = () => Math.max(before, Math.min(loadavg()[0] / availableParallelism(), most));

/** So many seconds of a quiet machine, in whole milliseconds of this one. */
export const patience = (seconds = 30) => Math.round(seconds * 1000 * slowness());

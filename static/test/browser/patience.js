// How long a test waits for what should come. It grows with the slowness of the
// machine, which static/test/run.js has measured.
const slowness = Number(process.env.TEST_SLOWNESS) || 1;

/** So many seconds of a quiet machine, in whole milliseconds of this one. */
export const patience = (seconds = 30) => Math.round(seconds * 1000 * slowness);

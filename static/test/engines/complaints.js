// What engines complain of though nothing is wrong with the page.

/** [{engines, text, because}]: what such a complaint says, and why it is none of the page. */
const known = [
  {
    engines: ['webkit', 'webkit-old'],
    text: /^Unrecognized Content-Security-Policy directive 'manifest-src'/,
    because: 'these ports were built without manifests of web apps',
  },
  {
    engines: ['webkit-old'],
    text: /^Unrecognized Content-Security-Policy directive '(require-)?trusted-types/,
    because: 'it is older than trusted types, and the page does without them',
  },
  {
    engines: ['webkit', 'webkit-old'],
    text: /^The resource \S+\.json was preloaded using link preload but not used/,
    because: 'fetch() takes it from the cache of the network there, which does not count as use',
  },
  {
    engines: ['webkit', 'webkit-old'],
    text: /^Cannot load \S+\/app\/core\/worker\.\S+ due to access control checks/,
    because: 'so they tell of what was still loading when the page was left; lines ask the core',
  },
];

/** The complaints of an engine that stand for a fault. */
export const faultsAmong = (engine, complaints) =>
  complaints.filter(
    (text) => !known.some((one) => one.engines.includes(engine) && one.text.test(text)),
  );

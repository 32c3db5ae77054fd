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
    text: /^(Fetch API cannot|Cannot) load http:\/\/localhost:\d+\/(app|data)\/\S+ due to access control checks/,
    because: 'so they tell of what was still loading when the page was left; lines ask for it',
  },
  {
    engines: ['webkit-old'],
    text: /^ResizeObserver loop completed with undelivered notifications/,
    because:
      'it goes on with what waited for a promise between two observers, none of which changes a size (ui/bars.js): what is drawn then is told in the next frame',
  },
];

/** The complaints of an engine that stand for a fault. */
export const faultsAmong = (engine, complaints) =>
  complaints.filter(
    (text) => !known.some((one) => one.engines.includes(engine) && one.text.test(text)),
  );

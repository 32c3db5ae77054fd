// Collects what a browser complains of: errors and warnings on the console (a
// breach of the Content-Security-Policy is one), uncaught errors of page and
// service worker, requests that fail.

const known = [
  // Browsers that can't share say so of the policy that allows sharing.
  "Error with Permissions-Policy header: Unrecognized feature: 'web-share'.",
  // How soon that is depends on the machine.
  'was preloaded using link preload but not used within a few seconds',
];

/** Watches a page; what it returns fills with the complaints. */
export async function watch(page) {
  const complaints = [];
  page.on('console', (message) => {
    const text = message.text();
    const serious = ['error', 'warn'].includes(message.type());
    if (serious && !known.some((part) => text.includes(part)))
      complaints.push(`${text} ${message.location().url ?? ''}`);
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('requestfailed', (request) => complaints.push(request.url()));
  const devtools = await page.createCDPSession();
  devtools.on('ServiceWorker.workerErrorReported', ({ errorMessage }) =>
    complaints.push(`service worker: ${errorMessage.errorMessage}`),
  );
  await devtools.send('ServiceWorker.enable');
  return complaints;
}

/** Hears of sentences that miss a value; what it returns fills with them. */
export function hearGaps(page) {
  const gaps = [];
  page.on('console', (message) => {
    if (message.text().includes('nothing fills {')) gaps.push(message.text());
  });
  return gaps;
}

/** What keeps the browser from installing the page as an app. */
export async function installErrors(page) {
  const devtools = await page.createCDPSession();
  const { errors, url } = await devtools.send('Page.getAppManifest');
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
  return [...(url ? [] : ['no manifest']), ...errors, ...installabilityErrors];
}

// What the tests of the checks have in common.
import { Report } from './report.js';
import { promisedBrowsers } from './support.js';

/** A report for versions that the samples are written for, whatever the page promises. */
export const sampleReport = () =>
  new Report(promisedBrowsers({ iOS: '15.4', Firefox: '140', Chrome: '102' }));

/** What a look at a sample finds: the keys of what is newer. */
export function newerIn(look) {
  const report = sampleReport();
  look(report);
  return report.keys();
}

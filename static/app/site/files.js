/* global __FILES__ */
// Where each file of this version is: name in the static folder -> URL. The
// build writes it into the bundle (internal/site); without a build it is empty.
export const files = typeof __FILES__ === 'undefined' ? {} : __FILES__;

// Which features of the data the headers of answers use.
import { lookUp } from './support.js';

/** Reports the headers of one answer, {name: value}. */
export function checkHeaders(report, headers) {
  for (const [name, value] of Object.entries(headers)) {
    const way = ['http', 'headers', name];
    report.use(way, name, `header: ${name}`);
    if (name === 'Content-Security-Policy') checkPolicy(report, way, value);
    else if (name === 'Permissions-Policy') checkPermissions(report, way, value);
    else
      for (const word of value.split(/[\s,;]+/))
        if (word && lookUp([...way, word])) report.use([...way, word], `${name}: ${word}`);
  }
}

// What every policy has always known; keywords that the data knows at no directive.
const plain = /^('self'|'none'|blob:|data:)$/;

function checkPolicy(report, way, value) {
  for (const [directive, ...sources] of value.split(';').map((part) => part.trim().split(/\s+/))) {
    const place = `Content-Security-Policy: ${directive}`;
    report.use([...way, directive], place, `directive: ${directive}`);
    if (directive === 'trusted-types') continue; // names of ours
    for (const source of sources) {
      const word = source.replace(/^'|'$/g, '');
      const named = [[...way, directive, word], [...way, word]].find(lookUp); // prettier-ignore
      if (named) report.use(named, `${place} ${source}`);
      else if (!plain.test(source) && directive !== 'require-trusted-types-for')
        report.odd(`source: ${source}`, place);
    }
  }
}

function checkPermissions(report, way, value) {
  for (const [, name] of value.matchAll(/([\w-]+)=/g))
    report.use([...way, name], `Permissions-Policy: ${name}`, `permission: ${name}`);
}

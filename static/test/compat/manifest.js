// Which features of the data the app's manifest uses.
import { lookUp } from './support.js';

/** Reports the members of a manifest, and those of their values that the data knows. */
export function checkManifest(report, name, manifest) {
  for (const [member, value] of Object.entries(manifest)) {
    const way = ['manifests', 'webapp', member];
    report.use(way, `${name}: ${member}`, `manifest: ${member}`);
    for (const one of [value].flat())
      if (typeof one === 'string' && lookUp([...way, one]))
        report.use([...way, one], `${name}: ${member} ${one}`);
      else if (one && typeof one === 'object')
        for (const key of Object.keys(one))
          if (lookUp([...way, key])) report.use([...way, key], `${name}: ${member}.${key}`);
  }
}

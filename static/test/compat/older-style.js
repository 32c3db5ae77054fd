// A style sheet as a browser reads it that has nothing of what is newer than promised.
import { generate, parse, walk } from 'css-tree';
import { Report } from './report.js';
import { StyleCheck } from './style.js';

/** The text of the sheet without the declarations and rules that such a browser drops. */
export function olderStyle(text, promised) {
  const tree = parse(text, { parseCustomProperty: true });
  const isNewer = (look) => {
    const report = new Report(promised);
    look(new StyleCheck(report, '', ''));
    return report.found.size > 0;
  };
  walk(tree, {
    enter(node, item, list) {
      const newer =
        (node.type === 'Declaration' && isNewer((check) => check.declaration(node, new Set()))) ||
        (node.type === 'Rule' && isNewer((check) => check.selectors(node.prelude))) ||
        (node.type === 'Atrule' && isNewer((check) => check.head(node, [])));
      if (!newer) return undefined;
      list?.remove(item);
      return this.skip;
    },
  });
  return generate(tree);
}

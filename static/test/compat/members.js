// The names of all members that browsers have, with the features of the data they may mean.
import { lookUp, missing, parts } from './support.js';

const trees = [['api'], ['javascript', 'builtins'], ['javascript', 'builtins', 'Intl'], ['webassembly', 'api']]; // prettier-ignore

/**
 * Every member by its name: {way, owner, fixed}: whether it is the owner's own and no
 * instance's; undefined where the data does not say.
 */
export const membersByName = new Map();
/** Every event by its name: {way, owner}. */
export const eventsByName = new Map();

const enter = (map, name, entry) =>
  map.has(name) ? map.get(name).push(entry) : map.set(name, [entry]);

for (const tree of trees)
  for (const [owner, node] of parts(lookUp(tree)))
    for (const [id] of parts(node)) {
      const way = [...tree, owner, id];
      if (id.endsWith('_permission') || id === owner || id.startsWith('@@')) continue;
      if (id.endsWith('_event')) enter(eventsByName, id.slice(0, -6), { way, owner });
      else
        enter(membersByName, id.replace(/_static$/, ''), {
          way,
          owner,
          fixed: isFixed(tree, owner, id),
        });
    }

/** Math, JSON, Intl and the like have no instances; of other builtins the data does not say. */
function isFixed([root], owner, id) {
  if (['Math', 'JSON', 'Intl', 'Reflect', 'Atomics', 'CSS'].includes(owner)) return true;
  return root === 'javascript' ? undefined : id.endsWith('_static');
}

/** The way to a class or a namespace of this name; undefined for none. */
export const ownerWay = (owner) =>
  trees.map((tree) => [...tree, owner]).find((way) => parts(lookUp(way) ?? {}).length);

/** The ways to what a global of this name may be, in a window or a worker. */
export const globalWays = (name) =>
  [
    ['api', name],
    ['javascript', 'builtins', name],
    ...['Window', 'WorkerGlobalScope', 'DedicatedWorkerGlobalScope', 'ServiceWorkerGlobalScope']
      .map((scope) => ['api', scope, name]), // prettier-ignore
    ...(name === 'WebAssembly' ? [['webassembly', 'api']] : []),
  ].filter(lookUp);

const instances = {
  caches: ['CacheStorage'],
  indexedDB: ['IDBFactory'],
  localStorage: ['Storage'],
  sessionStorage: ['Storage'],
  navigator: ['Navigator', 'WorkerNavigator'],
  document: ['Document', 'Node', 'EventTarget'],
};

/** The classes that the value of a global may have, navigator: Navigator. */
export const classesOfGlobal = (name) =>
  instances[name] ??
  [name[0].toUpperCase() + name.slice(1)].filter((one) => one !== name && ownerWay(one));

/**
 * Which browsers lack the member, of those that have its owner: who lacks the owner too
 * can't come by one, but by a name that is found itself.
 */
export function lackedOnly(way, promised) {
  const lacked = missing(lookUp(way), promised);
  for (const browser of Object.keys(missing(lookUp(way.slice(0, -1)), promised)))
    delete lacked[browser];
  return lacked;
}

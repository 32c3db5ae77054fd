import { core } from './core/client.js';
import { offline } from './phone/offline.js';

// The page's own two doors, for a browser's console and for the browser tests.
globalThis.tidysump = { core, offline };

import { checkScreens } from './check-screens.js';

checkScreens('cards', 'edit', 'manual', 'settings', 'keep');

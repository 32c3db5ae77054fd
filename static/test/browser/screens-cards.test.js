import { checkScreens } from './check-screens.js';

checkScreens('cards', 'edit', 'settings', 'keep');

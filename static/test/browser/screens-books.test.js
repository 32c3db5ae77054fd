import { checkScreens } from './check-screens.js';

checkScreens('books');

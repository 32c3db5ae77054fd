import { checkScreens } from './check-screens.js';

checkScreens('bikes', 'bike', 'details');

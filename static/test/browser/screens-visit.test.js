import { checkScreens } from './check-screens.js';

checkScreens('visit', 'visits', 'label');

import { checkScreens } from './check-screens.js';

checkScreens('bench', 'trouble', 'aid');

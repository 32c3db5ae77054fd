import { checkScreens } from './check-screens.js';

checkScreens('record', 'due', 'sheet', 'bench-sheet', 'bill');

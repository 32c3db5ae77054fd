import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { downloaded } from './download.js';
import { exportEdition } from './editions.js';
import { startFolderHost } from './folder-host.js';
import { plant, stored } from './job-page.js';
import { openBrowser, temporaryFolder } from './launch.js';
import { polling, untilState } from './page.js';
import { seen, tap, untilSeen } from './person.js';
import { words } from './words.js';

const shown = (page) => page.evaluate(() => !document.getElementById('rescue').hidden);

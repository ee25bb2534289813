// One Chromium for the whole run, a context of its own for each visit, and a record of all that a page did meanwhile.

import assert from 'node:assert/strict';
import { after } from 'node:test';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const executablePath = process.env.PLAINWATT_CHROMIUM ?? '/usr/bin/chromium';

// Without these Chromium looks for updates and the like, which has nothing to do with the page.
const args = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

let started;
const browser = () => (started ??= chromium.launch({ executablePath, args }));

after(async () => {
  await (await started)?.close();
});

/** The widths, in CSS pixels, at which a page has to be readable. */
export const WIDTHS = [320, 768, 1280];

/** The colour schemes that a reader may prefer. */
export const SCHEMES = ['light', 'dark'];

/**
 * Opens `file` as a reader would, gives the page to `body`, and fails if meanwhile the page logged anything, threw, opened
 * anything or asked for anything but the file itself. Every visit is so watched, whatever else it is for; where `silent` is
 * false the page may complain, and try to ask for what its own policy then forbids.
 */
export async function visit(file, { width = 1280, scheme = 'light', script = true, silent = true } = {}, body = () => {}) {
  const url = pathToFileURL(file).href;
  const context = await (await browser()).newContext({
    viewport: { width, height: 900 },
    colorScheme: scheme,
    javaScriptEnabled: script,
  });
  try {
    const did = [];
    const asked = [];
    await context.route('**', (route) => (route.request().url() === url ? route.continue() : route.abort()));
    const page = await context.newPage();
    context.on('request', (request) => asked.push(request));
    page.on('websocket', (socket) => did.push(`opened ${socket.url()}`));
    page.on('worker', (worker) => did.push(`started ${worker.url()}`));
    page.on('popup', (popup) => did.push(`opened a window: ${popup.url()}`));
    page.on('download', (download) => did.push(`downloaded ${download.url()}`));
    page.on('pageerror', (error) => did.push(`threw ${error.message}`));
    page.on('console', (message) => did.push(`logged ${message.type()}: ${message.text()}`));
    page.on('dialog', (dialog) => {
      did.push(`showed a dialog: ${dialog.message()}`);
      dialog.dismiss();
    });
    await page.goto(url);
    await body(page);
    if (silent) assert.deepEqual(did, [], 'the page logs, throws and opens nothing');
    const forbidden = (request) => !silent && request.failure()?.errorText === 'csp';
    const left = asked.filter((request) => !forbidden(request)).map((request) => request.url());
    assert.deepEqual(left, [url], 'the page asks for nothing but itself, once');
  } finally {
    await context.close();
  }
}

// The page of one light.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { complaints } from './axe.mjs';
import { visit } from './browser.mjs';
import { page as made, rows, run } from './program.mjs';

/** Invented lights: one counted, one read from its title, one without a claim. */
const LIGHTS = {
  counted: ['vet', '--claim', '300', '--class', '3W', '--tally', '60 deep-red + 20 royal-blue + 10 white'],
  read: ['vet', 'Halfpenny 1000W LED Grow Light, 100 x 5W chips, actual power 205W, replaces 600W HPS'],
  unclaimed: ['vet', '--class', '3W', '--tally', '60 deep-red + 20 royal-blue'],
};

for (const [name, args] of Object.entries(LIGHTS)) {
  test(`the page of one light, ${name}, gives its verdict and is in order`, async () => {
    const file = made(args);
    const [{ verdict, wall_w: wall }] = rows(run([...args, '--format', 'csv']));
    for (const [width, scheme] of [[320, 'light'], [768, 'light'], [1280, 'dark']]) {
      await visit(file, { width, scheme }, async (page) => {
        assert.equal(await page.locator('h1').count(), 1);
        assert.equal(await page.locator('main').count(), 1);
        const text = await page.locator('main').innerText();
        assert.ok(text.includes(verdict), `${verdict} is not in: ${text}`);
        assert.ok(text.includes(String(Math.round(Number(wall)))), `${wall} W is not in: ${text}`);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        assert.ok(wide <= width, `the page is ${wide} px wide in a window of ${width} px`);
        assert.deepEqual((await complaints(page)).violations, []);
      });
    }
  });
}

// The page as readers meet it: at each width, in each scheme, with and without script, it is silent and fits.

import assert from 'node:assert/strict';
import { readFileSync, statSync } from 'node:fs';
import { test } from 'node:test';
import { SCHEMES, visit, WIDTHS } from './browser.mjs';
import { DEMO, demoPage, demoRows, page as made, written } from './program.mjs';

for (const script of [true, false]) {
  for (const scheme of SCHEMES) {
    for (const width of WIDTHS) {
      const how = `${width} px, ${scheme}, ${script ? 'with' : 'without'} script`;
      test(`the page asks for nothing, logs nothing and fits: ${how}`, async () => {
        await visit(demoPage(), { width, scheme, script }, async (page) => {
          const { wide, room } = await page.evaluate(() => ({
            wide: document.documentElement.scrollWidth,
            room: window.innerWidth,
          }));
          assert.ok(wide <= room, `the page is ${wide} px wide in a window of ${room} px`);
          const fetched = await page.evaluate(() => performance.getEntriesByType('resource').map((e) => e.name));
          assert.deepEqual(fetched, [], 'the browser itself knows of no other resource');
          assert.equal(await page.locator('tr.listing:visible').count(), demoRows().length, 'all listings can be seen');
        });
      });
    }
  }
}

test('nothing in the page names another file to load', async () => {
  await visit(demoPage(), {}, async (page) => {
    const names = await page.evaluate(() => {
      const loads = ['src', 'srcset', 'poster', 'data', 'action', 'formaction', 'background', 'ping'];
      const all = [...document.querySelectorAll('*')];
      const attributes = all.flatMap((e) =>
        [...e.attributes]
          .filter((a) => loads.includes(a.name))
          .map((a) => `${e.localName} ${a.name}=${a.value}`),
      );
      const elements = all
        .filter((e) => ['link', 'base', 'iframe', 'object', 'embed', 'frame'].includes(e.localName))
        .map((e) => e.outerHTML);
      const styles = [...document.querySelectorAll('style, [style]')]
        .map((e) => (e.localName === 'style' ? e.textContent : e.getAttribute('style')))
        .flatMap((css) => css.match(/@import[^;]*|url\((?!["']?(?:#|data:))[^)]*\)/g) ?? []);
      const used = [...document.querySelectorAll('svg use, svg image')]
        .map((e) => e.getAttribute('href') ?? e.getAttribute('xlink:href'))
        .filter((href) => !href?.startsWith('#'));
      return [...attributes, ...elements, ...styles, ...used];
    });
    assert.deepEqual(names, []);
  });
});

test('text of twice the size does not push the page out of its window', async () => {
  await visit(demoPage(), { width: 640 }, async (page) => {
    const wide = await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
      return document.documentElement.scrollWidth;
    });
    assert.ok(wide <= 640, `the page is ${wide} px wide in a window of 640 px`);
  });
});

test('the page has one heading of the first rank, its landmarks and its sections', async () => {
  await visit(demoPage(), {}, async (page) => {
    assert.equal(await page.locator('html').getAttribute('lang'), 'en');
    assert.notEqual((await page.title()).trim(), '');
    assert.equal(await page.locator('h1').count(), 1);
    assert.equal(await page.locator('main').count(), 1);
    for (const id of ['summary', 'shares', 'suppliers', 'listings-section', 'method']) {
      assert.equal(await page.locator(`#${id}`).count(), 1, `#${id}`);
      assert.ok(await page.locator(`#${id}`).isVisible(), `#${id} can be seen`);
    }
  });
});

test('of a thousand listings the page shows some, counts all, stays small and is as quiet', async () => {
  // Invented: the demo listings over and over.
  const [header, ...lines] = readFileSync(DEMO, 'utf8').trim().split('\n');
  const many = Array.from({ length: 1000 }, (_, at) => lines[at % lines.length]);
  const file = made(['grade', written(`${[header, ...many].join('\n')}\n`)]);
  assert.ok(statSync(file).size < 300_000, `${statSync(file).size} bytes`);
  await visit(file, { width: 320 }, async (page) => {
    assert.match(await page.locator('#summary').innerText(), /\b1000\b/);
    const shown = await page.locator('tr.listing:visible').count();
    assert.ok(shown >= 100 && shown < 1000, `${shown} listings are shown`);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    assert.ok(wide <= 320, `the page is ${wide} px wide`);
  });
});

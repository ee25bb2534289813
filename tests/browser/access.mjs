// Can the page be read by all: the rules of axe-core, on screen and on paper, and the contrast within pictures.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { complaints } from './axe.mjs';
import { visit } from './browser.mjs';
import { demoPage } from './program.mjs';

// Each layout and each scheme once; paper is the same from either scheme, and more at risk from a dark one.
for (const [media, width, scheme] of [
  ['screen', 320, 'light'],
  ['screen', 1280, 'light'],
  ['screen', 1280, 'dark'],
  ['print', 718, 'dark'],
]) {
  test(`axe-core finds nothing: ${media}, ${width} px, ${scheme}`, async () => {
    await visit(demoPage(), { width, scheme }, async (page) => {
      await page.emulateMedia({ media, colorScheme: scheme });
      const found = await complaints(page);
      assert.deepEqual(found.violations, []);
      // On a narrow screen a table may lie partly behind its edge, where no contrast can be measured.
      if (width > 320) assert.deepEqual(found.unsure, [], 'and nothing is left for a person to decide');
    });
  });
}

test('axe-core finds nothing after the table was sorted and one verdict chosen', async () => {
  await visit(demoPage(), {}, async (page) => {
    await page.locator('#listings th button').first().click();
    await page.locator('#filter-verdict').selectOption('overstated');
    assert.deepEqual((await complaints(page)).violations, []);
  });
});

for (const [media, scheme] of [['screen', 'light'], ['screen', 'dark'], ['print', 'dark']]) {
  test(`words in pictures stand out from the ground: ${media}, ${scheme}`, async () => {
    await visit(demoPage(), { scheme }, async (page) => {
      await page.emulateMedia({ media, colorScheme: scheme });
      const words = await page.$$eval('svg text', (all) => {
        const opaque = (colour) => !/^(transparent|rgba\(.*, 0\))$/.test(colour);
        const own = (e) => [getComputedStyle(e).backgroundColor].find(opaque);
        const ground = (e) => (e ? own(e) ?? ground(e.parentElement) : 'rgb(255, 255, 255)');
        const drawn = all.filter((e) => e.getClientRects().length > 0 && e.textContent.trim() !== '');
        return drawn.map((e) => ({ text: e.textContent, fill: getComputedStyle(e).fill, ground: ground(e) }));
      });
      assert.ok(words.length > 0, 'the pictures have words');
      const faint = words.filter((word) => contrast(word.fill, word.ground) < 4.5);
      assert.deepEqual(faint, []);
    });
  });
}

/** The contrast of two colours, `rgb(r, g, b)` each, by the definition of WCAG 2.2. */
function contrast(one, other) {
  const [light, dark] = [one, other].map(luminance).toSorted((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

/** Relative luminance, as WCAG 2.2 defines it. */
function luminance(colour) {
  const parts = /^rgb\((\d+), (\d+), (\d+)\)$/.exec(colour);
  assert.ok(parts, `a plain colour, not ${colour}`);
  const [red, green, blue] = parts.slice(1).map((part) => {
    const value = Number(part) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

test('contrast is worked out as WCAG defines it', () => {
  // Black on white is 21; #767676 is the lightest grey that is enough on white.
  assert.equal(contrast('rgb(0, 0, 0)', 'rgb(255, 255, 255)'), 21);
  assert.ok(contrast('rgb(118, 118, 118)', 'rgb(255, 255, 255)') >= 4.5);
  assert.ok(contrast('rgb(119, 119, 119)', 'rgb(255, 255, 255)') < 4.5);
});

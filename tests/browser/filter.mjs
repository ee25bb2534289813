// Choosing one verdict, against the verdicts of the CSV.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { visit } from './browser.mjs';
import { demoPage, demoRows } from './program.mjs';

/** The verdicts of the rows that can be seen, in their order. */
async function seen(page) {
  const cells = page.locator('#listings tr.listing:visible td.verdict');
  return (await cells.evaluateAll((all) => all.map((td) => td.closest('tr').dataset.verdict)));
}

const verdicts = () => demoRows().map((row) => row.verdict);

test('choosing a verdict leaves its listings and hides the others, and all come back', async () => {
  await visit(demoPage(), {}, async (page) => {
    const select = page.locator('#filter-verdict');
    const options = await select.locator('option').evaluateAll((all) => all.map((o) => o.value));
    const words = [...new Set(verdicts())];
    assert.deepEqual(words.filter((word) => !options.includes(word)), [], 'every verdict can be chosen');
    const everything = options.find((value) => !words.includes(value) && ['', 'all'].includes(value));
    assert.notEqual(everything, undefined, `an option shows all listings: ${options}`);
    for (const word of words) {
      await select.selectOption(word);
      assert.deepEqual(await seen(page), verdicts().filter((v) => v === word), word);
      const hidden = await page.locator('#listings tr.listing[hidden]').count();
      assert.equal(hidden, verdicts().filter((v) => v !== word).length, 'hidden by the attribute, for all readers');
    }
    await select.selectOption(everything);
    assert.deepEqual(await seen(page), verdicts());
  });
});

test('a verdict chosen by keyboard stays chosen while the table is sorted', async () => {
  await visit(demoPage(), {}, async (page) => {
    const select = page.locator('#filter-verdict');
    await select.focus();
    await page.keyboard.press('ArrowDown');
    const word = await select.inputValue();
    const expected = verdicts().filter((v) => v === word);
    assert.ok(expected.length > 0, `the arrow key chose ${JSON.stringify(word)}`);
    await page.keyboard.press('Enter');
    assert.deepEqual(await seen(page), expected);
    await page.locator('#listings th button').first().click();
    assert.deepEqual(await seen(page), expected);
  });
});

test('the filter has a label that can be read', async () => {
  await visit(demoPage(), {}, async (page) => {
    const labels = await page.locator('#filter-verdict').evaluate((select) => [...select.labels].map((l) => l.innerText));
    assert.ok(labels.some((label) => label.trim() !== ''), `labels: ${JSON.stringify(labels)}`);
  });
});

test('without script no control is shown that would do nothing', async () => {
  await visit(demoPage(), { script: false }, async (page) => {
    const shown = await page.locator('button:visible, select:visible, input:visible').count();
    assert.equal(shown, 0);
    assert.equal(await page.locator('#listings tr.listing:visible').count(), verdicts().length, 'all listings are shown');
  });
});

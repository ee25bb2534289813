// Sorting, against an order worked out here from the CSV of the same listings.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { visit } from './browser.mjs';
import { demoPage, demoRows, number, same } from './program.mjs';

/** What may be sorted by: the cell's class in the page, the column in the CSV. */
const KEYS = [
  { cell: 'share', column: 'share' },
  { cell: 'claim', column: 'claim_w' },
];

/** Every listing's number in the page's order as it now stands; null where the cell has none. */
const inPage = (page, cell) =>
  page.$$eval(
    '#listings tr.listing',
    (rows, cell) => rows.map((row) => row.querySelector(`td.${cell}`).dataset.sort ?? ''),
    cell,
  );

/** The heading that sorts by `cell`: the one over its column. */
async function heading(page, cell) {
  const at = await page.$eval(`#listings tr.listing td.${cell}`, (td) => {
    const before = [...td.parentElement.children].slice(0, [...td.parentElement.children].indexOf(td));
    return before.reduce((sum, each) => sum + each.colSpan, 0);
  });
  return page.locator('#listings thead tr').last().locator('> *').nth(at);
}

/** Every aria-sort of the table that says that something is sorted. */
const sorted = (page) =>
  page.$$eval('#listings th', (all) => all.map((th) => th.getAttribute('aria-sort')).filter((s) => s && s !== 'none'));

/** Checks that the page stands in the order that `direction` asks for, its absent values last. */
async function isSorted(page, { cell, column }, direction) {
  const found = (await inPage(page, cell)).map(number);
  const values = demoRows().map((row) => number(row[column]));
  const present = values.filter((value) => value !== null);
  const absent = values.filter((value) => value === null);
  assert.ok(present.length > 10 && absent.length > 0, 'the demo listings have both to sort');
  const up = present.toSorted((a, b) => a - b);
  const expected = [...(direction === 'ascending' ? up : up.toReversed()), ...absent];
  assert.equal(found.length, expected.length);
  for (const [at, value] of expected.entries()) {
    if (value === null) assert.equal(found[at], null, `row ${at + 1}: ${cell} is absent and stands last`);
    else {
      // CSV has six digits, the page may have more.
      assert.ok(
        found[at] !== null && Math.abs(found[at] - value) <= 1e-5 * Math.abs(value),
        `row ${at + 1}, ${direction}: ${cell} is ${found[at]}, not ${value}`,
      );
    }
  }
}

/** A listing's cells as one text: what must stay together while rows move. */
const wholeRows = (page) =>
  page.$$eval('#listings tr.listing', (rows) => rows.map((row) => row.textContent.replace(/\s+/g, ' ').trim()));

const other = (direction) => (direction === 'ascending' ? 'descending' : 'ascending');

/** Whether a focused element has an outline, and stands where it can be seen and pressed. */
const isMarked = (element) =>
  element.evaluate((element) => {
    const style = getComputedStyle(element);
    const ring = (style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0) || style.boxShadow !== 'none';
    const { x, y, width, height } = element.getBoundingClientRect();
    const there = document.elementFromPoint(x + width / 2, y + height / 2);
    return ring && element.contains(there);
  });

for (const key of KEYS) {
  test(`a press on the heading sorts by ${key.cell}, a second the other way round`, async () => {
    await visit(demoPage(), {}, async (page) => {
      const before = await wholeRows(page);
      const th = await heading(page, key.cell);
      let direction;
      for (const press of [1, 2, 3]) {
        await th.locator('button').click();
        const now = await th.getAttribute('aria-sort');
        assert.ok(['ascending', 'descending'].includes(now), `aria-sort is ${now} after press ${press}`);
        if (direction) assert.equal(now, other(direction), `press ${press} turns the order round`);
        direction = now;
        assert.deepEqual(await sorted(page), [direction], 'one heading says that it is sorted');
        await isSorted(page, key, direction);
      }
      same((await wholeRows(page)).toSorted(), before.toSorted(), 'no cell left its listing');
    });
  });

  test(`the ${key.cell} heading works from the keyboard and keeps the focus`, async () => {
    await visit(demoPage(), { width: 320 }, async (page) => {
      const button = (await heading(page, key.cell)).locator('button');
      const focused = () => button.evaluate((element) => element === document.activeElement);
      for (let tabs = 0; !(await focused()); tabs += 1) {
        assert.ok(tabs < 100, 'Tab comes to the heading');
        await page.keyboard.press('Tab');
      }
      assert.ok(await isMarked(button), 'the focus can be seen');
      const directions = [];
      for (const press of ['Enter', 'Space']) {
        await page.keyboard.press(press);
        const direction = await (await heading(page, key.cell)).getAttribute('aria-sort');
        await isSorted(page, key, direction);
        assert.ok(await focused(), `the focus is still on the heading after ${press}`);
        directions.push(direction);
      }
      assert.deepEqual(directions.toSorted(), ['ascending', 'descending'], 'Enter and Space each turn it round');
    });
  });
}

test('sorting by another heading takes the mark off the first', async () => {
  await visit(demoPage(), {}, async (page) => {
    for (const key of [...KEYS, KEYS[0]]) {
      const th = await heading(page, key.cell);
      await th.locator('button').click();
      const direction = await th.getAttribute('aria-sort');
      assert.deepEqual(await sorted(page), [direction]);
      await isSorted(page, key, direction);
    }
  });
});

test('every heading with a button sorts, and its button has a name', async () => {
  await visit(demoPage(), {}, async (page) => {
    const buttons = page.locator('#listings th button');
    assert.ok((await buttons.count()) >= KEYS.length);
    for (const button of await buttons.all()) {
      const name = (await button.innerText()).trim();
      assert.notEqual(name, '');
      await button.click();
      const said = await button.evaluate((button) => button.closest('th').getAttribute('aria-sort'));
      assert.ok(['ascending', 'descending'].includes(said), `${name}: aria-sort is ${said}`);
      assert.deepEqual(await sorted(page), [said]);
    }
  });
});

test('sorting by verdict puts equal verdicts together, from one end of their order to the other', async () => {
  await visit(demoPage(), {}, async (page) => {
    // The order of the meaning of verdicts, best to worst; a row that could not be read has none and stands at either end.
    const ranks = ['borne-out', 'within-reach', 'understated', 'unsettled', 'overstated', 'out-of-reach'];
    await (await heading(page, 'verdict')).locator('button').click();
    const verdicts = await page.$$eval('#listings tr.listing', (all) => all.map((tr) => tr.dataset.verdict));
    const found = verdicts.filter((verdict) => ranks.includes(verdict)).map((verdict) => ranks.indexOf(verdict));
    const up = found.toSorted((a, b) => a - b);
    assert.ok([up, up.toReversed()].some((order) => String(order) === String(found)), String(verdicts));
    assert.ok(verdicts[0] === 'unreadable' || verdicts.at(-1) === 'unreadable', String(verdicts));
  });
});

// The page printed on A4.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { visit } from './browser.mjs';
import { demoPage, demoRows } from './program.mjs';

// A4 at 96 px an inch.
const A4 = { width: 794, height: 1123 };

/** The size of each page of a PDF, in points. */
function pages(pdf) {
  const text = pdf.toString('latin1');
  const count = [...text.matchAll(/\/Type\s*\/Page(?![s\w])/g)].length;
  const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/g)];
  return { count, boxes: boxes.map((box) => [Number(box[1]), Number(box[2])]) };
}

for (const scheme of ['light', 'dark']) {
  test(`prints on A4 in a sensible number of pages, from a ${scheme} screen`, async () => {
    await visit(demoPage(), { scheme }, async (page) => {
      const { count, boxes } = pages(await page.pdf({ format: 'A4' }));
      // A listing has a line and perhaps a picture: no more than twelve to a page, and no fewer than five.
      const rows = demoRows().length;
      assert.ok(count >= 2 && count <= 3 + rows / 5, `${rows} listings on ${count} pages`);
      for (const [width, height] of boxes) {
        assert.ok(Math.abs(width - 595) < 1.5 && Math.abs(height - 842) < 1.5, `a page of ${width} x ${height} points`);
      }
    });
  });
}

test('nothing is cut off on paper, and controls are left out', async () => {
  await visit(demoPage(), {}, async (page) => {
    await page.emulateMedia({ media: 'print' });
    // The margins that the page asks for, else Chromium's own of about a centimetre.
    const margin = await page.evaluate(() => {
      const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]);
      const rule = rules.find((each) => each instanceof CSSPageRule);
      const ruler = document.createElement('div');
      ruler.style.width = rule?.style.marginLeft || '1cm';
      document.body.append(ruler);
      const wide = ruler.getBoundingClientRect().width;
      ruler.remove();
      return wide;
    });
    const room = Math.floor(A4.width - 2 * margin);
    await page.setViewportSize({ width: room, height: A4.height });
    const beyond = await page.evaluate(() => {
      const right = document.documentElement.clientWidth;
      const named = (e) => `${e.localName}.${e.getAttribute('class') ?? ''} ${e.textContent.trim().slice(0, 40)}`;
      const all = [...document.body.querySelectorAll('*')].filter((e) => e.getClientRects().length > 0);
      const outside = all.filter((e) => e.getBoundingClientRect().right > right + 1).map(named);
      const cut = all
        .filter((e) => !(e instanceof SVGElement) && getComputedStyle(e).overflowX !== 'visible')
        .filter((e) => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 1)
        .map((e) => `cut: ${named(e)}`);
      return [...outside, ...cut];
    });
    assert.deepEqual(beyond, [], `on ${room} px`);
    // A heading's button stays for its word, without the look of a button.
    assert.equal(await page.locator('select:visible, input:visible, button:visible:not(th button)').count(), 0);
    const edges = await page.$$eval('th button', (all) => all.map((e) => parseFloat(getComputedStyle(e).borderTopWidth)));
    assert.deepEqual(edges.filter((width) => width > 0), [], 'paper cannot be pressed');
    for (const row of demoRows()) {
      assert.ok((await page.locator('#listings').innerText()).includes(row.listing), row.listing);
    }
  });
});

test('paper is white whatever the screen prefers', async () => {
  await visit(demoPage(), { scheme: 'dark' }, async (page) => {
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const grounds = await page.evaluate(() =>
      ['html', 'body', 'main'].map((name) => getComputedStyle(document.querySelector(name)).backgroundColor),
    );
    for (const ground of grounds) {
      const [red, green, blue, alpha = 1] = ground.match(/[\d.]+/g).map(Number);
      assert.ok(alpha === 0 || Math.min(red, green, blue) > 240, `the ground is ${grounds}`);
    }
  });
});

// Every browser test, in one process so that they share one Chromium. Run through `cargo test`, or `npm test` here.

import './quiet.mjs';
import './words.mjs';
import './order.mjs';
import './filter.mjs';
import './access.mjs';
import './hostile.mjs';
import './light.mjs';
import './paper.mjs';

// A browser that hangs ends the run; a run takes less than a minute where nothing else runs.
setTimeout(() => {
  console.error('the browser tests did not end within 8 minutes');
  process.exit(1);
}, 480_000).unref();

// The report in the browser: window.report(PASSES) answers { nanoseconds, bytes }.

import init, { report_made } from './bench.js';

await init({ module_or_path: 'bench_bg.wasm' });

window.report = (passes) => {
  let bytes = 0;
  const begun = performance.now();
  for (let pass = 0; pass < passes; pass += 1) bytes = report_made().length;
  return { nanoseconds: (performance.now() - begun) * 1e6, bytes };
};

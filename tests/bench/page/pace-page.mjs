// The trace in the browser: window.paths() answers how many answers each stored call has,
// window.step(CALL, ANSWERS) what follows from them and the milliseconds it took.

import init, { pace_paths, pace_step } from './bench.js';

await init({ module_or_path: 'bench_bg.wasm' });

window.paths = () => [...pace_paths()];
window.step = (call, answers) => [...pace_step(call, answers, () => performance.now())];

// The runner in the browser: our wasm, and PsychroLib for JavaScript, in one page.
// window.run(NAME, PASSES) answers { nanoseconds, answers }.

import init, { leaving_water, saturation, wet_bulb, wet_bulbs } from './bench.js';

const read = async (task) => {
  const answer = await fetch(`${task}.txt`);
  return Float64Array.from((await answer.text()).trim().split('\n'), Number);
};

const [air, tower, refrigerant] = await Promise.all(['wet-bulb', 'tower', 'saturation'].map(read));
await init({ module_or_path: 'bench_bg.wasm' });

const psychrolib = window.psychrolib;
psychrolib.SetUnitSystem(psychrolib.SI);

/** One call of `each` for every state, as a page's own code would make them. */
const oneByOne = (each) => () => {
  const answers = new Float64Array(air.length / 3);
  for (let at = 0, n = 0; at < air.length; at += 3, n += 1) {
    answers[n] = each(air[at], air[at + 1], air[at + 2]);
  }
  return answers;
};

const RUNNERS = {
  'wet-bulb/wasm': () => wet_bulbs(air),
  'wet-bulb/wasm-called': oneByOne(wet_bulb),
  'wet-bulb/psychrolib-js': oneByOne((t, r, p) => psychrolib.GetTWetBulbFromRelHum(t, r, p)),
  'tower/wasm': () => leaving_water(tower),
  'saturation/wasm': () => saturation(refrigerant),
};

window.run = (name, passes) => {
  const sum = RUNNERS[name];
  let answers;
  const begun = performance.now();
  for (let pass = 0; pass < passes; pass += 1) answers = sum();
  const nanoseconds = (performance.now() - begun) * 1e6;
  return { nanoseconds, answers: [...answers] };
};

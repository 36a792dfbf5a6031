// What is timed: the inputs, from one seed, and who answers them. `within` is
// how far an answer may be from ours; further off, the comparison is void.

/** Numbers in 0..1 from a seed, the same on every machine (mulberry32). */
function chance(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const next = chance(20260901);
const between = (low, high) => low + (high - low) * next();
const list = (count, make) => Array.from({ length: count }, make).flat();

/** Pressures, Pa, near 20 and 55 C on the lines of each refrigerant. */
const PRESSURES = {
  'R-22': [0.95e6, 2.1e6],
  'R-134a': [0.6e6, 1.45e6],
  'R-404A': [1.15e6, 2.5e6],
  'R-407C': [1.05e6, 2.2e6],
  'R-410A': [1.5e6, 3.3e6],
};

export const TASKS = [
  {
    name: 'wet-bulb',
    title: 'Wet bulb from dry bulb (12 to 45 C), humidity (15 to 100 %) and pressure (70 to 105 kPa)',
    sums: 1000,
    unit: 'K',
    inputs: list(1000, () => [between(12, 45), between(0.15, 1), between(70e3, 105e3)]),
    sides: [
      { runner: 'native', key: 'wet-bulb', title: 'Coldsump, native', within: 1e-9 },
      { runner: 'page', key: 'wet-bulb/wasm', title: 'Coldsump, wasm' },
      { runner: 'page', key: 'wet-bulb/wasm-called', title: 'Coldsump, wasm called from JavaScript each time', within: 1e-9 },
      { runner: 'page', key: 'wet-bulb/psychrolib-js', title: 'PsychroLib 2.5.0, JavaScript in the same page', within: 0.05 },
      { runner: 'python', key: 'wet-bulb/psychrolib', title: 'PsychroLib 2.5.0, Python', within: 0.05 },
      { runner: 'python', key: 'wet-bulb/coolprop', title: 'CoolProp 8.0.0 HAPropsSI, one call for the list', within: 0.05 },
    ],
  },
  {
    name: 'tower',
    title: 'Leaving water of a tower (Merkel, Chebyshev) from wet bulb, range, L/G and pressure',
    sums: 200,
    unit: 'K',
    inputs: list(200, () => [between(12, 27), between(2, 9), between(0.7, 1.8), between(80e3, 103e3)]),
    sides: [
      { runner: 'native', key: 'tower', title: 'Coldsump, native', within: 1e-9 },
      { runner: 'page', key: 'tower/wasm', title: 'Coldsump, wasm' },
      { runner: 'python', key: 'tower/scipy', title: 'SciPy 1.17.1 brentq over the same model, Python', within: 1e-6 },
    ],
  },
  {
    name: 'saturation',
    title: 'Bubble and dew temperature from pressure, R-22, R-134a, R-404A, R-407C, R-410A',
    sums: 500,
    unit: 'K',
    inputs: Object.values(PRESSURES).flatMap(([low, high]) => list(50, () => [between(low, high)])),
    sides: [
      { runner: 'native', key: 'saturation', title: 'Coldsump, native', within: 1e-9 },
      { runner: 'page', key: 'saturation/wasm', title: 'Coldsump, wasm' },
      { runner: 'python', key: 'saturation/coolprop', title: 'CoolProp 8.0.0 PropsSI, one call for a line', within: 0.1 },
      { runner: 'python', key: 'saturation/coolprop-low', title: 'CoolProp 8.0.0 AbstractState, low level', within: 0.1 },
    ],
  },
];

// In the page of a build under test (`Build::watched`): clocks that the test
// sets forward together, and a list of what a sound program never causes.
(() => {
  const KEPT = 'under-test-problems';
  // A page opened later starts with the wall clock that far ahead.
  const ahead = Number(new URLSearchParams(location.search).get('ahead') ?? 0);
  const wall = Date.now.bind(Date);
  const steady = performance.now.bind(performance);
  let passed = 0;
  Date.now = () => wall() + ahead + passed;
  performance.now = () => steady() + passed;

  const problems = () => JSON.parse(localStorage.getItem(KEPT) ?? '[]');
  const note = (text) => localStorage.setItem(KEPT, JSON.stringify([...problems(), text]));
  addEventListener('error', (event) => note(String(event.message)));
  addEventListener('unhandledrejection', (event) => note(`unhandled: ${event.reason}`));
  addEventListener('securitypolicyviolation', (event) =>
    note(`policy: ${event.violatedDirective} ${event.blockedURI}`),
  );
  const error = console.error.bind(console);
  console.error = (...words) => {
    note(words.join(' '));
    error(...words);
  };

  window.underTest = {
    pass(ms) {
      passed += ms;
    },
    problems() {
      const found = problems();
      localStorage.removeItem(KEPT);
      return found;
    },
    asked: () => performance.getEntriesByType('resource').map((one) => one.name),
  };
})();

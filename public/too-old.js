// Runs only in a browser that cannot load modules, so in none that runs the program.
document.getElementById('boot-say').textContent =
  'This browser is too old for Coldsump. Update it, or open this page in a newer one.';

// Runs only in a browser that cannot load modules, so in none that runs the program.
document.getElementById('boot-say').textContent = /^es\b/i.test(navigator.language)
  ? 'Este navegador es demasiado viejo para Coldsump. Actualícelo, o abra esta página en uno más nuevo.'
  : 'This browser is too old for Coldsump. Update it, or open this page in a newer one.';

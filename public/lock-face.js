// What is seen of the lock: the page before it is opened, its own screen, and the
// question for a sealed backup's passphrase. Plain script, like the page after a
// panic: before the lock is open the program has read nothing. lock.js does the work.

const SAID = {
  title: ['Coldsump is locked', 'Coldsump está con candado'],
  here: ['All that was saved is here, sealed.', 'Todo lo que se guardó está aquí, sellado.'],
  count: ['Entries kept on this phone', 'Anotaciones en este teléfono'],
  forgotten: [
    "Forgotten? Nobody can open the records without it. To begin anew, clear this site's data in the browser, then take in a backup.",
    '¿La olvidó? Sin ella nadie puede abrir los registros. Para empezar de nuevo, borre en el navegador los datos de este sitio y meta un respaldo.',
  ],
  unlock: ['Unlock', 'Abrir el candado'],
  phrase: ['Passphrase', 'Frase secreta'],
  phraseHint: [
    'At least 8 characters of any kind. Five words that do not belong together hold much longer.',
    'Al menos 8 caracteres, los que sean. Cinco palabras que no van juntas aguantan mucho más.',
  ],
  again: ['The same again', 'La misma otra vez'],
  short: ['Too short. At least 8 characters.', 'Muy corta. Al menos 8 caracteres.'],
  other: ['Not the same as above.', 'No es igual a la de arriba.'],
  wrong: [
    'This passphrase does not open the records. Check capitals and keyboard, then try again, as often as you like.',
    'Esta frase no abre los registros. Revise mayúsculas y teclado, y pruebe otra vez, cuantas veces quiera.',
  ],
  show: ['Show', 'Ver'],
  hide: ['Hide', 'Ocultar'],
  off: [
    'Off. Whoever has this phone, or a copy of what it keeps, can read the records.',
    'Sin candado. Quien tenga este teléfono, o una copia de lo que guarda, puede leer los registros.',
  ],
  on: [
    'On. The passphrase is asked for each time Coldsump starts.',
    'Con candado. La frase se pide cada vez que se abre Coldsump.',
  ],
  guards: ['What it protects', 'Qué protege'],
  guarded: [
    'Sites, visits, photos, reports and half-typed text, when somebody has what the phone keeps, or a copy of it, and not the passphrase.',
    'Sitios, visitas, fotos, informes y textos a medias, cuando alguien tiene lo que guarda el teléfono, o una copia, y no la frase.',
  ],
  not: ['What it does not protect', 'Qué no protege'],
  not1: [
    'Coldsump while it is open. Lock it when the phone leaves your hand.',
    'Coldsump mientras está abierta. Ciérrela con candado cuando suelte el teléfono.',
  ],
  not2: [
    'Reports that were sent, and backups: a backup saved from the settings is not sealed.',
    'Los informes ya enviados, y los respaldos: un respaldo guardado desde los ajustes no va sellado.',
  ],
  not3: [
    'How many records there are, how large, when each was made, and the settings.',
    'Cuántos registros hay, de qué tamaño, cuándo se hizo cada uno, y los ajustes.',
  ],
  not4: [
    'Traces of what was written before the lock. The phone may hold them for a while where no app can reach. Where that matters, turn the lock on before the first visit.',
    'Restos de lo que se escribió antes del candado. El teléfono puede tenerlos un tiempo donde ninguna app llega. Donde eso importe, ponga el candado antes de la primera visita.',
  ],
  forgot: [
    'If the passphrase is forgotten, nobody can open the records. Save a backup first, and keep it in a safe place.',
    'Si se olvida la frase, nadie puede abrir los registros. Guarde antes un respaldo, y téngalo en un lugar seguro.',
  ],
  turnOn: ['Turn the lock on', 'Poner el candado'],
  turnOff: ['Turn the lock off', 'Quitar el candado'],
  change: ['Change the passphrase', 'Cambiar la frase'],
  now: ['Lock now', 'Cerrar con candado'],
  sealing: ['Records sealed', 'Registros sellados'],
  opening: ['Records opened', 'Registros abiertos'],
  isOn: ['The lock is on. Every record is sealed.', 'El candado está puesto. Cada registro está sellado.'],
  isOff: ['The lock is off. Every record is open.', 'El candado está quitado. Cada registro está abierto.'],
  changed: [
    'From now on the new passphrase opens the records.',
    'Desde ahora la frase nueva abre los registros.',
  ],
  stays: [
    'Records that do not open: {n}. The lock stays on. Save a backup of the rest.',
    'Registros que no se abren: {n}. El candado se queda. Guarde un respaldo de los demás.',
  ],
  failed: [
    'It did not work. Nothing is lost; what was begun goes on when the lock is opened the next time.',
    'No se pudo. No se perdió nada; lo empezado sigue la próxima vez que se abra el candado.',
  ],
  https: [
    "A lock needs the browser's cryptography, which it gives only to pages that came over https. Open Coldsump there.",
    'El candado necesita la criptografía del navegador, que la da solo a páginas que llegaron por https. Abra Coldsump ahí.',
  ],
  sealed: [
    'This backup is sealed. It opens with the passphrase of the phone it came from.',
    'Este respaldo está sellado. Se abre con la frase del teléfono de donde vino.',
  ],
  open: ['Open the backup', 'Abrir el respaldo'],
};
const root = document.documentElement;
const say = (name) => SAID[name][Number(/^es\b/i.test(root.lang))];

// NIST SP 800-63B (2017), 5.1.1.2, which asks for no rule about which they are.
const SHORTEST = 8;

function make(tag, more = {}, ...inside) {
  const { test, ...rest } = more;
  const element = Object.assign(document.createElement(tag), rest);
  if (test) element.dataset.test = test;
  element.append(...inside);
  return element;
}

function icon(path) {
  const box = make('span');
  box.innerHTML = `<svg width="20" height="20" viewBox="0 0 20 20" fill="none" stroke="currentColor" aria-hidden="true"><path d="${path}" stroke-width="2.5"/></svg>`;
  return box.firstChild;
}

/** A field for a passphrase: nothing typed in it is kept anywhere. */
function secret(test, label, fresh, hint) {
  const input = make('input', {
    id: `f-${test}`, test, type: 'password', autocapitalize: 'off', spellcheck: false,
    autocomplete: fresh ? 'new-password' : 'current-password', enterKeyHint: 'go',
  });
  const said = make('p', { id: `s-${test}`, className: 'said no' });
  said.setAttribute('aria-live', 'polite');
  input.setAttribute('aria-describedby', said.id);
  const eye = make('button', { type: 'button', className: 'unit', test: `show-${test}` }, say('show'));
  eye.setAttribute('aria-pressed', 'false');
  eye.addEventListener('click', () => {
    const shown = input.type === 'password';
    input.type = shown ? 'text' : 'password';
    eye.textContent = say(shown ? 'hide' : 'show');
    eye.setAttribute('aria-pressed', shown);
  });
  const field = make(
    'div', { className: 'field' },
    make('label', { htmlFor: input.id }, label),
    ...(hint ? [make('p', { className: 'hint' }, hint)] : []),
    make('div', { className: 'entry' }, input, eye),
    said,
  );
  const refuse = (why) => {
    field.dataset.state = why ? 'refused' : 'ok';
    input.setAttribute('aria-invalid', Boolean(why));
    said.replaceChildren(...(why ? [icon('M4 4l12 12M16 4 4 16'), make('span', {}, why)] : []));
    if (why) input.focus();
    return !why;
  };
  input.addEventListener('input', () => refuse());
  return { field, input, refuse };
}

/** A form whose one button stands in the thumb's reach. */
function form(fields, button, done) {
  const box = make('form', { className: 'fields' }, ...fields);
  const go = async (event) => {
    event.preventDefault();
    if (button.disabled) return;
    button.disabled = true;
    await done();
    button.disabled = false;
  };
  // A form without a button of its own is not sent by the key alone.
  box.addEventListener('keydown', (event) => event.key === 'Enter' && event.target.id && go(event));
  button.addEventListener('click', go);
  return box;
}

/** How far the records are, as a number. */
function progress(place, name) {
  const value = make('span', { className: 'value hero' });
  const label = make('span', { className: 'label' }, say(name));
  label.setAttribute('role', 'status');
  const box = make('div', { className: 'number', test: 'lock-progress' }, label, value);
  return (done, all) => {
    value.replaceChildren(`${done}`, make('span', { className: 'u' }, `/ ${all}`));
    place.replaceChildren(box);
    place.hidden = false;
  };
}

const primary = (test, text) => make('button', { type: 'button', className: 'primary', test }, text);

/** The page before the lock is open; done when it is. */
export async function gate(core) {
  const { language, light, count } = await core.outside();
  root.lang = language ?? navigator.language;
  if (light) root.dataset.light = light;
  document.title = `${say('title')} · Coldsump`;
  const place = make('div', { hidden: true });
  const field = secret('passphrase', say('phrase'), false);
  const button = primary('unlock', say('unlock'));
  await new Promise((open) => {
    const box = form([field.field], button, async () => {
      const right = await core.unlock(field.input.value).catch(String);
      if (right !== true) {
        field.refuse(right ? `${say('failed')} (${right})` : say('wrong'));
        return;
      }
      const opens = core.state() === 'opening';
      if (core.state() !== 'on') {
        // What stops here goes on the next time: sealed and clear rows are read alike.
        await core.rewrite(progress(place, opens ? 'opening' : 'sealing')).catch(() => undefined);
      }
      page.remove();
      open();
    });
    const page = make(
      'div', { className: 'screen', test: 'screen-locked' },
      make('header', {}, make('h1', {}, say('title')), make('p', { className: 'sub' }, say('here'))),
      make(
        'main', {},
        make(
          'div', { className: 'number' },
          make('span', { className: 'label' }, say('count')),
          make('span', { className: 'value hero' }, `${count}`),
        ),
        box, place,
        make('p', { className: 'sub small' }, say('forgotten')),
      ),
      make('div', { className: 'act' }, button),
    );
    document.body.append(page);
    field.input.focus();
  });
}

/** The lock's own screen, in the places that the program left for it: what stands
    elsewhere would stay when the screen changes. */
export function screen(core, host) {
  const said = make('p', { test: 'lock-said' });
  said.setAttribute('aria-live', 'polite');
  const place = make('div', { hidden: true });
  const foot = document.getElementById('lock-act');
  const work = make('div', { className: 'col' });
  const list = (...names) =>
    make('ul', { className: 'bullets' }, ...names.map((name) => make('li', {}, say(name))));
  const part = (title, ...names) => make('section', {}, make('h2', {}, say(title)), list(...names));
  const state = make('p', { className: 'sub', test: 'lock-state' });
  host.append(
    state, said, place, work,
    part('guards', 'guarded'),
    part('not', 'not1', 'not2', 'not3', 'not4'),
    make(
      'div', { className: 'notice caution', test: 'lock-forgot' },
      icon('M10 2 18.5 17.5H1.5ZM10 7.5v5M10 14v1.6'), make('div', {}, make('p', {}, say('forgot'))),
    ),
  );

  /** Does it, says how it went, and shows what can be done next. */
  const act = async (deed, word, name) => {
    said.textContent = '';
    const before = core.state();
    let done = false;
    work.hidden = true;
    scrollTo(0, 0);
    try {
      await deed();
      const left = name ? await core.rewrite(progress(place, name)) : 0;
      done = true;
      said.textContent = left ? say('stays').replace('{n}', left) : say(word);
    } catch (error) {
      said.textContent = `${say('failed')} (${error})`;
    }
    place.hidden = true;
    work.hidden = false;
    // What was typed stands while nothing has changed.
    if (done || core.state() !== before) offer();
  };
  const ask = () => {
    const on = core.state();
    const [first, second] = [
      secret('passphrase', say('phrase'), true, say('phraseHint')),
      secret('passphrase-again', say('again'), true),
    ];
    const button = primary('lock-set', say(on ? 'change' : 'turnOn'));
    const box = form([first.field, second.field], button, async () => {
      const text = first.input.value;
      if (!first.refuse([...text].length < SHORTEST && say('short'))) return;
      if (!second.refuse(text !== second.input.value && say('other'))) return;
      await act(() => core.lockBy(text), on ? 'changed' : 'isOn', !on && 'sealing');
    });
    work.replaceChildren(box);
    foot.replaceChildren(button);
  };
  const offer = () => {
    const on = core.state();
    state.textContent = say(on ? 'on' : 'off');
    if (!core.able) {
      work.replaceChildren(make('p', { test: 'lock-needs-https' }, say('https')));
      return;
    }
    if (!on) {
      ask();
      return;
    }
    const now = primary('lock-now', say('now'));
    now.addEventListener('click', core.now);
    const change = make('button', { type: 'button', test: 'lock-change' }, say('change'));
    change.addEventListener('click', ask);
    const off = make('button', { type: 'button', test: 'lock-off' }, say('turnOff'));
    off.addEventListener('click', () => {
      off.disabled = true;
      act(core.takeOff, 'isOff', 'opening');
    });
    work.replaceChildren(make('div', { className: 'pair' }, change, ...(on === 'on' ? [off] : [])));
    foot.replaceChildren(now);
  };
  offer();
}

/** Asks for a sealed backup's passphrase until one opens it; answers it clear. */
export function openBackup(core, backup, host) {
  return new Promise((open) => {
    const field = secret('backup-passphrase', say('phrase'), false);
    const button = make('button', { type: 'button', test: 'open-backup' }, say('open'));
    const box = form([make('p', {}, say('sealed')), field.field, button], button, async () => {
      const clear = await core.unsealed(backup, field.input.value).catch(() => undefined);
      if (!clear) {
        field.refuse(say('wrong'));
        return;
      }
      box.remove();
      open(clear);
    });
    host.replaceChildren(box);
    field.input.focus();
  });
}

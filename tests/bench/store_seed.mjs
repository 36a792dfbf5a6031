// Years of invented work, written into the app's own storage in the page. The
// entries are copies of a visit in its stored form, under new ids; the summary
// is left out, so that the app makes it.

/** Runs in the page and so can use nothing from outside. */
export async function seed(site, visit, { visits, sites, photos, photoBytes }) {
  const db = await new Promise((done, fail) => {
    const request = indexedDB.open('coldsump');
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });
  const hex = (n, digits) => n.toString(16).padStart(digits, '0');
  // Version 7: the time, then a number that makes it unlike all others.
  const uuid = (ms, n) => {
    const time = hex(ms, 12);
    return `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-${hex(n, 12)}`;
  };
  const write = (store, rows, key) =>
    new Promise((done, fail) => {
      const tx = db.transaction(store, 'readwrite', { durability: 'relaxed' });
      const into = tx.objectStore(store);
      for (const row of rows) key ? into.put(row, key(row)) : into.put(row);
      tx.oncomplete = done;
      tx.onerror = tx.onabort = () => fail(tx.error);
    });
  const FIRST = ['Alder', 'Birch', 'Cobble', 'Dunmore', 'Elm', 'Foundry', 'Granary', 'Hollow', 'Ivory',
    'Juniper', 'Kettle', 'Lantern', 'Mason', 'Northgate', 'Orchard', 'Pemberton', 'Quarry', 'Rowan',
    'Saddler', 'Thistle', 'Umber', 'Vintner', 'Weaver', 'Yarrow', 'Zephyr'];
  const LAST = ['Bakery', 'Cold Store', 'Dairy', 'Fishmarket', 'Greenhouse', 'Hotel', 'Infirmary',
    'Laundry', 'Market Hall', 'Printworks', 'Rink', 'Theatre'];
  const STREET = ['Street', 'Lane', 'Row', 'Yard', 'Quay', 'Hill'];
  const SAID = ['Units out on high head pressure', 'Alarm on the roof, product warming',
    'Two chillers locked out since noon', 'Basin was dry again', 'Noise at the pump, no cooling',
    'Water over the edge of the tower'];
  const names = [];
  const siteIds = [];
  let number = 1;
  const begun = Date.UTC(2019, 0, 7, 12);
  const rows = [];
  for (let n = 0; n < sites; n++) {
    const ms = begun + n * 60_000;
    const name = `${FIRST[n % 25]}${Math.floor(n / 300) ? ' New' : ''} ${LAST[Math.floor(n / 25) % 12]}`;
    const [id, entryId] = [uuid(ms, number++), uuid(ms, number++)];
    names.push(name);
    siteIds.push(id);
    const entry = structuredClone(site);
    entry.id = entryId;
    entry.about = { site: id };
    entry.at.ms = ms;
    Object.assign(entry.body['site-described'].site, {
      name,
      place: `${n + 1} ${FIRST[(7 * n) % 25]} ${STREET[n % 6]}`,
      demo: false,
    });
    rows.push({ id: entryId, about: `site ${id}`, entry });
  }
  await write('entries', rows);
  const ids = [];
  const files = [];
  let entries = rows.length;
  let batch = [];
  const step = (Date.UTC(2026, 10, 20) - Date.UTC(2019, 1, 1)) / visits;
  for (let n = 0; n < visits; n++) {
    const from = Date.UTC(2019, 1, 1, 13) + Math.floor(n * step);
    const id = uuid(from, number++);
    const siteId = siteIds[(n * 7) % sites];
    const file = uuid(from, number++);
    ids.push(id);
    files.push(file);
    visit.forEach((one, k) => {
      const entry = structuredClone(one);
      const ms = from + k * 30_000;
      entry.id = uuid(ms, number++);
      entry.about = { visit: id };
      entry.at.ms = ms;
      // Each fifth call ended without a cause, so that its odds are worked out.
      if (n % 5 === 0 && entry.body['cause-named']) {
        entry.body = { 'note-written': { text: 'Nothing found, to be watched' } };
      }
      const opened = entry.body['visit-opened'];
      if (opened) Object.assign(opened, { site: siteId, complaint: SAID[n % SAID.length] });
      for (const kind of ['report-made', 'report-handed-over', 'report-confirmed']) {
        if (entry.body[kind]) entry.body[kind].file = file;
      }
      batch.push({ id: entry.id, about: `visit ${id}`, entry });
    });
    if (batch.length > 6000 || n === visits - 1) {
      await write('entries', batch);
      entries += batch.length;
      batch = [];
    }
  }
  for (let n = 0; n < photos; n += 100) {
    const some = Array.from({ length: Math.min(100, photos - n) }, (_, k) => {
      const bytes = new Uint8Array(photoBytes);
      for (let at = 0; at < photoBytes; at += 65_536) {
        crypto.getRandomValues(bytes.subarray(at, Math.min(at + 65_536, photoBytes)));
      }
      const id = uuid(begun + n + k, 0xf000_0000 + n + k);
      return { id, name: `photo-${n + k}.jpg`, type: 'image/jpeg', bytes };
    });
    await write('files', some);
  }
  await new Promise((done, fail) => {
    const tx = db.transaction(['texts', 'lines'], 'readwrite');
    tx.objectStore('texts').delete('summary');
    tx.objectStore('lines').clear();
    tx.oncomplete = done;
    tx.onerror = () => fail(tx.error);
  });
  db.close();
  return { visits: ids.length, entries, ids: ids.reverse(), names };
}

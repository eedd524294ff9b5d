// What was typed stays in this browser until it is cleared.

const opened = () => new Promise((tell, fail) => {
  const asked = indexedDB.open('linewright', 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore('project');
  asked.onsuccess = () => tell(asked.result);
  asked.onerror = () => fail(asked.error);
});

async function within(mode, act) {
  const store = await opened();
  try {
    return await new Promise((tell, fail) => {
      const change = store.transaction('project', mode);
      const asked = act(change.objectStore('project'));
      change.oncomplete = () => tell(asked.result);
      change.onabort = change.onerror = () => fail(change.error);
    });
  } finally {
    store.close();
  }
}

/** What was kept, or nothing. */
export const kept = () => within('readonly', (store) => store.get('last')).catch(() => undefined);
/** Keeps `state`; false where the browser does not let it. */
export const keep = (state) => within('readwrite', (store) => store.put(state, 'last')).then(() => true, () => false);
export const clear = () => within('readwrite', (store) => store.delete('last')).then(() => true, () => false);

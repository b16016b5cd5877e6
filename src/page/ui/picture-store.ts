/** Pictures that this browser keeps, with what she has said of each: a few megabytes, too much for the plan's store. */

const NAME = 'swagwright';
const TABLE = 'pictures';

/** A store that has not opened by then (ms) does not open: some browsers, in private windows, never answer. */
const PATIENCE = 5000;

const open = (): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    setTimeout(() => reject(new Error('The store does not answer')), PATIENCE);
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(TABLE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

let opened: Promise<IDBDatabase> | undefined;

/** It stays open: what a window writes while it closes is written only if nothing has to be waited for. */
const base = (): Promise<IDBDatabase> => {
  if (opened) return opened;
  opened = open();
  const close = (): void => {
    opened = undefined;
  };
  opened.then((found) => {
    found.onclose = close;
    found.onversionchange = () => {
      found.close();
      close();
    };
  }, close);
  return opened;
};

const within = async <T>(
  mode: IDBTransactionMode,
  work: (table: IDBObjectStore) => IDBRequest<T>,
): Promise<T> => {
  const transaction = (await base()).transaction(TABLE, mode);
  const request = work(transaction.objectStore(TABLE));
  // A window that closes does not wait until the store asks whether that is all, and nothing would be written.
  transaction.commit();
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve(request.result);
    transaction.onabort = () => reject(transaction.error);
    // WebKit, told beforehand that this is all, does not say that it comes to nothing.
    request.onerror = () => reject(request.error);
  });
};

/** Of files that the browser did not take: in its private windows WebKit keeps no file, but bytes. */
const bytesOf = new WeakMap<Blob, ArrayBuffer>();

/** Rejects where the browser forbids its store, or has no room. */
export const keepPicture = async (key: string, value: { readonly file?: Blob }): Promise<void> => {
  const { file } = value;
  const put = (kept: object): Promise<unknown> => within('readwrite', (table) => table.put(kept, key));
  const bytes = file && bytesOf.get(file);
  try {
    await put(bytes ? { ...value, file: bytes } : value);
  } catch (error) {
    if (!file || bytes) throw error;
    bytesOf.set(file, await file.arrayBuffer());
    await put({ ...value, file: bytesOf.get(file) });
  }
};

export const keptPicture = async (key: string): Promise<unknown> => {
  const value = (await within('readonly', (table) => table.get(key))) as
    | { readonly file?: unknown }
    | undefined;
  if (!(value?.file instanceof ArrayBuffer)) return value;
  const file = new Blob([value.file], { type: 'image/jpeg' });
  bytesOf.set(file, value.file);
  return { ...value, file };
};

export const dropPicture = async (key: string): Promise<void> => {
  await within('readwrite', (table) => table.delete(key));
};

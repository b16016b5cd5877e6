/** Pictures that this browser keeps, with what she has said of each: a few megabytes, too much for the plan's store. */

const NAME = 'swagwright';
const TABLE = 'pictures';

const opened = (): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(TABLE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const within = async <T>(
  mode: IDBTransactionMode,
  work: (table: IDBObjectStore) => IDBRequest<T>,
): Promise<T> => {
  const base = await opened();
  try {
    return await new Promise((resolve, reject) => {
      const transaction = base.transaction(TABLE, mode);
      const request = work(transaction.objectStore(TABLE));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error);
    });
  } finally {
    base.close();
  }
};

/** Rejects where the browser forbids its store, or has no room. */
export const keepPicture = async (key: string, value: object): Promise<void> => {
  await within('readwrite', (table) => table.put(value, key));
};

export const keptPicture = (key: string): Promise<unknown> => within('readonly', (table) => table.get(key));

export const dropPicture = async (key: string): Promise<void> => {
  await within('readwrite', (table) => table.delete(key));
};

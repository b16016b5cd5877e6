/** A binary heap: the item with the least key comes out first. */

export interface Heap<T> {
  readonly push: (key: number, item: T) => void;
  readonly pop: () => T | undefined;
  readonly size: () => number;
}

export const heapOf = <T>(): Heap<T> => {
  const keys: number[] = [];
  const items: T[] = [];
  const swap = (i: number, j: number): void => {
    [keys[i], keys[j]] = [keys[j]!, keys[i]!];
    [items[i], items[j]] = [items[j]!, items[i]!];
  };
  return {
    size: () => keys.length,
    push: (key, item) => {
      keys.push(key);
      items.push(item);
      for (let i = keys.length - 1; i > 0; ) {
        const up = (i - 1) >> 1;
        if (!(keys[i]! < keys[up]!)) break;
        swap(i, up);
        i = up;
      }
    },
    pop: () => {
      if (keys.length === 0) return undefined;
      swap(0, keys.length - 1);
      keys.pop();
      const least = items.pop();
      for (let i = 0; ; ) {
        const [l, r] = [2 * i + 1, 2 * i + 2];
        let down = i;
        if (l < keys.length && keys[l]! < keys[down]!) down = l;
        if (r < keys.length && keys[r]! < keys[down]!) down = r;
        if (down === i) break;
        swap(i, down);
        i = down;
      }
      return least;
    },
  };
};

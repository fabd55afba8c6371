/** Puts labels in a row as near to their places as they go without touching. */

export interface Wanted {
  readonly centre: number;
  readonly width: number;
}

export interface Room {
  readonly from: number;
  readonly to: number;
  readonly gap: number;
}

interface Block {
  sum: number;
  count: number;
}

/**
 * Centres of labels given in order, so moved that none touches the next and the sum of the squared moves is the
 * least; `null` when they do not fit between `from` and `to` at all.
 */
export function spread(wanted: readonly Wanted[], room: Room): readonly number[] | null {
  // With the room each needs taken off, labels that keep clear become numbers that keep their order.
  const offsets: number[] = [];
  let used = 0;
  for (const { width } of wanted) {
    offsets.push(used + width / 2);
    used += width + room.gap;
  }
  const slack = room.to - room.from - (used - room.gap);
  if (wanted.length > 0 && slack < 0) return null;
  const free = inOrder(wanted.map(({ centre }, i) => centre - offsets[i]!));
  return free.map((start, i) => Math.min(Math.max(start, room.from), room.from + slack) + offsets[i]!);
}

/** The numbers nearest to the given ones that never fall (pool adjacent violators). */
function inOrder(values: readonly number[]): readonly number[] {
  const blocks: Block[] = [];
  for (const value of values) {
    blocks.push({ sum: value, count: 1 });
    while (blocks.length > 1 && mean(blocks.at(-1)!) < mean(blocks.at(-2)!)) {
      const last = blocks.pop()!;
      const before = blocks.at(-1)!;
      before.sum += last.sum;
      before.count += last.count;
    }
  }
  return blocks.flatMap((block) => Array.from({ length: block.count }, () => mean(block)));
}

const mean = ({ sum, count }: Block): number => sum / count;

/** A binary heap of whole numbers by priority, smallest first; equal priorities leave in the order of their numbers. */
export class MinHeap {
  readonly #items: Int32Array
  readonly #priorities: Float64Array
  #size = 0
  /** Priority of the item popped last. */
  lastPriority = 0

  constructor(capacity: number) {
    this.#items = new Int32Array(capacity)
    this.#priorities = new Float64Array(capacity)
  }

  push(item: number, priority: number): void {
    let place = this.#size++
    while (place > 0) {
      const parent = (place - 1) >> 1
      if (!this.#before(item, priority, parent)) break
      this.#copy(parent, place)
      place = parent
    }
    this.#items[place] = item
    this.#priorities[place] = priority
  }

  /** The first item, or -1 when none is left. */
  pop(): number {
    if (this.#size === 0) return -1
    const first = this.#items[0] ?? -1
    this.lastPriority = this.#priorities[0] ?? 0
    this.#size--
    const item = this.#items[this.#size] ?? 0
    const priority = this.#priorities[this.#size] ?? 0
    let place = 0
    for (;;) {
      let child = place * 2 + 1
      if (child >= this.#size) break
      if (child + 1 < this.#size && this.#before(this.#items[child + 1] ?? 0, this.#priorities[child + 1] ?? 0, child))
        child++
      if (this.#before(item, priority, child)) break
      this.#copy(child, place)
      place = child
    }
    this.#items[place] = item
    this.#priorities[place] = priority
    return first
  }

  #before(item: number, priority: number, place: number): boolean {
    const other = this.#priorities[place] ?? 0
    return priority < other || (priority === other && item < (this.#items[place] ?? 0))
  }

  #copy(from: number, to: number): void {
    this.#items[to] = this.#items[from] ?? 0
    this.#priorities[to] = this.#priorities[from] ?? 0
  }
}

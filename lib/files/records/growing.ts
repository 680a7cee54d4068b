/** A list of numbers that grows while a file is read, in flat memory. */
export class GrowingNumbers {
  length = 0;
  private room: Float64Array;

  constructor(expected = 1024) {
    this.room = new Float64Array(expected);
  }

  push(value: number): void {
    if (this.length === this.room.length) {
      const wider = new Float64Array(this.room.length * 2);
      wider.set(this.room);
      this.room = wider;
    }
    this.room[this.length] = value;
    this.length += 1;
  }

  /** The numbers from one place to another (not included), as a copy of exactly that size. */
  slice(from = 0, to = this.length): Float64Array {
    return this.room.slice(from, to);
  }
}

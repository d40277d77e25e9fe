// What a clock on the wall shows.

/** `2027-04-23` and `11:40`, where the course is. */
export type WallClock = { date: string; time: string }

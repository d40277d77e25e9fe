// Numbers of a plan, SI throughout.
// Generated from the shapes in Rust by `cargo xtask bindings`. Do not edit.

export type WishUnmet = { 
/**
 * The wish among those of the file, counted from 1; null for one about pairs.
 */
wish: number | null, 
/**
 * What can't be had, and why.
 */
text: string, };

export type Member = { 
/**
 * Unique in the group.
 */
name: string, 
/**
 * `novice`, `improver` or `experienced`.
 */
experience: string, };

export type StageWork = { 
/**
 * Its id.
 */
stage: string, 
/**
 * What a person reads.
 */
name: string, 
/**
 * In the unit of its rate.
 */
amount: number, 
/**
 * Clock hours of the whole group at its usual pace.
 */
hours: number, };

export type Entry = { 
/**
 * Counts from 1.
 */
day: number, 
/**
 * Local time with offset.
 */
start: string, 
/**
 * Local time with offset.
 */
finish: string, 
/**
 * What happens.
 */
what: string, 
/**
 * `lesson`, `build`, `break`, `safety` or `tidy`.
 */
kind: string, 
/**
 * The stage's id, where it is one.
 */
stage: string | null, 
/**
 * The lesson's id, where it is one.
 */
lesson: string | null, };

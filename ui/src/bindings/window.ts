// What the desktop program and its window say to each other.
// Generated from the shapes in Rust by `cargo xtask bindings`. Do not edit.

import type { Plan } from './plan'
import type { Written } from './written'
export type View = { 
/**
 * The file's name, or a word for a course not yet saved.
 */
file: string, 
/**
 * Whether the file on the disk is older than what is shown.
 */
unsaved: boolean, 
/**
 * Whether there is something to undo.
 */
can_undo: boolean, 
/**
 * Whether there is something to redo.
 */
can_redo: boolean, 
/**
 * Every value of the course file as typed, by key.
 */
values: { [key in string]: string }, 
/**
 * Whether students are named one by one.
 */
roster: boolean, 
/**
 * What the tables offer to choose from.
 */
choices: Choices, 
/**
 * Every number of the plan.
 */
plan: Plan, 
/**
 * The same as a person reads it.
 */
written: Written, 
/**
 * The drawings.
 */
drawings: Drawings, 
/**
 * What the last change moved, as `stone 12.4 t -> 13.9 t`.
 */
moved: Array<Moved>, };

export type Choices = { rocks: Array<[string, string]>, bars: Array<[string, string]>, };

export type Drawings = { section: string, elevation: string, line_plan: string, setting_out: string, frame: string, gauge: string, };

export type Moved = { what: string, before: string, after: string, };

export type Trouble = { 
/**
 * A fixed word; the window may branch on this, never on a sentence.
 */
code: string, 
/**
 * The key of the course file it is about; empty if it is about none.
 */
key: string, 
/**
 * What is wrong.
 */
what: string, 
/**
 * What would be right.
 */
cure: string, };

export type DocumentName = { 
/**
 * Its file's name without the ending.
 */
name: string, 
/**
 * What a person reads.
 */
title: string, 
/**
 * What it is for.
 */
what: string, };

export type Printed = { 
/**
 * The folder they are in.
 */
folder: string, 
/**
 * Their files' names.
 */
files: Array<string>, 
/**
 * Characters that no bundled font holds, if any; a sign stands in their place.
 */
unprintable: string, };

// What a field needs of whoever it asks for: the open course, or one that is only being begun.
import type { Course } from './course.svelte'

export type Asking = Pick<Course, 'text' | 'units' | 'troubleAt' | 'enter' | 'leave' | 'type' | 'choose'> & Partial<Pick<Course, 'american'>>

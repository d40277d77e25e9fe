// A part of a page leads to the place whose questions it rests on.
import { expect, it } from 'vitest'
import { placeOf } from './places'

it('leads lessons to their questions among the days', () => {
  expect(placeOf('lessons')).toEqual({ step: 'days', name: 'Lessons', focus: 'lessons-open' })
  expect(placeOf('venue')).toMatchObject({ step: 'venue', name: 'Course' })
  expect(placeOf('nowhere')).toBeUndefined()
})

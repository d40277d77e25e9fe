// Where what is dropped onto the window goes: a course is opened, a list is looked at in its place.
import * as backend from './backend'
import type { Dropped, KitListPreview, PacePreview, Trouble, View } from './bindings'
import type { StepId } from './common/steps'

type Window = {
  open: (question: () => Promise<backend.Reply<View | null>>) => Promise<void>
  go: (step: StepId, focus?: string) => Promise<void>
  kitList: (preview: KitListPreview) => void
  paceBook: (preview: PacePreview) => Promise<void>
  roster: (pasted: string) => Promise<void>
  refuse: (trouble: Trouble) => void
}

/** Each thing that is dropped from now on. */
export function hearDrops(window: Window) {
  void backend.hearOfDrops((dropped) => void take(dropped, window))
}

export async function take(dropped: Dropped, { open, go, kitList, paceBook, roster, refuse }: Window) {
  switch (dropped.kind) {
    case 'course':
      return open(backend.openDropped)
    case 'kit-list':
      kitList(dropped.is)
      return go('store', 'lists-head')
    case 'pace-book':
      await paceBook(dropped.is)
      return go('after', 'book-file-head')
    case 'roster':
      await go('group', 'roster-paste-open')
      document.getElementById('roster-paste')?.setAttribute('open', '')
      return roster(dropped.is)
    case 'refused':
      return refuse(dropped.is)
  }
}

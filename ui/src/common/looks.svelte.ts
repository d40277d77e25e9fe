// How the window looks and how large its text is: one state for every place that offers it.

type What = 'look' | 'text'

class Looks {
  look: string = $state('')
  text: string = $state('')

  put(what: What, word: string) {
    this[what] = word
    const page = document.documentElement.dataset
    if (word) page[what] = word
    else delete page[what]
  }
}

export const looks = new Looks()

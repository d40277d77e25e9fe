// An element becomes like another: what is the same in it stays, as far as that is quicker than to put all in anew.

/** `now` is used up: what is new in it moves over. */
export function become(was: Element, now: Element) {
  const before = [...was.childNodes]
  const after = [...now.childNodes]
  let end: ChildNode | undefined
  // What is the same at the beginning and at the end stays.
  while (same(before[0], after[0])) [before, after].forEach((all) => all.shift())
  while (same(before.at(-1), after.at(-1))) [end] = [before, after].map((all) => all.pop())
  before.forEach((node, at) => replace(node, after[at]))
  for (const node of after.slice(before.length)) was.insertBefore(node, end ?? null)
}

function same(node: ChildNode | undefined, other: ChildNode | undefined): boolean {
  return Boolean(node && other?.isEqualNode(node))
}

function replace(node: ChildNode, other: ChildNode | undefined) {
  if (!other) node.remove()
  else if (isElement(node) && isElement(other) && mostlySame(node, other)) become(node, other)
  else if (!same(node, other)) node.replaceWith(other)
}

function isElement(node: ChildNode): node is Element {
  return node.nodeType === Node.ELEMENT_NODE
}

/** Its own attributes are the same, and more than half of what is in it. */
function mostlySame(node: Element, other: Element): boolean {
  if (!node.cloneNode(false).isEqualNode(other.cloneNode(false))) return false
  const others = [...other.childNodes]
  const kept = [...node.childNodes].map((it, at) => same(it, others[at]))
  return kept.filter((it) => !it).length < kept.filter((it) => it).length
}

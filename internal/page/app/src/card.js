// The card of the part that is picked: what the record says of it, brought up
// beside the picture. It is copied from the record, never made from text.

export function card(holder, thing) {
  holder.classList.toggle('filled', Boolean(thing));
  const entry = thing && document.getElementById(thing.record);
  if (!entry) {
    const p = document.createElement('p');
    p.className = 'quiet';
    p.textContent = thing ? thing.name : 'No part is picked. Click one in the picture, or choose it from the list.';
    holder.replaceChildren(p);
    return;
  }
  const copy = entry.cloneNode(true);
  copy.removeAttribute('id');
  for (const e of copy.querySelectorAll('[id]')) e.removeAttribute('id');
  const head = document.createElement('h2');
  head.textContent = thing.name;
  const was = copy.querySelector('h3, h4');
  if (was && was.querySelector('bdi')?.textContent === thing.name) head.replaceChildren(...was.childNodes);
  was?.remove();
  const more = document.createElement('p');
  const link = document.createElement('a');
  link.href = '#' + thing.record;
  link.textContent = 'Where it stands in the record';
  more.className = 'small noprint';
  more.append(link);
  holder.replaceChildren(head, copy, more);
}

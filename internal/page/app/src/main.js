// The page's program: the picture beside the record. Without WebGL it does
// nothing, and the page stands as it was written: drawings and the record.
import { Picture } from './picture.js';
import { Letters } from './letters.js';
import { Desk } from './desk.js';

function start() {
  const data = JSON.parse(document.getElementById('scene').textContent);
  const root = document.documentElement;
  const canvas = document.getElementById('canvas');
  if (!data.things.length) return;
  root.classList.add('live'); // the picture needs its room before it can be drawn
  const context = canvas.getContext('webgl2', { antialias: true, alpha: true, preserveDrawingBuffer: true, powerPreference: 'low-power' });
  if (!context) {
    root.classList.remove('live');
    return;
  }
  const picture = new Picture(canvas, context, data);
  const letters = new Letters(picture, document.getElementById('letters'), document.getElementById('key'));
  const desk = new Desk(picture, letters, data);
  desk.open();
  picture.draw();
  // Two frames on, the first picture is on the screen.
  requestAnimationFrame(() => requestAnimationFrame(() => { document.getElementById('stage').dataset.first = Math.round(performance.now()); }));
}

start();

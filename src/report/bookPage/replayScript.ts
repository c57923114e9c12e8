/**
 * The one script of a saved page: it puts a pour's pictures in place as its time is dragged or played. Plain text,
 * since it runs in a page that has nothing else; it reads nothing but the data written beside it.
 */
export const REPLAY_SCRIPT = `
'use strict';
for (const figure of document.querySelectorAll('[data-replay]')) {
  const replay = JSON.parse(figure.querySelector('script').textContent);
  const part = (name) => figure.querySelector('[data-part="' + name + '"]');
  const [body, metal, skin, front, words, time, play, now, spot] =
    ['body', 'metal', 'skin', 'front', 'words', 'time', 'play', 'now', 'spot'].map(part);
  let asked = 0;
  let began = 0;
  function show(at) {
    let index = Math.round((at / replay.duration) * (replay.pictures.length - 1));
    const picture = replay.pictures[Math.max(0, Math.min(replay.pictures.length - 1, index))];
    body.setAttribute('transform', 'rotate(' + picture.turn + ')');
    metal.setAttribute('d', picture.metal);
    skin.setAttribute('d', picture.skin);
    front.setAttribute('visibility', picture.front ? 'visible' : 'hidden');
    if (picture.front) front.setAttribute('transform', 'translate(' + picture.front[0] + ' ' + picture.front[1] + ')');
    if (now) now.hidden = !picture.mark;
    if (now && picture.mark) [now.style.left, spot.style.top] = picture.mark.map((share) => share + '%');
    words.textContent = picture.words;
    time.setAttribute('aria-valuetext', picture.words);
  }
  function pause() {
    cancelAnimationFrame(asked);
    asked = 0;
    play.textContent = 'Play';
  }
  function step(now) {
    const at = Math.min(replay.duration, ((now - began) / replay.milliseconds) * replay.duration);
    time.value = at;
    show(at);
    if (at >= replay.duration) pause();
    else asked = requestAnimationFrame(step);
  }
  time.addEventListener('input', () => { pause(); show(Number(time.value)); });
  play.addEventListener('click', () => {
    if (asked) return pause();
    const from = Number(time.value) >= replay.duration - 0.01 ? 0 : Number(time.value);
    began = performance.now() - (from / replay.duration) * replay.milliseconds;
    play.textContent = 'Pause';
    asked = requestAnimationFrame(step);
  });
  show(Number(time.value));
}
`;

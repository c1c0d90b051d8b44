// A throw that moves: each bag goes from place to place as the simulator told them, slower than in life. The picture without
// it shows the ways and where they end; whoever wants less motion starts it by hand.

const SLOWER = 2.5;

const picture = document.getElementById("watch");
const play = document.getElementById("watch-play");
const bags = [...picture.querySelectorAll(".thrown-bag")];
// Of each frame: the time, and of each bag its place, or nothing once it is gone.
const frames = JSON.parse(picture.dataset.frames);
let underway = 0;

function show(at) {
  const next = frames.findIndex(([time]) => time > at);
  const [time, here] = frames[next < 0 ? frames.length - 1 : Math.max(0, next - 1)];
  const [later, there] = frames[next < 0 ? frames.length - 1 : next];
  const share = later > time ? (at - time) / (later - time) : 0;
  bags.forEach((bag, i) => {
    bag.setAttribute("visibility", here[i].length > 0 ? "visible" : "hidden");
    if (here[i].length === 0) return;
    const [x, y] = here[i];
    const [toX, toY] = there[i].length > 0 ? there[i] : here[i];
    bag.setAttribute("cx", x + share * (toX - x));
    bag.setAttribute("cy", y + share * (toY - y));
  });
}

function start() {
  cancelAnimationFrame(underway);
  const [last] = frames[frames.length - 1];
  let began = null;
  const step = (now) => {
    began ??= now;
    const at = (now - began) / 1000 / SLOWER;
    show(at);
    if (at < last) underway = requestAnimationFrame(step);
    else picture.dataset.done = "yes";
  };
  delete picture.dataset.done;
  underway = requestAnimationFrame(step);
}

play.hidden = false;
play.addEventListener("click", start);
if (!matchMedia("(prefers-reduced-motion: reduce)").matches) start();

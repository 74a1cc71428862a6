"use strict";
// A touch on a face tells the story of its spot. Nothing is reckoned here: the stories stand in the page.
for (const face of document.querySelectorAll("figure.face")) {
  const data = JSON.parse(face.querySelector("script").textContent);
  const svg = face.querySelector("svg");
  const mark = face.querySelector(".mark");
  const story = face.querySelector(".story");
  const [left, top, width, height] = data.box;
  const wide = width / data.across;
  const tall = height / data.up;
  let across = 0;
  let up = 0;
  const tell = () => {
    mark.setAttribute("x", left + across * wide);
    mark.setAttribute("y", top + height - (up + 1) * tall);
    mark.setAttribute("width", wide);
    mark.setAttribute("height", tall);
    mark.removeAttribute("visibility");
    const list = document.createElement("dl");
    for (const line of data.stories[data.at[up * data.across + across]]) {
      const [name, text] = data.lines[line];
      list.append(Object.assign(document.createElement("dt"), { textContent: name }));
      list.append(Object.assign(document.createElement("dd"), { textContent: text }));
    }
    story.replaceChildren(list);
  };
  const move = (x, z) => {
    across = Math.min(Math.max(x, 0), data.across - 1);
    up = Math.min(Math.max(z, 0), data.up - 1);
    tell();
  };
  svg.addEventListener("click", (touch) => {
    const at = new DOMPoint(touch.clientX, touch.clientY).matrixTransform(svg.getScreenCTM().inverse());
    move(Math.floor((at.x - left) / wide), Math.floor((top + height - at.y) / tall));
  });
  svg.addEventListener("keydown", (key) => {
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[key.key];
    if (!step) return;
    key.preventDefault();
    move(across + step[0], up + step[1]);
  });
}

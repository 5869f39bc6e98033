// Drag a bath's bar to another time or burner. The page of its wishes does the same.

const STEP_MIN = 5;

const lanes = document.querySelector(".lanes.wide");
const form = document.getElementById("drag-form");
const day = document.getElementById("lanes")?.dataset.day;

if (lanes && form && day) {
  const perMin = Number(lanes.dataset.perMin);
  const opens = Number(lanes.dataset.opens);
  lanes.classList.add("can-drag");
  lanes.addEventListener("pointerdown", begin);

  function begin(event) {
    const bath = event.target.closest(".bath");
    if (!bath || event.button !== 0) return;
    event.preventDefault();
    bath.setPointerCapture(event.pointerId);
    const from = point(event);
    const move = (moved) => shift(bath, point(moved), from);
    const end = (ended) => {
      bath.removeEventListener("pointermove", move);
      bath.classList.remove("dragged");
      if (ended.type === "pointerup") drop(bath, point(ended), from, ended);
      bath.removeAttribute("transform");
    };
    bath.classList.add("dragged");
    bath.addEventListener("pointermove", move);
    bath.addEventListener("pointerup", end, { once: true });
    bath.addEventListener("pointercancel", end, { once: true });
  }

  function point(event) {
    const place = new DOMPoint(event.clientX, event.clientY);
    return place.matrixTransform(lanes.getScreenCTM().inverse());
  }

  function minutes(from, to) {
    return Math.round((to.x - from.x) / perMin / STEP_MIN) * STEP_MIN;
  }

  function shift(bath, to, from) {
    const x = minutes(from, to) * perMin;
    bath.setAttribute("transform", `translate(${x} ${to.y - from.y})`);
  }

  function drop(bath, to, from) {
    const room = [...lanes.querySelectorAll(".room")].find((each) => {
      const top = Number(each.getAttribute("y"));
      return to.y >= top && to.y < top + Number(each.getAttribute("height"));
    });
    const moved = minutes(from, to);
    if (!room || (!moved && room.dataset.source === bath.dataset.source)) return;
    const at = opens + Number(bath.dataset.starts) + moved;
    if (at < 0 || at >= 24 * 60) return;
    const two = (value) => String(value).padStart(2, "0");
    form.elements.source.value = room.dataset.source;
    form.elements.starts_at.value = `${two(Math.floor(at / 60))}:${two(at % 60)}`;
    form.action = `${day}baths/${bath.dataset.bath}/`;
    form.submit();
  }
}

"use strict";
// What moves on the page: what comes next, with the minutes to go. Without script the times
// stand on the page all the same.
(() => {
  const minute = 60 * 1000;
  const hour = 60 * minute;
  const events = [...document.querySelectorAll(".agenda li")].map((item) => ({
    item,
    at: Date.parse(item.querySelector("time").dateTime),
    clock: item.querySelector("time").textContent,
    what: item.querySelector(".what").textContent,
  }));
  const box = document.getElementById("next-up");

  const span = (ms) => {
    const minutes = Math.ceil(ms / minute);
    if (minutes < 60) return `${minutes} min`;
    return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")} min`;
  };

  const strong = (text) => {
    const element = document.createElement("b");
    element.textContent = text;
    return element;
  };

  const tellNext = (now) => {
    const next = events.find((event) => event.at > now);
    const onTheDay = next !== undefined && now > events[0].at - 12 * hour;
    box.hidden = !onTheDay;
    for (const event of events) {
      event.item.classList.toggle("past", onTheDay && event.at <= now);
      event.item.classList.toggle("next", onTheDay && event === next);
    }
    if (!onTheDay) return;
    box.replaceChildren("Next up ", strong(`in ${span(next.at - now)}`), ` at ${next.clock}: `,
                        strong(next.what));
  };

  // The line stands where the axis has the moment, and is gone before and after.
  const day = document.querySelector(".day");
  const line = document.querySelector(".day .now");

  const moveLine = (now) => {
    const from = Date.parse(day.dataset.from);
    const to = Date.parse(day.dataset.to);
    line.hidden = now < from || now > to;
    if (line.hidden) return;
    line.style.left = `${(100 * (now - from)) / (to - from)}%`;
    line.firstElementChild.textContent = "now";
  };

  const tick = () => {
    const now = Date.now();
    tellNext(now);
    moveLine(now);
  };

  // On a narrow screen the bands begin with the moment, or with the first of them.
  const showWhatCounts = () => {
    const scroller = day.parentElement;
    const mark = line.hidden ? day.querySelector(".band") : line;
    if (mark === null) return;
    const before = mark.getBoundingClientRect().left - scroller.getBoundingClientRect().left;
    scroller.scrollLeft = before - scroller.clientWidth / 3;
  };

  tick();
  showWhatCounts();
  setInterval(tick, 15 * 1000);
  document.addEventListener("visibilitychange", tick);
})();

"use strict";
// What moves on the page: what is open now and what comes next, with the minutes to go, and what
// is folded on a phone. Without script the times stand on the page all the same.
(() => {
  // What stands at the foot of each page on paper, which only a style can say.
  document.documentElement.style.setProperty(
    "--running", JSON.stringify(document.querySelector(".running").textContent));

  const minute = 60 * 1000;
  const hour = 60 * minute;
  const agenda = document.getElementById("agenda");
  const earlier = document.querySelector(".earlier");
  const events = [...agenda.children].map((item) => {
    const [from, until] = item.querySelectorAll("time");
    const place = item.querySelector("bdi");
    return {
      item,
      at: Date.parse(from.dateTime),
      clock: from.textContent,
      where: place ? place.textContent : "",
      does: item.querySelector(".does").textContent,
      work: item.dataset.work,
      until: until ? Date.parse(until.dateTime) : NaN,
      minor: item.classList.contains("minor"),
    };
  });
  const box = document.getElementById("next-up");

  const span = (ms) => {
    const minutes = Math.ceil(ms / minute);
    const words = minutes < 60 ? `${minutes} min`
      : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")} min`;
    return words.replaceAll(" ", "\u00a0");  // a duration does not break across lines
  };

  const element = (name, ...content) => {
    const made = document.createElement(name);
    made.append(...content);
    return made;
  };
  // A name keeps its own direction of writing.
  const place = (where) => (where ? [element("bdi", where), ": "] : []);
  const line = (kind, ...content) => {
    const made = element("p", ...content);
    made.className = kind;
    return made;
  };

  // The finishing first, then what closes soonest.
  const openAt = (now) => events
    .filter((event) => event.work && event.at <= now && now < event.until)
    .sort((a, b) => a.minor - b.minor || a.until - b.until);

  const mostOpen = 4;
  const mostNext = 3;
  const tellOpen = (now) => {
    const open = openAt(now);
    if (open.length === 0) return [];
    const lines = open.slice(0, mostOpen).map((event) =>
      line("open", element("b", event.work), " ", element("bdi", event.where), ", ",
           element("b", `${span(event.until - now)}\u00a0left`)));
    const more = open.length - mostOpen;
    if (more > 0) lines.push(line("coming", `and ${more} more in the timeline`));
    return [line("open", element("b", "Open now:")), ...lines];
  };
  const tellNext = (now) => events.filter((event) => event.at > now).slice(0, mostNext)
    .map((event, i) => line("coming", i === 0 ? "Next up " : "then ",
                            element("b", `in ${span(event.at - now)}`), ` at ${event.clock}: `,
                            ...place(event.where), element("b", event.does)));

  // Filled anew only when the words change, so that a screen reader is left in peace.
  let told = "";
  const tellNow = (now) => {
    const next = events.find((event) => event.at > now);
    const last = Math.max(...events.map((event) => (event.until > event.at ? event.until : event.at)));
    const onTheDay = now > events[0].at - 12 * hour && now < last;
    box.hidden = !onTheDay;
    for (const event of events) {
      event.item.classList.toggle("next", onTheDay && event === next);
      // Past is what cannot be done any more; the past folds away.
      const past = onTheDay && (event.until > event.at ? event.until : event.at) <= now;
      event.item.classList.toggle("past", past);
    }
    foldPast();
    if (!onTheDay) return;
    const lines = [...tellOpen(now), ...tellNext(now)];
    const words = lines.map((one) => one.textContent).join("\n");
    if (words !== told) box.replaceChildren(...lines);
    told = words;
  };

  const foldPast = () => {
    const past = events.filter(({ item }) => item.classList.contains("past")).map(({ item }) => item);
    const list = earlier.querySelector("ol");
    if (past.length === list.children.length) return;
    list.replaceChildren(...past);
    agenda.replaceChildren(...events.map(({ item }) => item).filter((item) => !past.includes(item)));
    earlier.hidden = past.length === 0;
    earlier.querySelector("summary").textContent = `Earlier: ${past.length} past`;
  };

  // The line stands where the axis has the moment, and is gone before and after.
  const day = document.querySelector(".day");
  const mark = document.querySelector(".day .now");

  const moveLine = (now) => {
    const from = Date.parse(day.dataset.from);
    const to = Date.parse(day.dataset.to);
    mark.hidden = now < from || now > to;
    if (mark.hidden) return;
    mark.style.left = `${(100 * (now - from)) / (to - from)}%`;
    mark.firstElementChild.textContent = "now";
  };

  const tick = () => {
    const now = Date.now();
    tellNow(now);
    moveLine(now);
  };

  // On a phone the parts are folded, elsewhere and on paper they are open.
  const wide = matchMedia("(min-width: 48rem)");
  const folds = [...document.querySelectorAll("details.fold")];
  const unfold = () => folds.forEach((one) => { one.open = wide.matches; });
  let kept = [];
  addEventListener("beforeprint", () => {
    const all = [...folds, earlier];
    kept = all.map((one) => one.open);
    all.forEach((one) => { one.open = true; });
  });
  addEventListener("afterprint", () => {
    [...folds, earlier].forEach((one, i) => { one.open = kept[i]; });
  });

  // Where the bands are scrolled they begin with the moment, or with the first of them.
  const showWhatCounts = () => {
    const scroller = day.parentElement;
    const first = mark.hidden ? day.querySelector(".band") : mark;
    if (first === null) return;
    const before = first.getBoundingClientRect().left - scroller.getBoundingClientRect().left;
    scroller.scrollLeft = before - scroller.clientWidth / 3;
  };

  unfold();
  wide.addEventListener("change", unfold);
  tick();
  showWhatCounts();
  setInterval(tick, 15 * 1000);
  document.addEventListener("visibilitychange", tick);
})();

// The map's choice of an operation and its hour. Without it the map stands still at one hour.
(() => {
  "use strict";
  const section = document.getElementById("map");
  const plan = section && section.querySelector("svg.plan-hour");
  if (!plan) return;
  const slider = document.getElementById("map-hour");
  const clock = document.getElementById("map-clock");
  const says = document.getElementById("map-says");
  const figures = [...section.querySelectorAll(".map-times")];
  const layers = [...plan.querySelectorAll(".time-layer")];
  const numbers = (text) => text.split(" ").map(Number);

  const clocks = plan.dataset.clocks.split(",");
  const shadows = plan.dataset.shadows.split(",").map((one) => (one === "-" ? null : numbers(one)));
  const obstacles = (plan.dataset.obstacles || "").split(",").filter(Boolean).map((one) => {
    const [kind, ...rest] = one.split(" ");
    const [x, y, a, b, height, light] = rest.map(Number);
    return { kind, x, y, a, b, height, light };
  });
  const zones = [...plan.querySelectorAll(".hour-zone")].map((group) => ({
    group,
    name: group.dataset.name,
    shaded: group.classList.contains("all-shade"),
    sun: numbers(group.dataset.sun),
    placed: numbers(group.dataset.placed),
    area: numbers(group.dataset.area),
    cells: [...group.querySelectorAll("path")].sort((a, b) => a.dataset.cell - b.dataset.cell),
  }));
  // One entry a cell: nothing where the work is not done, an empty list where it never can be.
  const timesOf = new Map(figures.map((figure) => [figure.dataset.choice,
    figure.dataset.times.split(",").map((one) => (one === "" ? null : one === "-" ? [] : numbers(one)))]));

  const shape = (points, kind) => {
    const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
    path.setAttribute("d", "M" + points.map(([x, y]) => x.toFixed(0) + " " + y.toFixed(0)).join("L") + "z");
    if (kind) path.setAttribute("class", kind);
    return path;
  };
  const shadowOf = (one, [dx, dy]) => {
    const x = dx * one.height;
    const y = dy * one.height;
    if (one.kind === "wall") {
      return [[one.x, one.y], [one.a, one.b], [one.a + x, one.b + y], [one.x + x, one.y + y]];
    }
    const away = Math.atan2(y, x);
    const points = [];
    const steps = 12;
    for (let i = 0; i <= steps; ++i) {
      const angle = away + Math.PI / 2 + (Math.PI * i) / steps;
      points.push([one.x + one.a * Math.cos(angle), one.y + one.a * Math.sin(angle)]);
    }
    for (let i = 0; i <= steps; ++i) {
      const angle = away - Math.PI / 2 + (Math.PI * i) / steps;
      points.push([one.x + x + one.a * Math.cos(angle), one.y + y + one.a * Math.sin(angle)]);
    }
    return points;
  };
  const drawShade = (k) => {
    const layer = plan.querySelector(".hour-shade");
    layer.replaceChildren();
    if (!shadows[k]) {
      layer.append(shape([[0, 0], [1000, 0], [1000, +plan.dataset.height], [0, +plan.dataset.height]], "dark"));
      return;
    }
    for (const one of obstacles) {
      layer.append(shape(shadowOf(one, shadows[k]), one.light > 0.5 ? "dappled" : ""));
    }
    for (const zone of zones.filter((one) => one.shaded)) {
      for (const part of zone.group.children) {
        const copy = part.cloneNode(true);
        for (const path of copy.children) path.removeAttribute("class");
        layer.append(copy);
      }
    }
  };

  const stateAt = (minute, placed, times) => {
    if (!times) return "idle";
    if (minute < placed) return "wait";
    if (times.length === 0 || minute < times[0]) return "soon";
    return times.length > 1 && minute >= times[1] ? "stiff" : "ready";
  };
  const percent = (part, all) => Math.round((100 * part) / all) + "%";
  const say = (k, words, areas, ready) => {
    const all = zones.reduce((sum, zone) => sum + zone.area.reduce((a, b) => a + b, 0), 0);
    const sun = zones.reduce((sum, zone) => sum + zone.sun[k] * zone.area.reduce((a, b) => a + b, 0), 0) / all;
    const worked = areas.soon + areas.ready + areas.stiff + areas.wait;
    says.textContent = clocks[k] + ", " + words + ": "
      + percent(areas.ready, worked) + " ready" + (ready.length ? " (" + ready.join(", ") + ")" : "")
      + ", " + percent(areas.soon + areas.wait, worked) + " not yet, "
      + percent(areas.stiff, worked) + " too late. "
      + (shadows[k] ? "Sun on " + Math.round(sun) + "% of the concrete." : "The sun is down.");
  };

  const show = () => {
    const choice = section.querySelector("[name=map-choice]:checked").value;
    const figure = figures.find((one) => one.dataset.choice === choice);
    for (const one of figures) one.hidden = one !== figure;
    for (const layer of layers) layer.classList.toggle("shown", layer.dataset.choice === choice);
    const k = Number(slider.value);
    const times = timesOf.get(choice);
    const areas = { idle: 0, wait: 0, soon: 0, ready: 0, stiff: 0 };
    const ready = [];
    let next = 0;
    for (const zone of zones) {
      const before = areas.ready;
      zone.cells.forEach((cell, i) => {
        const state = stateAt(15 * k, zone.placed[i], times[next++]);
        cell.setAttribute("class", state);
        areas[state] += zone.area[i];
      });
      if (areas.ready > before) ready.push(zone.name);
    }
    drawShade(k);
    clock.textContent = clocks[k];
    slider.setAttribute("aria-valuetext", clocks[k]);
    say(k, figure.dataset.words, areas, ready);
  };

  const now = (Date.now() - Date.parse(plan.dataset.start)) / 900000;
  if (now >= 0 && now <= clocks.length - 1) slider.value = String(Math.floor(now));
  section.querySelector(".map-controls").hidden = false;
  for (const control of [slider, ...section.querySelectorAll(".map-steps button")]) control.hidden = false;
  section.querySelector(".map-figure").classList.add("answering");
  section.addEventListener("input", show);
  for (const button of section.querySelectorAll(".map-steps button")) {
    button.addEventListener("click", () => {
      slider.value = String(Number(slider.value) + Number(button.dataset.step));
      show();
    });
  }
  show();
})();

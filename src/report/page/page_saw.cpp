#include "page_saw.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/text.h"
#include "job/geometry/placing_sequence.h"
#include "job/model/wording.h"
#include "report/chart/chart_table.h"
#include "report/chart/risk_chart.h"
#include "report/map/cut_map.h"
#include "report/map/map_ground.h"
#include "report/map/plan_view.h"
#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"
#include "report/markup/palette.h"
#include "report/markup/svg.h"
#include "report/markup/table_markup.h"
#include "report/words/decimals.h"
#include "report/words/short_names.h"
#include "report/words/tape_words.h"
#include "slabtide/day/crew/sawing.h"
#include "slabtide/report/text/text_saw.h"

namespace slabtide {

namespace {

/// On the one side of the truck sheet there is room for so many zones, and for so many lines of
/// cuts beside few zones and beside many; all of them stand in the annex (ours).
constexpr std::size_t max_zones_on_truck = 6;
constexpr std::size_t max_cut_lines = 14;
constexpr std::size_t max_cut_lines_of_many = 11;
constexpr std::size_t cut_line_letters = 80;

/// The map of the truck sheet, in drawing units of which 1000 are 7 cm (sheet.css): type of 12 CSS
/// pixels and no more than 4 cm of height.
constexpr double paper_type_size = 47.0;
constexpr PlanView::Frame paper_frame{86.0, 484.0};

Element left_out(const std::string& words) {
  Element paragraph("p");
  return paragraph.set("class", "left-out").text(words);
}

/// A figure that the JSON does not round.
std::string exact_figure(const std::string& json, double value, std::string_view words) {
  Element data("data");
  data.set("data-json", json).set("value", std::string_view(fmt::format("{}", value)));
  return data.text(words).str();
}

Element scrolling(const Element& table, const std::string& words) {
  Element scroll("div");
  scroll.set("class", "scroller").set("tabindex", "0").set("role", "group");
  return scroll.set("aria-label", words).add(table);
}

std::string kind_words(SawKind kind) {
  std::string words = saw_words(kind);
  words.front() = kind == SawKind::wet ? 'W' : 'E';
  return words;
}

/// A cell that on a phone, where the row is a card, says what it is.
Element labelled(Element cell, std::string_view label) { return cell.set("data-label", label); }

Element cards() {
  Element table("table");
  return table.set("class", "cards");
}

Element folded(const std::string& summary, const Element& content) {
  Element details("details");
  details.set("class", "fold").add(Element("summary").add(Element("span").text(summary)));
  return details.add(content);
}

class PageSaw {
 public:
  explicit PageSaw(const PlannedPour& facts)
      : facts_(facts), view_(facts.job), ground_(facts.job, view_) {
    for (const SawKind kind : kinds_of_saw) {
      shifts_[static_cast<std::size_t>(kind)] =
          worked_shift(kind, facts.plan.cuts, facts.plan.crew);
      if (shift_of(kind).on_hand || facts.job.pour.saws.empty()) kinds_.push_back(kind);
    }
  }

  std::string section() const {
    Element section("section");
    section.set("class", "figures").set("id", "saw").set("aria-labelledby", "saw-title");
    section.add(Element("h2").set("id", "saw-title").text("The saw")).add(choices());
    const std::size_t zones = facts_.job.zones.size();
    if (zones > max_zones_on_truck) {
      section.add(left_out(
          fmt::format("{} more zones are further on: The cuts.", zones - max_zones_on_truck)));
    }
    Element link("a");
    link.set("href", "#cuts").text("The cuts in order");
    return section.add(Element("p").set("class", "to-cuts").add(link)).str();
  }

  /// For the truck sheet: the plan of the site, and the cuts of the first saw in a line each.
  std::string on_paper() const {
    const SawShift none;
    const bool has_cuts = !kinds_.empty() && !facts_.plan.cuts.cuts.empty();
    const SawShift& shift = has_cuts ? shift_of(kinds_.front()) : none;
    const PlanView view(facts_.job, paper_frame);
    const MapGround ground(facts_.job, view, paper_type_size);
    Element figure("figure");
    figure.add(small_cut_map(shift, cuts_on_truck(shift), view, ground, facts_, "The site"));
    figure.add(ground.key());
    Element plan("div");
    plan.set("class", "figures on-paper").add(figure);
    if (!shift.cuts.empty()) plan.add(cut_lines(shift));
    return plan.str();
  }

  /// The cuts on the plan and in order, and what asks for them.
  std::string cuts() const {
    Element section("section");
    section.set("class", "figures").set("id", "cuts").set("aria-labelledby", "cuts-title");
    section.add(Element("h2").set("id", "cuts-title").text("The cuts"));
    Element maps("div");
    maps.set("class", "charts with-maps");
    for (const SawKind kind : kinds_) {
      maps.add(folded(kind_words(kind) + ": the cuts in order", shift_figure(shift_of(kind))));
    }
    if (facts_.job.zones.size() > max_zones_on_truck) {
      Element every_zone("div");
      section.add(every_zone.set("class", "paper-only").add(choices()));
    }
    return section.add(maps)
        .add(folded("Crack risk, and when each zone must be cut", risks()))
        .str();
  }

 private:
  const SawShift& shift_of(SawKind kind) const { return shifts_[static_cast<std::size_t>(kind)]; }

  /// The zones that stand on the truck sheet: those without a saw in time, then those placed first.
  std::vector<std::size_t> zones_on_truck() const {
    std::vector<std::size_t> zones = zones_in_order(facts_.job);
    const auto has_saw = [this](std::size_t zone) {
      return facts_.plan.cuts.choices[zone].way != JointWay::tool;
    };
    std::stable_partition(zones.begin(), zones.end(),
                          [&has_saw](std::size_t zone) { return !has_saw(zone); });
    if (zones.size() > max_zones_on_truck) zones.resize(max_zones_on_truck);
    return zones;
  }

  /// How each zone's joints can be made that day.
  Element choices() const {
    Element list("ul");
    list.set("class", "saw-choices");
    const std::vector<std::size_t> here = zones_on_truck();
    for (const std::size_t zone : zones_in_order(facts_.job)) {
      Element item("li");
      if (std::find(here.begin(), here.end(), zone) == here.end()) item.set("class", "elsewhere");
      item.add(Element("b").add(named_place(facts_.job.zones[zone].name, facts_.job))).text(": ");
      Element words("span");
      words.set("data-json", fmt::format("/zones/{}/joints/says", zone));
      list.add(item.add(words.text(joint_choice_words(facts_, zone))));
    }
    return list;
  }

  Element shift_figure(const SawShift& shift) const {
    const std::string name = kind_words(shift.kind);
    Element figure("figure");
    figure.add(Element("h3").text(name));
    figure.add(cut_map(shift, view_, ground_, facts_,
                       fmt::format("{}: the cuts on the plan, numbered in order", name)));
    figure.add(ground_.key()).add(Element("figcaption").text(caption(shift)));
    return figure.add(scrolling(table(shift), fmt::format("{}: the cuts in order", name)));
  }

  /// The cuts that have room on the truck sheet, from the first on.
  std::size_t cuts_on_truck(const SawShift& shift) const {
    constexpr std::size_t times_letters = 26;  // ": 11:27 AM, in by 7:55 PM, "
    const bool many = facts_.job.zones.size() > max_zones_on_truck;
    std::size_t room = many ? max_cut_lines_of_many : max_cut_lines;
    std::size_t told = 0;
    for (const SawnCut& sawn : shift.cuts) {
      const PlannedCut& planned = facts_.plan.cuts.cuts[sawn.cut];
      const std::size_t letters =
          times_letters +
          display_width(short_names(facts_.job.zones[planned.zone].name +
                                        tape_words(planned.cut.joint, planned.zone, facts_.job),
                                    facts_.job));
      const std::size_t lines = 1 + letters / cut_line_letters;
      if (lines > room) break;
      room -= lines;
      ++told;
    }
    return told;
  }

  Element cut_lines(const SawShift& shift) const {
    Element list("ol");
    const std::size_t first = first_in_json(shift);
    const std::size_t told = cuts_on_truck(shift);
    for (std::size_t i = 0; i < told; ++i) {
      list.add(cut_line(shift.cuts[i], pointer("/saw", first + i)));
    }
    Element lines("div");
    lines.add(Element("h3").text("Saw list, " + saw_words(shift.kind))).add(list);
    if (told < shift.cuts.size()) {
      lines.add(left_out(
          fmt::format("{} more cuts are further on: The cuts.", shift.cuts.size() - told)));
    }
    return lines;
  }

  Element cut_line(const SawnCut& sawn, const std::string& json) const {
    const PlannedCut& planned = facts_.plan.cuts.cuts[sawn.cut];
    Element line("li");
    line.add(named_place(facts_.job.zones[planned.zone].name, facts_.job)).text(": ");
    line.add_markup(page_time(json + "/starts", sawn.starts, facts_.job)).text(", in by ");
    line.add_markup(page_time(json + "/latest", planned.latest, facts_.job)).text(", ");
    return line.add(where_of(planned, json));
  }

  Element where_of(const PlannedCut& planned, const std::string& json) const {
    Element where("span");
    where.set("data-json", json + "/where");
    return with_names(where, tape_words(planned.cut.joint, planned.zone, facts_.job), facts_.job);
  }

  static std::string caption(const SawShift& shift) {
    if (shift.cuts.empty()) return "Takes no cut before the forecast ends.";
    std::string words = "Numbers: the order to cut in, with one saw.";
    const bool is_made = std::any_of(shift.cuts.begin(), shift.cuts.end(),
                                     [](const SawnCut& cut) { return cut.task.has_value(); });
    if (!is_made) words += " The crew's plan has nobody at this saw: its hours are the earliest.";
    const bool late = std::any_of(shift.cuts.begin(), shift.cuts.end(),
                                  [](const SawnCut& cut) { return cut.late; });
    if (late) words += " Dashed lines are not cut through in time.";
    if (shift.saws_needed && *shift.saws_needed > 1) {
      words += fmt::format(" {} saws would make every cut in time.", *shift.saws_needed);
    }
    return words;
  }

  /// The index of the shift's first cut among those in the JSON.
  std::size_t first_in_json(const SawShift& shift) const {
    std::size_t before = 0;
    for (const SawShift& other : shifts_) {
      if (other.kind == shift.kind) break;
      before += other.cuts.size() + other.never_open.size();
    }
    return before;
  }

  Element table(const SawShift& shift) const {
    Element body("tbody");
    const std::size_t first = first_in_json(shift);
    for (std::size_t i = 0; i < shift.cuts.size(); ++i) {
      body.add(row(shift.cuts[i], i + 1, pointer("/saw", first + i)));
    }
    Element table = cards();
    return table
        .add(table_head({"no.", "zone", "cut at", "in by", "long, and where", "deep", "why"}))
        .add(body);
  }

  Element row(const SawnCut& sawn, std::size_t number, const std::string& json) const {
    const PlannedCut& planned = facts_.plan.cuts.cuts[sawn.cut];
    const UnitSystem units = facts_.job.units;
    Element row("tr");
    row.add(row_head(std::to_string(number)));
    row.add(labelled(Element("td"), "zone")
                .add(Element("bdi").text(facts_.job.zones[planned.zone].name)));
    row.add(labelled(markup_cell(page_time(json + "/starts", sawn.starts, facts_.job)), "cut at"));
    std::string due = page_time(json + "/latest", planned.latest, facts_.job);
    if (sawn.late) due += " <strong>too late</strong>";
    row.add(labelled(markup_cell(due), "in by"));
    row.add(labelled(markup_cell(exact_figure(json + "/length_m", thousandths(planned.cut.length_m),
                                              length_words(planned.cut.length_m, units)) +
                                 ", " + where_of(planned, json).str()),
                     "long"));
    row.add(labelled(markup_cell(exact_figure(json + "/depth_m", sawn.depth_m,
                                              thickness_words(sawn.depth_m, units))),
                     "deep"));
    return row.add(labelled(Element("td"), "why").text(cut_reason_words(planned.cut.reason)));
  }

  /// The risk of a crack where left uncut, six zones a chart.
  Element risks() const {
    Element charts("div");
    charts.set("class", "charts");
    const std::vector<std::size_t> order = zones_in_order(facts_.job);
    for (std::size_t first = 0; first < order.size(); first += line_class_count) {
      const std::size_t last = std::min(first + line_class_count, order.size());
      const std::vector<std::size_t> zones(order.begin() + static_cast<std::ptrdiff_t>(first),
                                           order.begin() + static_cast<std::ptrdiff_t>(last));
      charts.add(risk(zones)).add(limits(zones));
    }
    return charts;
  }

  Element risk(const std::vector<std::size_t>& zones) const {
    constexpr int decimals = 2;
    const LineChart chart = risk_chart(zones, kinds_, facts_);
    Element figure("figure");
    Element heading("h3");
    heading.text("Crack risk if left uncut ").add(Element("small").text("share of strength"));
    figure.add(heading).add(render_chart(chart, facts_));
    figure.add(Element("figcaption").text(bars_words()));
    return figure.add(chart_table(chart, "share of strength", decimals, facts_));
  }

  std::string bars_words() const {
    std::string words = fmt::format(
        "At 1.0 it cracks. Bars: from when {} can start until all cuts must be in, which "
        "a cooling surface can call for before the pull does.",
        kinds_.size() == 1 ? "the " + saw_words(kinds_.front()) : "the first saw");
    if (kinds_.size() > 1) words += " The tick: when the wet saw can start, too.";
    return words;
  }

  /// The zones' limits as a table.
  Element limits(const std::vector<std::size_t>& zones) const {
    Element body("tbody");
    for (const std::size_t zone : zones) {
      const std::vector<SawPlan>& saws = facts_.plan.zones[zone].saws;
      for (std::size_t k = 0; k < saws.size(); ++k) {
        if (std::find(kinds_.begin(), kinds_.end(), saws[k].kind) == kinds_.end()) continue;
        body.add(limit_row(zone, saws[k], pointer(pointer("/zones", zone, "saw_windows"), k)));
      }
    }
    Element table = cards();
    table.add(table_head({"zone, saw", "opens", "pull", "cooling", "in by"})).add(body);
    Element block("div");
    block.add(Element("h3").text("When each zone must be cut"));
    return block.add(scrolling(table, "When each zone must be cut"));
  }

  Element limit_row(std::size_t zone, const SawPlan& saw, const std::string& json) const {
    const Job& job = facts_.job;
    Element row("tr");
    row.add(
        name_head(job.zones[zone].name).text(saw.kind == SawKind::wet ? ", wet" : ", early-entry"));
    row.add(labelled(markup_cell(page_time(json + "/opens", saw.opens, job)), "opens"));
    row.add(
        labelled(markup_cell(page_time(json + "/stress_limit", saw.stress_limit, job)), "pull"));
    row.add(labelled(markup_cell(page_time(json + "/surface_limit", saw.surface_limit, job)),
                     "cooling"));
    return row.add(labelled(markup_cell(page_time(json + "/latest", saw.latest, job)), "in by"));
  }

  const PlannedPour& facts_;
  PlanView view_;
  MapGround ground_;
  std::array<SawShift, kinds_of_saw.size()> shifts_;
  std::vector<SawKind> kinds_;
};

}  // namespace

std::string page_saw(const PlannedPour& facts) {
  return facts.plan.cuts.cuts.empty() ? std::string() : PageSaw(facts).section();
}

std::string page_plan_on_paper(const PlannedPour& facts) { return PageSaw(facts).on_paper(); }

std::string page_cuts(const PlannedPour& facts) {
  return facts.plan.cuts.cuts.empty() ? std::string() : PageSaw(facts).cuts();
}

}  // namespace slabtide

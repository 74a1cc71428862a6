#include "record/model/pour_record.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "pour/log/log_entry.h"
#include "pour/log/origin.h"
#include "pour/outlook/form.h"
#include "pour/outlook/form_pressure.h"
#include "pour/outlook/run_wanted.h"
#include "record/model/after_pour.h"
#include "record/model/event_words.h"
#include "record/model/finding_lines.h"
#include "record/model/held_to.h"
#include "record/model/load_lines.h"
#include "record/model/names.h"
#include "record/model/photo_lines.h"
#include "record/model/placing_lines.h"
#include "record/model/power_lines.h"
#include "record/model/signature_lines.h"
#include "trade/pressure/cited.h"

namespace rb {

namespace {

class Maker {
 public:
  Maker(const RecordInput& input, const Voice& voice)
      : state_(input.state),
        report_(input.report),
        unread_(input.unread),
        plan_(*input.state.plan),
        names_(input.state),
        voice_(voice),
        stories_(input.stories),
        photos_(input.photos) {}

  PourRecord make(const std::vector<SideDose>& fields) {
    head();
    plan_facts();
    out_.limits = held_to(plan_, voice_);
    before_and_between();
    placing();
    put_tops(out_, state_);
    put_joints(out_, state_);
    forms();
    motors();
    out_.power = power_lines(state_, report_, voice_);
    out_.settings = setting_lines(state_);
    loads();
    put_findings(out_, state_, report_, voice_);
    corrections();
    words();
    put_after_pour(out_, state_);
    face();
    put_photos(out_, state_, names_, photos_);
    put_amendments(out_, state_, names_, voice_);
    put_signatures(out_, state_, names_, voice_);
    unread();
    for (const SideDose& field : fields) {
      out_.dose_maps.push_back(make_dose_map(state_, field));
      if (!stories_) continue;
      out_.dose_maps.back().stories = spot_stories(state_, field.element, field.side, voice_);
    }
    return std::move(out_);
  }

 private:
  void head() {
    out_.id = state_.pour.text;
    out_.site = plan_.site;
    out_.name = plan_.name;
    out_.method = trade::cited_in_full(plan_.pressure_method);
    if (!state_.log.empty()) out_.opened = state_.log.front().when;  // the event that opens it
    out_.closed = state_.closed;
    out_.events = state_.log.size();
    out_.from_script = origin_of(state_).brought;
  }

  void plan_facts() {
    for (const Person& p : plan_.people) out_.people.push_back({p.id.text, p.name, p.role});
    for (std::size_t i = 0; i < plan_.elements.size(); ++i) {
      const Element& e = plan_.elements[i];
      const bool round = e.section == trade::Section::round;
      out_.elements.push_back({e.id.text, round ? "round column" : to_text(e.kind), e.length,
                               e.height, e.thickness, e.thickness_top, e.batter_deg, e.form_rating,
                               e.form_mass, e.rise_limit, static_cast<int>(e.bays.size()),
                               static_cast<int>(e.lifts.size()), static_cast<int>(e.rows.size()),
                               mixes_in(i)});
    }
    for (const Mix& m : plan_.mixes) {
      out_.mixes.push_back({m.id.text, m.unit_weight, m.slump, m.initial_set, m.set_reference,
                            std::string{trade::to_text(m.cement)}});
    }
  }

  // Loads whose element was not named may have gone anywhere: they count for all.
  [[nodiscard]] std::string mixes_in(std::size_t element) const {
    std::set<std::string> mixes;
    for (const TruckState& truck : state_.trucks) {
      if (truck.what && truck.may_be_in(element)) mixes.insert(truck.what->mix.text);
    }
    std::string text;
    for (const std::string& mix : mixes) text += (text.empty() ? "" : ", ") + mix;
    return text;
  }

  void before_and_between() {
    for (const ReadyState& r : state_.ready) {
      out_.ready.push_back(
          {names_.moment(r.at), r.what.item, r.what.ok, r.what.note, names_.by(r.ref)});
    }
    for (const auto& [at, temp] : state_.air) out_.air.push_back({names_.moment(at), temp, {}, {}});
    for (const WeatherState& w : state_.weather) {
      const auto line = std::find_if(out_.air.begin(), out_.air.end(), [&](const AirLine& air) {
        return air.at == names_.moment(w.at) && air.temp == w.what.temp;
      });
      line->humidity = w.what.humidity;
      line->wind = w.what.wind;
    }
    for (const HoldState& h : state_.holds) {
      const std::string reason =
          h.moved    ? std::string{told(voice_.language, event::Moved::says(*h.moved))}
          : h.chosen ? std::string{told(voice_.language, event::says(*h.chosen))}
                     : h.reason;
      out_.holds.push_back({names_.moment(h.from), names_.moment(h.to), reason, names_.by(h.ref)});
    }
  }

  void placing() {
    for (const LiftReport& l : report_.lifts) {
      // Of a lift placed in less than the window the mean is over a shorter time than the worst,
      // and may be the greater: a reader would not believe either.
      const auto mean = l.rise_mean && l.rise_window && *l.rise_mean > *l.rise_window ? std::nullopt
                                                                                      : l.rise_mean;
      out_.lifts.push_back({names_.element(l.element), l.lift, names_.moment(l.placed_from),
                            names_.moment(l.placed_to), l.top, mean, l.rise_window, l.rise_limit,
                            l.under_share, l.min_dose, l.mean_dose});
    }
    for (const InsertState& i : state_.inserts) {
      const auto bay = i.bay ? std::optional{static_cast<int>(*i.bay) + 1} : std::nullopt;
      out_.inserts.push_back({names_.moment(i.at), names_.element(i.element), i.what.lift, bay,
                              i.what.group, i.what.spacing, i.what.each, i.what.depth_below,
                              names_.by(i.ref)});
    }
  }

  void forms() {
    for (std::size_t e = 0; e < plan_.elements.size(); ++e) {
      const auto worst = worst_pressure(state_, e, state_.last);
      if (!worst) continue;
      std::string from = told(voice_.language, said("the plan's method"));
      if (worst->row) from = plan_.elements[e].rows[*worst->row].id.text;
      if (!worst->row && worst->no_method) from = told(voice_.language, said("full liquid"));
      out_.forms.push_back({names_.element(e), static_cast<int>(worst->bay) + 1,
                            worst->greatest.pressure, worst->greatest.z, names_.moment(worst->at),
                            from, worst->rating});
    }
  }

  void motors() {
    for (std::size_t i = 0; i < state_.runs.size(); ++i) {
      const RunState& r = state_.runs[i];
      const Row& row = names_.row(r.element, r.row);
      RunLine line{names_.element(r.element),
                   to_text(row.side),
                   row.id.text,
                   lift_at(state_, r.element, r.from),
                   names_.by(r.ref),
                   names_.moment(r.from),
                   names_.moment(r.to),
                   std::nullopt,
                   std::nullopt,
                   r.slowest(),
                   r.fastest(),
                   std::nullopt,
                   r.cables};
      if (r.to) {
        line.ran = *r.to - r.from;
        line.counts = counted(state_, r, r.from, *r.to);
      }
      const auto head = std::find_if(report_.runs.begin(), report_.runs.end(),
                                     [i](const RunReport& report) { return report.run == i; });
      if (head != report_.runs.end()) line.head = head->head;
      out_.runs.push_back(std::move(line));
    }
    for (const HangState& h : state_.hangs) {
      if (!h.stands()) continue;
      const Row& row = names_.row(h.element, h.row);
      std::string motors;
      if (const auto* hang = std::get_if<event::Hang>(&names_.event(h.ref).what)) {
        for (const MotorId& motor : hang->motors)
          motors += (motors.empty() ? "" : " ") + motor.text;
      }
      if (h.out) {  // the same hang, a place poorer
        const auto* out = std::get_if<event::MotorOut>(&names_.event(*h.out).what);
        if (!motors.empty()) motors += ", ";
        motors += words_of(Saying{said("without {motor}"), {{"motor", out->motor.text}}}, voice_);
      }
      out_.moves.push_back({names_.element(h.element), to_text(row.side), row.id.text, motors,
                            names_.moment(h.from), names_.moment(h.to), h.cables,
                            names_.by(h.out.value_or(h.ref))});
    }
  }

  void loads() {
    out_.loads = load_lines(state_);
    for (const TruckState& truck : state_.trucks) {
      if (truck.parts.empty()) continue;
      ++out_.trucks;
      if (truck.what) out_.placed = out_.placed.value_or(Volume{}) + truck.placed();
    }
    Volume net;
    for (std::size_t i = 0; i < state_.elements.size(); ++i) net += net_volume(state_, i);
    if (net.value() > 0) out_.net = net;
  }

  void corrections() {
    for (const Correction& c : state_.corrections) {
      const Event& made = names_.event(c.made_by);
      CorrectionLine line{
          state_.log[c.made_by].when, names_.person(made.by), "changed", {}, {}, c.before, c.after};
      if (const auto* fix = std::get_if<event::Fix>(&made.what)) line.why = fix->why;
      if (const auto* strike = std::get_if<event::Strike>(&made.what)) line.why = strike->why;
      if (c.after.empty()) {
        line.what = "struck";
        line.changes = line_words(c.before, voice_.language);
      } else {
        line.changes = change_words(c.before, c.after, voice_.language);
      }
      out_.corrections.push_back(std::move(line));
    }
    for (const LogEntry& entry : state_.log) {
      const Event& e = entry.event;
      if (e.entry && entry.late()) {
        out_.late.push_back({e.at, e.entry->wall, between(e.at, e.entry->wall),
                             event_words(e, voice_.language), names_.person(e.by)});
      }
      if (e.uncertain > Seconds{0}) {
        out_.uncertain.push_back(
            {entry.when, e.uncertain, event_words(e, voice_.language), names_.person(e.by)});
      }
      if (!entry.struck && entry.sense != LogEntry::Sense::counts) {
        out_.aside.push_back(
            {entry.when, event_words(e, voice_.language), words_of(entry.why_not, voice_)});
      }
    }
    for (const ClockStep& step : state_.clock_steps) {
      out_.aside.push_back(
          {names_.moment(step.at),
           words_of(Saying{said("clock stepped by {step+}"), {{"step", amount(step.step)}}},
                    voice_),
           told(voice_.language, said("the wall clock and the clock that never steps disagreed; "
                                      "durations follow the latter"))});
    }
  }

  void unread() {
    for (const UnreadEvent& e : unread_.damaged) out_.damaged.push_back({e.id.text, e.what});
    for (const UnreadEvent& e : unread_.set_aside) out_.set_aside.push_back({e.id.text, e.what});
  }

  void words() {
    for (const EventRef ref : state_.notes) {
      const Event& e = names_.event(ref);
      const auto* note = std::get_if<event::Note>(&e.what);
      if (note == nullptr) continue;
      out_.notes.push_back({names_.when(ref), names_.person(e.by),
                            note->element ? note->element->text : std::string{}, note->lift,
                            note->text});
    }
  }

  void face() {
    for (const EventRef ref : state_.strips) {
      const Event& e = names_.event(ref);
      const auto* strip = std::get_if<event::Strip>(&e.what);
      if (strip == nullptr) continue;
      out_.strips.push_back(
          {names_.when(ref), strip->element.text, to_text(strip->side), names_.person(e.by)});
    }
    for (const EventRef ref : state_.blemishes) {
      const Event& e = names_.event(ref);
      const auto* blemish = std::get_if<event::Blemish>(&e.what);
      if (blemish == nullptr) continue;
      const int number = static_cast<int>(out_.blemishes.size()) + 1;
      out_.blemishes.push_back({number, names_.when(ref), blemish->element.text,
                                to_text(blemish->side), blemish_words(blemish->kind),
                                blemish->patch, blemish->note, repairs_of(e.id),
                                names_.person(e.by)});
    }
  }

  [[nodiscard]] std::string blemish_words(const std::string& kind) const {
    const auto defect = event::defect_named(kind);
    return defect ? std::string{told(voice_.language, to_text(*defect))} : kind;
  }
  [[nodiscard]] std::string repairs_of(const EventId& target) const {
    std::string text;
    for (const EventRef ref : state_.repairs) {
      const Event& e = names_.event(ref);
      const auto* repair = std::get_if<event::Repair>(&e.what);
      if (repair == nullptr || repair->target != target) continue;
      text += fmt::format("{}{} ({})", text.empty() ? "" : "; ", repair_words(*repair),
                          names_.person(e.by));
    }
    return text;
  }

  const PourState& state_;
  const CheckReport& report_;
  const Unread& unread_;
  const Plan& plan_;
  Names names_;
  const Voice voice_;
  const bool stories_;
  const PhotoSource& photos_;
  PourRecord out_;
};

}  // namespace

PourRecord make_pour_record(const RecordInput& input, const Voice& voice) {
  return Maker{input, voice}.make(input.dose);
}

}  // namespace rb

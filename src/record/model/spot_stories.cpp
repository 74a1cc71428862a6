#include "record/model/spot_stories.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "pour/outlook/form.h"
#include "pour/outlook/insertions.h"
#include "pour/outlook/loads.h"
#include "record/model/names.h"

namespace rb {

namespace {

// Concrete that lies on a spot: the lift that brought it, and when the next came upon that lift.
struct Lying {
  const LiftState* lift = nullptr;
  std::optional<Seconds> top_came{}, covered{};
};

class StoryTeller {
 public:
  StoryTeller(const PourState& state, std::size_t element, Side side, const Voice& voice)
      : state_(state),
        names_(state),
        index_(element),
        element_(state.plan->elements[element]),
        side_(side),
        voice_(voice),
        face_(face_of(state, element, {side})),
        sets_(set_steps(state, element)) {
    for (const Row& row : element_.rows) {
      if (row.side != side) continue;
      for (std::size_t i = 0; i < row.motors.size(); ++i) rows_.push_back(row.id.text);
    }
  }

  // Of the middle of a square, so wide and so high; a blemish is told wherever the square meets it.
  std::vector<StoryLine> tell(Length x, Length z, Length wide, Length high) {
    lines_.clear();
    const std::size_t bay = element_.bay_at(x);
    line(said("Place"),
         say(said("bay {bay}, {x} from the left, {z} up"),
             {{"bay", std::to_string(bay + 1)}, {"x", amount(x)}, {"z", amount(z)}}));
    blemishes({x - 0.5 * wide, z - 0.5 * high, wide, high});
    const auto story = trade::spot_story(face_, 0, x, z);
    if (!story) {
      line(said("Concrete"), told(said("none came here: an opening, or above the top")));
      return lines_;
    }
    const Lying lying = lying_on(bay, z);
    came(*story, lying);
    loads(story->came);
    shaken(*story);
    inserted(bay, z);
    dose(*story);
    head(*story, bay, z);
    line(said("Initial set"), say(said("{at}, the early side"), {{"at", clock(story->sets)}}));
    covered(lying);
    return lines_;
  }

 private:
  [[nodiscard]] std::string told(Said english) const { return rb::told(voice_.language, english); }
  [[nodiscard]] std::string say(Said english, Facts facts) const {
    return words_of(Saying{english, std::move(facts)}, voice_);
  }
  [[nodiscard]] std::string clock(Seconds at) const {
    return clock_text(state_.moment(at), voice_.utc_offset);
  }
  void line(Said name, std::string text) { lines_.emplace_back(told(name), std::move(text)); }

  void blemishes(const Patch& square) {
    int number = 0;
    for (const EventRef ref : state_.blemishes) {
      const auto* seen = std::get_if<event::Blemish>(&names_.event(ref).what);
      if (seen == nullptr) continue;
      ++number;
      if (seen->element != element_.id || seen->side != side_) continue;
      const Patch& box = seen->patch;
      const bool beside = square.x > box.x + box.w || square.x + square.w < box.x;
      const bool over = square.z > box.z + box.h || square.z + square.h < box.z;
      if (beside || over) continue;
      line(said("Blemish"),
           fmt::format("{}: {}{}{}", number, rb::told(voice_.language, seen->kind.c_str()),
                       seen->note.empty() ? "" : ", ", seen->note));
    }
  }

  [[nodiscard]] Lying lying_on(std::size_t bay, Length z) const {
    Lying lying;
    const trade::TopCurve& top = state_.elements[index_].tops[bay];
    for (const LiftState& lift : state_.elements[index_].lifts) {
      if (lift.empty(bay) || z < lift.bottom[bay] || z > lift.top[bay]) continue;
      lying = {&lift, top.reached(lift.top[bay]), top.covered(lift.top[bay])};
      break;
    }
    return lying;
  }

  void came(const trade::SpotStory& story, const Lying& lying) {
    if (lying.lift == nullptr) {
      line(said("Concrete came"), clock(story.came));
      return;
    }
    line(said("Concrete came"),
         say(said("{at}, with lift {lift}"),
             {{"at", clock(story.came)}, {"lift", std::to_string(lying.lift->lift)}}));
  }

  // Its age, and what was measured on it.
  void loads(Seconds came) {
    for (const std::size_t i : loads_at(state_, index_, came)) {
      const TruckState& truck = state_.trucks[i];
      std::string text = truck.ticket.text;
      if (truck.what) {
        const Seconds batched = state_.told(*truck.ref, truck.what->batched);
        text += ", " + say(said("{age} old"), {{"age", amount(came - batched, Measure::age)}});
      }
      for (const TestState& test : state_.tests) {
        if (test.what.ticket != truck.ticket) continue;
        if (test.what.slump) {
          text +=
              ", " + say(said("slump {slump}"),
                         {{"slump", Amount{Measure::small_length, in_metres(*test.what.slump)}}});
        }
        if (test.what.temp) text += ", " + amount_text(amount(*test.what.temp), voice_);
      }
      line(said("Ticket"), text);
    }
  }

  void shaken(const trade::SpotStory& story) {
    for (const auto& shaken : story.shaken) {
      std::vector<std::string> rows;
      for (const std::size_t i : shaken.shakers) rows.push_back(rows_[i]);
      std::sort(rows.begin(), rows.end());
      rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
      std::string names;
      for (const std::string& row : rows) names += (names.empty() ? "" : ", ") + row;
      std::string text = say(said("{rows}: {from} to {to}, {span}"),
                             {{"rows", names},
                              {"from", clock(shaken.when.from)},
                              {"to", clock(shaken.when.to)},
                              {"span", amount(shaken.when.to - shaken.when.from)}});
      if (shaken.when.work < 1) {
        text += ", " + say(said("a second counts {share}"),
                           {{"share", fmt::format("{:.2f}", shaken.when.work)}});
      }
      line(said("Vibrated"), text);
    }
  }

  void inserted(std::size_t bay, Length z) {
    for (const InsertState& insert : state_.inserts) {
      if (insert.element != index_ || (insert.bay && *insert.bay != bay)) continue;
      const auto worked = worked_by(state_, insert, bay, sets_);
      if (!worked || z < worked->from || z > worked->to) continue;
      line(said("Inserted"), say(said("{at}, {each} at a point"),
                                 {{"at", clock(insert.at)}, {"each", amount(insert.what.each)}}));
    }
  }

  void dose(const trade::SpotStory& story) {
    if (rows_.empty()) return;
    line(said("Dose"), say(said("{dose}; at least {least}"),
                           {{"dose", amount(story.dose)},
                            {"least", amount(state_.plan->limits.dose_min.value)}}));
  }

  // Full liquid over the spot at the end of each stretch it was shaken in; the greatest.
  void head(const trade::SpotStory& story, std::size_t bay, Length z) {
    std::optional<Pressure> greatest;
    Seconds when{};
    for (const auto& shaken : story.shaken) {
      const Length over = state_.elements[index_].tops[bay].at(shaken.when.to) - z;
      const Pressure head = heaviest(state_, shaken.when.to) * std::max(over, metres(0));
      if (greatest && head <= *greatest) continue;
      greatest = head;
      when = shaken.when.to;
    }
    if (!greatest) return;
    line(said("Head"), say(said("{head} at {at}, as full liquid, while it was shaken"),
                           {{"head", amount(*greatest)}, {"at", clock(when)}}));
  }

  void covered(const Lying& lying) {
    if (lying.lift == nullptr) return;
    if (!lying.covered || !lying.top_came) {
      line(said("Covered"), told(said("no later lift came upon it")));
      return;
    }
    const Seconds sets = face_.sets_at(*lying.top_came);
    const Facts facts{{"at", clock(*lying.covered)},
                      {"age", amount(*lying.covered - *lying.top_came, Measure::age)}};
    line(said("Covered"),
         *lying.covered < sets
             ? say(said("{at}, {age} after the lift's top came"), facts)
             : say(said("{at}, {age} after the lift's top came: it had set"), facts));
  }

  const PourState& state_;
  Names names_;
  std::size_t index_;
  const Element& element_;
  Side side_;
  const Voice& voice_;
  trade::Face face_;
  std::vector<trade::SetStep> sets_;
  std::vector<std::string> rows_;  // of each motor of the side, its row
  std::vector<StoryLine> lines_;
};

std::size_t squares(Length whole, double most_metres, double most) {
  return static_cast<std::size_t>(
      std::clamp(std::ceil(in_metres(whole) / most_metres - 1e-9), 1.0, most));
}

}  // namespace

SpotStories spot_stories(const PourState& state, std::size_t element, Side side,
                         const Voice& voice) {
  const Element& of = state.plan->elements[element];
  SpotStories out;
  out.across = squares(of.length, 0.5, 120);
  out.up = squares(of.rise_height(), 0.25, 40);
  StoryTeller teller{state, element, side, voice};
  std::map<StoryLine, std::size_t> lines;
  std::map<std::vector<std::size_t>, std::size_t> stories;
  for (std::size_t z = 0; z < out.up; ++z) {
    for (std::size_t x = 0; x < out.across; ++x) {
      const auto middle = [](std::size_t i, std::size_t n) {
        return (static_cast<double>(i) + 0.5) / static_cast<double>(n);
      };
      std::vector<std::size_t> story;
      for (StoryLine& line :
           teller.tell(of.length * middle(x, out.across), of.rise_height() * middle(z, out.up),
                       of.length / static_cast<double>(out.across),
                       of.rise_height() / static_cast<double>(out.up))) {
        const auto [it, fresh] = lines.try_emplace(line, out.lines.size());
        if (fresh) out.lines.push_back(std::move(line));
        story.push_back(it->second);
      }
      const auto [it, fresh] = stories.try_emplace(story, out.stories.size());
      if (fresh) out.stories.push_back(std::move(story));
      out.at.push_back(it->second);
    }
  }
  return out;
}

}  // namespace rb

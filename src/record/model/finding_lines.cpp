#include "record/model/finding_lines.h"

#include "check/review.h"
#include "check/say_finding.h"
#include "record/model/clean_text.h"

namespace rb {

namespace {

class FindingMaker {
 public:
  FindingMaker(PourRecord& record, const PourState& state, const Voice& voice)
      : record_(record), state_(state), names_(state), voice_(voice) {}

  void put(const CheckReport& report) {
    int cause = 0;
    for (const auto& same : by_cause(report.findings)) {
      ++cause;
      for (const Finding& f : same) {
        record_.findings.push_back(line_of(f));
        record_.findings.back().cause = cause;
        record_.findings.back().of_cause = static_cast<int>(&f - same.data()) + 1;
      }
    }
    review(review_of(state_, report));
    for (FindingLine& line : record_.findings) line.told = told(line);
  }

 private:
  [[nodiscard]] FindingLine line_of(const Finding& f) const {
    const Plan& plan = *state_.plan;
    FindingLine line;
    line.severity = f.severity;
    line.rule = f.rule;
    if (const RuleCard* card = find_card(f.rule)) {
      line.title = rb::told(voice_.language, card->title);
    }
    if (f.element) line.element = names_.element(*f.element);
    if (f.element && f.row) line.row = names_.row(*f.element, *f.row).id.text;
    if (f.side) line.side = to_text(*f.side);
    line.lift = f.lift;
    if (f.bay) line.bay = static_cast<int>(*f.bay) + 1;
    line.from = names_.moment(f.from);
    line.to = names_.moment(f.to);
    line.measured = f.measured;
    line.limit = f.limit;
    line.measured_text = measured_text(f, voice_);
    line.limit_text = limit_text(f, voice_);
    line.source = source_text(f.source, voice_);
    line.says = sentence(f, plan, voice_);
    line.says_si = sentence(f, plan, kTerminal);
    line.advice = advice_text(f, voice_);
    line.group = f.group;
    line.place = place(line);
    return line;
  }

  [[nodiscard]] std::string say(Said english, Facts facts) const {
    return words_of(Saying{english, std::move(facts)}, voice_);
  }

  [[nodiscard]] std::string place(const FindingLine& f) const {
    std::string text = f.element;
    const auto add = [&text](const std::string& part) {
      text += (text.empty() ? "" : ", ") + part;
    };
    if (f.lift) add(say(said("lift {lift}"), {{"lift", std::to_string(*f.lift)}}));
    if (f.bay) add(say(said("bay {bay}"), {{"bay", std::to_string(*f.bay)}}));
    if (!f.row.empty()) add(say(said("row {row}"), {{"row", f.row}}));
    if (!f.side.empty()) add(rb::told(voice_.language, f.side.c_str()));
    return text;
  }

  // What was seen, what to do, where the limit is from and what became of it, a line each.
  [[nodiscard]] std::string told(const FindingLine& f) const {
    std::string text;
    const auto line = [&](const std::string& more) {
      if (more.empty()) return;
      text += (text.empty() ? "" : "\n") + more;
      if (text.back() != '.') text += '.';
    };
    const auto led = [&](Said english, const std::string& words) {
      if (!words.empty()) line(say(english, {{"words", words}}));
    };
    line(f.says);
    led(said("Do: {words}"), f.advice);
    led(said("Limit from: {words}"), f.source);
    line(verdict(f));
    return text;
  }

  [[nodiscard]] std::string verdict(const FindingLine& f) const {
    if (!f.reviewed_at || f.of_cause > 1) return {};
    const Facts facts{{"by", f.reviewed_by}, {"at", *f.reviewed_at}, {"why", f.reviewed_why}};
    const bool accepted = f.standing == to_text(Standing::accepted);
    if (f.standing == to_text(Standing::open)) {
      return say(said("Open again: its figures are not those that {by} spoke of at {at}"), facts);
    }
    if (f.reviewed_why.empty()) {
      return accepted ? say(said("Accepted by {by} at {at}"), facts)
                      : say(said("Sent back by {by} at {at}"), facts);
    }
    return accepted ? say(said("Accepted by {by} at {at}: {why}"), facts)
                    : say(said("Sent back by {by} at {at}: {why}"), facts);
  }

  void review(const Review& review) {
    record_.causes_open = review.open;
    record_.causes_accepted = review.accepted;
    record_.causes_sent_back = review.sent_back;
    for (const ReviewedGroup& group : review.groups) {
      for (std::size_t i = 0; i < group.count; ++i) {
        FindingLine& line = record_.findings[group.first + i];
        line.standing = to_text(group.standing);
        line.figures = group.figures.digits;
        if (!group.last) continue;
        const ReviewState& word = state_.reviews[*group.last];
        line.reviewed_by = names_.by(word.ref);
        line.reviewed_at = names_.when(word.ref);
        line.reviewed_why = word.why;
      }
    }
  }

  PourRecord& record_;
  const PourState& state_;
  Names names_;
  const Voice& voice_;
};

}  // namespace

void put_findings(PourRecord& record, const PourState& state, const CheckReport& report,
                  const Voice& voice) {
  for (const NotJudged& gap : report.not_judged) {
    record.not_judged.push_back(sentence(gap, *state.plan, voice));
  }
  FindingMaker{record, state, voice}.put(report);
}

}  // namespace rb

#include "check/review.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace rb {

namespace {

// FNV-1a, 64 bits: it tells figures apart, and need not stand against anybody who looks for two
// that agree; the book's own chain holds the event.
class Digest {
 public:
  void add(std::string_view text) {
    for (const char c : text) {
      hash_ ^= static_cast<unsigned char>(c);
      hash_ *= 1099511628211U;
    }
  }
  [[nodiscard]] Hex done() const {
    std::array<unsigned char, 8> bytes{};
    for (std::size_t i = 0; i < bytes.size(); ++i) {
      bytes[i] = static_cast<unsigned char>(hash_ >> (8 * (7 - i)) & 0xFFU);
    }
    return hex_of(bytes);
  }

 private:
  std::uint64_t hash_ = 14695981039346656037U;
};

std::string digits_of(const Amount& amount) {
  const double v = std::abs(amount.si) < 1e-12 ? 0 : amount.si;  // no zero is less than another
  return fmt::format("{:.6g} {}", v, script_unit(amount.measure));
}

std::string told_by(const FactValue& value) {
  if (const auto* amount = std::get_if<Amount>(&value)) return digits_of(*amount);
  if (const auto* term = std::get_if<Term>(&value)) return term->english;
  if (const auto* at = std::get_if<Moment>(&value)) return to_text(*at);
  if (const auto* clause = std::get_if<Clause>(&value)) return clause->inner().text();
  return std::get<std::string>(value);
}

// One line a finding: names and values, each with its length before it.
class Line {
 public:
  void add(std::string_view name, std::string_view value) {
    text_ += fmt::format("{}={}:{};", name, value.size(), value);
  }
  void add_any(std::string_view name, const std::optional<std::string>& value) {
    if (value) add(name, *value);
  }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

template <class T, class Show>
std::optional<std::string> if_any(const std::optional<T>& value, Show show) {
  return value ? std::optional<std::string>{show(*value)} : std::nullopt;
}

std::string line_of(const PourState& state, const Finding& f) {
  const Plan& plan = *state.plan;
  const auto number = [](auto v) { return fmt::format("{}", v); };
  const auto moment = [&](Seconds at) { return to_text(state.moment(at)); };
  const auto id = [](const auto& named) { return named.text; };
  Line line;
  line.add("rule", f.rule);
  line.add("weight", to_text(f.severity));
  line.add_any("element",
               if_any(f.element, [&](std::size_t e) { return plan.elements[e].id.text; }));
  line.add_any("lift", if_any(f.lift, number));
  line.add_any("bay", if_any(f.bay, number));
  line.add_any("side", if_any(f.side, [](Side side) { return std::string{to_text(side)}; }));
  if (f.element && f.row) line.add("row", plan.elements[*f.element].rows[*f.row].id.text);
  line.add_any("ticket", if_any(f.ticket, id));
  line.add_any("inverter", if_any(f.inverter, id));
  line.add_any("from", if_any(f.from, moment));
  line.add_any("to", if_any(f.to, moment));
  if (!f.growing) line.add_any("measured", if_any(f.measured, digits_of));
  line.add_any("limit", if_any(f.limit, digits_of));
  for (const Fact& told : f.facts) line.add(told.name, told_by(told.value));
  return line.text();
}

// Who signs ends it: it cannot be settled before.
bool of_signing(const ReviewedGroup& group) {
  return group.key.starts_with("unsigned");
}

}  // namespace

const char* to_text(Standing standing) {
  static constexpr std::array<const char*, 3> kWords{"open", "accepted", "sent-back"};
  return kWords[static_cast<std::size_t>(standing)];
}

Hex figures_of(const PourState& state, std::span<const Finding> group) {
  std::vector<std::string> lines;
  lines.reserve(group.size());
  for (const Finding& f : group) lines.push_back(line_of(state, f));
  std::sort(lines.begin(), lines.end());
  Digest digest;
  for (const std::string& line : lines) digest.add(line + '\n');
  return digest.done();
}

Review review_of(const PourState& state, const CheckReport& report) {
  Review review;
  const auto causes = by_cause(report.findings);
  review.groups.reserve(causes.size());
  for (const auto& same : causes) {
    ReviewedGroup group{.key = same.front().group,
                        .figures = figures_of(state, same),
                        .first = static_cast<std::size_t>(same.data() - report.findings.data()),
                        .count = same.size(),
                        .severity = same.front().severity};
    // Of what was said for these figures the last stands; else what was said last at all is told.
    bool fits = false;
    for (std::size_t i = 0; i < state.reviews.size(); ++i) {
      const ReviewState& word = state.reviews[i];
      if (word.finding != group.key) continue;
      const bool now = word.figures == group.figures;
      if (fits && !now) continue;
      fits = fits || now;
      group.last = i;
      if (now) group.standing = word.accepted ? Standing::accepted : Standing::sent_back;
    }
    ++(group.standing == Standing::open       ? review.open
       : group.standing == Standing::accepted ? review.accepted
                                              : review.sent_back);
    review.groups.push_back(std::move(group));
  }
  return review;
}

std::vector<std::string> to_be_named(const Review& review) {
  std::vector<std::string> keys;
  keys.reserve(review.groups.size());
  for (const ReviewedGroup& group : review.groups) {
    if (group.standing == Standing::accepted || group.severity == Severity::note) continue;
    if (!of_signing(group)) keys.push_back(group.key);
  }
  return keys;
}

std::vector<std::string> unnamed(const Review& review, const event::Sign& sign) {
  std::vector<std::string> keys = to_be_named(review);
  std::erase_if(keys, [&](const std::string& key) {
    return std::find(sign.open.begin(), sign.open.end(), key) != sign.open.end();
  });
  return keys;
}

}  // namespace rb

#include "record/model/signature_lines.h"

#include <fmt/format.h>

#include <set>

#include "base/short_code.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/signatures.h"

namespace rb {

namespace {

std::string listed(const std::vector<std::string>& keys) {
  std::string text;
  for (const std::string& key : keys) text += (text.empty() ? "" : " ") + key;
  return text;
}

void put_key(SignatureLine& line, const PourState& state, const SignatureState& made,
             const event::Sign& sign) {
  if (!sign.key) return;
  line.key = short_code(sign.key->digits);
  line.public_key = sign.key->digits;
  line.signed_book = sign.book;
  line.signed_event = sign.number;
  line.signed_hash = sign.hash ? sign.hash->digits : std::string{};
  line.signed_events = sign.events;
  line.signature = sign.signature ? sign.signature->digits : std::string{};
  line.open = static_cast<int>(sign.open.size());
  line.open_findings = listed(sign.open);
  if (made.enrolment) {
    const PersonId& witness = state.enrolments[*made.enrolment].what.witness;
    line.witness = witness.empty() ? "nobody" : witness.text;
  }
}

void tell(SignatureLine& line) {
  if (!line.key.empty()) {
    line.told.push_back(fmt::format(
        "Signed by whoever knew the PIN of {} on a tablet with this book, over the book as far as "
        "its event {}. Key {}, {}.",
        line.by, line.signed_event.value_or(0), line.key,
        line.witness == "nobody" ? "enrolled without a witness" : "witnessed by " + line.witness));
  }
  if (line.open.value_or(0) > 0) {
    line.told.push_back(fmt::format("Causes of findings named as open: {}.", *line.open));
  }
  if (line.after.value_or(0) > 0) {
    line.told.push_back(fmt::format(
        "{} event{} after the {} signed; {} of them may change what was signed.", *line.after,
        *line.after == 1 ? "" : "s", line.role, line.after_changing.value_or(0)));
  }
}

}  // namespace

void put_signatures(PourRecord& record, const PourState& state, const Names& names) {
  std::set<std::string> signed_roles;
  for (const SignatureState& made : signatures_of(state)) {
    const Event& e = names.event(made.ref);
    const auto* sign = std::get_if<event::Sign>(&e.what);
    if (sign == nullptr) continue;
    signed_roles.insert(to_text(sign->role));
    SignatureLine line{to_text(sign->role), names.person(e.by), sign->verdict, sign->comment,
                       names.when(made.ref)};
    line.after = static_cast<int>(made.after);
    line.after_changing = static_cast<int>(made.unsettled);
    put_key(line, state, made, *sign);
    tell(line);
    record.signatures.push_back(std::move(line));
  }
  for (const char* role : words_of(event::Role{})) {
    if (!signed_roles.contains(role)) record.signatures.push_back({role, {}, {}, {}, {}});
  }
}

void put_amendments(PourRecord& record, const PourState& state, const Names& names) {
  record.amendments.reserve(state.amends.size());
  for (const AmendState& amend : state.amends) {
    record.amendments.push_back({names.when(amend.ref), amend.what.path, amend.was,
                                 amend.what.value, amend.what.why, names.by(amend.ref)});
  }
}

void put_review(PourRecord& record, const PourState& state, const CheckReport& report,
                const Names& names) {
  const Review review = review_of(state, report);
  for (const ReviewedGroup& group : review.groups) {
    for (std::size_t i = 0; i < group.count; ++i) {
      FindingLine& line = record.findings[group.first + i];
      line.standing = to_text(group.standing);
      line.figures = group.figures.digits;
      if (!group.last) continue;
      const ReviewState& word = state.reviews[*group.last];
      line.reviewed_by = names.by(word.ref);
      line.reviewed_at = names.when(word.ref);
      line.reviewed_why = word.why;
    }
  }
}

}  // namespace rb

// What a book can tell of its own wholeness, in words that claim no more.
#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <map>

#include "app/book_pours.h"
#include "app/device.h"
#include "app/settings_file.h"
#include "app/signing/record_seal.h"
#include "base/short_code.h"
#include "cli/commands.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/signatures.h"
#include "sign/person_key.h"
#include "store/book/logbook.h"
#include "store/copies/against.h"
#include "store/photos/carry.h"
#include "store/photos/photo.h"

namespace rb {

namespace {

namespace fs = std::filesystem;

/// Said of a device by five characters of its key.
std::string device(const std::string& key, const std::string& own) {
  return fmt::format("device {}{}", short_code(key).substr(0, 5),
                     key == own ? " (this one)" : " (not this one)");
}

void tell_signatures(const VerifyReport& looked) {
  if (looked.signed_heads.empty()) {
    fmt::print("No head of it is signed.\n");
    return;
  }
  const auto own_key = store::DeviceKey::standing(data_folder());
  const std::string own = own_key ? store::to_hex(own_key->public_key()) : std::string{};
  const SignedHead& last = looked.signed_heads.back();
  fmt::print("{} signed heads hold, the last at event {} of {} by {}, {}\n",
             looked.signed_heads.size(), last.seq, looked.last, device(last.key, own),
             to_text(last.made));
  std::vector<std::string> keys;
  for (const SignedHead& head : looked.signed_heads) {
    if (std::find(keys.begin(), keys.end(), head.key) == keys.end()) keys.push_back(head.key);
  }
  for (const std::string& key : keys) fmt::print("  key of {}: {}\n", device(key, own), key);
}

/// "3 events after the inspector signed, 1 of them may change what was signed"
std::string after_words(const SignatureState& sign) {
  if (sign.after == 0) return "nothing came after";
  return fmt::format("{} event{} after the {} signed, {} of them may change what was signed",
                     sign.after, sign.after == 1 ? "" : "s", to_text(sign.role), sign.unsettled);
}

/// Signatures of people: what each proves, and what came after it.
void tell_people(const Logbook& book, const VerifyReport& looked) {
  std::map<PourId, std::optional<PourState>> pours;
  for (const PersonSignature& person : looked.people) {
    auto [known, first] = pours.try_emplace(person.pour);
    if (first) {
      if (auto read = read_pour(book, person.pour)) known->second = std::move(read->state);
    }
    std::string after = "what came after cannot be told";
    std::string witness;
    for (const auto& sign :
         known->second ? signatures_of(*known->second) : std::vector<SignatureState>{}) {
      const PourState& state = *known->second;
      if (state.log[sign.ref].event.id != person.event) continue;
      after = after_words(sign);
      if (sign.enrolment && state.enrolments[*sign.enrolment].what.witness.empty()) {
        witness = ", enrolled without a witness";
      }
    }
    fmt::print(
        "Pour {}: signed as {} by whoever knew the PIN of {} (key {}{}) in event {}, over "
        "the book as far as event {}{}; {}\n",
        person.pour.text, to_text(person.role), person.by.text, sign::fingerprint(person.key),
        witness, person.event.text, person.number,
        person.elsewhere ? " of another book, not compared" : "", after);
  }
}

/// Photos beside the book, each held to its hash; false where one is missing or altered.
bool tell_photos(const Path& book, const VerifyReport& looked) {
  if (looked.photos.empty()) return true;
  const Path folder = store::photos_folder(fs::absolute(book).parent_path(), looked.tag);
  const auto faults = store::photo_faults(looked.photos, folder);
  for (const std::string& fault : faults) fmt::print("  fault: {}\n", fault);
  fmt::print("Photos: {} of {} are whole\n", looked.photos.size() - faults.size(),
             looked.photos.size());
  return faults.empty();
}

/// Mirrors beside the book and in the folder the screens mirror to.
std::vector<std::string> mirrors_of(const Path& book, const std::string& tag) {
  std::vector<std::string> found;
  const Path at = fs::absolute(book);
  for (const Path& folder : {at.parent_path(), mirror_folder(settings_path())}) {
    if (folder.empty()) continue;
    for (const Path& mirror : store::mirrors_in(folder, at, tag)) found.push_back(mirror.string());
  }
  return found;
}

void tell_extent(const VerifyReport& looked, bool mirrored) {
  fmt::print("The chain is whole as far as event {}", looked.last);
  if (looked.vouched == looked.last) {
    fmt::print("; the note beside it names the same event as the last acknowledged.\n");
  } else if (looked.vouched) {
    fmt::print("; the note beside it names event {} as acknowledged.\n", *looked.vouched);
  } else if (mirrored) {
    fmt::print("; the mirror tells of no later one.\n");
  } else {
    fmt::print("; nothing here to tell of later ones.\n");
  }
  if (looked.note_damaged) fmt::print("The note beside it is damaged and tells nothing.\n");
  fmt::print(
      "It cannot show a rewrite by someone who holds this file and its key; compare with a record, "
      "a photographed code, a mirror or a copy: risebook verify BOOK --against ...\n");
}

Result<std::string> text_of(const Path& file) {
  std::ifstream in{file, std::ios::binary};
  std::string text{std::istreambuf_iterator<char>{in}, {}};
  if (!in.is_open() || in.bad() || text.empty()) {
    return fail(Error::Kind::input, file.string(), said("cannot be read"),
                said("Give a record as JSON, as it was made"));
  }
  return text;
}

// A record alone, or held against its book.
Exit verify_record(const VerifyWish& wish) {
  const auto text = text_of(wish.record);
  if (!text) return report(text.error());
  auto look = look_at_record(*text);
  if (!look) return report(look.error());
  const auto own_key = store::DeviceKey::standing(data_folder());
  const std::string own = own_key ? store::to_hex(own_key->public_key()) : std::string{};
  fmt::print(
      "Record {}: {} parts, {}\n", wish.record.string(), look->parts,
      look->device.empty() ? "signed by no device" : "signed by " + device(look->device, own));
  for (const std::string& person : look->people) fmt::print("{}\n", person);
  if (!wish.book.empty()) {
    const auto book = Logbook::open(wish.book, Access::read);
    if (!book) return report(book.error());
    const auto faults = held_to_book(*look, *book);
    fmt::print("Its {} events {} in book {}\n", look->events.size(),
               faults.empty() ? "stand" : "do not all stand", book->tag());
    look->faults.insert(look->faults.end(), faults.begin(), faults.end());
  }
  for (const std::string& fault : look->faults) fmt::print("  fault: {}\n", fault);
  if (look->sound()) {
    fmt::print(
        "It is as it was made{}. Who signed it in a device's place, holding its key, cannot be "
        "told from it: compare the key with the device's own.\n",
        look->device.empty() ? ", as far as digests that nobody signed can show" : "");
  }
  return look->sound() ? Exit::fine : Exit::book;
}

}  // namespace

Exit run_verify(const VerifyWish& wish) {
  if (!wish.record.empty()) return verify_record(wish);
  if (wish.book.empty()) {
    return report({Error::Kind::input, "verify", "is given neither a book nor a record",
                   "Give a book, or --record with a record's JSON"});
  }
  const auto book = Logbook::open(wish.book, Access::read);
  if (!book) return report(book.error());
  const auto looked = book->verify();
  if (!looked) return report(looked.error());
  fmt::print("Book {}: {} events, head {} ({})\n", looked->tag, looked->events, looked->head_hash,
             short_code(looked->head_hash));
  bool holds = looked->sound();
  for (const std::string& fault : looked->faults) fmt::print("  fault: {}\n", fault);
  for (const DamagedEvent& event : looked->lost) {
    fmt::print("  lost before a rescue: {}{}\n", event.id.text,
               event.pour ? " of pour " + event.pour->text : std::string{});
  }
  if (looked->unknown > 0) {
    fmt::print("{} events of kinds this Risebook does not know\n", looked->unknown);
  }
  tell_signatures(*looked);
  tell_people(*book, *looked);
  holds = tell_photos(wish.book, *looked) && holds;
  const auto mirrors = mirrors_of(wish.book, looked->tag);
  const auto beside = store::hold_against(wish.book, mirrors);
  bool mirrored = false;
  for (std::size_t i = 0; beside && i < beside->size(); ++i) {
    const auto& [had, says] = (*beside)[i];
    fmt::print("{}{}\n", had ? "" : "  fault: ", says);
    mirrored = mirrored || had;
    holds = holds && had;
  }
  if (!beside) fmt::print("A mirror cannot be compared: {}\n", to_text(beside.error()));
  if (holds) tell_extent(*looked, mirrored);
  if (!wish.against.empty()) {
    const auto answers = store::hold_against(wish.book, wish.against);
    if (!answers) return report(answers.error());
    for (const auto& [had, says] : *answers) {
      fmt::print("{}\n", says);
      holds = holds && had;
    }
  }
  return holds ? Exit::fine : Exit::book;
}

}  // namespace rb

// Enrolling and signing without screens. A PIN comes from a file or from the terminal, which does
// not show it: on a command line everybody on the machine could read it.
#include <fmt/format.h>
#include <termios.h>
#include <unistd.h>

#include <fstream>
#include <iostream>

#include "app/book_pours.h"
#include "app/device.h"
#include "app/signing/pin_tries.h"
#include "app/signing/signing.h"
#include "cli/commands.h"
#include "sign/claim.h"
#include "store/file/entry_now.h"

namespace rb {

namespace {

// The terminal's echo is off while this lives.
class NoEcho {
 public:
  NoEcho() : known_(tcgetattr(STDIN_FILENO, &was_) == 0) {
    if (!known_) return;
    termios quiet = was_;
    quiet.c_lflag &= ~static_cast<tcflag_t>(ECHO);
    tcsetattr(STDIN_FILENO, TCSAFLUSH, &quiet);
  }
  NoEcho(const NoEcho&) = delete;
  NoEcho& operator=(const NoEcho&) = delete;
  ~NoEcho() {
    if (known_) tcsetattr(STDIN_FILENO, TCSAFLUSH, &was_);
  }

 private:
  termios was_{};
  bool known_;
};

// The first line.
Result<sign::Pin> pin_from(const Path& file, const char* option, const std::string& whose) {
  std::string typed;
  typed.reserve(128);
  if (!file.empty()) {
    std::ifstream in{file};
    if (!std::getline(in, typed)) {
      return fail(Error::Kind::input, file.string(), said("holds no PIN"),
                  said("Give a file with the PIN on its first line, readable by this user alone"));
    }
  } else if (isatty(STDIN_FILENO) == 1) {
    fmt::print(stderr, "PIN of {}: ", whose);
    const NoEcho quiet;
    std::getline(std::cin, typed);
    fmt::print(stderr, "\n");
  } else {
    return fail(Error::Kind::input, option, said("is missing, and there is no terminal to ask at"),
                said("Give a file with the PIN on its first line"));
  }
  if (!typed.empty() && typed.back() == '\r') typed.pop_back();
  auto pin = sign::Pin::read(typed);
  sign::wipe(typed);
  return pin;
}

struct PourToSign {
  Logbook book;
  PourState state;
};

Result<PourToSign> pour_to_sign(const Path& path, const std::string& pour) {
  auto book = Logbook::open(path, Access::write);
  if (!book) return Failed{book.error()};
  if (const auto& why = book->read_only_reason()) return Failed{*why};
  if (auto done = sign_heads(*book, data_folder()); !done) (void)report(done.error());
  const auto chosen = chosen_pours(*book, pour);
  if (!chosen) return Failed{chosen.error()};
  auto read = read_pour(*book, chosen->front());
  if (!read) return Failed{read.error()};
  if (!read->state) return no_plan(book->file(), *read);
  return PourToSign{std::move(*book), std::move(*read->state)};
}

Result<event::Role> role_named(const std::string& word) {
  const auto words = event::words_of(event::Role{});
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (word == words[i]) return static_cast<event::Role>(i);
  }
  return fail(Error::Kind::input, "--role", {said("is \"{given}\""), {{"given", word}}},
              said("Give foreman, inspector or superintendent"));
}

}  // namespace

Exit run_enrol(const EnrolCommand& wish) {
  auto open = pour_to_sign(wish.book, wish.pour);
  if (!open) return report(open.error());
  const Entry entry = entry_now();
  EnrolWish enrol{.person = PersonId{wish.person}};
  if (!wish.role.empty()) {
    const auto role = role_named(wish.role);
    if (!role) return report(role.error());
    enrol.role = *role;
  }
  if (!wish.witness.empty()) {
    const PersonId person{wish.witness};
    const auto pin = pin_from(wish.witness_pin, "--witness-pin-file", wish.witness);
    if (!pin) return report(pin.error());
    auto key = unlock(open->state, person, *pin, pin_tries_path(), entry.wall);
    if (!key) return report(key.error());
    enrol.witness = Witness{person, std::move(*key)};
  }
  const auto pin = pin_from(wish.pin, "--pin-file", wish.person);
  if (!pin) return report(pin.error());
  auto event = make_enrolment(open->state, enrol, *pin, entry.wall);
  if (!event) return report(event.error());
  const auto kept = open->book.append(open->state.pour, std::move(*event), entry);
  if (!kept) return report(kept.error());
  const auto& made = std::get<event::Enrol>(kept->what);
  fmt::print("Event {}: key {} of {}, {}\n", kept->id.text, sign::fingerprint(made.key),
             wish.person,
             made.witness.empty() ? "not witnessed" : "witnessed by " + made.witness.text);
  return Exit::fine;
}

Exit run_sign(const SignCommand& wish) {
  auto open = pour_to_sign(wish.book, wish.pour);
  if (!open) return report(open.error());
  const auto role = role_named(wish.role);
  if (!role) return report(role.error());
  const Review review = review_of(open->state, check(open->state, AsOf::end(open->state)));
  SignWish sign{PersonId{wish.person}, *role, wish.verdict, wish.comment, {}};
  if (wish.name_open) sign.open = to_be_named(review);
  const auto pin = pin_from(wish.pin, "--pin-file", wish.person);
  if (!pin) return report(pin.error());
  const Entry entry = entry_now();
  const auto key = unlock(open->state, sign.person, *pin, pin_tries_path(), entry.wall);
  if (!key) return report(key.error());
  const auto head = open->book.head();
  if (!head) return report(head.error());
  auto event =
      make_signature(open->state, review, sign, *key, {open->book.uuid(), *head}, entry.wall);
  if (!event) return report(event.error());
  const auto kept = open->book.append(open->state.pour, std::move(*event), entry);
  if (!kept) return report(kept.error());
  fmt::print(
      "Event {}: signed by whoever knew the PIN of {} (key {}) as {}, over the book as far as its "
      "event {}; findings named as open: {}\n",
      kept->id.text, wish.person, sign::fingerprint(key->key()), wish.role, head->seq,
      std::get<event::Sign>(kept->what).open.size());
  return Exit::fine;
}

}  // namespace rb
